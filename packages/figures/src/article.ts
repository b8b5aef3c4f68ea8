/** A stretch of the source, by its offsets. */
export type Range = readonly [start: number, end: number];

/** Something that contains others: the article itself, or an element of it. */
export interface Holder {
  readonly parent: Holder | undefined;
  readonly children: Node[];
}

/** An element as the page would have it. */
export interface Element extends Holder {
  readonly kind: "element";
  /** As HTML knows it, in small letters. */
  readonly tag: string;
  readonly attributes: Readonly<Record<string, string>>;
  /** Attributes whose values are worked out by a program. */
  readonly computed: readonly string[];
  readonly parent: Holder;
  /** Its place among all elements, from the first to the last. */
  readonly order: number;
  /** Where it begins. */
  readonly start: number;
  /** What stands between its tags, where both are written out in the source. */
  readonly inside: Range | undefined;
  /** It has an end tag of its own, whether or not its place in the file is known. */
  readonly isEnded: boolean;
  /** Written as `<x />`. */
  readonly selfClosed: boolean;
  /** Belongs to a drawing or a formula, where the page knows no elements of ours. */
  readonly foreign: boolean;
}

export interface Text {
  readonly kind: "text";
  readonly value: string;
  readonly parent: Holder;
  readonly start: number;
  /** Where it stands, without the blanks around it, where the source has it in one piece. */
  readonly range: Range | undefined;
}

export type Node = Element | Text;

/** A text as the page that it becomes: what the three readers come to, HTML, Markdown and MDX. */
export interface Article extends Holder {
  readonly kind: "article";
  readonly source: string;
  /** The article's own markup is Markdown: its signs have to be written otherwise. */
  readonly markdown: boolean;
  /** How many tags of ours stand in what a program works out: they are not looked at. */
  readonly expressions: number;
  /** Where in the source something is read that a program works out, from the first to the last. */
  readonly programs: readonly number[];
}

/** Attributes by name, and nothing by any other name. */
export const attributesFrom = (entries: Iterable<readonly [string, string]>): Readonly<Record<string, string>> =>
  Object.assign(Object.create(null) as Record<string, string>, Object.fromEntries(entries));

type Without = (element: Element) => boolean;
const nothing: Without = () => false;

/** Every node inside, in the order of the document. Deep articles are no deeper to it than flat ones. */
function* nodesIn(holder: Holder, without: Without): Generator<Node> {
  const open: Node[] = [...holder.children].reverse();
  for (let node = open.pop(); node; node = open.pop()) {
    if (node.kind === "element" && without(node)) continue;
    yield node;
    if (node.kind === "element") for (let n = node.children.length; n--;) open.push(node.children[n]!);
  }
}

/** Every element inside, in the order of the document. `without` leaves some out, with all that is in them. */
export function* elementsIn(holder: Holder, without = nothing): Generator<Element> {
  for (const node of nodesIn(holder, without)) if (node.kind === "element") yield node;
}

const isUnread: Without = ({ tag }) => tag === "script" || tag === "style" || tag === "template";

/** Every text inside that a reader sees. */
export function* textsIn(holder: Holder, without = nothing): Generator<Text> {
  for (const node of nodesIn(holder, (element) => isUnread(element) || without(element)))
    if (node.kind === "text") yield node;
}

/** More nodes, and more characters, than any figure has. */
const most = 200;
const longest = 10_000;

/** What a reader sees of something, without the blanks around it; of a swallowed article its beginning. */
export function textOf(holder: Holder): string {
  let text = "";
  let nodes = 0;
  for (const node of nodesIn(holder, isUnread)) {
    if (node.kind === "text") text += node.value;
    if (++nodes > most || text.length > longest) return `${text.trim()}…`;
  }
  return text.trim();
}

/** Whether an element that is looked for stands inside. */
export function hasInside(holder: Holder, wanted: (element: Element) => boolean): boolean {
  for (const element of elementsIn(holder)) if (wanted(element)) return true;
  return false;
}

/** What stands around a node, from the inside out, the article last. */
function* around(node: Node): Generator<Holder> {
  for (let at: Holder | undefined = node.parent; at; at = at.parent) yield at;
}

export const isElement = (node: Holder | Node): node is Element => "kind" in node && node.kind === "element";

/** The nearest element around a node that one is looked for. */
export function enclosing(node: Node, wanted: (element: Element) => boolean): Element | undefined {
  for (const at of around(node)) if (isElement(at) && wanted(at)) return at;
  return undefined;
}
