import { html, nothing, type TemplateResult } from "lit";
import { driveFindings } from "@meshwright/calc/article";
import { measurementsOf } from "@meshwright/calc/counted";
import { readUnfinished } from "@meshwright/calc/document";
import { stagesOf, type Build } from "@meshwright/calc/drivetrain";
import type { Finding } from "@meshwright/calc/stages";
import { evaluationOf, NotebookPanel, sheet } from "../frame/index.js";
import {
  backToDay,
  backToVersion,
  centresRead,
  changeToWay,
  dayText,
  forgetWay,
  isMounted,
  keepVersion,
  keepWay,
  thousandsFault,
  totalsText,
  withPoint,
} from "../model/index.js";

/** What there is to do about a finding: a sentence, and what to choose for it. */
interface Step {
  readonly finding: string;
  readonly choose: string;
  readonly say: string;
}

/** The stage or axle that a place in the document is in. */
function thingAt(build: Build, pointer: string): { id: string; label: string } | undefined {
  const places = stagesOf(build).filter(
    (place) => pointer === place.pointer || pointer.startsWith(`${place.pointer}/`),
  );
  const inner = places.at(-1)?.stage;
  if (inner) return { id: inner.id, label: inner.label ?? inner.id };
  const [, outputs, n] = pointer.split("/");
  const output = outputs === "outputs" ? build.outputs[Number(n)] : undefined;
  return output && { id: output.id, label: output.label ?? output.id };
}

const about: readonly (readonly [begins: string, choose: string, say: string])[] = [
  ["/motor", "motor", "Look at the motor"],
  ["/battery", "motor", "Look at the pack"],
  ["/controller", "motor", "Look at the controller"],
  ["/centre", "centre", "Look at the split"],
];

/** Nothing is chosen: the range, what stands out of it, findings with a step that mends each, versions. */
export class MwNotebookWhole extends NotebookPanel {
  static readonly tag = "mw-notebook-whole";
  static override styles = [sheet];
  static override properties = { message: { state: true } };

