import { MeshwrightError } from "./errors.js";
import { type RationalInput, rational } from "./rational.js";

/**
 * The whole decimal expansion, with the digits that repeat in parentheses: `"4.1(3)"`.
 * @throws MeshwrightError `period-too-long` where more than `maximumPeriod` digits repeat.
 */
export function toRepeating(value: RationalInput, maximumPeriod = 1000): string {
  const x = rational(value);
  const denominator = x.denominator;
  const size = x.abs().numerator;
  let rest = denominator;
  let before = 0;
  for (const prime of [2n, 5n]) {
    let count = 0;
    while (rest % prime === 0n) {
      rest /= prime;
      count++;
    }
    before = Math.max(before, count);
  }
  let period = 0;
  if (rest > 1n) {
    let remainder = 1n;
    do {
      if (++period > maximumPeriod)
        throw new MeshwrightError("period-too-long", "value", `More than ${maximumPeriod} digits repeat.`);
      remainder = (remainder * 10n) % rest;
    } while (remainder !== 1n);
  }
  const sign = x.sign < 0 ? "-" : "";
  const whole = `${sign}${size / denominator}`;
  if (before + period === 0) return whole;
  const digits = (((size % denominator) * 10n ** BigInt(before + period)) / denominator)
    .toString()
    .padStart(before + period, "0");
  return `${whole}.${digits.slice(0, before)}${period ? `(${digits.slice(before)})` : ""}`;
}
