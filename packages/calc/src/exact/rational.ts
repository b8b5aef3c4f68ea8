import { commonDivisor, wideDivisor } from "./divisor.js";
import { fail } from "./errors.js";
import { type ReadOptions, readText } from "./read.js";
import { decimalText, type Rounding } from "./rounding.js";

const { isSafeInteger } = Number;

/**
 * What is read as an exact number: a `Rational`, a whole number, a short decimal, a bigint, or text such as `"62/15"`,
 * `"2.6"`, `"-3"`, `"1e-3"`. See {@link rational} for the rules.
 */
export type RationalInput = Rational | number | bigint | string;

/*
 * How this is fast. Nearly every ratio of a drivetrain fits plain numbers. Such a value holds two of them, above and
 * below the line, not reduced: a product is two multiplications and one test, and the common divisor is taken when
 * somebody reads the fraction. The test, `top² + bottom² < 2e31`, keeps both below 2 ** 52, so that no product, sum or
 * difference on the way has been rounded. What does not pass it goes to methods of its own and, where it must, to
 * `WideRational`, which holds bigints: the short methods below never see one, and stay as fast afterwards.
 *
 * The short methods are written for the compiler's inlining budget, by size of bytecode: a chain of six ratios then
 * needs hardly any object in memory. That is also why the fields are private to TypeScript only. With `#` names the
 * same chain takes four times as long (Node 20), with frozen objects five times.
 */

/**
 * An exact fraction. Immutable; in lowest terms, with the sign above the line, whenever it is read.
 * Made by {@link rational} and {@link ratioOf}. Travels through JSON as `"n/d"` text.
 *
 * @example
 * import { ratioOf } from "@meshwright/calc/exact";
 * const reduction = ratioOf(62, 15).times(ratioOf(45, 18)); // spur and pinion, then a gear row
 * reduction.toFraction(); // => "31/3"
 * reduction.toDecimal(); // => "10.333"
 */
export class Rational {
  declare private top: number;
  declare private bottom: number;

  /** @internal Safe integers, `bottom` above zero: use {@link rational} or {@link ratioOf}, which check. */
  constructor(top: number, bottom: number) {
    this.top = top;
    this.bottom = bottom;
  }

  /** In lowest terms. Carries the sign. */
  get numerator(): bigint {
    return BigInt(this.reduce().top);
  }

  /** In lowest terms, above zero. */
  get denominator(): bigint {
    return BigInt(this.reduce().bottom);
  }

  get sign(): -1 | 0 | 1 {
    return (Math.sign(this.top) + 0) as -1 | 0 | 1;
  }

  get isInteger(): boolean {
    return this.denominator === 1n;
  }

  plus(other: RationalInput): Rational;
  plus(other: Rational): Rational {
    if (other.bottom === undefined) return rational(other).plus(this);
    const top = other.top;
    const bottom = other.bottom;
    const part = bottom * this.top;
    const sum = part + top * this.bottom;
    const below = bottom * this.bottom;
    if (part * part + sum * sum + below * below < 2e31) return new Rational(sum, below);
    return this.large(top, bottom, true);
  }

  minus(other: RationalInput): Rational {
    return this.plus(rational(other).negate());
  }

  times(other: RationalInput): Rational;
  times(other: Rational): Rational {
    if (other.bottom === undefined) return rational(other).times(this);
    const top = other.top;
    const bottom = other.bottom;
    const above = top * this.top;
    const below = bottom * this.bottom;
    if (above * above + below * below < 2e31) return new Rational(above, below);
    return this.large(top, bottom, false);
  }

  /** @throws MeshwrightError `division-by-zero` */
  over(other: RationalInput): Rational {
    return this.times(rational(other).inverse());
  }

  /** @throws MeshwrightError `division-by-zero` */
  inverse(): Rational {
    const { top, bottom } = this;
    if (top > 0) return new Rational(bottom, top);
    return top ? new Rational(-bottom, -top) : fail("division-by-zero", "divisor", 0, "another number");
  }

  negate(): Rational {
    return new Rational(-this.top, this.bottom);
  }

  abs(): Rational {
    return this.sign < 0 ? this.negate() : this;
  }

  /**
   * A whole power, also below zero.
   * @throws MeshwrightError `option-out-of-range` where the result could have more than 30,000 digits, `division-by-zero`
   */
  power(exponent: number): Rational {
    if (exponent < 0) return this.inverse().power(-exponent);
    const { numerator, denominator } = this;
    if (!isSafeInteger(exponent) || String(numerator * denominator).length * exponent > 30000)
      fail("option-out-of-range", "exponent", exponent, "a whole number, up to 30000 digits");
    return ratioOfCoprimes(numerator ** BigInt(exponent), denominator ** BigInt(exponent));
  }

  /** Exact: by cross products, never by way of a float. */
  compare(other: RationalInput): -1 | 0 | 1;
  compare(other: Rational): -1 | 0 | 1 {
    if (other.bottom === undefined) return compareWide(this, rational(other));
    const one = other.bottom * this.top;
    const two = other.top * this.bottom;
    if (one * one + two * two < 2e31) return one > two ? 1 : one < two ? -1 : 0;
    return compareWide(this, other);
  }

