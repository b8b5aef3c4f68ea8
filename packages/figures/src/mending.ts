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

/** What may be mended. */
interface Mendable {
  readonly edit: Edit | undefined;
  readonly reason: string | undefined;
}

/** Edits that overlap are none: neither of two can be trusted. */
export function withoutCrossings<One extends Mendable>(all: readonly One[]): readonly One[] {
  const edits = all.flatMap(({ edit }) => edit ?? []).sort((one, other) => one.range[0] - other.range[0]);
  const crossed = new Set<Edit>();
  let last: Edit | undefined;
  for (const edit of edits) {
    if (last && (edit.range[0] < last.range[1] || edit.range[0] === last.range[0])) crossed.add(last).add(edit);
    if (!last || edit.range[1] > last.range[1]) last = edit;
  }
  const reason = "another figure stands at the same place";
  return all.map((one) => (one.edit && crossed.has(one.edit) ? { ...one, edit: undefined, reason } : one));
}