  #tell(type: string, detail: unknown): void {
    this.dispatchEvent(new CustomEvent(`mw-notebook-${type}`, { detail, bubbles: true, composed: true }));
  }

  #range(): TemplateResult {
    const target = this.build?.target;
    // Both ends are read where they stand: while one is typed anew, the two may be no range for a moment.
    const take = (): void => {
      const [from, to] = (["from", "to"] as const).map((name) =>
        this.renderRoot.querySelector<HTMLInputElement>(`input[name="${name}"]`)!,
      ) as [HTMLInputElement, HTMLInputElement];
      const [low, high] = [from, to].map(({ value }) => withPoint(value)) as [string, string];
      if (low === String(target?.from ?? "") && high === String(target?.to ?? "")) return this.blame("range");
      if (!low && !high) return void this.ask("range", { target: null }, "The range, not known");
      const unclear = thousandsFault(from.value) ?? thousandsFault(to.value);
      if (unclear) return this.blame("range", `${unclear} ${kept}`);
      // Who has typed the first end of a new range is about to type the other.
      if (!target && (!low || !high)) return this.blame("range");
      if (!low || !high || Number(low) > Number(high)) {
        const found =
          low && high ? `From ${low} to ${high} is no range` : `Only its ${low ? "lower" : "upper"} end is given`;
        return this.blame("range", `${found}; expected both ends, the lower one first, or none. ${kept}`);
      }
      const asNumber = (text: string): string | number => (Number.isFinite(Number(text)) ? Number(text) : text);
      const next = { ...target, from: asNumber(low), to: asNumber(high) };
      if (this.ask("range", { target: next }, `Range ${low} to ${high}`)) [from.value, to.value] = [low, high];
    };
    const kept = target
      ? `Until then it stays ${String(target.from)} to ${String(target.to)}.`
      : "Until then there is none.";
    const end = (name: "from" | "to", label: string) => {
      const text = String(target?.[name] ?? "");
      const pressed = (event: KeyboardEvent): void => {
        if (event.key === "Escape") (event.target as HTMLInputElement).value = text;
        if (event.key !== "Enter" && event.key !== "Escape") return;
        take();
        event.preventDefault();
      };
      return html`<input
        class="short blank"
        name=${name}
        data-address=${`target.${name}`}
        autocomplete="off"
        inputmode="decimal"
        aria-label=${label}
        aria-invalid=${this.faults.range ? "true" : nothing}
        placeholder="–"
        data-was=${text}
        .value=${text}
        @change=${take}
        @keydown=${pressed}
      />`;
    };
    return html`<h3>The range that you want</h3>
      <p>
        From ${end("from", "Fewest motor turns for one wheel turn")} to
        ${end("to", "Most motor turns for one wheel turn")} motor turns for one wheel
        turn${
          target && this.build!.outputs.length > 1
            ? html`, for
              ${this.choice("target.output", "For which axle", [["", "every axle"], ...this.build!.outputs.map(({ id, label }) => [id, label ?? id] as const)])}`
            : nothing
        }.
        ${target ? nothing : html`<span class="quiet">Not known is an answer, too: then nothing is told to be outside.</span>`}
      </p>
      ${this.fault("range")}`;
  }

  /** What is wrong or odd, the gravest first: what is out of range, then what does not fit, then what is not certain. */
  #steps(build: Build): readonly Step[] {
    const { outputs } = evaluationOf(build);
    const reading = readUnfinished(build);
    const out = outputs.flatMap(({ id, label, standing }) => {
      if (!standing || standing === "inside") return [];
      const pair = (build.mounts?.[0]?.stage ?? build.stages.find(isMounted)?.id) || id;
      const total = this.figure({ figure: "reduction", of: id });
      return [
        {
          finding: `${label}: ${total} motor turns for one wheel turn, ${this.figure({ figure: "standing", of: id })}.`,
          choose: pair,
          say: "Find gears that fit",
        },
      ];
    });
    const measured = measurementsOf(evaluationOf(build)).flatMap(({ measurement, agreement }) => {
      if (agreement?.verdict !== "disagrees") return [];
      const output = outputs.find(({ id }) => id === measurement.what);
      const { wheelTurns: turns, motorTurns } = measurement;
      const wheel = typeof turns === "object" ? `${String(turns.from)} to ${String(turns.to)}` : String(turns);
      const stage = output?.steps[0]?.stage;
      return [
        {
          finding: `${output?.label ?? measurement.what}: turned by hand, ${String(motorTurns)} motor turns made ${wheel} of the wheel, which is not what these counts come to. Turn it more often, count the teeth again, and look for a stage that is missing here.`,
          choose: stage?.id ?? "",
          say: stage ? `Count ${stage.label ?? stage.id} again` : "",
        },
      ];
    });
    const centres = centresRead(this.session.notebook).flatMap(({ stage, label, note, verdict, why }) =>
      verdict === "disagrees"
        ? [
            {
              finding: `${label}: ${note.text} was read between the axes; ${why}. Read it again, count the teeth, and look at the pitch.`,
              choose: stage,
              say: `Look at ${label}`,
            },
          ]
        : [],
    );
    const told = [...reading.findings, ...driveFindings(evaluationOf(build))].map((finding: Finding) => {
      const thing = thingAt(build, finding.at);
      const [, choose, say] = about.find(([begins]) => finding.at.startsWith(begins)) ?? [];
      return {
        finding: thing ? `${thing.label}: ${finding.message}` : finding.message,
        choose: thing?.id ?? choose ?? "",
        say: say ?? (thing ? `Look at ${thing.label}` : ""),
      };
    });
    const inexact = outputs
      .flatMap(({ steps }) => steps.filter(({ reduction }) => !reduction.bounds.isExact).map(({ stage }) => stage))
      .filter((stage, n, all) => all.indexOf(stage) === n)
      .map((stage) => ({
        finding: `${stage.label ?? stage.id} is known as a range, and so are the totals. Count its teeth, or turn it more often, to settle it.`,
        choose: stage.id,
        say: `Look at ${stage.label ?? stage.id}`,
      }));
    return [...out, ...measured, ...centres, ...told, ...inexact];
  }

  #findings(build: Build): TemplateResult {
    const steps = this.#steps(build);
    return html`<h3>What to look at</h3>
      ${
        steps.length
          ? html`<ol>
              ${steps.map(({ finding, choose, say }) => html`<li>${finding} ${choose ? html`<button type="button" @click=${() => this.#tell("choose", choose)}>${say}</button>` : nothing}</li>`)}
            </ol>`
          : html`<p class="quiet">Nothing that the notebook knows of.</p>`
      }`;
  }

  /** Other ways to build it, kept by name and compared. */
  #ways({ alternatives = [] }: Build): TemplateResult {
    const keep = (event: Event): void => {
      event.preventDefault();
      const input = (event.target as HTMLFormElement).elements.namedItem("way") as HTMLInputElement;
      const name = input.value.trim();
      if (!name) return this.blame("way", "What is this way called?");
      const [refusal] = keepWay(this.session, name);
      this.blame("way", refusal?.message);
      if (!refusal) input.value = "";
    };
    const does = (findings: readonly Finding[]): void => this.blame("way", findings[0]?.message);
    return html`<h3>Other ways to build it</h3>
      ${
        alternatives.length
          ? html`<mw-change-table></mw-change-table>
              <ul>
                ${alternatives.map((way) => {
                  const name = way.label ?? way.id;
                  return html`<li>
                    ${name}
                    <button
                      type="button"
                      aria-label=${`Change to it: ${name}`}
                      @click=${() => does(changeToWay(this.session, way))}
                    >
                      Change to it
                    </button>
                    <button
                      type="button"
                      aria-label=${`Forget it: ${name}`}
                      @click=${() => does(forgetWay(this.session, way))}
                    >
                      Forget it
                    </button>
                  </li>`;
                })}
              </ul>`
          : nothing
      }
      <form @submit=${keep}>
        <p>
          Keep its counts as they stand under a name, to go on with others:
          <input
            class="short"
            name="way"
            aria-label="Name of this way to build it"
            placeholder="deeper"
            autocomplete="off"
          />
          <button type="submit">Keep this way</button>
        </p>
      </form>
      ${this.fault("way")}`;
  }

  #versions(): TemplateResult {
    const { versions = [], days = [] } = this.session.notebook;
    const keep = (event: Event): void => {
      event.preventDefault();
      const input = (event.target as HTMLFormElement).elements.namedItem("note") as HTMLInputElement;
      keepVersion(this.session, input.value.trim());
      input.value = "";
    };
    return html`<h3>Versions</h3>
      ${
        versions.length
          ? html`<ul>
              ${versions.map(
                ({ date, note, build }, n) =>
                  html`<li>
                    ${dayText(date)}${note ? `, ${note}` : ""}: ${totalsText(build)}
                    <button
                      type="button"
                      aria-label=${`Back to it: the version of ${dayText(date)}${note ? `, ${note}` : ""}`}
                      @click=${() => backToVersion(this.session, n)}
                    >
                      Back to it
                    </button>
                  </li>`,
              )}
            </ul>`
          : nothing
      }
      ${
        days.length
          ? html`<p>How it stood when the day’s work was done:</p>
              <ul>
                ${days.map(
                  ({ date, build }, n) =>
                    html`<li>
                      ${dayText(date)}: ${totalsText(build)}
                      <button
                        type="button"
                        aria-label=${`Put it back: as it stood on ${dayText(date)}`}
                        @click=${() => backToDay(this.session, n)}
                      >
                        Put it back
                      </button>
                    </li>`,
                )}
              </ul>`
          : nothing
      }
      <form @submit=${keep}>
        <p>
          Keep it as it stands today:
          <input
            class="wide"
            name="note"
            aria-label="What changed"
            placeholder="what changed, in a few words"
            autocomplete="off"
          />
          <button type="submit">Keep</button>
        </p>
      </form>`;
  }

  protected override render(): TemplateResult | typeof nothing {
    const { build } = this;
    if (!build) return nothing;
    return html`<h2 tabindex="-1">The whole drivetrain</h2>
      <mw-ratio-summary></mw-ratio-summary>
      ${this.#range()} ${this.#findings(build)}
      ${
        build.compare
          ? html`<h3>Front against rear</h3>
              <mw-overdrive-gauge></mw-overdrive-gauge>`
          : nothing
      }
      ${this.#ways(build)} ${this.#versions()}
      ${this.fold("The working, line by line", () => html`<mw-working></mw-working>`)}`;
  }
}
