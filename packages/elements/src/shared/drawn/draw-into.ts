import { render, type RenderOptions, type RootPart } from "lit/html.js";

/** What stands beside what templates draw: the author’s sign, a voice, what floats, styles of older browsers. */
const isApart = (node: Node): boolean =>
  node.nodeName === "STYLE" || /^(heard|to-mend|told|was)\b/.test((node as Partial<Element>).className ?? "");

/** How many nodes templates have drawn in a place. */
function sizeOf(place: Node): number {
  let size = 0;
  for (const node of place.childNodes) {
    if (isApart(node)) continue;
    const walker = node.ownerDocument!.createTreeWalker(node);
    do size++;
    while (walker.nextNode());
  }
  return size;
}

const sizes = new WeakMap<Node, number>();

/**
 * Draws by a template. Whoever cleans, translates or reads a page aloud takes marks away, or wraps texts: what is drawn between
 * them would stand elsewhere. Then all is drawn anew.
 */
export function drawInto(place: HTMLElement | ShadowRoot, value: unknown, options?: RenderOptions): RootPart {
  const before = sizes.get(place);
  if (before !== undefined && before !== sizeOf(place)) {
    for (const node of [...place.childNodes]) if (!isApart(node)) node.remove();
    delete (place as { _$litPart$?: unknown })._$litPart$;
  }
  const part = render(value, place, options);
  sizes.set(place, sizeOf(place));
  return part;
}
