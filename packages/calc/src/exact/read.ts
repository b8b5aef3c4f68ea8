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

const pattern = /^([+-]?)(?:(\d+)\/(\d+)|(?=[.,]?\d)(\d*)(?:[.,](\d*))?(?:[eE]([+-]?\d+))?)$/;

// How far they are from the digit 0.
const slash = -1;
const dot = -2;

/**
 * Numerator and denominator, the latter above zero, perhaps not reduced.
 * Reads what nearly every number looks like, up to 15 characters with a point or a slash among them, in one pass.
 * It accepts nothing that the pattern refuses; whatever it does not know is left to the pattern.
 */
export function readShort(text: string): [number, number] | undefined {
  if (text.length > 15) return undefined;
  let top = 0;
  let number = 0;
  let scale = 0;
  let mark = 0;
  let digit = -1;
  for (let index = 0; index < text.length; index++) {
    digit = text.charCodeAt(index) - 48;
    if (digit >= 0 && digit < 10) {
      number = number * 10 + digit;
      scale *= 10;
    } else {
      if (mark || !index || (digit !== slash && digit !== dot)) return undefined;
      mark = digit;
      if (mark === dot) scale = 1;
      else {
        top = number;
        number = 0;
      }
    }
  }
  if (digit < 0) return undefined;
  if (mark !== slash) return [number, scale || 1];
  return number ? [top, number] : undefined;
}

/** The same for any text, by the pattern. */
export function readText(text: string, at: string, locale: string | undefined): [bigint, bigint] {
  if (text.length > cap) fail("too-long", at, text.length, `up to ${cap} characters`);
  const match = pattern.exec(text);
  if (!match) fail("not-a-number", at, text, 'a number such as "2.6" or "62/15"');
  const [, sign, top, bottom, whole, fraction = "", power = 0] = match;
  if (text.includes(",") && !(locale && numberFormat(locale).format(1.5).includes(",")))
    fail("decimal-comma", at, text, "a decimal point, or a locale with a comma");
  const signed = (digits: string): bigint => BigInt(digits) * (sign === "-" ? -1n : 1n);
  if (top) {
    const divisor = BigInt(bottom!);
    if (!divisor) fail("zero-denominator", at, text, "another denominator");
    return [signed(top), divisor];
  }
  if (Math.abs(Number(power)) > cap) fail("exponent-too-large", at, text, `an exponent up to ${cap}`);
  const shift = Number(power) - fraction.length;
  return [signed(whole! + fraction) * 10n ** BigInt(Math.max(shift, 0)), 10n ** BigInt(Math.max(-shift, 0))];
}