  equals(other: RationalInput): boolean {
    return this.compare(other) === 0;
  }

  /** The nearest double. */
  toNumber(): number {
    return this.top / this.bottom + 0;
  }

  /** `"62/15"`, `"-1/2"`; whole numbers have their denominator too: `"4/1"`. */
  toFraction(): string {
    return `${this.numerator}/${this.denominator}`;
  }

  /**
   * Decimal text in ASCII, rounded once: at most three fraction digits, ties away from zero, unless stated otherwise.
   * @throws MeshwrightError `option-out-of-range`, with the name of the option in `at`
   */
  toDecimal(rounding?: Rounding): string {
    return decimalText(this.top, this.bottom, rounding);
  }

  toString(): string {
    return this.toFraction();
  }

  toJSON(): string {
    return this.toFraction();
  }

  private reduce(): this {
    const divisor = commonDivisor(this.top, this.bottom);
    if (divisor > 1) {
      this.top /= divisor;
      this.bottom /= divisor;
    }
    return this;
  }

  /**
   * For a sum or product that is too large as it stands: reduces, tries again, and only then widens. One method for both,
   * of more bytecode than the compiler takes in (460 bytes): taken into the short ones, it would slow them down by half.
   */
  private large(top: number, bottom: number, adding: boolean): Rational {
    const [one, two] = adding
      ? [this.reduce(), new Rational(top, bottom).reduce()]
      : [new Rational(top, this.bottom).reduce(), new Rational(this.top, bottom).reduce()];
    const scale = two.bottom / (adding ? commonDivisor(one.bottom, two.bottom) : 1);
    const below = one.bottom * scale;
    const [part, rest] = adding ? [one.top * scale, two.top * (below / two.bottom)] : [one.top * two.top, 0];
    const above = part + rest;
    if (part * part + above * above + below * below < 2e31) return new Rational(above, below);
    return adding ? sumOf(one, two) : productOfTwo(one, two);
  }
}

/** A fraction too wide for plain numbers: it has a `bottom` of none, at which the short methods step aside. */
class WideRational extends Rational {
  declare private above: bigint;
  declare private below: bigint;

  /** In lowest terms, `below` above zero. */
  constructor(above: bigint, below: bigint) {
    super(NaN, undefined as unknown as number);
    this.above = above;
    this.below = below;
  }

  override get numerator(): bigint {
    return this.above;
  }
  override get denominator(): bigint {
    return this.below;
  }
  override get sign(): -1 | 1 {
    return this.above > 0n ? 1 : -1;
  }
  override plus(other: RationalInput): Rational {
    return sumOf(this, rational(other));
  }
  override times(other: RationalInput): Rational {
    return productOfTwo(this, rational(other));
  }
  override inverse(): Rational {
    const { above, below } = this;
    return above > 0n ? ratioOfCoprimes(below, above) : ratioOfCoprimes(-below, -above);
  }
  override negate(): Rational {
    return ratioOfCoprimes(-this.above, this.below);
  }
  override compare(other: RationalInput): -1 | 0 | 1 {
    return compareWide(this, rational(other));
  }
  override toNumber(): number {
    return nearestDouble(this.above, this.below);
  }
  override toDecimal(rounding?: Rounding): string {
    return decimalText(this.above, this.below, rounding);
  }
}

/** What the denominators have in common is all that can cancel: nothing long is divided where one of them is short (Knuth, 4.5.1). */
function sumOf(one: Rational, two: Rational): Rational {
  const [below, other] = [one.denominator, two.denominator];
  const common = wideDivisor(below, other);
  const rest = partOf(other, common);
  const above = one.numerator * rest + two.numerator * partOf(below, common);
  if (!above) return new Rational(0, 1);
  const divisor = wideDivisor(above, common);
  return ratioOfCoprimes(partOf(above, divisor), partOf(below, divisor) * rest);
}

/** Both are in lowest terms: what cancels stands across, which is soon seen where one of the two is short. */
function productOfTwo(one: Rational, two: Rational): Rational {
  const left = wideDivisor(one.numerator, two.denominator);
  const right = wideDivisor(two.numerator, one.denominator);
  return ratioOfCoprimes(
    partOf(one.numerator, left) * partOf(two.numerator, right),
    partOf(one.denominator, right) * partOf(two.denominator, left),
  );
}

/** Dividing by one takes as long as by anything else. */
const partOf = (whole: bigint, divisor: bigint): bigint => (divisor === 1n ? whole : whole / divisor);

/** By cross products. */
function compareWide(one: Rational, two: Rational): -1 | 0 | 1 {
  const [left, right] = [one.numerator * two.denominator, two.numerator * one.denominator];
  return left > right ? 1 : left < right ? -1 : 0;
}

/**
 * The ratio of two whole numbers that are known to have nothing in common, `below` above zero: no divisor is looked for, which
 * for very long ones takes more time than everything else. Unchecked.
 */
