import { html, nothing, type TemplateResult } from "lit/html.js";
import { sayCounts, wantedExample, type SaidCount, type SaidCounts, type WantedName } from "@meshwright/calc/article";
import { announce, block, type Told } from "../../shared/drawn/index.js";
import { properties, css } from "../../shared/element/index.js";
import { fill } from "../../shared/words/index.js";
import { scrolling, tables, ToolElement } from "../../shared/tools/index.js";

/** What a reader has asked for in place of what the author asks. */
interface Own {
  readonly of?: string;
  readonly figure?: string;
  readonly output?: string;
  readonly want?: string;
}

/**
 * Which tooth count brings a total, the ground rolled for one motor turn, a speed, or the lead of one axle on another to what
 * is wanted: the counts on either side, and how far off each is. A set that is sold as one and tyres are chosen among the
 * build's parts. Taking one makes it the reader's own.
 *
 * @attr of - a count (`primary.driver`), a stage whose gears are sold as a set, or an output's wheel (`rear.wheel`); the first
 *   count where not said
 * @attr figure - `reduction` (default), `travel`, `speed` or `lead`
 * @attr output - of which output; the headline's where not said
 * @attr with - the output that a lead is counted against
 * @attr want - what is wanted, with its unit: "44", "2.40 in", "12 km/h", "2%"; the middle of the range, or what the article
 *   has, where not said
 * @fires {CustomEvent<ChangeSet | Change>} mw-change - the count that was taken
 * @csspart root - all that it draws
 * @csspart table - the choices
 */
export class MwCountFinder extends ToolElement {
  static override readonly tag = "mw-count-finder";
  static override styles = [
    properties,
    block,
    tables,
    css`
      .asked {
        display: flex;
        flex-wrap: wrap;
        gap: 0.3em 1.4em;
        margin: 0 0 0.6em;
      }
      label {
        display: inline-flex;
        flex-wrap: wrap;
        align-items: baseline;
        gap: 0 0.45em;
        min-height: 24px;
        max-width: 100%;
      }
      select {
        max-width: 100%;
      }
      input {
        font: inherit;
        color: inherit;
        background: none;
        border: 0;
        border-bottom: 1.5px dotted var(--_accent);
        border-radius: 0;
        padding: 0.1em 0;
        width: 6em;
        min-height: 24px;
      }
      button[aria-disabled] {
        color: var(--_second);
        text-decoration: none;
        cursor: default;
      }
      @media print {
        select,
        input {
          border: 0;
          appearance: none;
        }
      }
    `,
  ];
  static override properties = {
    of: {},
    figure: {},
    output: {},
    with: {},
    want: {},
    own: { state: true },
    message: { state: true },
  };

  declare of: string | null;
  declare figure: string | null;
  declare output: string | null;
  declare with: string | null;
  declare want: string | null;
  declare private own: Own;
  declare private message: Told | undefined;

  constructor() {
    super();
    this.own = {};
  }

  #say(own: Own): SaidCounts | undefined {
    const article = this.evaluation("article");
    if (!article) return undefined;
    const { of, figure, output, with: other, want } = this;
    const asked = { of, figure, output, with: other, want, ...own };
    // What was wanted of another figure, or of another axle, is not what is wanted of this one.
    if ((own.figure || own.output) && own.want === undefined) asked.want = null;
    return this.says((speaker) => sayCounts(speaker, article, asked));
  }

  readonly #asked = (event: Event): void => {
    event.stopPropagation();
    const { name, value } = event.target as HTMLInputElement | HTMLSelectElement;
    const { want, ...rest } = this.own;
    const next: Own = name === "want" || name === "of" ? { ...this.own, [name]: value } : { ...rest, [name]: value };
    const said = this.#say(next);
    if (said) {
      this.message = undefined;
      this.own = next;
      return;
    }
    // What cannot be read leaves what was asked.
    const now = this.#say(this.own)!;
    this.message = () => fill(this.reports.counts.example, wantedExample(now.figure));
    if (name === "want") (event.target as HTMLInputElement).value = now.wanted;
  };

  #take({ settings }: SaidCount): void {
    const [refusal] = this.change(Object.fromEntries(settings.map(({ set, to }) => [set, to])));
    this.message = this.told(refusal);
    announce(this.renderRoot as ShadowRoot, () => this.message?.() ?? this.#say(this.own)?.now ?? "");
  }

  #choice<T extends string>(
    name: string,
    label: string,
    options: readonly (readonly [T, string])[],
    chosen: T,
  ): TemplateResult | typeof nothing {
    if (options.length < 2) return nothing;
    return html`<label
      >${label}
      <select name=${name}>
        ${options.map(([value, text]) => html`<option value=${value} ?selected=${value === chosen}>${text}</option>`)}
      </select></label
    >`;
  }

  #row(one: SaidCount): TemplateResult {
    const { head, gives, off, here } = one;
    const text = here ? this.shop.chosen : this.shop.choose;
    return html`<tr>
      <th scope="row">${head}</th>
      <td>${gives}</td>
      <td>${off}</td>
      <td>
        <button
          type="button"
          aria-disabled=${here ? "true" : nothing}
          aria-label="${text}: ${head}"
          @click=${() => here || this.#take(one)}
        >
          ${text}
        </button>
      </td>
    </tr>`;
  }

  protected override render(): TemplateResult {
    const said = this.#say(this.own);
    if (!said) return this.fallback(false);
    const { counts } = this.reports;
    const names = said.figures.map((name): readonly [WantedName, string] => [name, counts.figures[name]]);
    return html`<div class="root" part="root">
        ${this.whose()}
        <div class="asked" @change=${this.#asked} @input=${(event: Event) => event.stopPropagation()}>
          ${this.#choice("of", counts.change, said.places, said.of)}
          ${this.#choice("figure", counts.wanted, names, said.figure)}
          ${this.#choice("output", counts.of, said.outputs, said.output)}
          <input
            type="text"
            name="want"
            aria-label=${fill(this.figureWords.told, counts.wanted, said.head)}
            autocomplete="off"
            .value=${said.wanted}
          />
          ${this.message ? html`<span class="fault" role="alert">${this.message()}</span>` : nothing}
        </div>
        ${
          said.rows.length
            ? scrolling(
                said.head,
                html`<table part="table">
                  <thead>
                    <tr>
                      <th scope="col">${counts.choice}</th>
                      <th scope="col">${said.head}</th>
                      <th scope="col">${counts.off}</th>
                      <th scope="col"><span class="heard">${this.shop.choose}</span></th>
                    </tr>
                  </thead>
                  <tbody>
                    ${said.rows.map((row) => this.#row(row))}
                  </tbody>
                </table>`,
                "kept",
              )
            : nothing
        }
        <p class="note">${said.notes.join(" ")} ${fill(this.figureWords.told, this.reports.yours, said.now)}.</p>
      </div>
      ${this.fallback()}`;
  }
}
