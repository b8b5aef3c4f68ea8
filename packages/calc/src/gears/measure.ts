import { bounded, ratioOf, type Bounded, type Rational } from "../exact/index.js";
import { refuse } from "./check.js";

/** Floating point, good to about twelve digits: geometry with angles does not stay a fraction. */
export type Approximate = number;

/** The interval that a floating-point result certainly stands for: a part in 10^11 either way. */
export function enclose(value: Approximate): Bounded {
  const middle = bounded(value.toPrecision(14));
  return middle.plus(middle.abs().times(bounded("-1e-11", "1e-11")));
}

function integerRoot(square: bigint): bigint {
  if (square <= 0n) return 0n;
  // Newton's method from above: falls until it has arrived.
  let root = 1n << BigInt(square.toString(16).length * 2);
  for (;;) {
    const next = (root + square / root) >> 1n;
    if (next >= root) return root;
    root = next;
  }
}

/**
 * The square root: exact where it is a fraction, else between two that agree to 20 decimals. Of what may lie below zero, the
 * root of the rest.
 *
 * @throws MeshwrightError `out-of-range` where all of it lies below zero
 */
export function rootOf(square: Bounded): Bounded {
  if (square.high.sign < 0) refuse("out-of-range", "square", square.high, "0 or more");
  const root = ({ numerator, denominator }: Rational, up: bigint): Rational => {
    // √(n / d) = √(n d) / d; a square has its root among the fractions with that denominator.
    const product = numerator * denominator;
    const exact = integerRoot(product);
    if (exact * exact === product) return ratioOf(exact, denominator);
    const scale = 10n ** 20n;
    return ratioOf(integerRoot(product * scale * scale) + up, denominator * scale);
  };
  return bounded(root(square.low, 0n), root(square.high, 1n));
}

/** The whole number at or below. */
export function floorOf({ numerator, denominator }: Rational): number {
  const rest = ((numerator % denominator) + denominator) % denominator;
  return Number((numerator - rest) / denominator);
}

/** The whole number at or above. */
export const ceilOf = (value: Rational): number => -floorOf(value.negate());
