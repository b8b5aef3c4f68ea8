import fc from "fast-check";
import { type Rational, rational } from "../../src/exact/index.js";

/** Numerators and denominators of every width: tooth counts, near the edge of plain numbers, far beyond it. */
const integer = fc.oneof(
  { weight: 4, arbitrary: fc.bigInt({ min: -120n, max: 120n }) },
  { weight: 2, arbitrary: fc.bigInt({ min: -(2n ** 31n) - 2n, max: 2n ** 31n + 2n }) },
  { weight: 2, arbitrary: fc.bigInt({ min: -(2n ** 54n), max: 2n ** 54n }) },
  { weight: 1, arbitrary: fc.bigInt({ min: -(10n ** 40n), max: 10n ** 40n }) },
);

/** A fraction as two bigints, as it was made and not reduced, and the value that reads it. */
export interface Pair {
  readonly top: bigint;
  readonly bottom: bigint;
  readonly value: Rational;
}

export const pair: fc.Arbitrary<Pair> = fc
  .tuple(integer, integer)
  .filter(([, bottom]) => bottom !== 0n)
  .map(([top, bottom]) => (bottom < 0n ? [-top, -bottom] : [top, bottom]))
  .map(([top, bottom]) => ({ top: top!, bottom: bottom!, value: rational(`${top}/${bottom}`) }));

export const value: fc.Arbitrary<Rational> = pair.map((made) => made.value);

/** Greatest common divisor, the plain way. */
const divisorOf = (a: bigint, b: bigint): bigint => (b === 0n ? (a < 0n ? -a : a) : divisorOf(b, a % b));

/** `n/d` in lowest terms, worked out apart from the code under test. */
export function fraction(top: bigint, bottom: bigint): string {
  const divisor = divisorOf(top, bottom) * (bottom < 0n ? -1n : 1n);
  return `${top / divisor}/${bottom / divisor}`;
}
