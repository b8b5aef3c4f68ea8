import { css, html, type TemplateResult } from "lit";
import { queryOf } from "@meshwright/calc/article";
import { queryNames, type QueryText } from "@meshwright/calc/report";
import { MeshwrightElement, properties, standsForValue } from "../../shared/element/index.js";

/**
 * A computed figure or verdict word in a sentence. Its content is what a page without scripts reads.
 *
 * Words that the vocabulary of figures does not know leave the content as it is, and are told to the author.
 *
 * @attr figure which one: reduction, standing, gap, farther, drift, change, … (see `vocabulary`)
 * @attr of, with, group, base, scope, from, measure, over, unit, digits, sign, drive as the vocabulary has them for the figure
 * @attr at `article` or an alternative's id: pinned there, whatever the reader does
 * @csspart value the figure
 */
export class MwValue extends MeshwrightElement {
  static override readonly tag = "mw-value";
  static override styles = [
    properties,
    css`
      span {
        font-variant-numeric: lining-nums tabular-nums;
      }
    `,
  ];
  static override properties = Object.fromEntries([...queryNames, "at"].map((name) => [name, {}]));

  declare figure: string | null;
  declare of: string | null;
  declare with: string | null;
  declare group: string | null;
  declare base: string | null;
  declare scope: string | null;
  declare from: string | null;
  declare measure: string | null;
  declare over: string | null;
  declare unit: string | null;
  declare digits: string | number | null;
  declare sign: string | null;
  declare drive: string | null;
  declare at: string | null;

  #query: QueryText = {};
  #text: string | undefined;
  #hides: boolean | undefined;

  /** Works the text out; says whether it is another. */
  #read(): boolean {
    const before = this.#text;
    this.fault = undefined;
    this.#text = this.textOf(this.#query, this.at);
    return this.#text !== before;
  }

  /** Looks at what stands inside; says whether it is to be treated otherwise than before. */
  #judge(): boolean {
    const before = this.#hides;
    const { store } = this;
    const published = this.at || store?.build === store?.article ? this.#text : this.textOf(this.#query, "article");
    this.#hides = this.#text !== undefined && standsForValue(this, published ?? this.#text);
    return this.#hides !== before;
  }

  protected override willUpdate(changed: Map<PropertyKey, unknown>): void {
    if (!changed.size && this.hasUpdated) return;
    this.#query = queryOf(this as unknown as Readonly<Record<string, string | null>>);
    this.#read();
    if (this.store) this.#judge();
  }

  override stateChanged(): void {
    if (!this.hasUpdated) return;
    const first = this.#text === undefined;
    if (!this.#read()) return;
    if (first) this.#judge();
    this.requestUpdate();
  }

  override contentChanged(): void {
    if (!this.hasUpdated) return;
    const other = this.#read();
    if (this.#judge() || other) this.requestUpdate();
  }

  protected override render(): TemplateResult {
    const text = this.#text;
    if (text === undefined) return this.fallback(false);
    return html`<span part="value">${text}</span>${this.fallback(this.#hides)}`;
  }
}
