import { lengthOf, MeshwrightError, rational, type Rational } from "../exact/index.js";
import type { Numeric } from "./toothed.js";

/** As many teeth as a document takes. */
const mostTeeth = 1_000_000;

/**
 * Lengths and figures beyond this, either way, are slips: their squares must stay plain numbers. Far below a document's
 * smallest length and far above its largest.
 */
const [smallest, largest] = [1e-16, 1e16];

/** Throws "Found this; expected that." */
export function refuse(code: string, at: string, found: unknown, expected: string): never {
  throw new MeshwrightError(code, at, `Found ${String(found).slice(0, 40)}; expected ${expected}.`);
}

/**
 * A count of teeth, starts, links or holes, or an error.
 *
 * @throws MeshwrightError `not-a-count`
 *
 * @example
 * checkTeeth(15, "driver"); // => 15
 * checkTeeth(15.5, "driver"); // throws not-a-count
 */
export function checkTeeth(teeth: number, at = "teeth"): number {
  if (Number.isInteger(teeth) && teeth > 0 && teeth <= mostTeeth) return teeth;
  return refuse("not-a-count", at, `${teeth} teeth`, `a whole number from 1 to ${mostTeeth}`);
}

/** A fraction that is above zero and no slip. */
export function checkAbove(value: Rational, at: string, what = "a number"): Rational {
  const size = value.toNumber();
  if (size >= smallest && size <= largest) return value;
  return refuse("out-of-range", at, size, `${what} above 0`);
}

/** A fraction that is no slip, on either side of zero. */
export function checkFinite(value: Rational, at: string, what = "a number"): Rational {
  const size = value.toNumber();
  if (Math.abs(size) <= largest) return value;
  return refuse("out-of-range", at, size, `${what} that can be made`);
}

/** A length above zero, in millimetres. */
export const sizeOf = (text: string | number, at: string): Rational => checkAbove(lengthOf(text, at), at, "a length");

/** A length on either side of zero, in millimetres. */
export const finiteOf = (text: string | number, at: string): Rational =>
  checkFinite(lengthOf(text, at), at, "a length");

/** A length from zero, in millimetres. */
export function depthOf(text: string | number, at: string): Rational {
  const length = finiteOf(text, at);
  return length.sign < 0 ? refuse("out-of-range", at, text, "a length from 0") : length;
}

/** An angle in degrees between two others, ends included. */
export function angleOf(angle: Numeric, from: number, to: number, at: string): Rational {
  const degrees = rational(angle, { at });
  const size = degrees.toNumber();
  return size >= from && size <= to ? degrees : refuse("out-of-range", at, angle, `${from} to ${to} degrees`);
}

/** A plain number for a drawing, that is no slip: above zero, or on either side of it. */
export function checkNumber(value: number, at: string, side: "above 0" | "either side" = "above 0"): number {
  const size = side === "above 0" ? value : Math.abs(value);
  if (size <= largest && (side !== "above 0" || size >= smallest)) return value;
  return refuse("out-of-range", at, value, side === "above 0" ? "a number above 0" : "a finite number");
}
