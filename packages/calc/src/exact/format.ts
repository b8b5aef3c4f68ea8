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

const english = /^en(-(US|GB))?$/;

/** Fraction digits that every engine's `Intl` takes. */
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
  const { percent, sign = "auto", unit } = style;
  const { numerator, denominator } = percent ? value.times(100) : value;
  const text = decimalText(numerator, denominator, rounding, percent ? 0 : 3);
  if (english.test(locale) && !unit) return inEnglish(text, sign) + (percent ? "%" : "");
  const fraction = text.includes(".") ? text.length - text.indexOf(".") - 1 : 0;
  const shown = Math.min(fraction, most);
  const tail = text.slice(text.length - fraction + shown);
  const written = numberFormat(locale, {
    style: percent ? "percent" : unit ? "unit" : "decimal",
    ...(unit && { unit }),
    signDisplay: sign,
    minimumFractionDigits: shown,
    maximumFractionDigits: shown,
  });
  const number = (text.slice(0, text.length - tail.length) + (percent ? "e-2" : "")) as unknown as number;
  if (!tail) return written.format(number);
  return written
    .formatToParts(number)
    .map((part) => (part.type === "fraction" ? part.value + digitsIn(locale, tail) : part.value))
    .join("");
}

/** English is known: to load the tables of `Intl` for it takes a fresh page longer than everything else that it does here. */
function inEnglish(text: string, sign: string): string {
  const [, minus, whole, fraction] = /(-?)(\d+)(.*)/.exec(text)!;
  const isZero = !/[1-9]/.test(text);
  const mark = minus || (sign === "auto" ? "" : "+");
  const isShown = sign !== "never" && !(sign === "exceptZero" && isZero);
  return (isShown ? mark : "") + whole!.replace(/\B(?=(\d{3})+$)/g, ",") + fraction;
}

function digitsIn(locale: string, text: string): string {
  return text.replace(/\d/g, (digit) => numberFormat(locale).format(Number(digit)));
}
