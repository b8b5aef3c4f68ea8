import type { Layer } from "@meshwright/calc/document";
import { inOrder } from "@meshwright/calc/article";
import { html, nothing, render, type TemplateResult } from "lit/html.js";
import { changeTexts, wheelTexts } from "../shared/drawn/index.js";
import {
  composed,
  css,
  dress,
  MeshwrightElement,
  paperOf,
  properties,
  type Overseen,
} from "../shared/element/index.js";
import { fill, fillCount, figureWordsFor, wordsFor } from "../shared/words/index.js";

const looks = css`
  .told {
    display: block;
    box-sizing: border-box;
    margin: 0 0 1.4em;
    padding: 0.55em 0;
    border: solid var(--_line);
    border-width: 1px 0;
    font-size: 0.9em;
    line-height: 1.45;
    text-align: start;
    text-indent: 0;
    white-space: normal;
    overflow-wrap: anywhere;
  }
  .told b {
    font-weight: 600;
  }
  .told button {
    all: unset;
    box-sizing: border-box;
    display: inline-block;
    min-height: 24px;
    margin-inline-end: 0.5em;
    padding: 0.05em 0.45em;
    border: 1px solid color-mix(in srgb, currentColor 45%, transparent);
    border-radius: 4px;
    color: var(--_accent);
    cursor: pointer;
  }
  .told button:focus-visible {
    outline: 2px solid var(--_ring);
    outline-offset: 2px;
  }
  /* Where the build stands after its figures, or is not drawn: over the page, until it is put away. */
  .told.over {
    position: fixed;
    z-index: 9;
    inset: 0 0 auto;
    width: auto;
    max-width: none;
    margin: 0;
    padding: 0.55em max(1em, env(safe-area-inset-right)) 0.55em max(1em, env(safe-area-inset-left));
    border-width: 0 0 1px;
    color: inherit;
    background: var(--_paper, Canvas);
  }
  @media print {
    .told button {
      display: none;
    }
    .told.over {
      position: static;
    }
  }
`;

const styles = [properties, looks];

/** How many changes are named before the rest is counted. */
const few = 3;

/** Whose numbers a page shows once a link has brought others: two lines before the first figure of a build, by the build itself. */
export class Told {
  readonly #build: Overseen & MeshwrightElement;
  #place: HTMLElement | undefined;
  /** What was sent, as it arrived. */
  #sent: Layer | undefined;
  #isPart = false;
  #hidden = true;

  constructor(build: Overseen & MeshwrightElement) {
    this.#build = build;
  }

  /** A link has been read; whether it brought anything, and whether something of it could not be taken. */
  arrived(isAnything: boolean, isRefused: boolean): void {
    const { store } = this.#build;
    this.#sent = isAnything && store.changed ? store.layer : undefined;
    this.#isPart = isRefused;
    this.#hidden = !this.#sent && !isRefused;
    // Its figures may come to life in this turn, after it.
    setTimeout(() => this.draw());
  }

  /** Draws what there is to say now; nothing where nothing was sent, or it was put away. */
  draw(): void {
    const { store, locale, isConnected } = this.#build;
    // A frame that was taken away keeps what was in it.
    const isThere =
      isConnected && this.#build.shadowRoot && this.#build.ownerDocument.defaultView && !this.#hidden && store.build;
    if (!isThere) {
      this.#place?.remove();
      return;
    }
    this.#place ??= this.#make();
    this.#stand(this.#place);
    render(this.#lines(locale), this.#place);
  }

  #make(): HTMLElement {
    const place = this.#build.ownerDocument.createElement("div");
    place.setAttribute("part", "told");
    place.setAttribute("role", "note");
    return place;
  }

  /** Before the content of the build where that comes before its figures; else over the page, from the first figure. */
  #stand(place: HTMLElement): void {
    if (place.isConnected) return;
    const build = this.#build;
    const others = [...build.store.followers].filter(
      (one): one is MeshwrightElement & typeof one => one instanceof MeshwrightElement && one !== build,
    );
    const [first] = inOrder(composed, [build, ...others] as Element[]);
    const root = build.shadowRoot!;
    place.className = "told";
    dress(root, styles);
    root.prepend(place);
    if ((first === build || !others.length) && place.getClientRects().length) return;
    const [shown] = inOrder(composed, others as Element[]).filter((one) => one.getClientRects().length);
    const home = shown?.shadowRoot ?? root;
    place.className = "told over paged";
    place.style.setProperty("--_page", paperOf(shown ?? build));
    dress(home, styles);
    home.prepend(place);
    if (!place.showPopover) return;
    place.popover = "manual";
    place.showPopover();
  }

  #lines(locale: string): TemplateResult {
    const { store } = this.#build;
    const words = wordsFor(locale);
    const key = (text: string, press: () => void): TemplateResult =>
      html`<button
        type="button"
        @click=${(event: Event) => {
          // It may stand in a link or a form of the page's own.
          event.preventDefault();
          event.stopPropagation();
          press();
          this.draw();
        }}
      >
        ${text}
      </button>`;
    const hide = key(words.hide, () => (this.#hidden = true));
    const authors = html`${words.authors} `;
    if (!this.#sent) return html`<b>${words.unread}</b> ${authors}${hide}`;
    if (store.arrived)
      return html`<b>${words.sent}</b> ${this.#isPart ? `${words.partly} ` : nothing}${this.#changes(locale)}
        ${key(words.seeAuthors, () => store.reset())}${hide}`;
    return html`${store.changed ? nothing : authors}${key(words.backToSent, () => store.arrive(this.#sent!))}${hide}`;
  }

  /** "Front hub 23, was 22: Front wheels 4.3% slower." */
  #changes(locale: string): string {
    const { store } = this.#build;
    const words = wordsFor(locale);
    const figureWords = figureWordsFor(locale);
    const all = changeTexts(store, locale).map(({ name, now, was }) =>
      now || was ? fill(figureWords.moved, name, now || "–", was || "–") : name,
    );
    if (store.layer.structure.length) all.push(words.structure);
    const rest = all.length - few;
    const named = [...all.slice(0, few), ...(rest > 0 ? [fillCount(words.andMore, rest, locale)] : [])];
    const effects = wheelTexts(store, locale);
    const list = named.reduce((before, one) => (before ? fill(words.listed, before, one) : one), "");
    const said = effects.length ? fill(figureWords.told, list, effects.join(`${words.comma} `)) : list;
    return fill(words.ended, `${said.charAt(0).toLocaleUpperCase(locale)}${said.slice(1)}`);
  }
}
