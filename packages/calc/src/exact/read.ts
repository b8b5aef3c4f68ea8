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
const cap = 4000;

const pattern = /^([+-]?)(?:(\d+)\/(\d+)|(?=[.,]?\d)(\d*)(?:[.,](\d*))?(?:[eE]([+-]?\d+))?)$/;

/**
 * Numerator and denominator, the latter above zero, perhaps not reduced.
 * Reads what nearly every number looks like, up to 15 characters with a point or a slash among them, in one pass.
 * It accepts nothing that the pattern refuses; whatever it does not know is left to the pattern.
 */
export function readShort(text: string): [number, number] | undefined {
  const { length } = text;
  const start = text.charCodeAt(0) === 45 ? 1 : 0;
  let top = -1;
  let number = 0;
  let scale = 0;
  let digit = -1;
  for (let index = start; index < length; index++) {
    digit = text.charCodeAt(index) - 48;
    if (digit >= 0 && digit <= 9) {
      number = number * 10 + digit;
      scale *= 10;
    } else if (index === start || scale > 0 || top >= 0 || length > 15) return undefined;
    else if (digit === -2) scale = 1;
    else if (digit === -1) {
      top = number;
      number = 0;
    } else return undefined;
  }
  if (digit < 0 || length > 15) return undefined;
  if (top < 0) return [start ? -number : number, scale || 1];
  return number > 0 ? [start ? -top : top, number] : undefined;
}

/** The same for any text, by the pattern. */
export function readText(text: string, at: string, locale: string | undefined): [bigint, bigint] {
  if (text.length > cap) fail("too-long", at, text.length, `at most ${cap} characters`);
  const match = pattern.exec(text);
  if (!match) fail("not-a-number", at, text, 'a number such as "2.6" or "62/15"');
  const [, sign, top, bottom, whole, fraction = "", power = 0] = match;
  if (text.includes(",") && !(locale && numberFormat(locale).format(1.5).includes(",")))
    fail("decimal-comma", at, text, "a decimal point, or a locale that writes a comma");
  const signed = (digits: string): bigint => BigInt(digits) * (sign === "-" ? -1n : 1n);
  if (top) {
    const divisor = BigInt(bottom!);
    if (!divisor) fail("zero-denominator", at, text, "a denominator above 0");
    return [signed(top), divisor];
  }
  if (Math.abs(Number(power)) > cap) fail("exponent-too-large", at, text, `an exponent of at most ${cap} either way`);
  const shift = Number(power) - fraction.length;
  return [signed(whole! + fraction) * 10n ** BigInt(Math.max(shift, 0)), 10n ** BigInt(Math.max(-shift, 0))];
}
