import { fromMarkdown } from "mdast-util-from-markdown";
import { defaultTreeAdapter as tree, parse, type DefaultTreeAdapterTypes } from "parse5";

export type Node = DefaultTreeAdapterTypes.Node;
export type Element = DefaultTreeAdapterTypes.Element;
export type TextNode = DefaultTreeAdapterTypes.TextNode;

interface MarkdownNode {
  readonly type: string;
  readonly position?: { readonly start: { readonly offset?: number }; readonly end: { readonly offset?: number } };
  readonly children?: readonly MarkdownNode[];
}

const blank = (text: string): string => text.replace(/[^\r\n]/g, " ");

/** Front matter, code and bare addresses are not the page's markup: blanked out, every other character where it was. */
function maskMarkdown(text: string): string {
  const front = /^\uFEFF?---\r?\n[\s\S]*?\r?\n---(?=\r?\n|$)/.exec(text)?.[0] ?? "";
  let masked = blank(front) + text.slice(front.length);
  const mask = (node: MarkdownNode): void => {
    const [start, end] = [node.position?.start.offset, node.position?.end.offset];
    const bare = node.type === "link" && start !== undefined && masked[start] === "<";
    if (start !== undefined && end !== undefined && (node.type === "code" || node.type === "inlineCode" || bare))
      masked = masked.slice(0, start) + blank(masked.slice(start, end)) + masked.slice(end);
    else node.children?.forEach(mask);
  };
  mask(fromMarkdown(masked) as MarkdownNode);
  return masked;
}

/** The markup of a page, with the place of everything in the text. */
export const markupOf = (text: string, markdown: boolean): DefaultTreeAdapterTypes.Document =>
  parse(markdown ? maskMarkdown(text) : text, { sourceCodeLocationInfo: true });

export const isElement = (node: Node): node is Element => tree.isElementNode(node);
export const isText = (node: Node): node is TextNode => tree.isTextNode(node);

/** The nodes inside a node, those of a template too. */
export const childrenOf = (node: Node): readonly Node[] =>
  "content" in node ? node.content.childNodes : "childNodes" in node ? node.childNodes : [];

/** Every element below a node, in the order of the document. */
export function* elementsIn(node: Node): Generator<Element> {
  for (const child of childrenOf(node)) {
    if (isElement(child)) yield child;
    yield* elementsIn(child);
  }
}

/** Every text below a node. */
export function* textsIn(node: Node): Generator<TextNode> {
  for (const child of childrenOf(node)) {
    if (isText(child)) yield child;
    else if (!isElement(child) || !/^(script|style|template)$/.test(child.tagName)) yield* textsIn(child);
  }
}

export const textOf = (node: Node): string => [...textsIn(node)].map((text) => text.value).join("");

export const attributeOf = (element: Element, name: string): string | undefined =>
  element.attrs.find((one) => one.name === name)?.value;

/** What stands around a node, from the inside out. */
export function* around(node: Node): Generator<Node> {
  for (
    let at = tree.getParentNode(node as Element) as Node | null;
    at;
    at = tree.getParentNode(at as Element) as Node | null
  )
    yield at;
}
