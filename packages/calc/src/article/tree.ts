import { nearestTo } from "../document/index.js";
import { canonicalLocale } from "../languages/index.js";
import { errorOf, type Finding } from "../stages/index.js";

/** What has to be known of a page's elements: a document of a browser, a parsed file, whatever holds elements in elements. */
export interface Tree<Node> {
  /** What stands around a node; around a shadow root its host. */
  parent(node: Node): Node | null | undefined;
  attribute(node: Node, name: string): string | null | undefined;
  /** Whether one element comes before another in the document as it is composed. */
  isBefore(node: Node, other: Node): boolean;
}

/** Every node around a build, with the builds inside it in the order of the document. */
export type Holders<Node, Holder extends Node = Node> = ReadonlyMap<Node, readonly Holder[]>;

/** Builds in the order of the document. */
export const inOrder = <Node, Holder extends Node>(tree: Tree<Node>, holders: Iterable<Holder>): Holder[] =>
  [...holders].sort((one, other) => (one === other ? 0 : tree.isBefore(one, other) ? -1 : 1));

/** Looks where the builds of a page stand: once for all elements that look for theirs. */
export function holdersOf<Node, Holder extends Node>(tree: Tree<Node>, all: Iterable<Holder>): Holders<Node, Holder> {
  const under = new Map<Node, Holder[]>();
  for (const holder of inOrder(tree, all))
    for (let node: Node | null | undefined = holder; node; node = tree.parent(node)) {
      const list = under.get(node);
      if (list) list.push(holder);
      else under.set(node, [holder]);
    }
  return under;
}

/**
 * The build that an element belongs to: in the smallest ancestor that holds a matching one, the last before the element, else
 * the first after it; then outward through hosts. A function of the document as it stands, whatever the order in which things
 * arrived.
 *
 * @param id the build that is asked for by name; any where none is
 */
export function holderOf<Node, Holder extends Node>(
  tree: Tree<Node>,
  holders: Holders<Node, Holder>,
  element: Node,
  id?: string | null,
): Holder | undefined {
  for (let node: Node | null | undefined = element; node; node = tree.parent(node)) {
    const found = holders.get(node)?.filter((holder) => !id || tree.attribute(holder, "id") === id);
    if (found?.length)
      return found.length > 1 ? (found.findLast((holder) => tree.isBefore(holder, element)) ?? found[0]) : found[0];
  }
  return undefined;
}

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

/** The value of an attribute on the nearest ancestor that has it, the element itself first. An empty one says nothing. */
export function inherited<Node>(tree: Tree<Node>, element: Node, name: string): string | undefined {
  for (let node: Node | null | undefined = element; node; node = tree.parent(node)) {
    const value = tree.attribute(node, name);
    if (value) return value;
  }
  return undefined;
}

/** The language that an element stands in, as a tag that `Intl` understands. */
export const localeOf = <Node>(tree: Tree<Node>, element: Node): string =>
  canonicalLocale(inherited(tree, element, "lang") ?? "en");
