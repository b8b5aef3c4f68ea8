import { html, nothing, type TemplateResult } from "lit";
import { changesOf, stagesOf, type ChangeSet, type Part } from "@meshwright/calc/drivetrain";
import { displays, stageShapes, type Stage } from "@meshwright/calc/stages";
import { rational, type Rational } from "@meshwright/calc/exact";
import { drives, evaluationOf, NotebookPanel, sheet } from "../frame/index.js";
import { isMounted, thousandsFault, withPoint } from "../model/index.js";

/** What every kind is called here, and how well it is known: where it is known between two ends only, and exactly. */
const known: Record<Stage["kind"], readonly [name: string, how: string, exactly?: string]> = {
  pair: ["two gears", "Counted."],
  train: ["a row of gears", "Counted."],
  belt: ["a belt or chain", "Counted."],
  worm: ["a worm", "Counted."],
  planetary: ["a planetary set", "Counted."],
  cycloidal: ["a cycloidal set", "Counted."],
  published: ["a box with a number", "As printed: a range, until somebody counts.", "As printed: exact."],
  measured: ["an unknown box", "Turned by hand: a range.", "Turned by hand until both marks met: exact."],
  selectable: ["a box with a lever", "By its positions."],
};

/** Fields that a sentence of their own asks for, or that a name stands for. */
const elsewhere = new Set(["module", "diametralPitch", "pressureAngle", "positions", "sameAs", "spans"]);
const plain = (name: string): string => name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

/**
 * One stage: what is known of it and how, its pitch and mount, what fits and why not, gears that fit, and what is fitted.
 *
 * @attr of - the stage
 * @fires mw-notebook-replace - the stage is to be another thing
 * @fires mw-notebook-count - an address, what it was, and what it is now
 */
export class MwNotebookStage extends NotebookPanel {
  static readonly tag = "mw-notebook-stage";
  static override styles = [sheet];
  static override properties = { of: {} };

  declare of: string;

