import { lengthOf, rational, type Rational } from "../exact/index.js";
import { fill } from "../languages/index.js";
import type { Reporter } from "./speaker.js";

/** Digits of any script, either comma, and either minus, as a number is read. */
export function plainNumber(text: string): string {
  const digits = text
    .normalize("NFKC")
    .trim()
    .replace(/\p{Nd}/gu, (digit) => {
      const own = digit.codePointAt(0)!;
      let zero = own;
      // Every script's digits stand in a row of ten; its first is the one that no other of the row precedes.
      while (/\p{Nd}/u.test(String.fromCodePoint(zero - 1))) zero--;
      return String((own - zero) % 10);
    });
  return digits.replace(/[\u2212\u2013](?=\d)/g, "-").replace(/(\d)\s*[,\u066b]\s*(?=\d)/g, "$1.");
}

const number = String.raw`-?\d{1,15}(?:\.\d{1,15}|/\d{1,15})?`;

/** A number that somebody typed, exactly; nothing where it is none. */
export function typedNumber(text: string): Rational | undefined {
  const plain = plainNumber(text);
  return new RegExp(`^${number}$`).test(plain) && !/\/0+$/.test(plain) ? rational(plain) : undefined;
}

/** A length that somebody typed as `lengthOf` takes it: a bare number is in the unit of the field. */
export function typedLength(text: string, unit: string): string | undefined {
  const [, size, own = unit] =
    /^(\S+?)\s*(mm|cm|m|in|ft)?$/.exec(plainNumber(text).replace(/\s*(?:["\u201d\u2033]|\u2032\u2032|'')$/, " in")) ??
    [];
  if (!size || !new RegExp(`^${number}$`).test(size) || /\/0+$/.test(size)) return undefined;
  const length = `${size} ${own}`;
  return lengthOf(length).sign > 0 ? length : undefined;
}

/** One whole number, or two with a word or a stroke between, the lesser first; nothing where it is neither. */
export function typedCounts(text: string): readonly [from: number, to: number] | undefined {
  const [, from, to = from] = /^(\d{1,4})(?:\D{1,12}(\d{1,4}))?$/.exec(plainNumber(text)) ?? [];
  const [low, high] = [Number(from), Number(to)];
  return from && low >= 1 && low <= high ? [low, high] : undefined;
}

/** What was found in a field, and what is expected there. */
export const faultText = (
  { reports }: Pick<Reporter, "reports">,
  found: string,
  expected: Exclude<keyof Reporter["reports"]["typed"], "found" | "reversed">,
): string => fill(reports.typed.found, found.trim().slice(0, 40), reports.typed[expected]);
