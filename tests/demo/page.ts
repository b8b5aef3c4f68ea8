import { readFileSync } from "node:fs";
import { parse, type DefaultTreeAdapterTypes } from "parse5";

export type Element = DefaultTreeAdapterTypes.Element;
type Node = DefaultTreeAdapterTypes.Node;

/** A page of the demo, as its source says. */
export const sourceOf = (path: string): string => readFileSync(new URL(`../../demo/${path}`, import.meta.url), "utf8");

const isElement = (node: Node): node is Element => "tagName" in node;

/** All elements below a node, in the order of the document. */
export function elementsOf(node: Node): Element[] {
  const children = "childNodes" in node ? node.childNodes : [];
  return children.flatMap((child) => [...(isElement(child) ? [child] : []), ...elementsOf(child)]);
}

export const elementsIn = (html: string): Element[] => elementsOf(parse(html));

export const attributesOf = (element: Element): Record<string, string> =>
  Object.fromEntries(element.attrs.map(({ name, value }) => [name, value]));

/** The text below a node, leaving out what `skip` says, its white space as a browser would show it: no-break spaces stay. */
export function textOf(node: Node, skip: (element: Element) => boolean = () => false): string {
  const raw = (one: Node): string => {
    if (one.nodeName === "#text") return (one as DefaultTreeAdapterTypes.TextNode).value;
    if (isElement(one) && skip(one)) return " ";
    return "childNodes" in one ? one.childNodes.map(raw).join("") : "";
  };
  return raw(node)
    .replace(/[ \n\t]+/g, " ")
    .trim();
}
