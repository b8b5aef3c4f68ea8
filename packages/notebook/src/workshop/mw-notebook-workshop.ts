import { css, html, nothing, type TemplateResult } from "lit";
import { measurementsOf, type Checked } from "@meshwright/calc/counted";
import { stagesOf } from "@meshwright/calc/drivetrain";
import { rational } from "@meshwright/calc/exact";
import { drives, evaluationOf, NotebookPage, sheet } from "../frame/index.js";
import {
  centresRead,
  dayText,
  linkForBench,
  linkWithMeasured,
  measure,
  noteCentre,
  thousandsFault,
  typedLength,
  type Notebook,
  type Run,
} from "../model/index.js";
import { codeOf, reachOf } from "./code.js";

const turnsText = (turns: Checked["measurement"]["wheelTurns"]): string =>
  typeof turns === "object" ? `${String(turns.from)} to ${String(turns.to)}` : String(turns);

const isNumber = (text: string): boolean => /^\d+(\.\d+)?$/.test(text) && Number(text) > 0;

/** As long as this after an edit the code on the card is made anew. */
const rest = 600;
/** As long as this where the card is out of sight: somebody may print it all the same. */
const longRest = 5000;

/** The card for the bench, what was read off it, and the log of runs. */
export class MwNotebookWorkshop extends NotebookPage {
  static readonly tag = "mw-notebook-workshop";
  static override styles = [
    sheet,
    css`
      form {
        margin: 0.2em 0 0.8em;
      }
      .phone {
        display: flex;
        flex-wrap: wrap;
        gap: 0.6em 1.2em;
        align-items: center;
        margin: 0.8em 0;
      }
      .phone p {
        flex: 1 1 14em;
        margin: 0;
      }
      .code {
        width: 60mm;
        height: 60mm;
        flex: none;
      }
    `,
  ];

  static override properties = { code: { state: true }, said: { state: true } };

  /** The code on the card, drawn for one state of the drivetrain; none where it would be too fine. */
  declare private code: { readonly of: unknown; readonly drawn: TemplateResult | undefined } | undefined;
  declare private said: string | undefined;
  #waiting: ReturnType<typeof setTimeout> | undefined;

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    clearTimeout(this.#waiting);
  }

  protected override updated(): void {
    this.seen();
  }

  /** A code takes longer to make than everything else on the page: it waits until the hands rest, and until it can be seen. */
  protected override seen(): void {
    const { build, notebook } = this.session;
    clearTimeout(this.#waiting);
    if (!build || this.code?.of === build) return;
    this.#waiting = setTimeout(() => void this.#makeCode(notebook), this.isSeen ? rest : longRest);
  }

  async #makeCode(notebook: Notebook): Promise<void> {
    const of = notebook.build;
    const link = await linkForBench(notebook);
    if (of !== this.build) return;
    const isFar = reachOf(location.href) !== "disk";
    this.code = { of, drawn: isFar ? codeOf(`${location.href.split(/[?#]/)[0]}#build-${link}`) : undefined };
  }

