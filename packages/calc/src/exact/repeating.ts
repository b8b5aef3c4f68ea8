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
  // What precedes the period is as long as the larger power of 2 or 5 below the line; the rest says when digits recur.
  let rest = denominator;
  let before = 0;
  for (; rest % 10n === 0n; before++) rest /= 10n;
  for (const prime of [2n, 5n]) for (; rest % prime === 0n; before++) rest /= prime;
  let period = 0;
  for (let power = 1n; rest > 1n && (!period || power > 1n); period++) {
    if (period >= maximumPeriod)
      fail("period-too-long", "value", String(number), `at most ${maximumPeriod} digits that repeat`);
    power = (power * 10n) % rest;
  }
  const digits = String((size * 10n ** BigInt(before + period)) / denominator).padStart(before + period + 1, "0");
  const whole = digits.length - before - period;
  const text = (number.sign < 0 ? "-" : "") + digits.slice(0, whole);
  const fraction = digits.slice(whole, whole + before) + (period ? `(${digits.slice(whole + before)})` : "");
  return fraction ? `${text}.${fraction}` : text;
}
