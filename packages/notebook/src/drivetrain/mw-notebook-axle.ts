import { html, nothing, type TemplateResult } from "lit";
import type { Output, Wheel } from "@meshwright/calc/drivetrain";
import { actsOnce, NotebookPanel, sheet } from "../frame/index.js";
import { swapFor, takeOff, lengthFault } from "../model/index.js";

/** In which of the three ways a wheel is known. */
const ways = {
  diameter: "its diameter, free",
  loadedDiameter: "twice the axle’s height under the vehicle’s weight",
  travel: "the ground that it rolls in so many turns",
} as const;
type Way = keyof typeof ways;

const lengthOf = (typed: string): string => (/^\d+([.,]\d+)?$/.test(typed) ? `${typed.replace(",", ".")} mm` : typed);

/**
 * One axle: its tyre, its two wheels, its speed, and taking it off.
 *
 * @attr of - the axle
 */
export class MwNotebookAxle extends NotebookPanel {
  static readonly tag = "mw-notebook-axle";
  static override styles = [sheet];
  static override properties = { of: {}, way: { state: true } };

  declare of: string;
  declare private way: Way | undefined;
  #turns = "10";

  protected override willUpdate(changed: Map<PropertyKey, unknown>): void {
    super.willUpdate(changed);
    if (changed.has("of")) this.way = undefined;
  }

  #set(wheel: Wheel | null, text: string, { label, id }: Output): void {
    this.ask("wheel", { [`${id}.wheel`]: wheel }, `${label ?? id}, tyre ${text || "not known"}`);
  }

  #tyre(output: Output): TemplateResult {
    const { wheel } = output;
    const way = wheel?.travel
      ? "travel"
      : wheel?.loadedDiameter
        ? "loadedDiameter"
        : wheel?.diameter
          ? "diameter"
          : (this.way ?? "diameter");
    const shown = this.way ?? way;
    const value = shown === "travel" ? wheel?.travel?.length : wheel?.[shown];
    const take = (event: Event): void => {
      const typed = (event.target as HTMLInputElement).value.trim();
      const unclear = lengthFault(typed);
      if (unclear) return this.blame("wheel", unclear);
      const text = lengthOf(typed);
      const known = shown === "travel" ? { travel: { turns: this.#turns, length: text } } : { [shown]: text };
      this.#set(text ? (known as Wheel) : null, text, output);
    };
    return html`<p>
        Of the tyre is known
        <select
          aria-label="What is known of the tyre"
          @change=${(event: Event) => {
            this.way = (event.target as HTMLSelectElement).value as Way;
          }}
        >
          ${Object.entries(ways).map(([one, text]) => html`<option value=${one} ?selected=${one === shown}>${text}</option>`)}</select
        >: <input class="short" aria-label="Tyre" placeholder="mm" .value=${value ?? ""} @change=${take} />${
          shown === "travel"
            ? html` in
                <input
                  class="count"
                  aria-label="Turns of the wheel"
                  .value=${String(wheel?.travel?.turns ?? this.#turns)}
                  @change=${(event: Event) => {
                    this.#turns = (event.target as HTMLInputElement).value.trim() || "10";
                    if (wheel?.travel)
                      this.#set({ travel: { ...wheel.travel, turns: this.#turns } }, wheel.travel.length, output);
                  }}
                />
                turns`
            : nothing
        }.
      </p>
      ${this.fault("wheel")}`;
  }

  protected override render(): TemplateResult | typeof nothing {
    const { build, of } = this;
    const output = build?.outputs.find(({ id }) => id === of);
    if (!build || !output) return nothing;
    const { label = of } = output;
    const { assemblies = [] } = this.session.notebook;
    const travel = this.figure({ figure: "travel", of });
    return html`<h2 tabindex="-1">${label}</h2>
      <p>
        Called ${this.field(`${of}.label`, { label: "Name of the axle", takes: "text", size: "short" })}, with
        ${this.field(`${of}.wheels`, { label: "Wheels", takes: "count" })} wheels and
        ${this.choice(`${of}.axle`, "Between its wheels", [
          ["", "nothing said"],
          ["differential", "an open differential"],
          ["spool", "a spool"],
        ])}
        between them.
      </p>
      ${this.#tyre(output)} ${travel ? html`<p>One motor turn rolls it <b>${travel}</b>.</p>` : nothing}
      <mw-wheel-speed of=${of}></mw-wheel-speed>
      ${build.compare ? html`<mw-overdrive-gauge></mw-overdrive-gauge>` : nothing}
      <p>
        ${
          assemblies.length
            ? html`Put on instead
                <select aria-label="An assembly from the shelf" ${actsOnce(this.#swap)}>
                  <option value="">from the shelf …</option>
                  ${assemblies.map(({ name, date }) => html`<option value=${name}>${name}, off since ${date}</option>`)}
                </select>`
            : nothing
        }
        ${build.outputs.length > 1 ? html`<button type="button" @click=${this.#off}>Take this axle off</button>` : nothing}
      </p>
      ${this.fault("off")}`;
  }

  readonly #swap = (value: string): void => {
    this.blame("off", swapFor(this.session, this.of, value)[0]?.message);
  };

  /** What is taken off lies on the shelf, whole. */
  readonly #off = (): void => {
    const [refusal] = takeOff(this.session, this.of);
    this.blame("off", refusal?.message);
    if (!refusal)
      this.dispatchEvent(new CustomEvent("mw-notebook-choose", { detail: "", bubbles: true, composed: true }));
  };
}
