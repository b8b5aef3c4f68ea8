import { enclosing, hasInside, textOf, textsIn, type Article, type Element } from "./article.js";
import { canonical, hasDigit, numbersIn, runsOfWordsIn, signsIn, wordsIn } from "./canonical.js";
import { figurePhrases, type Expected } from "./expected.js";
import { withNumbersOf, written, type Edit } from "./mending.js";

const phrasing = new Set(
  "a abbr b bdi bdo br cite code data del dfn em font i ins kbd mark output q s samp small span strong sub sup u var wbr".split(
    " ",
  ),
);

/**
 * Whether a text is short phrasing of a figure's nature, as the page judges it: anything else is prose that stands there by
 * mistake.
 */
function isPhrasing(element: Element, expected: string): boolean {
  if (hasInside(element, ({ tag }) => !phrasing.has(tag))) return false;
  const bare = textOf(element);
  const text = [...textsIn(element)].map(({ value }) => value).join("");
  if (/^[,.;:!?)\]]/.test(bare) || /^ \p{L}/u.test(text)) return false;
  return hasDigit(bare) === hasDigit(expected) && bare.length <= 2 * expected.length + 12;
}

/** Whether words are nothing but some of these phrases, one behind the other. */
function isMadeOf(words: readonly string[], known: readonly (readonly string[])[]): boolean {
  for (let at = 0; at < words.length;) {
    const fitting = known.filter((phrase) => phrase.length && phrase.every((word, n) => word === words[at + n]));
    if (!fitting.length) return false;
    at += Math.max(...fitting.map(({ length }) => length));
  }
  return true;
}

const figureSigns = /[%‰°+/·×→~～\p{Dash}\p{Cf}]/u;

/** Whether nothing stands in a text that a figure could not have: no other words, no stops, no second number beside the first. */
function isFigure(found: string, expected: string, locale: string): boolean {
  const own = wordsIn(found);
  const phrases = figurePhrases(locale).map(wordsIn);
  if (!isMadeOf(own, [...phrases, ...runsOfWordsIn(expected)])) return false;
  const signs = new Set(signsIn(expected));
  if (!signsIn(found).every((sign) => signs.has(sign) || figureSigns.test(sign))) return false;
  const numbers = numbersIn(found).length;
  return numbers < 2 || own.length > 0 || numbers === numbersIn(expected).length;
}

/** Whether a program works out something of what an element says. */
export function hasExpression({ inside }: Element, { programs }: Article): boolean {
  if (!inside) return false;
  let [low, high] = [0, programs.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (programs[middle]! < inside[0]) low = middle + 1;
    else high = middle;
  }
  return low < programs.length && programs[low]! < inside[1];
}

/** Why nothing can be written between an element's tags. */
export const unclosed = (what: string, { isEnded }: Element): string =>
  isEnded ? `where ${what} stands in the file is not clear` : `${what} has no end tag of its own`;

/**
 * What is to be written so that an element in a sentence says a text; or why nothing is.
 *
 * @param isText whether an element is one of those in a sentence: inside one of them none is mended
 */
export function mendInline(
  element: Element,
  { texts: [expected], locale }: Extract<Expected, { kind: "text" }>,
  article: Article,
  isText: (other: Element) => boolean,
): Edit | string {
  const { inside } = element;
  if (element.selfClosed) return "it closes itself, so what follows may not be its own";
  if (!inside) return unclosed("it", element);
  if (hasInside(element, ({ tag }) => tag.startsWith("mw-"))) return "another element stands in it";
  if (enclosing(element, isText)) return "it stands in another figure";
  const { source } = article;
  if (hasExpression(element, article)) return "a program works out what stands in it";
  const found = textOf(element);
  if (!found) {
    if (source.slice(...inside).trim()) return "something else stands in it";
    return { range: inside, text: written(expected, article) };
  }
  if (!isPhrasing(element, expected) || !isFigure(found, expected, locale))
    return "what stands in it is more than a figure";
  const [text, ...more] = [...textsIn(element)].filter(({ value }) => value.trim());
  const range = text?.range;
  // In one piece, and nothing in it that is not read.
  if (more.length || !range || /[<>]/.test(source.slice(...range))) return "it is written in several pieces";
  const raw = source.slice(...range);
  return { range, text: withNumbersOf(expected, found, raw, article) ?? written(expected, article) };
}

export const saysAnyOf = (element: Element, texts: readonly string[]): boolean =>
  texts.some((one) => canonical(one) === canonical(textOf(element)));
