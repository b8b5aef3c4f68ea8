import { canonicalLocale } from "../languages/index.js";

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

/** The builds inside a node that may be meant: a stretch of a list that is in the order of the document. */
export interface Inside<Holder> {
  readonly holders: readonly Holder[];
  readonly from: number;
  readonly until: number;
}

/**
 * The build that an element belongs to: in the smallest ancestor that holds a matching one, the last before the element, else
 * the first after it; then outward through hosts. A function of the document as it stands, whatever the order in which things
 * arrived.
 *
 * @param inside the matching builds inside a node
 * @param known what was found from other elements of a document that stands still: nothing is walked twice
 */
export function holderIn<Node, Holder extends Node>(
  { parent, isBefore }: Pick<Tree<Node>, "parent" | "isBefore">,
  inside: (node: Node) => Inside<Holder>,
  element: Node,
  known?: Map<Node, Inside<Holder> | undefined>,
): Holder | undefined {
  const path: Node[] = [];
  let found: Inside<Holder> | undefined;
  for (let node: Node | null | undefined = element; node; node = parent(node)) {
    if (known?.has(node)) {
      found = known.get(node);
      break;
    }
    path.push(node);
    const here = inside(node);
    if (here.from < here.until) {
      found = here;
      break;
    }
  }
  if (known) for (const node of path) known.set(node, found);
  if (!found) return undefined;
  const { holders, from, until } = found;
  let [low, high] = [from, until];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (isBefore(holders[middle]!, element)) low = middle + 1;
    else high = middle;
  }
  return holders[Math.max(from, low - 1)];
}

/**
 * The build that an element belongs to, by {@link holderIn}, in a page whose builds were looked for.
 *
 * @param id the build that is asked for by name; any where none is
 */
export const holderOf = <Node, Holder extends Node>(
  tree: Tree<Node>,
  all: Holders<Node, Holder>,
  element: Node,
  id?: string | null,
): Holder | undefined =>
  holderIn(
    tree,
    (node) => {
      const holders = all.get(node)?.filter((holder) => !id || tree.attribute(holder, "id") === id) ?? [];
      return { holders, from: 0, until: holders.length };
    },
    element,
  );

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
