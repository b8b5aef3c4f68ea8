import { nearestTo } from "../document/index.js";
import { errorOf, type Finding } from "../stages/index.js";
import type { Tree } from "./tree.js";

/** A build that is asked for by a name which none of them has. */
export function holderFault<Node, Holder extends Node>(
  tree: Tree<Node>,
  all: Iterable<Holder>,
  id: string,
): Finding | undefined {
  const known = [...new Set([...all].flatMap((holder) => tree.attribute(holder, "id") || []))];
  if (known.includes(id)) return undefined;
  return errorOf("meaning", "missing-reference", "/build", { id, known, nearest: nearestTo(id, known) });
}
