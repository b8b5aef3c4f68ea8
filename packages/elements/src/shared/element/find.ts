import { holderOf, holdersOf, inOrder, type Holders } from "@meshwright/calc/article";
import { page, type BuildHolder } from "../store/index.js";
import { composed } from "./composed.js";

let holders: Holders<Node, BuildHolder> = new Map();
let moves = 0;

/** Where the builds of the page stand, looked at once for all that look for theirs. */
function buildsUnder(): Holders<Node, BuildHolder> {
  if (moves !== page().moves) {
    moves = page().moves;
    holders = holdersOf(composed, page().holders);
  }
  return holders;
}

/** The builds of one id, in the order of the document. */
export const buildsOf = (id: string): readonly BuildHolder[] =>
  inOrder(
    composed,
    [...page().holders].filter((holder) => holder.id === id),
  );

/** The build that an element belongs to, as calc finds it in the page as it is composed. */
export const findBuild = (element: Node, id: string | null | undefined): BuildHolder | undefined =>
  holderOf(composed, buildsUnder(), element, id);
