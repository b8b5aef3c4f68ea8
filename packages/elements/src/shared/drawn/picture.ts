import { outward } from "../element/index.js";
import { DrawnElement } from "./drawn.js";
import { forgetWidths, letteredIn, round } from "./ink.js";
import { onPaper, paperWidth, whenPrinted } from "./paper.js";

let sizes: ResizeObserver | undefined;
const shown = new Set<Picture>();
const waiting = new Set<Picture>();

/**
 * Takes measure before the next frame is painted, all pictures together: each alone would lay the page out anew. Not while
 * sizes are being told: a change of size would then be an error to browsers.
 */
const measureSoon = (picture: Picture): void => {
  if (!waiting.size)
    requestAnimationFrame(() => {
      for (const one of waiting) one.measure();
      waiting.clear();
    });
  waiting.add(picture);
};

const observe = (root: Element): void => {
  // Where there is no layout there are no pictures either.
  if (!globalThis.ResizeObserver) return;
  sizes ??= new ResizeObserver((entries) => {
    for (const { target } of entries) {
      // None where what was measured has left its picture since.
      const { host } = target.getRootNode() as ShadowRoot;
      if (host) measureSoon(host as Picture);
    }
  });
  sizes.observe(root);
};

/** A font that comes late has other widths; paper has another width. */
let isWatching = false;
function watch(): void {
  if (isWatching) return;
  isWatching = true;
  whenPrinted(() => {
    for (const picture of shown) picture.measure();
  });
  document.fonts?.addEventListener("loadingdone", () => {
    forgetWidths();
    for (const picture of shown) picture.requestUpdate();
  });
}

/** Where a box is as wide as what is in it, and nothing is: as wide as what is around it lets it be. */
function roomAround(root: Element): number {
  if (!root.getClientRects().length) return 0;
  for (let node = outward(root); node; node = outward(node)) {
    const { clientWidth } = node as Partial<Element>;
    if (!clientWidth) continue;
    const { paddingLeft, paddingRight } = getComputedStyle(node as Element);
    return Math.max(0, clientWidth - parseFloat(paddingLeft) - parseFloat(paddingRight));
  }
  return 0;
}

/**
 * An element that draws for the width it has, in pixels, with lettering of the page's own size. Its root carries the class
 * `root`. Coordinates run from where lines of text begin: `x()` turns them round for scripts that run from the right.
 */
export abstract class Picture extends DrawnElement {
  /** The width to draw for, in pixels; 0 before it is known. */
  protected width = 0;
  /** The size of the text, in pixels. */
  protected em = 16;
  /** 1 where lines of text run to the right, −1 where they run to the left. */
  protected get along(): 1 | -1 {
    return this.#mirrored ? -1 : 1;
  }
  #mirrored = false;
  #root: Element | null = null;
  #font: readonly [style: string, families: string] = ["", ""];

  /** A distance from the beginning of lines as an x coordinate. */
  protected x(distance: number): number {
    return round(this.#mirrored ? this.width - distance : distance);
  }

  /** Takes measure, and draws again if it is another. */
  measure(): void {
    const root = this.#root;
    if (!root?.isConnected) return;
    const { fontSize, direction, fontStyle, fontWeight, fontFamily } = getComputedStyle(root);
    const { width, em } = this;
    const [style, families] = this.#font;
    this.#font = [`${fontStyle} ${fontWeight}`, fontFamily];
    const room = root.clientWidth || roomAround(root);
    this.width = onPaper() ? Math.min(room, paperWidth) : room;
    this.em = parseFloat(fontSize);
    const mirrored = direction === "rtl";
    const isSame = width === this.width && em === this.em && mirrored === this.#mirrored;
    if (isSame && style === this.#font[0] && families === this.#font[1]) return;
    this.#mirrored = mirrored;
    this.requestUpdate();
  }

  override languageChanged(): void {
    super.languageChanged();
    if (this.#root) measureSoon(this);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    if (this.#root) sizes?.unobserve(this.#root);
    this.#root = null;
    shown.delete(this);
  }

  protected override update(changed: Map<PropertyKey, unknown>): void {
    letteredIn(...this.#font, () => super.update(changed));
  }

  protected override updated(changed: Map<PropertyKey, unknown>): void {
    super.updated(changed);
    const root = this.renderRoot.querySelector(".root");
    if (root === this.#root || !this.isConnected) return;
    if (this.#root) sizes?.unobserve(this.#root);
    this.#root = root;
    if (!root) return;
    shown.add(this);
    watch();
    observe(root);
    measureSoon(this);
  }
}
