import { fail } from "./errors.js";
import { type Rational, rational } from "./rational.js";

const millimetres = { mm: 1, cm: 10, m: 1000, in: 25.4, ft: 304.8 };

/**
 * A length in millimetres, exactly. An inch is 25.4 mm (international yard and pound agreement, 1959).
 * @param text a number as {@link rational} reads it and one of mm, cm, m, in, ft: `"118 mm"`, `"4.65 in"`, `"1/8 in"`, with
 * white space of any kind; a JS number is in millimetres
 * @param at what an error gives as its `at`
 * @throws MeshwrightError `not-a-length`, and what {@link rational} throws
 *
 * @example
 * import { lengthOf } from "@meshwright/calc/exact";
 * lengthOf("4.65 in").toDecimal(); // => "118.11"
 * lengthOf("1/8 in").toFraction(); // => "127/40"
 */
export function lengthOf(text: string | number, at = "length"): Rational {
  if (typeof text === "number") return rational(text, { at });
  const [, number, unit] = /^\s*(\S{1,99}?)\s*(mm|cm|m|in|ft)\s*$/.exec(text) ?? [];
  return number
    ? rational(number, { at }).times(millimetres[unit as "mm"])
    : fail("not-a-length", at, text, "a length in mm, cm, m, in or ft");
}
