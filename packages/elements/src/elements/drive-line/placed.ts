import { Directive, directive, type ElementPart, type PartInfo, PartType } from "lit/directive.js";
import { nothing } from "lit/html.js";
import type { Box } from "@meshwright/calc/layout";
import { round } from "../../shared/drawn/index.js";

/** Puts an element into its box, by the style's own properties: pages may refuse attributes of style. */
class Placed extends Directive {
  #last = "";

  constructor(part: PartInfo) {
    super(part);
    if (part.type !== PartType.ELEMENT) throw new Error("A place is an element's.");
  }

  override render(_: Box | undefined): unknown {
    return nothing;
  }

  override update({ element }: ElementPart, [box]: [Box | undefined]): unknown {
    const key = box ? [box.x, box.y, box.width, box.height].map(round).join() : "";
    if (key === this.#last) return nothing;
    this.#last = key;
    const { style } = element as HTMLElement;
    const [x, y, width, height] = key.split(",");
    style.left = key && `${x}px`;
    style.top = key && `${y}px`;
    style.width = key && `${width}px`;
    style.minHeight = key && `${height}px`;
    return nothing;
  }
}

export const placed = directive(Placed);
