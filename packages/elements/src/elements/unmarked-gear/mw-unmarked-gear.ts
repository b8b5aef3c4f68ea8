import { html, nothing, type TemplateResult } from "lit/html.js";
import {
  sayUnmarked,
  unmarkedFields,
  usualWithin,
  type SaidPitch,
  type SaidUnmarked,
  type UnmarkedField,
} from "@meshwright/calc/article";
import { announce, block } from "../../shared/drawn/index.js";
import { properties, css } from "../../shared/element/index.js";
import { fill } from "../../shared/words/index.js";
import { choice, field, fields, tables, ToolElement } from "../../shared/tools/index.js";

type Typed = Readonly<Record<UnmarkedField, string>>;
type Chosen = "height" | "angle";

/**
 * A gear without a mark: its count, and what was measured of it: over the tips, over several teeth, or between the axes where
 * it comes from. Which pitches and angles it can be and cannot be, what these measurements never tell, and which one would settle
 * it. From there it goes to the shelf.
 *
 * @fires {CustomEvent<Part>} mw-part - the gear as a part of a build, in `detail`
 * @csspart root - all that it draws
 * @csspart result - what it can be
 * @csspart notes - what is not told, and what would settle it
 */
export class MwUnmarkedGear extends ToolElement {
  static override readonly tag = "mw-unmarked-gear";
  static override styles = [
    properties,
    block,
    tables,
    fields,
    css`
      ul {
        list-style: none;
        margin: 0.3em 0;
        padding: 0;
      }
      li {
        display: flex;
        flex-wrap: wrap;
        gap: 0.1em 1em;
        align-items: baseline;
      }
      summary {
        min-height: 24px;
        cursor: pointer;
        color: var(--_accent);
      }
      details {
        margin: 0.4em 0;
      }
      details li {
        color: var(--_second);
        font-size: 0.93em;
      }
    `,
  ];
  static override properties = {
    typed: { state: true },
    chosen: { state: true },
    ticked: { state: true },
    typing: { state: true },
    shelved: { state: true },
  };

  /** What stands in the fields, letter by letter. */
  declare private typed: Typed;
  declare private chosen: Readonly<Record<Chosen, string>>;
  declare private ticked: Readonly<Record<"jaws" | "internal", boolean>>;
  /** The field that is being typed in: it is not found fault with yet. */
  declare private typing: string;
  declare private shelved: string;

  constructor() {
    super();
    this.typed = Object.fromEntries(unmarkedFields.map((name) => [name, ""])) as Typed;
    this.chosen = { height: "", angle: "" };
    this.ticked = { jaws: false, internal: false };
    this.typing = "";
    this.shelved = "";
  }

  protected override render(): TemplateResult {
    const said = this.says((speaker) => sayUnmarked(speaker, { ...this.typed, ...this.chosen, ...this.ticked }));
    if (!said) return this.fallback(false);
    const words = this.shop.unmarked;
    const { teeth } = this.shop.turnCount;
    const one = (name: UnmarkedField, label: string, unit?: string) => this.#field(said, name, label, unit);
    const length = (name: UnmarkedField, label: string) => one(name, label, said.unit);
    const within = (name: UnmarkedField) => this.#field(said, name, words.within, said.unit, usualWithin(said.unit));
    return html`<div class="root" part="root">
        <div class="fields">
          ${one("teeth", words.teeth, teeth)}
          ${this.#choice("angle", words.angle, [
            ["", words.notKnown],
            ["14.5", "14.5°"],
            ["20", "20°"],
            ["25", "25°"],
          ])}
        </div>
        <fieldset class="fields">
          <legend>${words.tips}</legend>
          ${length("outside", words.outside)} ${within("within")} ${this.#tick("jaws", words.jaws)}
          ${this.#choice("height", words.height, [
            ["", words.notKnown],
            ["1", words.fullDepth],
            ["0.8", words.stub],
          ])}
          ${one("shiftFrom", words.shiftFrom)} ${one("shiftTo", words.shiftTo)}
        </fieldset>
        <fieldset class="fields">
          <legend>${words.spans}</legend>
          ${one("spanTeeth", words.spanTeeth, teeth)} ${length("span", words.span)}
          ${length("spanNext", words.spanNext)} ${within("spanWithin")}
        </fieldset>
        <fieldset class="fields">
          <legend>${words.donor}</legend>
          ${length("centre", words.centre)} ${within("centreWithin")} ${one("otherTeeth", words.otherTeeth, teeth)}
          ${this.#tick("internal", words.internal)}
        </fieldset>
        <div part="result">
          <p class="result" role="status">${said.outcome}</p>
          <ul>
            ${said.canBe.map((pitch) => this.#pitch(pitch))}
          </ul>
        </div>
        ${said.notes.length ? html`<div part="notes">${said.notes.map((note) => html`<p class="note">${note}</p>`)}</div>` : nothing}
        ${
          said.cannotBe.length
            ? html`<details>
                <summary>${words.cannotBe}</summary>
                <ul>
                  ${said.cannotBe.map((text) => html`<li>${text}</li>`)}
                </ul>
              </details>`
            : nothing
        }
      </div>
      ${this.fallback()}`;
  }

  #pitch(pitch: SaidPitch): TemplateResult {
    const { shelf, shelved } = this.shop.unmarked;
    const isThere = this.shelved === pitch.text;
    return html`<li>
      <span>${pitch.text}</span>
      <button type="button" aria-disabled=${isThere ? "true" : nothing} @click=${() => isThere || this.#shelve(pitch)}>
        ${fill(isThere ? shelved : shelf, pitch.part.id)}
      </button>
    </li>`;
  }

  #field(said: SaidUnmarked, name: UnmarkedField, label: string, unit?: string, usual = ""): TemplateResult {
    const fault = this.typing === name ? undefined : said.faults[name];
    const value = this.typed[name] || (this.typing === name ? "" : usual);
    return field({ name, label, unit, fault, value }, this.#typed);
  }

  #choice(name: Chosen, label: string, options: readonly (readonly [string, string])[]): TemplateResult {
    return choice({ name, label, value: this.chosen[name] }, options, this.#chosen);
  }

  #tick(name: "jaws" | "internal", label: string): TemplateResult {
    return html`<label class="tick"
      ><input type="checkbox" name=${name} .checked=${this.ticked[name]} @change=${this.#ticked} />${label}</label
    >`;
  }

  readonly #typed = (event: Event): void => {
    event.stopPropagation();
    const { name, value } = event.target as HTMLInputElement;
    this.typed = { ...this.typed, [name]: value };
    this.typing = event.type === "input" ? name : "";
    this.shelved = "";
  };

  readonly #chosen = (event: Event): void => {
    event.stopPropagation();
    const { name, value } = event.target as HTMLSelectElement;
    this.chosen = { ...this.chosen, [name]: value };
    this.shelved = "";
  };

  readonly #ticked = (event: Event): void => {
    event.stopPropagation();
    const { name, checked } = event.target as HTMLInputElement;
    this.ticked = { ...this.ticked, [name]: checked };
    this.shelved = "";
  };

  /** The shelf is the page's: whoever keeps one takes the part from the event. */
  #shelve({ text, part }: SaidPitch): void {
    this.tell("part", part);
    this.shelved = text;
    announce(this.renderRoot as ShadowRoot, () => fill(this.shop.unmarked.shelved, text));
  }
}
