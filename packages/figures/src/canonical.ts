/**
 * A text as it is compared: engines and years differ in the spaces and signs that they write around the same digits.
 */
export const canonical = (text: string): string =>
  text
    .normalize("NFKC")
    .replace(/[\u2212\u2013\u2012]/g, "-")
    .replace(/[\u200e\u200f\u061c]/g, "")
    .replace(/\s+/g, " ")
    .replace(/ ?([%°])/g, "$1")
    .trim();

/** A number in a text. */
export interface WrittenNumber {
  /** As it stands there. */
  readonly written: string;
  /** As it is compared. */
  readonly text: string;
  /** With digits behind a point or a comma, or a percentage: a figure rather than a count. */
  readonly decimal: boolean;
}

/** The numbers of a text, in their order. */
export const numbersIn = (text: string): readonly WrittenNumber[] =>
  [...text.matchAll(/[-\u2212]?\p{Nd}+(?:[.,\u066b]\p{Nd}+)*(?:[\s\u00a0\u202f]?[%\u066a])?/gu)].map(([written]) => ({
    written,
    text: canonical(written),
    decimal: /[.,%\u066a\u066b]/.test(written),
  }));
