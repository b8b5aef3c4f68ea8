import { isRightToLeft } from "@meshwright/calc/languages";

/** A name, word or unit in Latin letters, with what belongs to it: a number and its sign before it, digits and commas inside. */
const latin =
  /(?:[+\u2212-]?[\d٠-٩](?:[\d٠-٩.,٫٬]*[\d٠-٩])?[ \u00a0\u202f]?)?[A-Za-z\u00c0-\u024f](?:[A-Za-z\u00c0-\u024f\d ,.'’/&()-]*[A-Za-z\u00c0-\u024f\d)])?/g;
const isolated = /\u2068[^\u2069]*\u2069/g;

/** A text of a language that runs from the right, in which each name and unit of ours stands for itself, as `bdi` would have it. */
function isolatedText(text: string): string {
  let result = "";
  let from = 0;
  for (const { 0: known, index } of text.matchAll(isolated)) {
    result += text.slice(from, index).replace(latin, "\u2068$&\u2069") + known;
    from = index + known.length;
  }
  return result + text.slice(from).replace(latin, "\u2068$&\u2069");
}

/**
 * Sets the names that stand among words apart, wherever something was drawn in a language that runs from the right: else commas,
 * signs and dates beside them change places. What is drawn next time comes as it was said, and is set apart anew.
 */
export function isolateNames(root: ParentNode & Node, locale: string): void {
  if (!isRightToLeft(locale)) return;
  const texts = root.ownerDocument!.createTreeWalker(root, NodeFilter.SHOW_TEXT);
  for (let node = texts.nextNode() as Text | null; node; node = texts.nextNode() as Text | null) {
    if (node.parentElement?.localName === "style") continue;
    const text = isolatedText(node.data);
    if (text !== node.data) node.data = text;
  }
}
