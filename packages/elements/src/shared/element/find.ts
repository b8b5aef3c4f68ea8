import { page, type BuildHolder } from "../store/index.js";
import { isBefore, outward } from "./composed.js";

let under = new Map<Node, BuildHolder[]>();
let moves = 0;

const inOrder = (holders: BuildHolder[]): BuildHolder[] =>
  holders.sort((one, other) => (isBefore(one, other) ? -1 : 1));

/** Every node around a build, with the builds inside it in the order of the document. */
function buildsUnder(): Map<Node, BuildHolder[]> {
  if (moves === page().moves) return under;
  moves = page().moves;
  under = new Map();
  for (const holder of inOrder([...page().holders]))
    for (let node: Node | null = holder; node; node = outward(node)) {
      const list = under.get(node);
      if (list) list.push(holder);
      else under.set(node, [holder]);
    }
  return under;
}

/** The builds of one id, in the order of the document. */
export const buildsOf = (id: string): readonly BuildHolder[] =>
  inOrder([...page().holders].filter((holder) => holder.id === id));

/**
 * The build that an element belongs to: in the smallest composed ancestor that holds a matching one, the last before the
 * element, else the first after it; then outward through hosts. A function of the document as it stands, whatever
 * the order in which things arrived.
 */
export function findBuild(element: Node, id: string | null | undefined): BuildHolder | undefined {
  const builds = buildsUnder();
  for (let node: Node | null = element; node; node = outward(node)) {
    const found = builds.get(node)?.filter((holder) => !id || holder.id === id);
    if (found?.length)
      return found.length > 1 ? (found.findLast((holder) => isBefore(holder, element)) ?? found[0]) : found[0];
  }
  return undefined;
}
