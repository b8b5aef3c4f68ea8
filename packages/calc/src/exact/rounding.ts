import { fail } from "./errors.js";

/**
 * The nine rounding modes of ECMA-402: up, down, away from zero, towards zero, and to the nearest with ties going up,
 * down, away from zero (the default), towards zero, or to the even neighbour.
 */
export type RoundingMode =
  "ceil" | "floor" | "expand" | "trunc" | "halfCeil" | "halfFloor" | "halfExpand" | "halfTrunc" | "halfEven";

/**
 * How a figure is rounded when it is shown. Names, defaults and meanings are those of ECMA-402 `Intl.NumberFormat`, and
 * both kinds of digits may go to 100: without any option, at most three fraction digits, ties away from zero.
 */
export interface Rounding {
  /** 0 to 100; zeros are kept up to here. */
  readonly minimumFractionDigits?: number | undefined;
  /** 0 to 100; the larger of three and the minimum where it is not stated. */
  readonly maximumFractionDigits?: number | undefined;
  /** 1 to 100. Significant digits go before fraction digits where both are stated; see `roundingPriority`. */
  readonly minimumSignificantDigits?: number | undefined;
  /** 1 to 100; the larger of 21 and the minimum where it is not stated. */
  readonly maximumSignificantDigits?: number | undefined;
  readonly roundingMode?: RoundingMode | undefined;
  /** Rounds to multiples of this in the last digit; needs equal minimum and maximum fraction digits. */
  readonly roundingIncrement?:
    1 | 2 | 5 | 10 | 20 | 25 | 50 | 100 | 200 | 250 | 500 | 1000 | 2000 | 2500 | 5000 | undefined;
  readonly roundingPriority?: "auto" | "morePrecision" | "lessPrecision" | undefined;
  readonly trailingZeroDisplay?: "auto" | "stripIfInteger" | undefined;
  /** Writes `-0` where a negative value rounds to zero, as ECMA-402 does; otherwise that sign is dropped. */
  readonly negativeZero?: boolean | undefined;
}

const choices = {
  roundingMode: ["halfExpand", "ceil", "floor", "expand", "trunc", "halfCeil", "halfFloor", "halfTrunc", "halfEven"],
  roundingIncrement: [1, 2, 5, 10, 20, 25, 50, 100, 200, 250, 500, 1000, 2000, 2500, 5000],
  roundingPriority: ["auto", "morePrecision", "lessPrecision"],
  trailingZeroDisplay: ["auto", "stripIfInteger"],
} as const;

// What the modes do, in their order. Away from zero for positive values: 1, for negative ones: 2; only past the middle: 4;
// at the middle by evenness: 8.
const rules = [7, 1, 2, 3, 0, 5, 6, 4, 12];

/** Options read and checked. */
interface Plan {
  readonly rule: number;
  readonly increment: number;
  readonly leastFraction: number;
  readonly mostFraction: number;
  readonly leastSignificant: number;
  readonly mostSignificant: number;
  /** Fraction digits alone, or significant digits alone, or whichever of them is finer (1) or coarser (2). */
  readonly significant: boolean;
  readonly priority: number;
  readonly strip: boolean;
  readonly negativeZero: boolean | undefined;
}

function choice(rounding: Rounding, name: keyof typeof choices): number {
  const value = rounding[name];
  const list: readonly unknown[] = choices[name];
  const index = value === undefined ? 0 : list.indexOf(value);
  return index < 0 ? fail("option-out-of-range", name, value, list.join(", ")) : index;
}

function digits(
  rounding: Rounding,
  name: `${"min" | "max"}imum${"Fraction" | "Significant"}Digits`,
  least: number,
  otherwise: number,
): number {
  const value = rounding[name];
  if (value === undefined) return otherwise;
  return value >= least && value <= 100
    ? Math.floor(value)
    : fail("option-out-of-range", name, value, `${least} to 100`);
}

/** ECMA-402, SetNumberFormatDigitOptions. */
function planOf(rounding: Rounding, usualFraction: number): Plan {
  const increment = choices.roundingIncrement[choice(rounding, "roundingIncrement")]!;
  const priority = choice(rounding, "roundingPriority");
  const leastFraction = digits(rounding, "minimumFractionDigits", 0, 0);
  const mostFraction = digits(
    rounding,
    "maximumFractionDigits",
    leastFraction,
    Math.max(increment > 1 ? 0 : usualFraction, leastFraction),
  );
  const leastSignificant = digits(rounding, "minimumSignificantDigits", 1, 0);
  const mostSignificant = digits(rounding, "maximumSignificantDigits", leastSignificant || 1, 0);
  const significant = priority + leastSignificant + mostSignificant > 0;
  if (increment > 1 && (significant || leastFraction < mostFraction))
    fail(
      "option-out-of-range",
      "roundingIncrement",
      increment,
      "1 unless equal fraction digits, and nothing else, are stated",
    );
  return {
    rule: rules[choice(rounding, "roundingMode")]!,
    increment,
    leastFraction,
    mostFraction,
    leastSignificant: leastSignificant || 1,
    mostSignificant: mostSignificant || Math.max(21, leastSignificant),
    significant,
    priority,
    strip: choice(rounding, "trailingZeroDisplay") > 0,
    negativeZero: rounding.negativeZero,
  };
}