export function ratioOfCoprimes(above: bigint, below: bigint): Rational {
  const [top, bottom] = [Number(above), Number(below)];
  return isSafeInteger(top) && isSafeInteger(bottom) ? new Rational(top, bottom) : new WideRational(above, below);
}

/** Correctly rounded, except that a result below 2 ** -1022 may be rounded twice. */
function nearestDouble(above: bigint, below: bigint): number {
  const bits = (value: bigint): number => value.toString(2).length;
  const shift = bits(below) - bits(above) + 66;
  const over = above << BigInt(Math.max(shift, 0));
  const under = below << BigInt(Math.max(-shift, 0));
  const rest = over % under;
  // One more bit for whatever is left over: it decides ties and nothing else.
  const value = Number((over / under) * 2n + (rest && (rest > 0n ? 1n : -1n)));
  const half = Math.trunc(shift / 2);
  return value * 2 ** -half * 2 ** (half - shift - 1);
}

/**
 * Reads an exact number, strictly, from the whole of what is given:
 *
 * - text: a fraction of whole numbers (`"62/15"`), or a decimal with a point (`"2.6"`, `".5"`, `"5."`) and perhaps an exponent
 *   (`"1e-3"`), either with a sign before it. No blanks, no grouping. At most 2000 characters, and exponents to 2000.
 *   A decimal comma is read where `options.locale` names a locale that writes one; the point is read everywhere.
 * - a JS number: it means its shortest decimal text, 0.1 is one tenth. Whole numbers are read up to 2 ** 53; of any other
 *   the text may have 15 digits. `0.1 + 0.2` and `1 / 3` are refused: their 17 digits are a trace of binary rounding,
 *   and nobody should guess what stood there. Give the fraction instead.
 * - a bigint, or a `Rational`. What a structured clone makes of one is read back too; JSON carries text, which is read anyway.
 *
 * There is no negative zero: `"-0"` is 0.
 *
 * @throws MeshwrightError `not-a-number`, `decimal-comma`, `zero-denominator`, `too-long`, `exponent-too-large`,
 * `not-finite`, `long-number`, `not-a-locale`; `at` is `options.at`, or `"input"`
 *
 * @example
 * import { rational } from "@meshwright/calc/exact";
 * rational("62/15").toFraction(); // => "62/15"
 * rational(2.6).toFraction(); // => "13/5"
 * rational("2,6", { locale: "de" }).toFraction(); // => "13/5"
 */
export function rational(input: RationalInput, options?: ReadOptions): Rational {
  if (input instanceof Rational) return input;
  if (typeof input === "number" && (input | 0) === input) return new Rational(input, 1);
  return (typeof input === "string" && fromDigits(input)) || fromAny(input, options?.at ?? "input", options?.locale);
}

/** What nearly every text is, up to 15 digits and perhaps a point among them; all else is left to the pattern. */
function fromDigits(text: string): Rational | undefined {
  let top = 0;
  let scale = 0;
  for (let index = 0; index < text.length; index++) {
    const digit = text.charCodeAt(index) - 48;
    if (digit >= 0 && digit < 10 && index < 15) {
      top = top * 10 + digit;
      scale *= 10;
    } else if (digit === -2 && index && !scale) scale = 1;
    else return undefined;
  }
  return text ? new Rational(top, scale || 1) : undefined;
}

function fromAny(input: unknown, at: string, locale: string | undefined): Rational {
  if (typeof input === "string") return quotientOf(...readText(input, at, locale));
  if (typeof input === "bigint") return ratioOfCoprimes(input, 1n);
  if (typeof input === "number") {
    if (isSafeInteger(input)) return new Rational(input, 1);
    const text = String(input);
    if (!isFinite(input)) fail("not-finite", at, input, "a finite number");
    if (/[1-9]\d{14,}[1-9]/.test(text.replace(/e.*|\D/g, "")))
      fail("long-number", at, input, "up to 15 digits, or text");
    return quotientOf(...readText(text, at, undefined));
  }
  // What a structured clone leaves of a value: the fields without the class.
  const { top, bottom, above = top, below = bottom } = Object(input) as Record<string, number>;
  if (below) return quotientOf(above!, below);
  return fail("not-a-number", at, input, "a number such as 2.6 or 62/15");
}

/**
 * The ratio of two numbers, whole ones as a rule: the short way.
 * @throws MeshwrightError `division-by-zero`, and what {@link rational} throws
 *
 * @example
 * import { ratioOf } from "@meshwright/calc/exact";
 * ratioOf(-45, 18).toFraction(); // => "-5/2"
 */
export function ratioOf(numerator: number | bigint, denominator: number | bigint): Rational {
  if (denominator > 0 && isSafeInteger(numerator) && isSafeInteger(denominator))
    return new Rational(numerator as number, denominator as number);
  return quotientOf(numerator, denominator);
}

/** Its own: what has once compared bigints compares plain numbers more slowly for ever. */
function quotientOf(numerator: number | bigint, denominator: number | bigint): Rational {
  return rational(numerator).over(denominator);
}
