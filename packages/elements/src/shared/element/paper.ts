import { outward } from "./composed.js";

/** The colour that an element's text stands on: of the nearest thing around it that has one. */
export function paperOf(element: Element): string {
  for (let node: Node | null = element; node; node = outward(node)) {
    if (!(node instanceof Element)) continue;
    const { backgroundColor } = getComputedStyle(node);
    if (!/^(transparent|rgba\(.*, 0\))$/.test(backgroundColor)) return backgroundColor;
  }
  return "Canvas";
}