  /** The code for a phone in the garage, and how what is measured there comes back. */
  #phone(): TemplateResult {
    const reach = reachOf(location.href);
    // A code of other counts is none.
    const made = this.code?.of === this.build ? this.code : undefined;
    const { drawn } = made ?? {};
    const words =
      reach === "disk" || (made && !drawn)
        ? "Too much for a code; save the file."
        : `The code opens these counts and mounts in the notebook on a phone. What is measured there comes back by a link or a file.${reach === "here" ? " This page is served to this computer alone: a phone reaches it once it lies on a site." : ""}`;
    const send = async (): Promise<void> => {
      const link = await linkWithMeasured(this.session.notebook);
      const address = `${location.href.split(/[?#]/)[0]}#build-${link}`;
      try {
        await navigator.clipboard.writeText(address);
        this.said = "Copied. Send it to yourself, and open it where the notebook lies.";
      } catch {
        this.said = address;
      }
    };
    const hasMeasured = this.build?.measurements?.length || this.session.notebook.bench?.length;
    return html`<div class="phone">
      ${drawn ?? nothing}
      <p>
        <span class="quiet">${words}</span>
        ${hasMeasured && reach !== "disk" ? html`<button type="button" @click=${() => void send()}>Copy a link with what was measured</button>` : nothing}
        <span class="quiet" role="status">${this.said ?? ""}</span>
      </p>
    </div>`;
  }

  #verdict({ agreement }: Checked): TemplateResult {
    if (!agreement) return html`<span class="quiet">cannot tell: it was made with other counts</span>`;
    const { verdict, by } = agreement;
    if (verdict !== "disagrees" || !by) return html`${verdict}`;
    const percent = by.times(rational(100));
    const text = percent.toDecimal({ maximumFractionDigits: 2, minimumFractionDigits: 2 }).replace("-", "");
    return html`<b class="fault">disagrees by at least ${text} %</b>`;
  }

  #measured(): TemplateResult | typeof nothing {
    const { build } = this;
    if (!build) return nothing;
    const checked = measurementsOf(evaluationOf(build));
    if (!checked.length) return nothing;
    const remove = (index: number): void => {
      const measurements = build.measurements!.filter((_, n) => n !== index);
      this.ask("measured", { measurements: measurements.length ? measurements : null }, "A measurement taken away");
    };
    return html`<div class="scroll">
        <table>
          <caption class="heard">
            What was measured
          </caption>
          <thead>
            <tr>
              <th scope="col">Axle</th>
              <th scope="col">Day</th>
              <th scope="col" class="number">Motor turns</th>
              <th scope="col" class="number">Wheel turns</th>
              <th scope="col">Against the drivetrain</th>
              <th scope="col"><span class="heard">Take it away</span></th>
            </tr>
          </thead>
          <tbody>
            ${checked.map(
              (one, n) =>
                html`<tr>
                  <th scope="row">
                    ${build.outputs.find(({ id }) => id === one.measurement.what)?.label ?? one.measurement.what}
                  </th>
                  <td>${one.measurement.date ? dayText(one.measurement.date) : ""}</td>
                  <td class="number">${String(one.measurement.motorTurns)}</td>
                  <td class="number">
                    ${turnsText(one.measurement.wheelTurns)}${one.measurement.oneWheelHeld ? ", one held" : ""}
                  </td>
                  <td>${this.#verdict(one)}</td>
                  <td>
                    <button type="button" aria-label="Take this measurement away" @click=${() => remove(n)}>×</button>
                  </td>
                </tr>`,
            )}
          </tbody>
        </table>
      </div>
      ${this.fault("measured")}`;
  }

  #turned(): TemplateResult | typeof nothing {
    const { build } = this;
    if (!build) return nothing;
    const take = (event: Event): void => {
      event.preventDefault();
      const form = event.target as HTMLFormElement;
      const value = (name: string) =>
        (form.elements.namedItem(name) as HTMLInputElement).value.trim().replace(",", ".");
      const [motorTurns, from, to] = [value("motor"), value("from"), value("to") || value("from")];
      const unclear = ["motor", "from", "to"]
        .map((name) => thousandsFault((form.elements.namedItem(name) as HTMLInputElement).value))
        .find(Boolean);
      if (unclear) return void this.blame("turned", unclear);
      if (![motorTurns, from, to].every(isNumber))
        return void this.blame("turned", "Numbers above 0, such as 40 and 0.90.");
      const oneWheelHeld = (form.elements.namedItem("held") as HTMLInputElement).checked;
      const wheelTurns = from === to ? from : { from, to };
      const [refusal] = measure(this.session, {
        what: value("what"),
        motorTurns,
        wheelTurns,
        ...(oneWheelHeld && { oneWheelHeld }),
      });
      this.blame("turned", refusal?.message);
      if (!refusal) form.reset();
    };
    return html`<form @submit=${take}>
        <p>
          Turned by hand, slack taken up:
          <select name="what" aria-label="Which axle">
            ${build.outputs.map(({ id, label }) => html`<option value=${id}>${label ?? id}</option>`)}
          </select>
          for <input class="count" name="motor" inputmode="decimal" aria-label="Motor turns" placeholder="40" /> motor
          turns between <input class="count" name="from" inputmode="decimal" aria-label="Wheel turns, at least" /> and
          <input class="count" name="to" inputmode="decimal" aria-label="Wheel turns, at most" /> wheel turns,
          <label><input type="checkbox" name="held" /> one wheel held</label>
          <button type="submit">Note the turns</button>
        </p>
      </form>
      ${this.fault("turned")}`;
  }

  /** A box that nobody knows, counted on the bench: one press makes it a stage. */
  #box(): TemplateResult {
    return this.fold(
      "A box that nobody knows: turn it, and put it into the drivetrain",
      () => html`<mw-turn-count></mw-turn-count>`,
    );
  }

  /** Centre distances as they were set, read off the card, and what each says of the drivetrain. */
  #set(): TemplateResult | typeof nothing {
    const { build, notebook } = this.session;
    const mounts = build?.mounts ?? [];
    if (!build || !mounts.length) return nothing;
    const read = centresRead(notebook);
    return html`${mounts.map(({ stage }) => {
      const name = stagesOf(build).find((one) => one.stage.id === stage)?.stage.label ?? stage;
      const last = read.find((one) => one.stage === stage);
      const place = `centre.${stage}`;
      const take = (event: Event): void => {
        const input = event.target as HTMLInputElement;
        const was = last?.note.text ?? "";
        const typed = input.value.trim();
        const refusal = typed && typed !== was ? noteCentre(this.session, stage, typed) : undefined;
        this.blame(place, refusal);
        input.value = (refusal ? undefined : typedLength(typed)) ?? was;
      };
      return html`<p>
          ${name}: centre distance as it was set
          <input
            class="short"
            aria-label=${`${name}: centre distance as it was set`}
            aria-invalid=${this.faults[place] ? "true" : nothing}
            placeholder="mm"
            .value=${last?.note.text ?? ""}
            @change=${take}
          />
          <span class="quiet"
            >${last ? html`${dayText(last.note.date)}, with ${Object.values(last.note.with).map((count, n) => (n ? html`${drives}${count}` : count))}; ` : nothing}worked
            out, without an opening: ${this.figure({ figure: "centre", of: stage }) ?? "not known"}.</span
          >
          ${last ? html`<span class=${last.verdict === "disagrees" ? "fault" : "quiet"}>${last.verdict}: ${last.why}.</span>` : nothing}
        </p>
        ${this.fault(place)}`;
    })}`;
  }

  #runs(): TemplateResult {
    const { runs = [] } = this.session.notebook;
    const take = (event: Event): void => {
      event.preventDefault();
      const form = event.target as HTMLFormElement;
      const fields = ["motor", "ambient", "minutes", "charge", "note"] as const;
      const said = fields.flatMap((name) => {
        const text = (form.elements.namedItem(name) as HTMLInputElement).value.trim();
        return text ? [[name, text] as const] : [];
      });
      if (!said.length) return;
      const run = { date: this.session.today, ...Object.fromEntries(said) } as Run;
      this.session.put({ runs: [...runs, run] }, `Run of ${dayText(run.date)}`);
      form.reset();
    };
    return html`<h3>Runs</h3>
      ${
        runs.length
          ? html`<div class="scroll">
              <table>
                <thead>
                  <tr>
                    ${["Day", "Motor", "Air", "Minutes", "Charge used", "Note"].map((head) => html`<th scope="col">${head}</th>`)}
                  </tr>
                </thead>
                <tbody>
                  ${runs.map(
                    ({ date, motor, ambient, minutes, charge, note }) =>
                      html`<tr>
                        <th scope="row">${dayText(date)}</th>
                        ${[motor, ambient, minutes, charge, note].map((text) => html`<td>${text ?? ""}</td>`)}
                      </tr>`,
                  )}
                </tbody>
              </table>
            </div>`
          : nothing
      }
      <form @submit=${take}>
        <p>
          After a run: motor
          <input class="count" name="motor" aria-label="Temperature of the motor" placeholder="°C" /> at
          <input class="count" name="ambient" aria-label="Temperature of the air" placeholder="°C" /> outside, after
          <input class="count" name="minutes" aria-label="Minutes" placeholder="min" /> minutes,
          <input class="short" name="charge" aria-label="Charge used" placeholder="mAh" /> used;
          <input class="short" name="note" aria-label="Note on the run" placeholder="note" />
          <button type="submit">Note the run</button>
        </p>
      </form>
      <p class="quiet">A run is compared with your own, never promised: no temperature is worked out here.</p>`;
  }

  protected override render(): TemplateResult {
    if (!this.build) return html`<p class="quiet">The card comes with the drivetrain.</p>`;
    const print = async (): Promise<void> => {
      // The card bears the code of what it says.
      if (this.code?.of !== this.build) await this.#makeCode(this.session.notebook);
      await this.updateComplete;
      window.print();
    };
    return html`<mw-bench-card></mw-bench-card>
      ${this.#phone()}
      <p class="choices"><button type="button" @click=${() => void print()}>Print the card</button></p>
      <h3>What was measured</h3>
      ${this.#measured()} ${this.#turned()} ${this.#box()} ${this.#set()} ${this.#runs()}`;
  }
}
