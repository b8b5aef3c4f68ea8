import { bounded, ratioOf, rational, type Bounded, type Rational, type RationalInput } from "../exact/index.js";
import type { Unknown } from "../stages/index.js";

/** A named unknown to a whole power. */
export interface Power extends Unknown {
  readonly power: number;
}

const merge = (left: readonly Power[], right: readonly Unknown[], sign: 1 | -1): readonly Power[] => {
  if (!right.length) return left;
  const powers = new Map(left.map((one) => [one.key, one]));
  for (const one of right as readonly (Unknown & Partial<Power>)[]) {
    const power = (powers.get(one.key)?.power ?? 0) + sign * (one.power ?? 1);
    if (power) powers.set(one.key, { key: one.key, interval: one.interval, power });
    else powers.delete(one.key);
  }
  return [...powers.values()];
};

/** A product by halves, so that wide values meet only wide ones. */
const product = (factors: readonly Rational[], from = 0, to = factors.length): Rational => {
  if (to - from < 2) return factors[from]!;
  const middle = (from + to) >> 1;
  return product(factors, from, middle).times(product(factors, middle, to));
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
    if (!this.unknowns.length) return bounded(this.factor);
    const lows: Rational[] = [];
    const highs: Rational[] = [];
    for (const { interval, power } of this.unknowns)
      for (let n = Math.abs(power); n; n--) {
        lows.push(power > 0 ? interval.low : interval.high.inverse());
        highs.push(power > 0 ? interval.high : interval.low.inverse());
      }
    return bounded(product(lows).times(this.factor), product(highs).times(this.factor));
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
  new Quantity(factor, merge([], unknowns, 1));

let piOnce: Quantity | undefined;

/** π, between two fractions that agree to 40 digits: an unknown like any other, so that it cancels. */
export const pi = (): Quantity => {
  if (!piOnce) {
    const low = BigInt("31415926535897932384626433832795028841971");
    const unit = 10n ** 40n;
    piOnce = quantityOf(rational(1), [{ key: "π", interval: bounded(ratioOf(low, unit), ratioOf(low + 1n, unit)) }]);
  }
  return piOnce;
};