  #tell(type: string, detail?: unknown): void {
    this.dispatchEvent(new CustomEvent(`mw-notebook-${type}`, { detail, bubbles: true, composed: true }));
  }

  #counts(stage: Stage): readonly (TemplateResult | string | typeof nothing)[] {
    return displays[stage.kind](stage).map((piece) => {
      if (!("field" in piece) || piece.field === undefined) {
        const { word } = piece as { word?: string };
        return word === "drives" ? drives : word ? `${word} ` : nothing;
      }
      const address = `${stage.id}.${piece.field}`;
      const isCount = typeof piece.value === "number";
      return this.field(address, {
        label: `${stage.label ?? stage.id}: ${plain(piece.field)}`,
        takes: isCount ? "count" : "text",
        size: isCount ? "count" : "short",
        change: (value) => changesOf(stage, { [piece.field!]: value }),
        done: (before, after) => this.#tell("count", { address, before, after }),
      });
    });
  }

  #pitch(stage: Stage): TemplateResult | typeof nothing {
    const { id, kind } = stage;
    if (!("module" in (stageShapes[kind] as object))) return nothing;
    // Gears are marked with the one or the other: whoever says the one takes the other back.
    const pitch = (field: "module" | "diametralPitch", label: string): TemplateResult => {
      const other = field === "module" ? "diametralPitch" : "module";
      const change = (value: unknown): ChangeSet => ({
        [`${id}.${field}`]: value,
        ...(value !== null && other in stage && { [`${id}.${other}`]: null }),
      });
      return this.field(`${id}.${field}`, { label, takes: "number", change });
    };
    return html`<p>
      Module ${pitch("module", "Module")} or ${pitch("diametralPitch", "Diametral pitch")} DP, pressure angle
      ${this.field(`${id}.pressureAngle`, { label: "Pressure angle, degrees", takes: "number" })} degrees.
    </p>`;
  }

  /** Whatever else this kind can say. */
  #more(stage: Stage): TemplateResult {
    const shown = new Set(
      displays[stage.kind](stage).flatMap((piece) => ("field" in piece ? [piece.field!.split(".")[0]] : [])),
    );
    const fields = Object.entries(stageShapes[stage.kind] as Record<string, string>).filter(
      ([name]) => !elsewhere.has(name) && !shown.has(name),
    );
    const options = (shape: string): readonly (readonly [string, string])[] => [
      ["", "not said"],
      ...shape
        .replace("!", "")
        .split("|")
        .map((one) => [one, one] as const),
    ];
    const yes = (name: string) =>
      this.choice(
        `${stage.id}.${name}`,
        plain(name),
        [
          ["", "not said"],
          ["true", "yes"],
          ["false", "no"],
        ],
        (value) => ({
          [`${stage.id}.${name}`]: value === null ? null : value === "true",
        }),
      );
    const content = (): TemplateResult => html`
      <p>Called ${this.field(`${stage.id}.label`, { label: "Name of this stage", takes: "text" })}</p>
      <p>
        In the group
        ${this.field(`${stage.id}.group`, { label: "Group", takes: "text", size: "short", placeholder: "none" })},
        turned round: ${yes("reverses")}
      </p>
      ${fields.map(([name, shape]) => {
        const address = `${stage.id}.${name}`;
        if (shape === "flag") return html`<p>${plain(name)}: ${yes(name)}</p>`;
        if (shape.includes("|"))
          return html`<p>${plain(name)}: ${this.choice(address, plain(name), options(shape))}</p>`;
        if (shape.startsWith("[") || shape === "span") return nothing;
        const takes = shape.startsWith("count") ? "count" : /number|positive/.test(shape) ? "number" : "text";
        return html`<p>${plain(name)}: ${this.field(address, { label: plain(name), takes, size: "short" })}</p>`;
      })}
    `;
    return this.fold("Everything else that can be said of it", content);
  }

  #fitted(stage: Stage): TemplateResult {
    const parts = (this.build?.parts ?? []).filter(
      (part) => part.stage === stage.id || stage.fitted?.includes(part.id),
    );
    const counts = new Set(
      displays[stage.kind](stage).flatMap((piece) => ("field" in piece ? [String(piece.value)] : [])),
    );
    const isOf = (part: Part): boolean =>
      stage.fitted?.includes(part.id) ||
      (part.teeth !== undefined && counts.has(String(part.teeth))) ||
      part.status === "fitted";
    const shown = parts.filter(isOf);
    return html`<p class="quiet">
      ${
        shown.length
          ? html`Fitted:
            ${shown.map(({ name, id, owned, status }, n) => `${n ? "; " : ""}${name ?? id}${owned || status === "owned" || status === "fitted" ? ", owned" : ""}`)}.`
          : "No part of your list is said to be fitted here."
      }
    </p>`;
  }

  protected override render(): TemplateResult | typeof nothing {
    const { build, of } = this;
    const place = build && stagesOf(build).find(({ stage }) => stage.id === of);
    if (!place) return nothing;
    const { stage, list, index } = place;
    const [name, how, exactly] = known[stage.kind];
    const step = evaluationOf(build)
      .outputs.flatMap(({ steps }) => steps)
      .find((one) => one.stage.id === of);
    const isPair = isMounted(stage);
    const target = build.target;
    return html`<h2 tabindex="-1">${stage.label ?? stage.id}</h2>
      <p>
        ${`${name[0]!.toUpperCase()}${name.slice(1)}`}: ${this.#counts(stage)}
        <span class="quiet">${exactly && step?.reduction.bounds.isExact ? exactly : how}</span>
      </p>
      ${this.#pitch(stage)}
      <p class="choices">
        <button type="button" @click=${() => this.#tell("replace", stage.id)}>It is something else …</button>
        <button
          type="button"
          ?disabled=${index === 0}
          @click=${() => this.ask("move", [{ move: stage.id, at: index - 1 }])}
        >
          Earlier in the line
        </button>
        <button
          type="button"
          ?disabled=${index === list.length - 1}
          @click=${() => this.ask("move", [{ move: stage.id, at: index + 1 }])}
        >
          Later in the line
        </button>
        <button type="button" @click=${() => this.#letIn(index + 1)}>Let something in after it</button>
        <button type="button" @click=${() => this.#remove(stage)}>Take it out</button>
      </p>
      ${this.fault("move")} ${this.#fitted(stage)}
      ${
        isPair
          ? html`<mw-notebook-mount .session=${this.session} .of=${of}></mw-notebook-mount>
              ${(stage.module ?? stage.diametralPitch) ? html`<mw-train-drawing of=${of}></mw-train-drawing>` : nothing}
              <h3>Gears that fit</h3>
              ${
                target
                  ? html`<mw-pair-finder of=${of}></mw-pair-finder>`
                  : html`<p>
                      Which totals do you want? From ${this.#range("from")} to ${this.#range("to")} motor turns for one
                      wheel turn, or
                      <button type="button" @click=${this.#near}>a fifth either way from what it is now</button>
                    </p>`
              }`
          : nothing
      }
      ${
        how.includes("range")
          ? this.fold(
              "Turn it by hand, and put what it comes to in its place",
              () => html`<mw-turn-count of=${of}></mw-turn-count>`,
            )
          : nothing
      }
      ${this.#more(stage)}`;
  }

  #want: { from?: string; to?: string } = {};

  /** Whoever has no range in mind looks around what there is. */
  readonly #near = (): void => {
    const bounds = evaluationOf(this.build!).outputs.flatMap(({ bounds: one }) => one ?? []);
    const ends = [...bounds].sort((one, other) => one.low.compare(other.low));
    const top = [...bounds].sort((one, other) => one.high.compare(other.high)).at(-1);
    if (!ends[0] || !top) return;
    const text = (value: Rational, roundingMode: "floor" | "ceil"): string =>
      value.toDecimal({ maximumFractionDigits: 1, minimumFractionDigits: 0, roundingMode });
    const [from, to] = [
      text(ends[0].low.times(rational("4/5")), "floor"),
      text(top.high.times(rational("6/5")), "ceil"),
    ];
    this.ask("range", { target: { from, to } }, `Range ${from} to ${to}`);
  };

  #range(end: "from" | "to"): TemplateResult {
    const take = (event: Event): void => {
      const { value } = event.target as HTMLInputElement;
      this.blame("range", thousandsFault(value));
      if (thousandsFault(value)) return;
      this.#want[end] = withPoint(value);
      const { from, to } = this.#want;
      if (from && to) this.ask("range", { target: { from, to } }, `Range ${from} to ${to}`);
    };
    return html`<input
        class="short"
        inputmode="decimal"
        aria-label=${end === "from" ? "Fewest motor turns" : "Most motor turns"}
        @change=${take}
      />${end === "to" ? this.fault("range") : nothing}`;
  }

  /** Which shaft the stage stands on. */
  #letIn(at: number): void {
    const { build, of } = this;
    const shaft = [...(build!.branches ?? []), ...build!.outputs].find(({ stages }) =>
      stages.some(({ id }) => id === of),
    );
    this.#tell("let-in", { into: shaft?.id, at });
  }

  #remove(stage: Stage): void {
    if (this.ask("move", [{ remove: stage.id }])) this.#tell("choose", "");
  }
}
