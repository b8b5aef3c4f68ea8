import { type Bounded, format, type NumberStyle, type Rational, type Rounding } from "../exact/index.js";
import { fill, isPlainEnglish, type FigureWords } from "../languages/index.js";

/** How figures are to be written. */
export interface Writing {
  readonly rounding?: Rounding | undefined;
  /** A BCP 47 tag. */
  readonly locale?: string | undefined;
  readonly words?: FigureWords | undefined;
}

/** How one number is to be written. */
export interface NumberForm extends NumberStyle {
  /** Fraction digits; none: the build's rounding, or two. */
  readonly digits?: number | undefined;
  /** Fraction digits that stay where they are noughts; as many as `digits` where it is not said. */
  readonly least?: number | undefined;
  readonly unit?: string | undefined;
}

type Mode = Rounding["roundingMode"];

/** Digits in threes, from the end: one pass, as a product may have thousands. */
function grouped(digits: string): string {
  if (digits.length < 4) return digits;
  const first = digits.length % 3 || 3;
  return digits.slice(0, first) + digits.slice(first).replace(/.{3}/g, ",$&");
}

function written(value: Rational, rounding: Rounding, locale: string, style: NumberStyle): string {
  const { percent, sign } = style;
  if (sign || rounding.maximumFractionDigits === undefined || !isPlainEnglish(locale))
    return format(value, rounding, locale, style);
  const [, minus, whole, rest] = /^(-?)(\d+)(.*)$/.exec((percent ? value.times(100) : value).toDecimal(rounding))!;
  return minus! + grouped(whole!) + rest! + (percent ? "%" : "");
}

// Making one costs a hundred times as much as asking it.
const plain = new Map<string, Intl.NumberFormat>();

/** Digits as a language writes them, as many as there are, without thousands grouped. */
function localDigits(text: string, locale: string): string {
  if (isPlainEnglish(locale)) return text;
  const digits = text.split(".")[1]?.length ?? 0;
  const key = `${locale} ${digits}`;
  let writer = plain.get(key);
  if (!writer) {
    const fixed = { minimumFractionDigits: digits, maximumFractionDigits: digits };
    plain.set(key, (writer = new Intl.NumberFormat(locale, { useGrouping: false, ...fixed })));
  }
  return writer.format(text as unknown as number);
}

/**
 * A whole number as a language writes it: a count is no amount, and has no thousands to group.
 *
 * @example
 * [writeCount(1024, "en"), writeCount(62, "ar-EG")]; // => ["1024", "٦٢"]
 */
export const writeCount = (value: number, locale: string): string => localDigits(String(value), locale);

/** Writes numbers and words in one language and one rounding. Everything shown goes through here. The words are given. */
export class BareWriter {
  readonly words: FigureWords;
  readonly locale: string;
  readonly #rounding: Rounding | undefined;

  constructor({ rounding, locale = "en", words }: Writing & { readonly words: FigureWords }) {
    this.words = words;
    this.locale = locale;
    this.#rounding = rounding;
  }

  /** One number, rounded as is asked for. */
  protected one(value: Rational, { digits, least = digits, unit, ...style }: NumberForm, mode?: Mode): string {
    const fixed = { minimumFractionDigits: least ?? 2, maximumFractionDigits: digits ?? 2 };
    const base: Rounding =
      digits === undefined ? (this.#rounding ?? fixed) : { ...fixed, roundingMode: this.#rounding?.roundingMode };
    const text = written(value, mode ? { ...base, roundingMode: mode } : base, this.locale, style).replace(
      "-",
      "\u2212",
    );
    return unit ? `${text}\u00a0${unit}` : text;
  }

  /** A number; or both its ends, rounded outward, where they differ: what is not known is never shown narrower than it is. */
  number(value: Rational | Bounded, form: NumberForm = {}): string {
    // By what it has: a page may have two copies of this, and the value may be the other's.
    return "low" in value ? this.between(value.low, value.high, form) : this.one(value, form);
  }

  /** What lies between two numbers, the lesser first. */
  between(low: Rational, high: Rational, form: NumberForm = {}): string {
    const text = this.one(low, form);
    if (low === high || text === this.one(high, form)) return text;
    const { unit, ...bare } = form;
    return this.range(this.one(low, form.percent ? form : bare, "floor"), this.one(high, form, "ceil"));
  }

  /** Two texts as a range. */
  range(low: string, high: string): string {
    return low === high ? high : fill(this.words.range, low, high);
  }

  /** A value as it was given, with the digits that it was given with: only they are written as the language writes digits. */
  given(value: string | number): string {
    const text = String(value);
    const [, number, rest = ""] = /^(\d{1,15}(?:\.\d{1,15})?)(\s?[a-z]*)$/.exec(text) ?? [];
    return number ? localDigits(number, this.locale) + rest : text;
  }

  /** A signed number as its size and a word for its sign: "1.06% ahead", "4.38% behind to 2.22% ahead". */
  worded(value: Bounded, up: string, down: string, level: string, form: NumberForm = {}): string {
    const { low, high } = value;
    const word = (sign: number): string => (sign < 0 ? down : up);
    if (low.sign === high.sign && (low.sign || value.isExact)) {
      if (!low.sign) return level;
      return `${this.number(low.sign < 0 ? value.times(-1) : value, form)} ${word(low.sign)}`;
    }
    const end = (at: Rational): string => (at.sign ? `${this.one(at.abs(), form, "ceil")} ${word(at.sign)}` : level);
    return fill(this.words.range, end(low), end(high));
  }
}
