import { bounded, rational, type Bounded, type Rational, type RationalInput } from "../exact/index.js";
import type { Unknown } from "../kinds/index.js";

/** A named unknown to a whole power. */
export interface Power extends Unknown {
  readonly power: number;
}

const merge = (left: readonly Power[], right: readonly Power[], sign: 1 | -1): readonly Power[] => {
  if (!right.length) return left;
  const powers = new Map(left.map((one) => [one.key, one]));
  for (const one of right) {
    const power = (powers.get(one.key)?.power ?? 0) + sign * one.power;
    if (power) powers.set(one.key, { ...one, power });
    else powers.delete(one.key);
  }
  return [...powers.values()];
};

/**
 * An exact factor times powers of named unknowns, all positive. What stands on both sides of a quotient cancels before an
 * interval is formed.
 */
export class Quantity {
  readonly factor: Rational;
  readonly unknowns: readonly Power[];

  constructor(factor: Rational, unknowns: readonly Power[] = []) {
    this.factor = factor;
    this.unknowns = unknowns;
  }

  get isExact(): boolean {
    return !this.unknowns.length;
  }

  /** All that it can be. */
  get bounds(): Bounded {
    return this.unknowns.reduce((product, { interval, power }) => {
      for (let n = Math.abs(power); n; n--) product = power > 0 ? product.times(interval) : product.over(interval);
      return product;
    }, bounded(this.factor));
  }

  times(other: Quantity | RationalInput): Quantity {
    return other instanceof Quantity
      ? new Quantity(this.factor.times(other.factor), merge(this.unknowns, other.unknowns, 1))
      : new Quantity(this.factor.times(other), this.unknowns);
  }

  over(other: Quantity | RationalInput): Quantity {
    return other instanceof Quantity
      ? new Quantity(this.factor.over(other.factor), merge(this.unknowns, other.unknowns, -1))
      : new Quantity(this.factor.over(other), this.unknowns);
  }
}

/** A quantity of unknowns that may repeat. */
export const quantityOf = (factor: Rational, unknowns: readonly Unknown[]): Quantity =>
  unknowns.reduce(
    (product, unknown) => product.times(new Quantity(rational(1), [{ ...unknown, power: 1 }])),
    new Quantity(factor),
  );

/** π, between two fractions that agree to 40 digits: an unknown like any other, so that it cancels. */
export const pi = (): Quantity => {
  const low = BigInt("31415926535897932384626433832795028841971");
  const ten40 = 10n ** 40n;
  return new Quantity(rational(1), [
    { key: "π", power: 1, interval: bounded(rational(low).over(ten40), rational(low + 1n).over(ten40)) },
  ]);
};
