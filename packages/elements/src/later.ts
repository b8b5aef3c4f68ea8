import { fetchMore } from "./shared/element/index.js";

/** What brings a page's second file at the latest: a hand on the page. */
const signs = ["focusin", "pointerdown"];

/**
 * Fetches more once: when the page has loaded, at a first focus or pointer, or at once where something on the page needs it or the
 * address carries a reader's version. Only where this copy's class is the page's.
 */
export function later(fetch: () => unknown, own: CustomElementConstructor & { readonly tag: string }): void {
  // A page may put a class of its own over ours, or define later than it was asked to.
  void globalThis.customElements?.whenDefined(own.tag).then((there) => {
    if (there === own || Object.prototype.isPrototypeOf.call(own, there)) begin(fetch);
  });
}

function begin(fetch: () => unknown): void {
  let isAsked = false;
  const ask = (): void => {
    if (isAsked) return;
    isAsked = true;
    for (const sign of signs) removeEventListener(sign, ask, true);
    fetch();
  };
  fetchMore(ask);
  for (const sign of signs) addEventListener(sign, ask, true);
  if (/[#.&?]mw-/.test(location.hash)) ask();
  else if (document.readyState === "complete") setTimeout(ask);
  else addEventListener("load", () => setTimeout(ask), { once: true });
}
