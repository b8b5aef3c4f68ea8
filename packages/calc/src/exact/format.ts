import type { Rational } from "./rational.js";
import { decimalText, type Rounding } from "./rounding.js";

/** What else a locale writes around the digits. */
export interface NumberStyle {
  readonly percent?: boolean | undefined;
  readonly sign?: "auto" | "always" | "exceptZero" | "never" | undefined;
}

/** Rounds exactly, then lets `Intl` write the digits of the locale. */
export function format(value: Rational, rounding?: Rounding, locale = "en", style: NumberStyle = {}): string {
  const shown = style.percent === true ? value.times(100) : value;
  const text = decimalText(shown.numerator, shown.denominator, rounding, style.percent === true ? 0 : 3);
  const fraction = text.includes(".") ? text.length - text.indexOf(".") - 1 : 0;
  return new Intl.NumberFormat(locale, {
    minimumFractionDigits: fraction,
    maximumFractionDigits: fraction,
    signDisplay: style.sign ?? "auto",
    style: style.percent === true ? "percent" : "decimal",
  }).format((style.percent === true ? text + "e-2" : text) as unknown as number);
}
