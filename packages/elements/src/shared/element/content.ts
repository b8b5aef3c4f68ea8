/** Whether there is a digit of any script. What a browser has to look up in its tables of scripts is asked last: it takes time. */
const hasDigit = (text: string): boolean => /\d/.test(text) || (/[^\0-\x7f]/.test(text) && /\p{Nd}/u.test(text));
const wholeBlocks = /^(TABLE|FIGURE|DL|OL|UL|IMG|PICTURE|SVG|DETAILS)$/i;
// Machine translation wraps text in FONT.
const phrasing =
  /^(A|ABBR|B|BDI|BDO|CITE|CODE|DATA|DEL|DFN|EM|FONT|I|INS|KBD|MARK|OUTPUT|Q|S|SAMP|SMALL|SPAN|STRONG|SUB|SUP|U|VAR|WBR)$/i;

/** The content of an element that means something: no comments, no blank text, none of the empty lines that editors add. */
const meaning = (element: Element): readonly ChildNode[] =>
  [...element.childNodes].filter((node) =>
    node.nodeType === 1
      ? !/^(SCRIPT|STYLE|TEMPLATE|BR)$/.test(node.nodeName) &&
        !(node.nodeName === "P" && !node.textContent!.trim() && !(node as Element).firstElementChild)
      : node.nodeType === 3 && node.textContent!.trim(),
  );

/**
 * Whether the content of an inline element stands for its value. It does where it is short phrasing of the same nature:
 * with a figure in it where the value has one. Anything else is prose that a self-closed tag has swallowed, and stays.
 *
 * @param value what the element would show for the author's own build
 */
export function standsForValue(element: Element, value: string): boolean {
  const nodes = meaning(element);
  if (!nodes.every((node) => node.nodeType === 3 || phrasing.test(node.nodeName))) return false;
  const text = element.textContent!;
  const bare = text.trim();
  if (!bare) return true;
  // "<x-y/> turns of the motor": what follows a self-closed tag begins with a space or with the sentence's own stop.
  if (/^\s*[,.;:!?)\]]/.test(text) || (text.startsWith(" ") && /^ \p{L}/u.test(text))) return false;
  return hasDigit(bare) === hasDigit(value) && bare.length <= 2 * value.length + 12;
}

/**
 * Whether the content of a block element stands for it: one table, list, figure or picture, or one short line with a
 * figure in it.
 */
export function standsForBlock(element: Element): boolean {
  const nodes = meaning(element);
  const [only] = nodes;
  if (!only) return true;
  if (nodes.length === 1 && wholeBlocks.test(only.nodeName)) return true;
  const text = element.textContent!.trim();
  const inline = nodes.every((node) => node.nodeType === 3 || phrasing.test(node.nodeName));
  return (
    (inline || (nodes.length === 1 && only.nodeName === "P")) &&
    text.length <= 200 &&
    hasDigit(text) &&
    !/^[,.;:!?)\]]/.test(text)
  );
}
