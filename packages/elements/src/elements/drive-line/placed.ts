import { Directive, directive, type ElementPart, type PartInfo, PartType } from "lit/directive.js";
import { nothing } from "lit/html.js";
import type { Box } from "@meshwright/calc/layout";
import { round } from "../../shared/drawn/index.js";

/** Puts an element into its box, by the style's own properties: pages may refuse attributes of style. */
class Placed extends Directive {
  #last: readonly number[] = [];

  constructor(part: PartInfo) {
    super(part);
    if (part.type !== PartType.ELEMENT) throw new Error("A place is an element's.");
  }

  override render(_: Box | undefined): unknown {
    return nothing;
  }

  override update({ element }: ElementPart, [box]: [Box | undefined]): unknown {
    const { style } = element as HTMLElement;
    const now = box ? [box.x, box.y, box.width, box.height].map(round) : [];
    for (const [n, name] of (["left", "top", "width", "minHeight"] as const).entries())
      if (now[n] !== this.#last[n]) style[name] = box ? `${now[n]}px` : "";
    this.#last = now;
    return nothing;
  }
}

export const placed = directive(Placed);
