import { missingElement } from "@meshwright/calc/document";
import type { Finding } from "@meshwright/calc/stages";

/** Elements that are named as ours and that nothing has defined, with what there is to say of each. */
export function strangersIn(roots: Iterable<Node>): ReadonlyMap<Element, readonly Finding[]> {
  const found = new Map<Element, readonly Finding[]>();
  // A page that refuses markup has none of them, and that is no fault of its author's.
  if (!customElements.get("mw-build")) return found;
  for (const root of roots)
    for (const element of (root as ParentNode).querySelectorAll(":not(:defined)")) {
      const finding = missingElement(element.localName);
      if (finding) found.set(element, [finding]);
    }
  return found;
}
