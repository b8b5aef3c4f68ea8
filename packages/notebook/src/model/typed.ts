import { lengthOf, rational } from "@meshwright/calc/exact";

// Numbers as people type them. A comma is a decimal sign as well, and where it or a point may set thousands apart nobody guesses.

/** Why a number cannot be told from one of thousands, as a question; nothing where it can. */
export function thousandsFault(typed: string): string | undefined {
  const [, number] = /^([1-9]\d{0,2}(?:[.,]\d{3})+)(?:\s*[a-z]+)?$/.exec(typed.trim()) ?? [];
  if (number === undefined) return undefined;
  const whole = number.replace(/[.,]/g, "");
  const isOne = number.length === whole.length + 1;
  const small = isOne ? rational(number.replace(",", ".")).toDecimal({ maximumFractionDigits: 3 }) : undefined;
  return small === undefined
    ? `Found “${number}”; expected it without the marks between thousands, as ${whole}.`
    : `Found “${number}”, which may be ${small} or ${whole}; expected the one that is meant, written so.`;
}

/** The same of a length: three places after a point are common in one, and a comma before three digits may be either. */
export const lengthFault = (typed: string): string | undefined =>
  typed.includes(",") ? thousandsFault(typed) : undefined;

/** A number as it was typed, with a point as its decimal sign. */
export const withPoint = (typed: string): string => typed.trim().replace(/^(\d*),(\d+)/, "$1.$2");

/** A length as it was typed, in millimetres where it has no unit; nothing where it is none, or not above 0. */
export function typedLength(typed: string): string | undefined {
  const text = withPoint(typed);
  if (lengthFault(typed)) return undefined;
  const length = /^[\d./]+$/.test(text) ? `${text} mm` : text;
  try {
    return lengthOf(length).compare(0) > 0 ? length : undefined;
  } catch {
    return undefined;
  }
}
