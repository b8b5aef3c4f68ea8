import type { Build } from "../drivetrain/index.js";
import type { FindingCode, FindingValues } from "../stages/index.js";

/**
 * What ECMA-402 refuses about options that are right one by one (SetNumberFormatDigitOptions): the option to blame, and why.
 * Significant digits go before fraction digits, which are then not looked at.
 */
export function roundingFault(
  rounding: NonNullable<Build["rounding"]>,
): readonly [option: string, code: FindingCode, values: FindingValues] | undefined {
  const significant = [rounding.minimumSignificantDigits, rounding.maximumSignificantDigits] as const;
  const bySignificant = (significant[0] ?? significant[1]) !== undefined;
  const { roundingIncrement = 1 } = rounding;
  const ends = bySignificant
    ? significant
    : ([rounding.minimumFractionDigits, rounding.maximumFractionDigits] as const);
  const [least, most] = ends;
  if (least !== undefined && most !== undefined && least > most)
    return [`maximum${bySignificant ? "Significant" : "Fraction"}Digits`, "rounding-backwards", { least, most }];
  // Without a maximum it is the minimum, and without a minimum none are kept.
  const equal = (least ?? 0) === (most ?? least ?? 0);
  return roundingIncrement > 1 && (bySignificant || !equal) ? ["roundingIncrement", "increment-alone", {}] : undefined;
}
