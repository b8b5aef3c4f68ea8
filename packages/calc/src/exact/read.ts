import { fail } from "./errors.js";
import { numberFormat } from "./locale.js";

/** How a number is read. */
export interface ReadOptions {
  /** Reads a decimal comma too, where this locale (a BCP 47 tag) writes one. */
  readonly locale?: string | undefined;
  /** What an error gives as its `at`; `"input"` where nothing is stated. */
  readonly at?: string | undefined;
}

/** The longest text, and the largest exponent either way. */
const cap = 2000;

const pattern = /^([+-]?)(?:(\d+)\/(\d+)|(?=[.,]?\d)(\d*)(?:[.,](\d*))?(?:e([+-]?\d+))?)$/i;

/** Numerator and denominator, the latter above zero, perhaps not reduced. */
export function readText(
  text: string,
  at: string,
  locale: string | undefined,
): readonly [number | bigint, number | bigint] {
  if (text.length > cap) fail("too-long", at, text.length, `up to ${cap} characters`);
  const match = pattern.exec(text);
  if (!match) fail("not-a-number", at, text, "a number such as 2.6 or 62/15");
  const [, sign, top, bottom, whole, fraction = "", power = 0] = match;
  if (text.includes(",") && !(locale && numberFormat(locale).format(1.5).includes(",")))
    fail("decimal-comma", at, text, "a point, or a locale with a comma");
  // Operators mean the same for both; nearly every number is short, and plain ones are several times as fast.
  const cast = (power || text.length > 15 ? BigInt : Number) as NumberConstructor;
  const signed = (digits: string): number => cast(digits) * cast(sign === "-" ? -1 : 1);
  if (top) {
    const divisor = cast(bottom!);
    if (!divisor) fail("zero-denominator", at, text, "another denominator");
    return [signed(top), divisor];
  }
  if (Math.abs(+power) > cap) fail("exponent-too-large", at, text, `an exponent up to ${cap}`);
  const shift = +power - fraction.length;
  const tens = (exponent: number): number => cast(10) ** cast(Math.max(exponent, 0));
  return [signed(whole! + fraction) * tens(shift), tens(-shift)];
}
