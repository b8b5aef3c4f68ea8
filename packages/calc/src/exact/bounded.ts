import { MeshwrightError } from "./errors.js";
import { Rational, rational, type RationalInput } from "./rational.js";
import type { Rounding } from "./rounding.js";

/** A closed interval of exact numbers: the value is somewhere in it, ends included. Immutable. */
export class Bounded {
  readonly #low: Rational;
  readonly #high: Rational;

  /** @internal Use `bounded`. */
  constructor(low: Rational, high: Rational) {
    this.#low = low;
    this.#high = high;
  }

  get low(): Rational {
    return this.#low;
  }
  get high(): Rational {
    return this.#high;
  }
  get isExact(): boolean {
    return this.#low.equals(this.#high);
  }
  plus(other: Bounded | RationalInput): Bounded {
    const b = bounded(other);
    return new Bounded(this.#low.plus(b.#low), this.#high.plus(b.#high));
  }
  minus(other: Bounded | RationalInput): Bounded {
    return this.plus(bounded(other).negate());
  }
  times(other: Bounded | RationalInput): Bounded {
    const b = bounded(other);
    const products = [this.#low, this.#high].flatMap((x) => [x.times(b.#low), x.times(b.#high)]);
    products.sort((x, y) => x.compare(y));
    return new Bounded(products[0]!, products[3]!);
  }
  over(other: Bounded | RationalInput): Bounded {
    return this.times(bounded(other).inverse());
  }
  inverse(): Bounded {
    if (this.contains(0))
      throw new MeshwrightError(
        "division-by-zero",
        "divisor",
        "The divisor may be zero; expected an interval without it.",
      );
    return new Bounded(this.#high.inverse(), this.#low.inverse());
  }
  negate(): Bounded {
    return new Bounded(this.#high.negate(), this.#low.negate());
  }
  abs(): Bounded {
    if (this.#low.sign >= 0) return this;
    if (this.#high.sign <= 0) return this.negate();
    const down = this.#low.negate();
    return new Bounded(rational(0), down.compare(this.#high) > 0 ? down : this.#high);
  }
  power(exponent: number): Bounded {
    if (exponent < 0) return this.inverse().power(-exponent);
    const base = exponent % 2 === 0 ? this.abs() : this;
    return new Bounded(base.#low.power(exponent), base.#high.power(exponent));
  }
  contains(value: Bounded | RationalInput): boolean {
    const b = bounded(value);
    return this.#low.compare(b.#low) <= 0 && this.#high.compare(b.#high) >= 0;
  }
  /** -1 or 1 where every value of this is below or above every value of the other, 0 where both are one and the same number, else undefined: cannot tell. */
  compare(other: Bounded | RationalInput): -1 | 0 | 1 | undefined {
    const b = bounded(other);
    if (this.#high.compare(b.#low) < 0) return -1;
    if (this.#low.compare(b.#high) > 0) return 1;
    return this.isExact && b.isExact ? 0 : undefined;
  }
  equals(other: Bounded | RationalInput): boolean {
    const b = bounded(other);
    return this.#low.equals(b.#low) && this.#high.equals(b.#high);
  }
  /** Both ends as decimals, rounded outward whatever `roundingMode` says. */
  toDecimals(rounding?: Rounding): { low: string; high: string } {
    if (this.isExact) return { low: this.#low.toDecimal(rounding), high: this.#low.toDecimal(rounding) };
    return {
      low: this.#low.toDecimal({ ...rounding, roundingMode: "floor" }),
      high: this.#high.toDecimal({ ...rounding, roundingMode: "ceil" }),
    };
  }
  /** The most fraction digits, up to `maximum`, at which both ends round to the same text; undefined where there are none. */
  supportedDigits(maximum = 100, roundingMode: Rounding["roundingMode"] = "halfExpand"): number | undefined {
    for (let digits = maximum; digits >= 0; digits--) {
      const rounding: Rounding = { minimumFractionDigits: digits, maximumFractionDigits: digits, roundingMode };
      if (this.#low.toDecimal(rounding) === this.#high.toDecimal(rounding)) return digits;
    }
    return undefined;
  }
  toJSON(): { low: string; high: string } {
    return { low: this.#low.toFraction(), high: this.#high.toFraction() };
  }
}

/** The closed interval from `low` to `high`; with one argument, the exact value. Reads `{ low, high }` back. */
export function bounded(
  low: Bounded | RationalInput | { readonly low: RationalInput; readonly high: RationalInput },
  high?: RationalInput,
): Bounded {
  if (low instanceof Bounded) return low;
  if (typeof low === "object" && !(low instanceof Rational)) return bounded(low.low, low.high);
  const bottom = rational(low);
  const top = high === undefined ? bottom : rational(high);
  if (bottom.compare(top) > 0)
    throw new MeshwrightError(
      "ends-reversed",
      "high",
      `The interval runs from ${bottom} to ${top}; expected low to high.`,
    );
  return new Bounded(bottom, top);
}
