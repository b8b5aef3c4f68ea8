import { Bounded, bounded, format, rational, type NumberStyle, type Rational, type Rounding } from "../exact/index.js";
import { figureWords, type FigureWords } from "./words.js";

/** How figures are to be written. */
export interface Writing {
  readonly rounding?: Rounding | undefined;
  /** A BCP 47 tag. */
  readonly locale?: string | undefined;
  readonly words?: Partial<FigureWords> | undefined;
}

/** How one number is to be written. */
export interface NumberForm extends NumberStyle {
  /** Fraction digits; none: the build's rounding, or two. */
  readonly digits?: number | undefined;
  readonly unit?: string | undefined;
}

/**
 * Whether a locale is English as it is known here: to load the tables of `Intl` takes a fresh page longer than everything
 * else that it does before it shows its figures.
 */
export const isPlainEnglish = (locale: string): boolean => /^en(-(US|GB))?$/.test(locale);

function written(value: Rational, rounding: Rounding, locale: string, style: NumberStyle): string {
  const { percent, sign } = style;
  if (sign || rounding.maximumFractionDigits === undefined || !isPlainEnglish(locale))
    return format(value, rounding, locale, style);
  const [whole, ...fraction] = value
    .times(percent ? 100 : 1)
    .toDecimal(rounding)
    .split(".");
  return [whole!.replace(/\B(?=(\d{3})+$)/g, ","), ...fraction].join(".") + (percent ? "%" : "");
}

/** Writes numbers and words in one language and one rounding. Everything shown goes through here. */
export class Writer {
  readonly words: FigureWords;
  readonly #rounding: Rounding | undefined;
  readonly #locale: string;

  constructor({ rounding, locale = "en", words }: Writing = {}) {
    this.words = { ...figureWords, ...words };
    this.#rounding = rounding;
    this.#locale = locale;
  }

  #one(value: Rational, { digits, unit, ...style }: NumberForm, mode?: Rounding["roundingMode"]): string {
    const fixed = { minimumFractionDigits: digits ?? 2, maximumFractionDigits: digits ?? 2 };
    const base: Rounding =
      digits === undefined ? (this.#rounding ?? fixed) : { ...fixed, roundingMode: this.#rounding?.roundingMode };
    const text = written(value, mode ? { ...base, roundingMode: mode } : base, this.#locale, style).replace(
      "-",
      "\u2212",
    );
    return unit ? `${text}\u00a0${unit}` : text;
  }

  /** A number; or both its ends, rounded outward, where they differ. */
  number(value: Rational | Bounded, form: NumberForm = {}): string {
    const { low, high } = value instanceof Bounded ? value : bounded(value);
    const text = this.#one(low, form);
    if (text === this.#one(high, form)) return text;
    const { unit, ...bare } = form;
    return `${this.#one(low, form.percent ? form : bare, "floor")} ${this.words.to} ${this.#one(high, form, "ceil")}`;
  }

  /** A signed number as its size and a word for its sign: "1.06% ahead", "4.38% behind to 2.22% ahead". */
  worded(value: Bounded, up: string, down: string, level: string, form: NumberForm = {}): string {
    const { low, high } = value;
    const word = (sign: number): string => (sign < 0 ? down : up);
    if (low.sign === high.sign && (low.sign || value.isExact)) {
      if (!low.sign) return level;
      return `${this.number(low.sign < 0 ? value.times(-1) : value, form)} ${word(low.sign)}`;
    }
    const end = (at: Rational): string => (at.sign ? `${this.#one(at.abs(), form, "ceil")} ${word(at.sign)}` : level);
    return `${end(low)} ${this.words.to} ${end(high)}`;
  }

  /** A length given in millimetres. */
  length(value: Rational | Bounded, form: NumberForm = {}): string {
    const { unit = "mm" } = form;
    const scale = { mm: rational(1), cm: rational(10), m: rational(1000), in: rational("25.4"), ft: rational("304.8") }[
      unit
    ];
    const scaled = scale ? (value instanceof Bounded ? value.over(scale) : value.over(scale)) : value;
    return this.number(scaled, { digits: 1, ...form, unit });
  }
}
