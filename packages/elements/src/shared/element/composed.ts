import type { Tree } from "@meshwright/calc/article";

type ParentOf = (this: Node) => Node | null;
let parentOf: ParentOf | undefined;

/** The next node outward: the parent, or from a shadow root its host. A form's own `parentNode` may be one of its fields. */
export const outward = (node: Node): Node | null =>
  (parentOf ??= Object.getOwnPropertyDescriptor(Node.prototype, "parentNode")!.get as ParentOf).call(node) ??
  (node as ShadowRoot).host ??
  null;

/** A node and everything around it, outermost last. */
function* chain(node: Node): Generator<Node> {
  for (let at: Node | null = node; at; at = outward(at)) yield at;
}

/** The roots that a node stands in, its own first, the document last. */
export function rootsOf(node: Node): Node[] {
  const roots: Node[] = [];
  for (let at: Node | undefined = node; at; at = (at as ShadowRoot).host) roots.push((at = at.getRootNode()));
  return roots;
}

/** Whether a node comes before another in the composed document. A host's shadow comes before its children. */
function isBefore(node: Node, other: Node): boolean {
  // In one tree the browser knows.
  if (node.getRootNode() === other.getRootNode()) return node === other || !!(node.compareDocumentPosition(other) & 4);
  const [mine, theirs] = [[...chain(node)].reverse(), [...chain(other)].reverse()];
  let at = 0;
  while (at < mine.length && mine[at] === theirs[at]) at++;
  const [one, two] = [mine[at], theirs[at]];
  if (!one || !two) return !one;
  if (one.parentNode && two.parentNode) return !!(one.compareDocumentPosition(two) & 4);
  return !one.parentNode;
}

/** A page as calc looks at it. */
export const composed: Tree<Node> = {
  parent: outward,
  attribute: (node, name) => (node as Element).getAttribute?.(name),
  isBefore,
};