/** Whether what is left over goes away from zero; `middle` is its place below, at or above one half. */
function goesAway(rule: number, negative: boolean, middle: number, odd: boolean): boolean {
  if (rule & 4 && middle !== 0) return middle > 0;
  return rule & 8 ? odd : (rule & (negative ? 2 : 1)) > 0;
}

const tens = (power: number): bigint => (power > 0 ? 10n ** BigInt(power) : 1n);

/** The general way: digits as one whole number, and how many of them stand after the point. */
function longText(numerator: bigint, denominator: bigint, plan: Plan): string {
  const negative = numerator < 0n;
  const size = negative ? -numerator : numerator;
  const count = (places: number, step: bigint): bigint => {
    const unit = denominator * tens(-places) * step;
    const scaled = size * tens(places);
    const down = scaled / unit;
    const rest = scaled % unit;
    const middle = rest * 2n < unit ? -1 : rest * 2n > unit ? 1 : 0;
    return (rest && goesAway(plan.rule, negative, middle, down % 2n > 0n) ? down + 1n : down) * step;
  };
  const { mostSignificant, priority } = plan;
  let places = plan.mostFraction;
  let keep = plan.leastFraction;
  if (plan.significant) {
    let fine = mostSignificant - 1;
    if (size) {
      // The first digit's place by the lengths is right, or one too high; and rounding up may add a digit.
      const first = String(size).length - String(denominator).length;
      fine -= first;
      if (size * tens(-first) < denominator * tens(first)) fine++;
      if (String(count(fine, 1n)).length > mostSignificant) fine--;
    }
    if (!priority || fine >= places === (priority === 1)) {
      keep = fine - mostSignificant + plan.leastSignificant;
      places = fine;
    }
  }
  const number = count(places, BigInt(plan.increment));
  const text = String(number * tens(-places)).padStart(places + 1, "0");
  const sign = negative && (number || plan.negativeZero) ? "-" : "";
  const whole = places > 0 ? text.slice(0, -places) : text;
  const fraction = text.slice(whole.length);
  return sign + whole + trimmed(fraction, keep, plan.strip);
}

/** The point and the digits after it, without the zeros that nobody asked for. */
function trimmed(fraction: string, keep: number, strip: boolean): string {
  let { length } = fraction;
  while (length && fraction.charCodeAt(length - 1) === 48) length--;
  if (length < keep && (length || !strip)) length = keep;
  return length > 0 ? "." + fraction.slice(0, length) : "";
}

/** The same in plain numbers, many times as fast; undefined where they do not suffice. */
function shortText(numerator: number, denominator: number, plan: Plan): string | undefined {
  const { mostFraction } = plan;
  if (mostFraction > 15 || plan.significant || plan.increment > 1) return undefined;
  const negative = numerator < 0;
  const size = negative ? -numerator : numerator;
  const scale = 10 ** mostFraction;
  let rest = size % denominator;
  let whole = (size - rest) / denominator;
  const scaled = rest * scale;
  if (scaled > 4e15 || denominator > 4e15) return undefined;
  rest = scaled % denominator;
  let fraction = (scaled - rest) / denominator;
  const odd = (mostFraction > 0 ? fraction : whole) % 2 > 0;
  if (rest > 0 && goesAway(plan.rule, negative, 2 * rest - denominator, odd) && ++fraction === scale) {
    fraction = 0;
    whole++;
  }
  const sign = negative && (whole > 0 || fraction > 0 || plan.negativeZero) ? "-" : "";
  return sign + whole + trimmed(String(scale + fraction).slice(1), plan.leastFraction, plan.strip);
}

/** `numerator / denominator` (above zero, not necessarily reduced) as plain ASCII decimal text. */
export function decimalText(
  numerator: number | bigint,
  denominator: number | bigint,
  rounding: Rounding = {},
  usualFraction = 3,
): string {
  const plan = planOf(rounding, usualFraction);
  return (
    (typeof numerator === "number" ? shortText(numerator, denominator as number, plan) : undefined) ??
    longText(BigInt(numerator), BigInt(denominator), plan)
  );
}
