import type { Bounded } from "./bounded.js";
import { type Rational, ratioOf } from "./rational.js";

/**
 * The simplest fraction in an interval: of all that lie in it the one with the smallest denominator, then the smallest
 * numerator. It is found by going down the Stern–Brocot tree, a whole run of steps to one side at a time.
 *
 * @example
 * import { bounded, simplestIn } from "@meshwright/calc/exact";
 * simplestIn(bounded("2.735", "2.745")).toFraction(); // => "52/19"
 */
export function simplestIn(interval: Bounded): Rational {
  const { low, high } = interval;
  if (high.sign < 0) return simplestIn(interval.negate()).negate();
  if (low.sign <= 0) return ratioOf(0, 1);
  let [a, b, c, d] = [low.numerator, low.denominator, high.numerator, high.denominator];
  let [n, m, p, q] = [0n, 1n, 1n, 0n];
  for (;;) {
    const up = (a + b - 1n) / b;
    if (up * d <= c) return ratioOf(up * p + n, up * q + m);
    const down = up - 1n;
    [n, m, p, q] = [p, q, down * p + n, down * q + m];
    [a, b, c, d] = [d, c - down * d, b, a - down * b];
  }
}
