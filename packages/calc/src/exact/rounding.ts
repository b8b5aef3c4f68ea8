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
  roundingPriority: ["auto", "morePrecision", "lessPrecision"],
  trailingZeroDisplay: ["auto", "stripIfInteger"],
} as const;

// What the modes do, in their order. Away from zero for positive values: 1, for negative ones: 2; only past the middle: 4;
// at the middle by evenness: 8.
const rules = [7, 1, 2, 3, 0, 5, 6, 4, 12];

/** Options read and checked. */
type Plan = readonly [
  rule: number,
  increment: number,
  leastFraction: number,
  mostFraction: number,
  leastSignificant: number,
  /** 0: by fraction digits alone. */
  mostSignificant: number,
  /** 0: by significant digits alone; else by whichever of both is finer (1) or coarser (2). */
  priority: number,
  strip: number,
  negativeZero: boolean | undefined,
];

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
  const increment = rounding.roundingIncrement ?? 1;
  const priority = choice(rounding, "roundingPriority");
  const leastFraction = digits(rounding, "minimumFractionDigits", 0, 0);
  const usual = Math.max(increment !== 1 ? 0 : usualFraction, leastFraction);
  const mostFraction = digits(rounding, "maximumFractionDigits", leastFraction, usual);
  const leastSignificant = digits(rounding, "minimumSignificantDigits", 1, 0);
  const mostSignificant = digits(
    rounding,
    "maximumSignificantDigits",
    leastSignificant || 1,
    leastSignificant || priority ? Math.max(21, leastSignificant) : 0,
  );
  if (
    increment !== 1 &&
    (mostSignificant || leastFraction < mostFraction || !/^(25|[125])0*$/.test(String(increment)) || increment > 5000)
  )
    fail("option-out-of-range", "roundingIncrement", increment, "1 or, with equal fraction digits, 2, 5, 10 to 5000");
  return [
    rules[choice(rounding, "roundingMode")]!,
    increment,
    leastFraction,
    mostFraction,
    leastSignificant || 1,
    mostSignificant,
    priority,
    choice(rounding, "trailingZeroDisplay"),
    rounding.negativeZero,
  ];
}

/** Whether what is left over goes away from zero; `middle` is its place below, at or above one half. */
function goesAway(rule: number, negative: boolean, middle: number, odd: boolean): boolean {
  if (rule & 4 && middle !== 0) return middle > 0;
  return rule & 8 ? odd : (rule & (negative ? 2 : 1)) > 0;
}

const tens = (power: number): bigint => (power > 0 ? 10n ** BigInt(power) : 1n);

/** Digits as one whole number, and how many of them stand after the point, and of those must stay, become text. */
function written(digits: number | bigint, places: number, keep: number, negative: boolean, plan: Plan): string {
  const [, , , , , , , strip, minusZero] = plan;
  const text = String(digits).padStart(places + 1, "0");
  const whole = text.length - places;
  let end = text.length;
  while (end > whole && text.charCodeAt(end - 1) === 48) end--;
  if (end < whole + keep && !(strip && end === whole)) end = whole + keep;
  const sign = negative && (digits || minusZero) ? "-" : "";
  return sign + text.slice(0, whole) + (end > whole ? "." + text.slice(whole, end) : "");
}

/** The general way. */
function longText(numerator: bigint, denominator: bigint, plan: Plan): string {
  const [rule, increment, leastFraction, mostFraction, leastSignificant, mostSignificant, priority] = plan;
  const negative = numerator < 0n;
  const size = negative ? -numerator : numerator;
  const count = (places: number, step: number): bigint => {
    const unit = denominator * tens(-places) * BigInt(step);
    const scaled = size * tens(places);
    const down = scaled / unit;
    const twice = (scaled % unit) * 2n;
    const up = twice && goesAway(rule, negative, twice < unit ? -1 : twice > unit ? 1 : 0, down % 2n > 0n);
    return (up ? down + 1n : down) * BigInt(step);
  };
  let places = mostFraction;
  let keep = leastFraction;
  if (mostSignificant) {
    let fine = mostSignificant - 1;
    if (size) {
      // The first digit's place by the lengths is right, or one too high; and rounding up may add a digit.
      const first = String(size).length - String(denominator).length;
      fine -= first;
      if (size * tens(-first) < denominator * tens(first)) fine++;
      if (String(count(fine, 1)).length > mostSignificant) fine--;
    }
    if (!priority || fine >= places === priority < 2) {
      keep = fine - mostSignificant + leastSignificant;
      places = fine;
    }
  }
  return written(count(places, increment) * tens(-places), Math.max(places, 0), keep, negative, plan);
}

/** The same in plain numbers, many times as fast; undefined where they do not suffice. */
function shortText(numerator: number, denominator: number, plan: Plan): string | undefined {
  const [rule, increment, leastFraction, mostFraction, , mostSignificant] = plan;
  const negative = numerator < 0;
  const scaled = (negative ? -numerator : numerator) * 10 ** mostFraction;
  if (mostSignificant || increment > 1 || mostFraction > 15 || scaled + denominator > 4e15) return undefined;
  const twice = (scaled % denominator) * 2;
  const down = (scaled - twice / 2) / denominator;
  const up = twice && goesAway(rule, negative, twice - denominator, down % 2 > 0);
  return written(up ? down + 1 : down, mostFraction, leastFraction, negative, plan);
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
