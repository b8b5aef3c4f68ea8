import { MeshwrightError } from "./errors.js";

/** The nine rounding modes of ECMA-402. */
export type RoundingMode =
  "ceil" | "floor" | "expand" | "trunc" | "halfCeil" | "halfFloor" | "halfExpand" | "halfTrunc" | "halfEven";

/** How a figure is rounded when it is shown: names, defaults and meanings are those of ECMA-402 `Intl.NumberFormat`. */
export interface Rounding {
  readonly minimumFractionDigits?: number | undefined;
  readonly maximumFractionDigits?: number | undefined;
  readonly minimumSignificantDigits?: number | undefined;
  readonly maximumSignificantDigits?: number | undefined;
  readonly roundingMode?: RoundingMode | undefined;
  readonly roundingIncrement?: number | undefined;
  readonly roundingPriority?: "auto" | "morePrecision" | "lessPrecision" | undefined;
  readonly trailingZeroDisplay?: "auto" | "stripIfInteger" | undefined;
  /** Writes `-0` where a negative value rounds to zero, as ECMA-402 does; otherwise the sign is dropped. */
  readonly negativeZero?: boolean | undefined;
}

const modes = "ceil floor expand trunc halfCeil halfFloor halfExpand halfTrunc halfEven".split(" ");
const increments = [1, 2, 5, 10, 20, 25, 50, 100, 200, 250, 500, 1000, 2000, 2500, 5000];

function digits(rounding: Rounding, name: keyof Rounding, low: number, high: number): number | undefined {
  const value = rounding[name];
  if (value === undefined) return undefined;
  if (typeof value !== "number" || !(value >= low && value <= high))
    throw new MeshwrightError("option-out-of-range", name, `${name} is ${String(value)}; expected ${low} to ${high}.`);
  return Math.floor(value);
}

function oneOf(rounding: Rounding, name: keyof Rounding, allowed: readonly unknown[]): unknown {
  const value = rounding[name];
  if (value === undefined) return allowed[0];
  if (!allowed.includes(value))
    throw new MeshwrightError("option-not-known", name, `${name} is ${String(value)}; expected ${allowed.join(", ")}.`);
  return value;
}

/** Rounds `n / unit` (`n` at least 0) to a multiple of `step`. */
function divide(n: bigint, unit: bigint, step: bigint, mode: string, negative: boolean): bigint {
  const one = unit * step;
  const down = n / one;
  const rest = n % one;
  let up = false;
  if (rest > 0n) {
    const away = mode === "expand" || mode === (negative ? "floor" : "ceil");
    if (mode.startsWith("half")) {
      const twice = rest * 2n;
      up =
        twice > one ||
        (twice === one &&
          (mode === "halfExpand" ||
            mode === (negative ? "halfFloor" : "halfCeil") ||
            (mode === "halfEven" && down % 2n === 1n)));
    } else up = away;
  }
  return (up ? down + 1n : down) * step;
}

function point(digitsText: string, fraction: number): string {
  if (fraction <= 0) return digitsText + "0".repeat(-fraction);
  const padded = digitsText.padStart(fraction + 1, "0");
  return padded.slice(0, -fraction) + "." + padded.slice(-fraction);
}

function trim(text: string, keep: number): string {
  const dot = text.indexOf(".");
  if (dot < 0) return text;
  let end = text.length;
  while (end > dot + 1 + keep && text[end - 1] === "0") end--;
  return text.slice(0, end === dot + 1 ? dot : end);
}

/** The decimal text of `numerator / denominator`, rounded. */
export function decimalText(
  numerator: bigint,
  denominator: bigint,
  rounding: Rounding = {},
  defaultMaximum = 3,
): string {
  let leastFraction = digits(rounding, "minimumFractionDigits", 0, 100);
  let mostFraction = digits(rounding, "maximumFractionDigits", 0, 100);
  let leastSignificant = digits(rounding, "minimumSignificantDigits", 1, 100);
  let mostSignificant = digits(rounding, "maximumSignificantDigits", 1, 100);
  const mode = oneOf(rounding, "roundingMode", ["halfExpand", ...modes]) as string;
  const increment = oneOf(rounding, "roundingIncrement", increments) as number;
  const priority = oneOf(rounding, "roundingPriority", ["auto", "morePrecision", "lessPrecision"]);
  const strip = oneOf(rounding, "trailingZeroDisplay", ["auto", "stripIfInteger"]) === "stripIfInteger";
  const bySignificant = leastSignificant !== undefined || mostSignificant !== undefined;
  if (increment !== 1) defaultMaximum = 0;
  if (leastFraction === undefined) leastFraction = Math.min(0, mostFraction ?? 0);
  if (mostFraction === undefined) mostFraction = Math.max(defaultMaximum, leastFraction);
  leastSignificant ??= 1;
  mostSignificant ??= Math.max(21, leastSignificant);
  for (const [low, high, name] of [
    [leastFraction, mostFraction, "maximumFractionDigits"],
    [leastSignificant, mostSignificant, "maximumSignificantDigits"],
  ] as const)
    if (low > high)
      throw new MeshwrightError("option-out-of-range", name, `${name} is ${high}; expected at least ${low}.`);
  if (increment !== 1 && (bySignificant || priority !== "auto" || leastFraction !== mostFraction))
    throw new MeshwrightError(
      "option-out-of-range",
      "roundingIncrement",
      "roundingIncrement needs equal minimum and maximum fraction digits and no significant digits.",
    );

  const negative = numerator < 0n;
  const size = negative ? -numerator : numerator;
  const fixed = (): { text: string; magnitude: number } => {
    const n = divide(size * 10n ** BigInt(mostFraction), denominator, BigInt(increment), mode, negative);
    return { text: trim(point(n.toString(), mostFraction), leastFraction), magnitude: -mostFraction };
  };
  const precise = (): { text: string; magnitude: number } => {
    if (size === 0n)
      return { text: trim(point("0", mostSignificant - 1), leastSignificant - 1), magnitude: 1 - mostSignificant };
    let exponent = size.toString().length - denominator.toString().length;
    const tens = (power: number): bigint => 10n ** BigInt(Math.max(0, power));
    if (size * tens(-exponent) < denominator * tens(exponent)) exponent--;
    const shift = mostSignificant - 1 - exponent;
    let text = divide(size * tens(shift), denominator * tens(-shift), 1n, mode, negative).toString();
    if (text.length > mostSignificant) {
      text = text.slice(0, -1);
      exponent++;
    }
    const fraction = mostSignificant - 1 - exponent;
    return {
      text: trim(point(text, fraction), Math.max(0, fraction - (mostSignificant - leastSignificant))),
      magnitude: -fraction,
    };
  };
  let text: string;
  if (priority === "auto") text = (bySignificant ? precise() : fixed()).text;
  else {
    const s = precise();
    const f = fixed();
    text = f.magnitude < s.magnitude === (priority === "morePrecision") ? f.text : s.text;
  }
  if (strip && /\.0*$/.test(text)) text = trim(text, 0);
  return negative && (rounding.negativeZero === true || /[1-9]/.test(text)) ? "-" + text : text;
}
