import { defaultTreeAdapter, parse, type DefaultTreeAdapterTypes, type ParserOptions, type Token } from "parse5";
import { computed } from "./jsx.js";
import { attributesFrom, type Article, type Element, type Holder, type Node, type Range } from "./article.js";

type Given = DefaultTreeAdapterTypes.Node;
type GivenElement = DefaultTreeAdapterTypes.Element;

/** Deeper than any browser keeps. */
const deepest = 10_000;

/** Where what a parser read stands in the file: nothing for what it made up. */
export interface Places {
  /** The place of one character. */
  readonly at: (offset: number) => number | undefined;
  /** The place of a stretch that stands in one piece. */
  readonly stretch: (start: number, end: number) => Range | undefined;
}

const itself: Places = { at: (offset) => offset, stretch: (start, end) => [start, end] };

/** Sentences, not stack traces, for what no article is. */
export class TooMuch extends Error {}

/** The parser's own tree, within bounds: some few bytes of open tags can stand for millions of elements. */
function bounded(source: string): ParserOptions<DefaultTreeAdapterTypes.DefaultTreeAdapterMap>["treeAdapter"] {
  let tags = 0;
  for (let at = source.indexOf("<"); at >= 0; at = source.indexOf("<", at + 1)) tags++;
  let room = 1000 + 8 * tags;
  let depth = 0;
  return {
    ...defaultTreeAdapter,
    createElement(tag, namespace, attributes) {
      if (--room < 0) throw new TooMuch("Its open tags stand for more elements than can be read.");
      return defaultTreeAdapter.createElement(tag, namespace, attributes);
    },
    onItemPush() {
      if (++depth > deepest) throw new TooMuch(`It is nested more than ${deepest} deep.`);
    },
    onItemPop() {
      depth--;
    },
  };
}

const ourNamespace = "http://www.w3.org/1999/xhtml";

/** The range between the tags of an element, where both are its own and stand in the file. */
function insideOf(given: GivenElement, source: string, places: Places): Range | undefined {
  const { startTag, endTag } = given.sourceCodeLocation ?? {};
  if (!startTag || !endTag) return undefined;
  const { startOffset: from, endOffset: to } = endTag;
  const [open, close, end] = [startTag.endOffset - 1, from, to - 1].map((offset) => places.at(offset));
  const written = open !== undefined && close !== undefined && end !== undefined && open < close;
  // The parser is believed where the file shows the same.
  if (!written || source[open] !== ">" || source[end] !== ">") return undefined;
  return source.slice(close, close + 2 + given.tagName.length).toLowerCase() === `</${given.tagName}`
    ? [open + 1, close]
    : undefined;
}

const childrenOf = (given: Given): readonly Given[] =>
  "content" in given ? given.content.childNodes : "childNodes" in given ? given.childNodes : [];

/** What is known of a text that was written as HTML to be read. */
export interface Origin {
  /** What the file has. */
  readonly source: string;
  readonly places: Places;
  readonly markdown: boolean;
  readonly expressions: number;
  readonly programs: readonly number[];
}

/**
 * Reads HTML.
 *
 * @param text what is read
 * @param origin where it comes from, where that is not itself
 */
export function readHtml(
  text: string,
  { source = text, places = itself, markdown = false, expressions = 0, programs = [] }: Partial<Origin> = {},
): Article {
  const page = parse(text, { sourceCodeLocationInfo: true, scriptingEnabled: false, treeAdapter: bounded(text) });
  const children: Node[] = [];
  const article: Article = { kind: "article", source, markdown, expressions, programs, parent: undefined, children };
  let order = 0;
  // What has no place of its own stands after what stood before it.
  let last = 0;
  const startOf = (location: Token.Location | null | undefined): number =>
    (last = (location ? places.at(location.startOffset) : undefined) ?? last);
  const open: (readonly [Given, Holder])[] = childrenOf(page)
    .map((child) => [child, article] as const)
    .reverse();
  for (let next = open.pop(); next; next = open.pop()) {
    const [given, parent] = next;
    const location = given.sourceCodeLocation;
    if ("value" in given) {
      const { startOffset = 0, endOffset = 0 } = location ?? {};
      const [lead, own] = [
        /^\s*/.exec(text.slice(startOffset, endOffset))![0].length,
        text.slice(startOffset, endOffset).trim(),
      ];
      const start = startOffset + lead;
      const range = own ? places.stretch(start, start + own.length) : undefined;
      parent.children.push({ kind: "text", value: given.value, parent, start: startOf(location), range });
      continue;
    }
    if (!("tagName" in given)) continue;
    const startTag = given.sourceCodeLocation?.startTag ?? location;
    const element: Element = {
      kind: "element",
      tag: given.tagName,
      attributes: attributesFrom(given.attrs.map(({ name, value }) => [name, value])),
      computed: given.attrs.filter(({ value }) => value === computed).map(({ name }) => name),
      parent,
      children: [],
      order: order++,
      start: startOf(location),
      inside: insideOf(given, source, places),
      isEnded: !!given.sourceCodeLocation?.endTag,
      selfClosed: !!startTag && text.slice(startTag.startOffset, startTag.endOffset).endsWith("/>"),
      foreign: given.namespaceURI !== ourNamespace,
    };
    parent.children.push(element);
    const inner = childrenOf(given);
    for (let n = inner.length; n--;) open.push([inner[n]!, element]);
  }
  return article;
}
