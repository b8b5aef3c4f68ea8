import type { Bounded } from "./bounded.js";
import { ratioOf, type Rational } from "./rational.js";

function simplestBetween(a: bigint, b: bigint, c: bigint, d: bigint): [bigint, bigint] {
  const whole = a / b;
  if (whole * b === a) return [whole, 1n];
  if ((whole + 1n) * d <= c) return [whole + 1n, 1n];
  const [n, m] = simplestBetween(d, c - whole * d, b, a - whole * b);
  return [whole * n + m, n];
}

/** The fraction of smallest denominator (then smallest size) in the interval, by the Stern–Brocot tree. */
export function simplestIn(interval: Bounded): Rational {
  const { low, high } = interval;
  if (low.sign <= 0 && high.sign >= 0) return ratioOf(0, 1);
  if (high.sign < 0) return simplestIn(interval.negate()).negate();
  const [n, m] = simplestBetween(low.numerator, low.denominator, high.numerator, high.denominator);
  return ratioOf(n, m);
}
