import { wideDivisor } from "./divisor.js";
import { fail } from "./errors.js";
import { type RationalInput, rational } from "./rational.js";

/**
 * The whole decimal expansion, with the digits that repeat in parentheses.
 * @param maximumPeriod the most digits that may repeat
 * @throws MeshwrightError `period-too-long`
 *
 * @example
 * import { toRepeating } from "@meshwright/calc/exact";
 * toRepeating("62/15"); // => "4.1(3)"
 */
export function toRepeating(value: RationalInput, maximumPeriod = 1000): string {
  const number = rational(value);
  const { denominator } = number;
  const size = number.abs().numerator;
  // What precedes the period is as long as the larger power of 2 or 5 below the line.
  let before = 0;
  for (let rest = denominator, shared; (shared = wideDivisor(rest, 10n)) > 1n; before++) rest /= shared;
  let rest = size % denominator;
  let first: bigint | undefined;
  let digits = "";
  while (rest && rest !== first) {
    if (digits.length === before) first = rest;
    if (digits.length - before >= maximumPeriod)
      fail("period-too-long", "value", value, `up to ${maximumPeriod} digits`);
    rest *= 10n;
    digits += rest / denominator;
    rest %= denominator;
  }
  const tail = rest ? `${digits.slice(0, before)}(${digits.slice(before)})` : digits;
  return (number.sign < 0 ? "-" : "") + size / denominator + (tail && "." + tail);
}
