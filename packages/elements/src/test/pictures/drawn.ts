import "../../all.js";
import type { MwBuild } from "../../elements/build/index.js";
import { clear, find, settle } from "../page.js";
import { builds } from "./builds.js";
import type { Combination, Factors } from "./cover.js";
import { faultsIn } from "./measured.js";

/** All that may come together around an element. */
export const factors: Factors = {
  element: [
    ...["ratio-summary", "overdrive-gauge", "edits", "stage-editor", "train-drawing", "drive-line", "working"],
    ...["change-table", "order-list", "parts-list", "wheel-speed", "bench-card", "pair-finder", "count-finder"],
    ...["train-finder", "unmarked-gear", "turn-count", "measurements"],
  ],
  width: ["240", "320", "375", "640", "1100"],
  text: ["16", "32"],
  language: ["en", "de", "fr", "es", "ja", "ar"],
  build: Object.keys(builds),
  place: ["block", "cell"],
  state: ["published", "changed"],
};

const more: Readonly<Record<string, string>> = {
  "count-finder": 'of="primary.driver" figure="reduction" want="40"',
  "turn-count": 'of="primary"',
  "pair-finder": 'of="primary"',
};

export const markupOf = (element: string): string => `<mw-${element} ${more[element] ?? ""}></mw-${element}>`;

/**
 * Waits until what is drawn stays as it is: for two frames, because a table that has no room is told so when a frame has been laid
 * out, and becomes a list in the next, behind whoever was waiting for that one; and, where something is looked for, until it is
 * found.
 */
async function calm(element: Element): Promise<void> {
  for (let n = 0, same = 0, before = ""; n < 600 && same < 2; n++) {
    await settle(1);
    const { shadowRoot } = element;
    const isLooking = !!shadowRoot?.querySelector('button[name="stop"]');
    const now = isLooking ? "" : `${shadowRoot?.innerHTML.length} ${element.getBoundingClientRect().height}`;
    same = now && now === before ? same + 1 : 0;
    before = now;
  }
}

/** Draws one combination, and measures it. */
async function measure({ element, width, text, language, build, place, state }: Combination): Promise<string[]> {
  clear();
  const page = document.createElement("div");
  page.lang = language!;
  page.dir = language === "ar" ? "rtl" : "ltr";
  page.style.cssText = `width: ${width}px; font-size: ${text}px; line-height: 1.5; margin: 24px 0`;
  const tag = markupOf(element!);
  const data = `<mw-build><script type="application/json">${builds[build!]!()}</script></mw-build>`;
  page.innerHTML =
    data +
    (place === "cell" ? `<table style="width: 100%; table-layout: fixed"><tr><td>${tag}</td></tr></table>` : tag);
  document.body.append(page);
  try {
    const shown = find(page, `mw-${element}`);
    await settle(2);
    if (state === "changed") find<MwBuild>(page, "mw-build").store.change({ "primary.driven": 60 });
    await calm(shown);
    const { fault } = shown as HTMLElement & { readonly fault?: string };
    if (fault) return [fault];
    return faultsIn(shown, (place === "cell" ? find(page, "td") : page).getBoundingClientRect());
  } finally {
    page.remove();
  }
}

/** A test for each combination, named by all that is combined in it. */
export function tested(combinations: readonly Combination[]): void {
  for (const one of combinations)
    it(Object.values(one).join(", "), async () => {
      const faults = await measure(one);
      if (faults.length) throw new Error(faults.join("\n"));
    });
}
