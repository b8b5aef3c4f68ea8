/** What stands inside an element: a text, or an element of some name with all its text. */
export interface Content {
  /** The element's name in small letters; empty for a text. */
  readonly tag: string;
  readonly text: string;
  /** Whether elements stand inside it. */
  readonly holds?: boolean | undefined;
}

/** Whether there is a digit of any script. What has to be looked up in tables of scripts is asked last: it takes time. */
export const hasDigit = (text: string): boolean => /\d/.test(text) || (/[^\0-\x7f]/.test(text) && /\p{Nd}/u.test(text));
const onlyFigure = /^[^\p{L}\s]?\p{Nd}[\p{Nd}.,]*\s?(%|\p{L}{1,3})?$/u;
const unread = /^(script|style|template|br)$/;
// Machine translation wraps text in FONT.
export const phrasing =
  /^(|a|abbr|b|bdi|bdo|cite|code|data|del|dfn|em|font|i|ins|kbd|mark|output|q|rb|rp|rt|ruby|s|samp|small|span|strong|sub|sup|time|u|var|wbr)$/;

/** What means something: no blank text, none of the empty lines that editors add, nothing that nobody reads. */
export const meaning = (inside: readonly Content[]): readonly Content[] =>
  inside.filter(({ tag, text, holds }) =>
    tag ? !unread.test(tag) && !(tag === "p" && !holds && !text.trim()) : text.trim(),
  );

export const textOf = (inside: readonly Content[]): string =>
  inside.map(({ tag, text }) => (/^(script|style|template)$/.test(tag) ? "" : text)).join("");

/**
 * Whether the content of an inline element stands for its value. It does where it is short phrasing of the same nature:
 * with a figure in it where the value has one, or nothing but a figure. Anything else is prose that a self-closed tag has
 * swallowed, and stays.
 *
 * @param value what the element would show for the author's own build
 *
 * @example
 * standsForValue([{ tag: "", text: "43.32" }], "43.32"); // => true
 * standsForValue([{ tag: "", text: " turns of the motor" }], "43.32"); // => false
 */
export function standsForValue(inside: readonly Content[], value: string): boolean {
  const text = textOf(inside);
  const bare = text.trim();
  // Whatever stands around it, a figure alone is no prose.
  if (onlyFigure.test(bare)) return true;
  if (!meaning(inside).every(({ tag }) => phrasing.test(tag))) return false;
  if (!bare) return true;
  // "<x-y/> turns of the motor": what follows a self-closed tag begins with a space or with the sentence's own stop.
  if (/^\s*[,.;:!?)\]]/.test(text) || (text.startsWith(" ") && /^ \p{L}/u.test(text))) return false;
  return hasDigit(bare) === hasDigit(value) && bare.length <= 2 * value.length + 12;
}
