import { fetchMore, type Later } from "./shared/element/index.js";

/** What brings a page's second file at the latest: a hand on the page. */
const signs = ["focusin", "pointerdown"];

/**
 * Fetches more, each file once. The second when the page has loaded, at a first focus or pointer, or at once where something on the
 * page needs it; the third where something needs it or the address carries a reader's version. Only where this copy's class is the
 * page's.
 */
export function later(fetch: (what: Later) => unknown, own: CustomElementConstructor & { readonly tag: string }): void {
  // A page may put a class of its own over ours, or define later than it was asked to.
  void globalThis.customElements?.whenDefined(own.tag).then((there) => {
    if (there === own || Object.prototype.isPrototypeOf.call(own, there)) begin(fetch);
  });
}

function begin(fetch: (what: Later) => unknown): void {
  const asked = new Set<Later>();
  const ask = (what: Later): void => {
    if (asked.has(what)) return;
    if (what === "third") ask("second");
    asked.add(what);
    fetch(what);
  };
  const second = (): void => {
    for (const sign of signs) removeEventListener(sign, second, true);
    ask("second");
  };
  const look = (): void => {
    if (/[#.&?]mw-/.test(location.hash)) ask("third");
  };
  fetchMore(ask);
  for (const sign of signs) addEventListener(sign, second, true);
  addEventListener("hashchange", look);
  look();
  if (document.readyState === "complete") setTimeout(second);
  else addEventListener("load", () => setTimeout(second), { once: true });
}
