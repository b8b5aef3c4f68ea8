import type { Article, Range } from "./article.js";
import { numbersIn, wordsAround, type WrittenNumber } from "./canonical.js";

/** A stretch of the source, and what is to stand there. */
export interface Edit {
  readonly range: Range;
  readonly text: string;
}

/** How a character is written that means something to a parser or is not seen. */
const reference = (character: string): string =>
  ({ "&": "&amp;", "<": "&lt;", ">": "&gt;", "\u00a0": "&nbsp;" })[character] ?? `&#${character.codePointAt(0)};`;

const html = /[&<>\u00a0\u061c\u200e\u200f\u2009\u202f\u2060]/gu;
const markdown = /[&<>\u00a0\u061c\u200e\u200f\u2009\u202f\u2060\\`*_[\]{}|~$]/gu;

/** A figure as it is written in an article: read, it says the same. */
export const written = (text: string, article: Article): string =>
  text.replace(article.markdown ? markdown : html, reference);

/** The numbers of a stretch of source: those of a character's code are none. */
const numbersInSource = (source: string): readonly WrittenNumber[] =>
  numbersIn(source.replace(/&#?\w+;?/g, (found) => "x".repeat(found.length)));

/**
 * A text with the numbers of another one, everything around them as it was.
 *
 * @param raw the text as it stands in the source
 * @returns nothing where the two differ in more than their numbers
 */
export function withNumbersOf(expected: string, found: string, raw: string, article: Article): string | undefined {
  if (wordsAround(found) !== wordsAround(expected)) return undefined;
  const [wanted, own, inSource] = [numbersIn(expected), numbersIn(found), numbersInSource(raw)];
  if (own.length !== wanted.length || own.length !== inSource.length) return undefined;
  if (own.some(({ text }, n) => text !== inSource[n]!.text)) return undefined;
  let text = "";
  let at = 0;
  inSource.forEach(({ start, written: number, text: canonical }, n) => {
    const other = wanted[n]!;
    text += raw.slice(at, start) + (other.text === canonical ? number : written(other.written, article));
    at = start + number.length;
  });
  return text + raw.slice(at);
}
