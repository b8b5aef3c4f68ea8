import { Bounded, bounded, ratioOf, rational, type Rational, type RationalInput } from "../exact/index.js";
import { productOf, type Unknown } from "../stages/index.js";

/** A named unknown to a whole power. */
export interface Power extends Unknown {
  readonly power: number;
  /** What it is the sum of, where it is one: bounds are as narrow as these allow. */
  readonly terms?: readonly Quantity[];
}

const merge = (left: readonly Power[], right: readonly Unknown[], sign: 1 | -1): readonly Power[] => {
  if (!right.length) return left;
  const powers = new Map(left.map((one) => [one.key, one]));
  for (const one of right) {
    const power = (powers.get(one.key)?.power ?? 0) + sign * (one.power ?? 1);
    if (power) powers.set(one.key, { ...one, power });
    else powers.delete(one.key);
  }
  return [...powers.values()];
};

/** The product of many fractions. Those of plain numbers are multiplied at once; wide ones, of which there are few, one by one. */
function product(factors: readonly Rational[]): Rational {
  const above: number[] = [];
  const below: number[] = [];
  let wide: Rational | undefined;
  for (const factor of factors) {
    const [top, bottom] = [Number(factor.numerator), Number(factor.denominator)];
    if (Number.isSafeInteger(top) && Number.isSafeInteger(bottom)) {
      above.push(top);
      below.push(bottom);
    } else wide = wide?.times(factor) ?? factor;
  }
  const plain = productOf(above, below);
  return wide ? plain.times(wide) : plain;
}

/**
 * An exact factor times powers of named unknowns, all positive. What stands on both sides of a quotient cancels before an
 * interval is formed.
 */
export class Quantity {
  readonly factor: Rational;
  readonly #unknowns: readonly Power[];

  constructor(factor: Rational, unknowns: readonly Power[] = []) {
    this.factor = factor;
    this.#unknowns = unknowns;
  }

  get unknowns(): readonly Power[] {
    return this.#unknowns;
  }

  get isExact(): boolean {
    return !this.unknowns.length;
  }

  /** All that it can be. */
  get bounds(): Bounded {
    if (!this.unknowns.length) return bounded(this.factor);
    const sums = this.unknowns.filter(({ terms, power }) => terms && Math.abs(power) === 1);
    if (sums.length === 1) return this.#boundsOver(sums[0]!);
    const lows = [this.factor];
    const highs = [this.factor];
    for (const { interval, power } of this.unknowns)
      for (let n = Math.abs(power); n; n--) {
        lows.push(power > 0 ? interval.low : interval.high.inverse());
        highs.push(power > 0 ? interval.high : interval.low.inverse());
      }
    return new Bounded(product(lows), product(highs));
  }

  /** What stands before a sum goes into its terms: an unknown on both sides would count twice. Below the line the sum is turned round. */
  #boundsOver(sum: Power): Bounded {
    const before = new Quantity(
      this.factor,
      this.unknowns.filter((one) => one !== sum),
    );
    const ends = sum.terms!.map((term) => (sum.power > 0 ? before.times(term) : term.over(before)).bounds);
    const total = ends.reduce((all, one) => all.plus(one));
    return sum.power > 0 ? total : total.inverse();
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
