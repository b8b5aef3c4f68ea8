import { html, nothing, type TemplateResult } from "lit/html.js";
import { sayTurnCount, type SaidTurns, type TurnField } from "@meshwright/calc/article";
import { announce, block, type Told } from "../../shared/drawn/index.js";
import { properties } from "../../shared/element/index.js";
import { choice, field, fields, tables, ToolElement } from "../../shared/tools/index.js";

type Typed = Readonly<Record<TurnField, string>>;

/**
 * Leads through a box that nobody knows, counted by turning it: turns in, turns out, and how the axle stood; then what it comes
 * to, with what is known around it divided out; then which counts can be behind it, narrowed by the teeth that can be seen; then
 * into the build, by one press.
 *
 * @attr of - the stage that is the box; or the axle that gets it as its last stage; none: it is put in last before the split
 * @fires {CustomEvent<ChangeSet | Change>} mw-change - the box was put into the build
 * @csspart root - all that it draws
 * @csspart turns - what was turned
 * @csspart result - what it comes to
 * @csspart counts - which counts can be behind it
 */
export class MwTurnCount extends ToolElement {
  static override readonly tag = "mw-turn-count";
  static override styles = [properties, block, tables, fields];
  static override properties = {
    of: {},
    typed: { state: true },
    held: { state: true },
    along: { state: true },
    typing: { state: true },
    message: { state: true },
  };

  declare of: string | null;
  /** What stands in the fields, letter by letter. */
  declare private typed: Typed;
  declare private held: boolean;
  declare private along: readonly string[];
  /** The field that is being typed in: it is not found fault with yet. */
  declare private typing: string;
  declare private message: Told | undefined;

  constructor() {
    super();
    this.typed = { turnsIn: "", from: "", to: "", driver: "", driven: "" };
    this.held = false;
    this.along = [];
    this.typing = "";
    this.message = undefined;
  }

  protected override render(): TemplateResult {
    const asked = { ...this.typed, held: this.held, along: this.along };
    const said = this.says((speaker) => sayTurnCount(speaker, { of: this.of }, asked));
    if (!said) return this.fallback(false);
    const words = this.shop.turnCount;
    return html`<div class="root" part="root">
        <p class="note">${words.turn}</p>
        <div class="fields" part="turns">
          ${this.#field(said, "turnsIn", words.turnsIn, words.turns)}
          ${this.#field(said, "from", words.turnsFrom, words.turns)}
          ${this.#field(said, "to", words.turnsTo, words.turns, words.toEmpty)}
          ${choice(
            { name: "axle", label: words.axle, value: this.held ? "held" : "locked" },
            [
              ["locked", words.locked],
              ["held", words.held],
            ],
            this.#heldChosen,
          )}
        </div>
        ${said.around.length ? this.#around(said) : nothing}
        <fieldset class="fields">
          <legend>${words.seen}</legend>
          ${this.#field(said, "driver", words.driver, words.teeth, words.countsHint)}
          ${this.#field(said, "driven", words.driven, words.teeth)}
        </fieldset>
        <div role="status" part="result">
          ${said.result.map((line) => html`<p class="result">${line}</p>`)}
          ${said.note ? html`<p class="result">${said.note}</p>` : nothing}
        </div>
        ${said.counts.length ? html`<p class="result" part="counts">${said.counts.join(" · ")}</p>` : nothing}
        ${
          said.request
            ? html`<p>
                <button
                  type="button"
                  aria-disabled=${said.there ? "true" : nothing}
                  @click=${() => said.there || this.#put(said)}
                >
                  ${said.there ? words.there : words.put}
                </button>
              </p>`
            : nothing
        }
        ${this.message ? html`<p class="fault" role="alert">${this.message()}</p>` : nothing}
      </div>
      ${this.fallback()}`;
  }

  #field({ faults }: SaidTurns, name: TurnField, label: string, unit: string, hint?: string): TemplateResult {
    const fault = this.typing === name ? undefined : faults[name];
    return field({ name, label, unit, hint, fault, value: this.typed[name] }, this.#typed);
  }

  #around({ around }: SaidTurns): TemplateResult {
    return html`<fieldset class="fields" @change=${this.#alongChosen}>
      <legend>${this.shop.turnCount.along}</legend>
      ${around.map(
        ({ id, label }) =>
          html`<label class="tick"
            ><input type="checkbox" .value=${id} .checked=${this.along.includes(id)} />${label}</label
          >`,
      )}
    </fieldset>`;
  }

  readonly #typed = (event: Event): void => {
    event.stopPropagation();
    const { name, value } = event.target as HTMLInputElement;
    this.typed = { ...this.typed, [name]: value };
    this.typing = event.type === "input" ? name : "";
    this.message = undefined;
  };

  readonly #heldChosen = (event: Event): void => {
    event.stopPropagation();
    this.held = (event.target as HTMLSelectElement).value === "held";
  };

  readonly #alongChosen = (event: Event): void => {
    event.stopPropagation();
    const { value, checked } = event.target as HTMLInputElement;
    this.along = [...this.along.filter((id) => id !== value), ...(checked ? [value] : [])];
  };

  #put({ request, result }: SaidTurns): void {
    const [refusal] = this.change(request!);
    this.message = this.told(refusal);
    if (!refusal) announce(this.renderRoot as ShadowRoot, () => result.at(-1)!);
  }
}
