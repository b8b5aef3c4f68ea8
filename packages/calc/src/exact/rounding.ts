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
  /** 1 to 100. Significant digits go before fraction digits where both are stated. */
  readonly minimumSignificantDigits?: number | undefined;
  /** 1 to 100; the larger of 21 and the minimum where it is not stated. */
  readonly maximumSignificantDigits?: number | undefined;
  /** Which way it is rounded; `halfExpand`, to the nearest with ties away from zero, where it is not stated. */
  readonly roundingMode?: RoundingMode | undefined;
  /** Rounds to multiples of this in the last digit; needs equal minimum and maximum fraction digits. */
  readonly roundingIncrement?:
    1 | 2 | 5 | 10 | 20 | 25 | 50 | 100 | 200 | 250 | 500 | 1000 | 2000 | 2500 | 5000 | undefined;
  /** Whether a whole number shows the zeros behind its point: `auto` (where it is not stated), or `stripIfInteger`. */
  readonly trailingZeroDisplay?: "auto" | "stripIfInteger" | undefined;
  /** Writes `-0` where a negative value rounds to zero, as ECMA-402 does; otherwise that sign is dropped. */
  readonly negativeZero?: boolean | undefined;
}

const choices = {
  roundingMode: ["halfExpand", "ceil", "floor", "expand", "trunc", "halfCeil", "halfFloor", "halfTrunc", "halfEven"],
  trailingZeroDisplay: ["auto", "stripIfInteger"],
} as const;

// What the modes do, in their order. Away from zero for positive values: 1, for negative ones: 2; only past the middle: 4;
// at the middle by evenness: 8.
const rules = [7, 1, 2, 3, 0, 5, 6, 4, 12];

/** Options read and checked. */
interface Plan {
  readonly rule: number;
  readonly step: number;
  readonly least: number;
  readonly most: number;
  /** Least and most significant digits; the latter 0 where fraction digits alone are stated. */
  readonly few: number;
  readonly many: number;
  readonly strip: number;
  readonly minus: boolean | undefined;
}

// Options are read by name, here and below: a lookup by a name that varies takes longer than all the arithmetic.

function choice(name: keyof typeof choices, value: unknown): number {
  if (value === undefined) return 0;
  const list: readonly unknown[] = choices[name];
  const index = list.indexOf(value);
  return index < 0 ? fail("option-out-of-range", name, value, list.join(", ")) : index;
}

function digits(name: keyof Rounding, value: number | undefined, least: number, otherwise: number): number {
  if (value === undefined) return otherwise;
  return value >= least && value <= 100
    ? Math.floor(value)
    : fail("option-out-of-range", name, value, `${least} to 100`);
}

/** ECMA-402, SetNumberFormatDigitOptions. */
function planOf(rounding: Rounding, usual: number): Plan {
  const step = rounding.roundingIncrement ?? 1;
  const few = digits("minimumSignificantDigits", rounding.minimumSignificantDigits, 1, 0);
  const many = digits(
    "maximumSignificantDigits",
    rounding.maximumSignificantDigits,
    few || 1,
    few && Math.max(21, few),
  );
  // Where significant digits are stated, fraction digits are not looked at.
  const least = many ? 0 : digits("minimumFractionDigits", rounding.minimumFractionDigits, 0, 0);
  const most = many
    ? 0
    : digits("maximumFractionDigits", rounding.maximumFractionDigits, least, Math.max(step === 1 ? usual : 0, least));
  if (step !== 1 && (many || least < most || !/^(25|[125])0*$/.test(String(step)) || step > 5000))
    fail("option-out-of-range", "roundingIncrement", step, "1 or, with equal fraction digits, 2, 5, 10 to 5000");
  return {
    rule: rules[choice("roundingMode", rounding.roundingMode)]!,
    step,
    least,
    most,
    few: few || 1,
    many,
    strip: choice("trailingZeroDisplay", rounding.trailingZeroDisplay),
    minus: rounding.negativeZero,
  };
}

/** Whether what is left over goes away from zero; `middle` is its place below, at or above one half. */
function goesAway(rule: number, negative: boolean, middle: number, odd: boolean): boolean {
  if (rule & 4 && middle !== 0) return middle > 0;
  return rule & 8 ? odd : (rule & (negative ? 2 : 1)) > 0;
}

const tens = (power: number): bigint => (power > 0 ? 10n ** BigInt(power) : 1n);

/** Digits as one whole number, and how many of them stand after the point, and of those must stay, become text. */
function written(digits: number | bigint, places: number, keep: number, negative: boolean, plan: Plan): string {
  let text = String(digits);
  if (text.length <= places) text = text.padStart(places + 1, "0");
  const whole = text.length - places;
  let end = text.length;
  while (end > whole + keep && text.charCodeAt(end - 1) === 48) end--;
  let fraction = text.slice(whole, end);
  if (plan.strip && !/[^0]/.test(fraction)) fraction = "";
  return (negative && (digits || plan.minus) ? "-" : "") + text.slice(0, whole) + (fraction && "." + fraction);
}

/** The general way. */
function longText(numerator: bigint, denominator: bigint, plan: Plan): string {
  const { rule, few, many } = plan;
  const negative = numerator < 0n;
  const size = negative ? -numerator : numerator;
  const count = (places: number, step: number): bigint => {
    const unit = denominator * tens(-places) * BigInt(step);
    const scaled = size * tens(places);
    const down = scaled / unit;
    const twice = (scaled % unit) * 2n;
    const up = twice && goesAway(rule, negative, Number(twice - unit), down % 2n > 0n);
    return (up ? down + 1n : down) * BigInt(step);
  };
  let places = plan.most;
  let keep = plan.least;
  if (many) {
    let fine = many - 1;
    if (size) {
      // The first digit's place by the lengths is right, or one too high; and rounding up may add a digit.
      const first = String(size).length - String(denominator).length;
      fine -= first;
      if (size * tens(-first) < denominator * tens(first)) fine++;
      if (String(count(fine, 1)).length > many) fine--;
    }
    keep = Math.max(fine - many + few, 0);
    places = fine;
  }
  return written(count(places, plan.step) * tens(-places), Math.max(places, 0), keep, negative, plan);
}

/** The same in plain numbers, many times as fast; undefined where they do not suffice. */
function shortText(numerator: number, denominator: number, plan: Plan): string | undefined {
  const negative = numerator < 0;
  let scaled = negative ? -numerator : numerator;
  for (let place = 0; place < plan.most; place++) scaled *= 10;
  if (plan.many || plan.step > 1 || scaled + denominator > 4e15) return undefined;
  const rest = scaled % denominator;
  const down = (scaled - rest) / denominator;
  const up = rest && goesAway(plan.rule, negative, 2 * rest - denominator, down % 2 > 0);
  return written(up ? down + 1 : down, plan.most, plan.least, negative, plan);
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
