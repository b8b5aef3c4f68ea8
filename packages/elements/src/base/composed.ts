/** The next node outward: the parent, or from a shadow root its host. */
export const outward = (node: Node): Node | null => node.parentNode ?? (node as ShadowRoot).host ?? null;

/** A node and everything around it, outermost last. */
function* chain(node: Node): Generator<Node> {
  for (let at: Node | null = node; at; at = outward(at)) yield at;
}

/** The roots that a node stands in, its own first, the document last. */
export function* rootsOf(node: Node): Generator<Node> {
  for (const at of chain(node)) if (!at.parentNode) yield at;
}

/** The value of an attribute on the nearest composed ancestor that has it, the element itself first. */
export function inherited(node: Node, attribute: string): string | undefined {
  for (const at of chain(node)) {
    const value = (at as Element).getAttribute?.(attribute);
    if (value) return value;
  }
  return undefined;
}

/** Whether a node comes before another in the composed document. A host's shadow comes before its children. */
export function isBefore(node: Node, other: Node): boolean {
  const [mine, theirs] = [[...chain(node)].reverse(), [...chain(other)].reverse()];
  let at = 0;
  while (at < mine.length && mine[at] === theirs[at]) at++;
  const [one, two] = [mine[at], theirs[at]];
  if (!one || !two) return !one;
  if (one.parentNode && two.parentNode) return !!(one.compareDocumentPosition(two) & 4);
  return !one.parentNode;
}
