import { queryOf } from "@meshwright/calc/article";
import { queryNames, type QueryText } from "@meshwright/calc/report";
import {
  authorsText,
  css,
  hiding,
  InlineElement,
  isWrapped,
  more,
  sameText,
  standsForValue,
} from "../../shared/element/index.js";

/**
 * A computed figure or verdict word in a sentence. Its content is what a page without scripts reads, and what is shown while the
 * figure says the same.
 *
 * Words that the vocabulary of figures does not know leave the content as it is, and are told to the author.
 *
 * @attr figure - which one; `reduction` where not said
 * @attr of - what it is a figure of: an axle's id, a stage's, or the address of one value
 * @attr with - the axle that it is compared with
 * @attr group - the group of stages that it is about, instead of the whole
 * @attr base - what a percentage is measured against: the id of one of the two axles, or `mean`
 * @attr scope - whether a comparison counts the tyres; they count where both wheels are given
 * @attr from - what a change is counted from: `article`, the id of an alternative or a reference, `revision-1`, or the id of another
 *   `mw-build` on the page
 * @attr measure - which of several readings of the figure
 * @attr over - a length of ground, "10 m", for a gap as a length; a number of turns for a check by hand
 * @attr unit - the unit it is shown in
 * @attr digits - fraction digits, 0 to 100; the build's rounding where not said
 * @attr sign - `none` leaves the sign of a change out
 * @attr drive - how an open differential is looked at: everything held together, or straight on
 * @attr at - `article` or an alternative's id: pinned there, whatever the reader does
 * @csspart value - the figure
 */
export class MwValue extends InlineElement {
  static override readonly tag = "mw-value";
  // No colour of ours: the mark of a changed figure brings the private properties with it.
  static override styles = css`
    ${hiding}
    span {
      font-variant-numeric: lining-nums tabular-nums;
    }
  `;
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
  /** The published figure that the author's own text was found to say; nothing where it says something else. */
  #right: string | undefined;
  #hides = false;
  #inside: string | undefined;

  /** Works the text out; says whether it is another. */
  #read(): boolean {
    const before = this.#text;
    this.fault = undefined;
    this.#text = this.textOf(this.#query, this.at);
    return this.#text !== before;
  }

  /** Looks at what stands inside. */
  #judge(): void {
    const { store } = this;
    this.#inside = authorsText(this);
    if (this.#text === undefined) return;
    const published = this.at || store?.build === store?.article ? this.#text : this.textOf(this.#query, "article");
    this.#right = published !== undefined && sameText(this.#inside, published) ? published : undefined;
    // What says the same is known by that, whatever stands around it.
    this.#hides = this.#right !== undefined || standsForValue(this, published ?? this.#text);
  }

  protected override willUpdate(changed: Map<PropertyKey, unknown>): void {
    if (!changed.size && this.hasUpdated) return;
    this.#query = queryOf(this as unknown as Readonly<Record<string, string | null>>);
    this.#read();
    this.#judge();
  }

  override stateChanged(): void {
    if (!this.hasUpdated) return;
    const { store } = this;
    const first = this.#text === undefined;
    // Another article is judged anew; an edit is not.
    const isAnew = this.#article !== store?.article;
    this.#article = store?.article;
    if (!this.#read() && !isAnew) return;
    if (first || isAnew) this.#judge();
    this.requestUpdate();
  }

  #article: unknown;

  override contentChanged(): void {
    if (!this.hasUpdated) return;
    this.#read();
    this.#judge();
    this.requestUpdate();
  }

  /** What was right stays shown when something wraps it, or a page is translated; what the author writes is judged. */
  readonly #slotted = (): void => {
    const text = authorsText(this);
    if (text === this.#inside || (this.#right !== undefined && isWrapped(this))) return;
    this.contentChanged();
  };

  #span: HTMLElement | undefined;
  #slot: HTMLSlotElement | undefined;

  #listen(slot: HTMLSlotElement): void {
    slot.addEventListener("slotchange", this.#slotted);
  }

  /** The author's own text needs no style of ours to be seen. */
  protected override dress(root: ShadowRoot): void {
    if (this.isReady || this.#span) super.dress(root);
  }

  /** The place of a figure that differs; and what has come in meanwhile is looked at now. */
  protected override ready(): void {
    const isNew = !this.#span;
    const span = this.#spanBefore(this.#slot!);
    if (isNew) span.hidden = true;
    this.#listen(this.#slot!);
    this.#slotted();
  }

  /** What the figure is drawn in, where it is not the author's text that says it; made when it is wanted. */
  #spanBefore(slot: HTMLElement): HTMLElement {
    if (this.#span?.parentNode === this.renderRoot) return this.#span;
    this.#span?.remove();
    const span = (this.#span = this.make("span"));
    this.dress(this.renderRoot);
    span.setAttribute("part", "value");
    slot.before(span);
    return span;
  }

  protected override update(changed: Map<PropertyKey, unknown>): void {
    super.update(changed);
    const [slot] = this.parts(() => {
      const made = this.make("slot");
      if (this.isReady) this.#listen(made);
      this.#slot = made;
      return [made] as const;
    });
    const text = this.#text;
    const isOwn = text === undefined || text === this.#right;
    const span = isOwn ? this.#span : this.#spanBefore(slot);
    if (span) {
      span.hidden = isOwn;
      const shown = isOwn ? "" : text;
      if (span.textContent !== shown) span.textContent = shown;
    }
    slot.hidden = !isOwn && this.#hides;
    const { mark } = more();
    if (!mark || !span) return;
    const article = isOwn || this.at ? undefined : this.textOf(this.#query, "article");
    mark(this, span, article === text ? undefined : article);
  }
}
