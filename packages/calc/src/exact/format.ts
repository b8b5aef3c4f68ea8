import { numberFormat } from "./locale.js";
import type { Rational } from "./rational.js";
import { decimalText, type Rounding } from "./rounding.js";

/** What a locale writes around the digits. */
export interface NumberStyle {
  /** In hundredths, with the locale's percent sign; no fraction digits unless stated. */
  readonly percent?: boolean | undefined;
  /** When a sign is written; `"auto"`, for negative values, where nothing is stated. */
  readonly sign?: "auto" | "always" | "exceptZero" | "never" | undefined;
  /** A unit that ECMA-402 knows, such as `"millimeter"` or `"kilometer-per-hour"`, in its short form. */
  readonly unit?: string | undefined;
}

/** Fraction digits that every engine's `Intl` takes; the others are written behind them. */
const most = 20;

/**
 * A figure as a locale writes it: rounded exactly first, then handed to `Intl.NumberFormat` as text, so that it never
 * becomes a float. A negative value that rounds to zero has no sign unless `rounding.negativeZero` asks for it.
 *
 * @param locale a BCP 47 tag
 * @throws MeshwrightError `option-out-of-range`, `not-a-locale`
 *
 * @example
 * import { format, rational } from "@meshwright/calc/exact";
 * format(rational("62/15"), { maximumFractionDigits: 2 }, "de"); // => "4,13"
 * format(rational("1/94"), { minimumFractionDigits: 2 }, "en", { percent: true, sign: "always" }); // => "+1.06%"
 */
export function format(value: Rational, rounding?: Rounding, locale = "en", style: NumberStyle = {}): string {
  const { percent, sign, unit } = style;
  const { numerator, denominator } = percent ? value.times(100) : value;
  const text = decimalText(numerator, denominator, rounding, percent ? 0 : 3);
  const [whole, fraction = ""] = text.split(".");
  const shown = fraction.slice(0, most);
  const tail = fraction.slice(most).replace(/\d/g, (digit) => numberFormat(locale).format(digit as unknown as number));
  return numberFormat(locale, {
    style: percent ? "percent" : unit ? "unit" : undefined,
    unit,
    signDisplay: sign,
    minimumFractionDigits: shown.length,
    maximumFractionDigits: shown.length,
  })
    .format(`${whole}.${shown}${percent ? "e-2" : ""}` as unknown as number)
    .replace(/\p{Nd}(?=\P{Nd}*$)/u, (last) => last + tail);
}
