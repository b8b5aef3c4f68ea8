import { type Rational, ratioOf } from "./rational.js";

function product(factors: readonly number[]): bigint {
  return factors.reduce((sum, factor) => sum * BigInt(factor), 1n);
}

/** The product of all numerators over the product of all denominators. */
export function productOf(numerators: readonly number[], denominators: readonly number[]): Rational {
  return ratioOf(product(numerators), product(denominators));
}
