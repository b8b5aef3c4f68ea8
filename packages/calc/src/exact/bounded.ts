import { fail } from "./errors.js";
import { type Rational, rational, type RationalInput } from "./rational.js";
import type { Rounding } from "./rounding.js";

/** What is read as an interval: one, or its ends as JSON and structured clones carry them, or an exact number. */
export type BoundedInput = Bounded | RationalInput | { readonly low: RationalInput; readonly high: RationalInput };

/**
 * A closed interval of exact numbers: the value is somewhere in it, ends included. Immutable; made by {@link bounded}.
 * Results are never narrower than the truth, and as narrow as they can be where each operand occurs once.
 * Through JSON it travels as `{ "low": "n/d", "high": "n/d" }`.
 *
 * @example
 * import { bounded } from "@meshwright/calc/exact";
 * const box = bounded("2.605", "2.615"); // printed 2.61
 * const total = box.times("59/14");
 * total.toDecimals({ maximumFractionDigits: 2 }); // => { low: "10.97", high: "11.03" }
 * total.supportedDigits(); // => 1
 */
export class Bounded {
  declare readonly low: Rational;
  declare readonly high: Rational;

  /** @internal `low` at most `high`: use {@link bounded}, which checks. */
  constructor(low: Rational, high: Rational) {
    this.low = low;
    this.high = high;
    Object.freeze(this);
  }

  /** Whether there is one value only. */
  get isExact(): boolean {
    return this.low.equals(this.high);
  }

  plus(other: BoundedInput): Bounded {
    const { low, high } = bounded(other);
    return new Bounded(this.low.plus(low), this.high.plus(high));
  }

  minus(other: BoundedInput): Bounded {
    return this.plus(bounded(other).negate());
  }

  times(other: BoundedInput): Bounded {
    const { low, high } = bounded(other);
    if (this.low.sign >= 0 && low.sign >= 0) return new Bounded(this.low.times(low), this.high.times(high));
    const ends = [this.low, this.high].flatMap((end) => [low.times(end), high.times(end)]);
    ends.sort((one, two) => one.compare(two));
    return new Bounded(ends[0]!, ends[3]!);
  }

  /** @throws MeshwrightError `division-by-zero` where the divisor may be zero */
  over(other: BoundedInput): Bounded {
    return this.times(bounded(other).inverse());
  }

  /** @throws MeshwrightError `division-by-zero` where this may be zero */
  inverse(): Bounded {
    if (this.contains(0)) fail("division-by-zero", "divisor", 0, "another number");
    return new Bounded(this.high.inverse(), this.low.inverse());
  }

  negate(): Bounded {
    return new Bounded(this.high.negate(), this.low.negate());
  }

  abs(): Bounded {
    if (this.low.sign >= 0) return this;
    const other = this.negate();
    if (other.low.sign >= 0) return other;
    return new Bounded(rational(0), other.high.compare(this.high) > 0 ? other.high : this.high);
  }

  /** A whole power, also below zero: tighter than repeated products, as both factors are the same unknown. */
  power(exponent: number): Bounded {
    if (exponent < 0) return this.inverse().power(-exponent);
    const { low, high } = exponent % 2 ? this : this.abs();
    return new Bounded(low.power(exponent), high.power(exponent));
  }

  /** Whether all of the other is inside. */
  contains(other: BoundedInput): boolean {
    const { low, high } = bounded(other);
    return this.low.compare(low) <= 0 && this.high.compare(high) >= 0;
  }

  /** -1 or 1 where all of this is below or above all of the other, 0 where both are one and the same number, else undefined: cannot tell. */
  compare(other: BoundedInput): -1 | 0 | 1 | undefined {
    const { low, high } = bounded(other);
    const least = this.low.compare(high);
    const most = this.high.compare(low);
    return least === most || least > 0 ? least : most < 0 ? most : undefined;
  }

  /**
   * Both ends as decimal text in ASCII, rounded outward, whatever `roundingMode` is stated, so that the text holds the
   * interval. Where there is one value only, both are that value, rounded as stated.
   */
  toDecimals(rounding?: Rounding): { low: string; high: string } {
    const { low, high, isExact } = this;
    return {
      low: low.toDecimal(isExact ? rounding : { ...rounding, roundingMode: "floor" }),
      high: high.toDecimal(isExact ? rounding : { ...rounding, roundingMode: "ceil" }),
    };
  }

  /**
   * The most fraction digits, from 0 to `maximum`, at which both ends round to the same text: what may be shown as one
   * figure. Undefined where there are none. More digits may agree where fewer do not: 0.4999 and 0.5001 are both 0.50.
   */
  supportedDigits(maximum = 100, roundingMode?: Rounding["roundingMode"]): number | undefined {
    // Texts agree where the ends lie at most one unit apart; the float is no more than where to begin, with one to spare.
    const most = 1 - Math.floor(Math.log10(this.high.minus(this.low).toNumber()));
    for (let digits = Math.min(maximum, most); digits >= 0; digits--) {
      const rounding: Rounding = { minimumFractionDigits: digits, maximumFractionDigits: digits, roundingMode };
      if (this.low.toDecimal(rounding) === this.high.toDecimal(rounding)) return digits;
    }
    return undefined;
  }

  toJSON(): { low: string; high: string } {
    return { low: this.low.toFraction(), high: this.high.toFraction() };
  }
}

/**
 * The closed interval from `low` to `high`; with one argument, an exact number. Reads back what JSON and structured clones
 * make of an interval.
 * @throws MeshwrightError `ends-reversed`, and what {@link rational} throws
 *
 * @example
 * import { bounded } from "@meshwright/calc/exact";
 * bounded("2.735", "2.745").over(2).high.toFraction(); // => "549/400"
 */
export function bounded(low: BoundedInput, high?: RationalInput): Bounded {
  if (low instanceof Bounded) return low;
  const ends = Object(low) as Bounded;
  if (ends.low !== undefined) return bounded(ends.low, ends.high);
  const bottom = rational(low as RationalInput);
  const top = high === undefined ? bottom : rational(high);
  if (top !== bottom && bottom.compare(top) > 0) fail("ends-reversed", "high", String(top), `at least ${bottom}`);
  return new Bounded(bottom, top);
}
