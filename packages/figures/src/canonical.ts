/**
 * A text as it is compared: engines and years differ in the spaces and signs that they write around the same digits.
 */
export const canonical = (text: string): string =>
  text
    .normalize("NFKC")
    .replace(/[\u2212\u2013\u2012]/g, "-")
    .replace(/[\u200b\u200e\u200f\u2060\u061c\ufeff]/g, "")
    .replace(/\s+/g, " ")
    .replace(/ ?([%°])/g, "$1")
    .trim();

/** A number in a text. */
export interface WrittenNumber {
  readonly start: number;
  /** As it stands there. */
  readonly written: string;
  /** As it is compared. */
  readonly text: string;
  /** With digits behind a point or a comma, or a percentage: a figure rather than a count. */
  readonly decimal: boolean;
}

// A sign behind a digit or a letter is a dash.
const number = /(?:(?<![\p{Nd}\p{L}])[-\u2212\u2013+])?\p{Nd}+(?:[.,\u066b\u066c]\p{Nd}+)*/gu;
const percent = /^\s?[%\u066a]/;

/** The numbers of a text, in their order. */
export const numbersIn = (text: string): readonly WrittenNumber[] =>
  [...text.matchAll(number)].map((found) => ({
    start: found.index,
    written: found[0],
    text: canonical(found[0]),
    decimal: /[.,\u066b\u066c]/.test(found[0]) || percent.test(text.slice(found.index + found[0].length)),
  }));

/** A text without its numbers, as it is compared. */
export const wordsAround = (text: string): string => canonical(text.replace(number, "\ue000"));

/** The words of a text, units among them. */
export const wordsIn = (text: string): readonly string[] => text.toLowerCase().match(/\p{L}[\p{L}\p{M}'’-]*/gu) ?? [];

/** The words of a text, those between two numbers together. */
export const runsOfWordsIn = (text: string): readonly (readonly string[])[] => text.split(number).map(wordsIn);

/** What is neither number nor word nor blank in a text. */
export const signsIn = (text: string): readonly string[] =>
  [...text.replace(number, " ")].filter((one) => !/[\p{L}\p{M}\s]/u.test(one));

/** Whether there is a digit, of any script. */
export const hasDigit = (text: string): boolean => /\p{Nd}/u.test(text);
