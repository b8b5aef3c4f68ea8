import { MeshwrightError } from "./errors.js";
import { decimalText, type Rounding } from "./rounding.js";

/** What is read as an exact number: whole numbers, short decimals, `"62/15"`, `"2.6"`, `"1e-3"`. */
export type RationalInput = Rational | number | bigint | string;

/** How text is read. */
export interface ReadOptions {
  /** A locale whose decimal separator, where it is a comma, is read too. */
  readonly locale?: string | undefined;
  /** What an error says of where the text stood. */
  readonly at?: string | undefined;
}

const maximumLength = 4000;
const maximumExponent = 4000;
const pattern = /^([+-]?)(?:(\d+)\/(\d+)|(\d*)(?:[.,](\d*))?(?:[eE]([+-]?\d+))?)$/;

function greatestCommonDivisor(a: bigint, b: bigint): bigint {
  while (b) [a, b] = [b, a % b];
  return a < 0n ? -a : a;
}

/** An exact fraction in lowest terms. Immutable. */
export class Rational {
  readonly #numerator: bigint;
  readonly #denominator: bigint;

  /** @internal Use `rational` or `ratioOf`. */
  constructor(numerator: bigint, denominator: bigint) {
    if (denominator === 0n) throw new MeshwrightError("division-by-zero", "denominator", "The denominator is zero.");
    if (denominator < 0n) {
      numerator = -numerator;
      denominator = -denominator;
    }
    const divisor = greatestCommonDivisor(numerator, denominator);
    this.#numerator = numerator / divisor;
    this.#denominator = denominator / divisor;
  }

  get numerator(): bigint {
    return this.#numerator;
  }
  get denominator(): bigint {
    return this.#denominator;
  }
  get sign(): -1 | 0 | 1 {
    return this.#numerator > 0n ? 1 : this.#numerator < 0n ? -1 : 0;
  }
  get isInteger(): boolean {
    return this.#denominator === 1n;
  }
  plus(other: RationalInput): Rational {
    const b = rational(other);
    return new Rational(
      this.#numerator * b.#denominator + b.#numerator * this.#denominator,
      this.#denominator * b.#denominator,
    );
  }
  minus(other: RationalInput): Rational {
    return this.plus(rational(other).negate());
  }
  times(other: RationalInput): Rational {
    const b = rational(other);
    return new Rational(this.#numerator * b.#numerator, this.#denominator * b.#denominator);
  }
  over(other: RationalInput): Rational {
    return this.times(rational(other).inverse());
  }
  inverse(): Rational {
    return new Rational(this.#denominator, this.#numerator);
  }
  negate(): Rational {
    return new Rational(-this.#numerator, this.#denominator);
  }
  abs(): Rational {
    return this.sign < 0 ? this.negate() : this;
  }
  power(exponent: number): Rational {
    if (!Number.isInteger(exponent) || Math.abs(exponent) > 10000)
      throw new MeshwrightError(
        "option-out-of-range",
        "exponent",
        `The exponent is ${exponent}; expected -10000 to 10000.`,
      );
    if (exponent < 0) return this.inverse().power(-exponent);
    return new Rational(this.#numerator ** BigInt(exponent), this.#denominator ** BigInt(exponent));
  }
  compare(other: RationalInput): -1 | 0 | 1 {
    return this.minus(other).sign;
  }
  equals(other: RationalInput): boolean {
    return this.compare(other) === 0;
  }
  toNumber(): number {
    const text = decimalText(this.#numerator, this.#denominator, { maximumSignificantDigits: 40 });
    return Number(text);
  }
  toFraction(): string {
    return `${this.#numerator}/${this.#denominator}`;
  }
  toDecimal(rounding?: Rounding): string {
    return decimalText(this.#numerator, this.#denominator, rounding);
  }
  toString(): string {
    return this.toFraction();
  }
  toJSON(): string {
    return this.toFraction();
  }
}

/** Reads an exact number. */
export function rational(input: RationalInput, options: ReadOptions = {}): Rational {
  if (input instanceof Rational) return input;
  if (typeof input === "bigint") return new Rational(input, 1n);
  const at = options.at ?? "input";
  let text: string;
  if (typeof input === "number") {
    if (Number.isSafeInteger(input)) return new Rational(BigInt(input), 1n);
    if (!Number.isFinite(input))
      throw new MeshwrightError("not-finite", at, `Found ${input}; expected a finite number.`);
    text = String(input);
    if (text.replace(/e.*|\D/g, "").replace(/^0+|0+$/g, "").length > 15)
      throw new MeshwrightError(
        "long-number",
        at,
        `Found ${text}, whose digits may be the trace of binary rounding; expected at most 15 digits, or text.`,
      );
  } else if (typeof input === "string") text = input;
  else
    throw new MeshwrightError(
      "not-a-number",
      at,
      `Found ${input === null ? "null" : typeof input}; expected a number or text such as "62/15" (clones travel as text).`,
    );
  if (text.length > maximumLength)
    throw new MeshwrightError("too-long", at, `Found ${text.length} characters; expected at most ${maximumLength}.`);
  const match = pattern.exec(text);
  if (
    !match ||
    (match[2] === undefined && !match[4] && !match[5]) ||
    (text.includes(",") &&
      (options.locale === undefined || !new Intl.NumberFormat(options.locale).format(1.5).includes(",")))
  )
    throw new MeshwrightError(
      "not-a-number",
      at,
      `Found ${JSON.stringify(text.slice(0, 40))}; expected a number such as "2.6" or "62/15".`,
    );
  const sign = match[1] === "-" ? -1n : 1n;
  if (match[2] !== undefined) {
    const denominator = BigInt(match[3]!);
    if (denominator === 0n)
      throw new MeshwrightError(
        "zero-denominator",
        at,
        `Found ${JSON.stringify(text.slice(0, 40))}: the denominator is zero.`,
      );
    return new Rational(sign * BigInt(match[2]), denominator);
  }
  const fraction = match[5] ?? "";
  const written = Number(match[6] ?? 0);
  if (Math.abs(written) > maximumExponent)
    throw new MeshwrightError(
      "exponent-too-large",
      at,
      `Found exponent ${written}; expected at most ${maximumExponent}.`,
    );
  const exponent = written - fraction.length;
  const digits = sign * BigInt(match[4]! + fraction);
  return exponent < 0
    ? new Rational(digits, 10n ** BigInt(-exponent))
    : new Rational(digits * 10n ** BigInt(exponent), 1n);
}

/** The ratio of two whole numbers. */
export function ratioOf(numerator: number | bigint, denominator: number | bigint): Rational {
  if (typeof numerator === "number" && !Number.isSafeInteger(numerator)) return rational(numerator).over(denominator);
  if (typeof denominator === "number" && !Number.isSafeInteger(denominator))
    return rational(numerator).over(denominator);
  return new Rational(BigInt(numerator), BigInt(denominator));
}
