import { bounded, lengthOf, type Bounded, type Rational } from "../exact/index.js";
import { figureWords, isPlainEnglish } from "../languages/index.js";
import { BareWriter, type NumberForm, type Writing } from "./bare-writer.js";

/** A writer of lengths, limits and lists as well, that speaks English where no other words are given. */
export class Writer extends BareWriter {
  constructor(writing: Writing = {}) {
    super({ ...writing, words: writing.words ?? figureWords });
  }

  /** One end of what may be, rounded inward: whatever lies within the text lies within the limit. */
  limit(value: Bounded, end: "from" | "to", form: NumberForm = {}): string {
    return end === "from" ? this.one(value.high, form, "ceil") : this.one(value.low, form, "floor");
  }

  /** Texts of which any one will do. */
  oneOf(texts: readonly string[]): string {
    if (!isPlainEnglish(this.locale)) return new Intl.ListFormat(this.locale, { type: "disjunction" }).format(texts);
    const [last, ...rest] = [...texts].reverse();
    return rest.length ? `${rest.reverse().join(", ")} or ${last}` : (last ?? "");
  }

  /** A form for lengths in a unit, with so many digits as are meant where the unit is the millimetre. */
  #lengthForm(form: NumberForm, digits: number, least: number): NumberForm & { readonly unit: string } {
    const { unit = "mm" } = form;
    if (form.digits !== undefined) return { ...form, unit };
    const finer = unit === "mm" ? 0 : unit === "m" ? 3 : unit === "ft" ? 2 : 1;
    // Inches are read to the thousandth, noughts and all.
    const few = unit === "in" || unit === "ft" ? digits : least;
    return { ...form, unit, digits: Math.max(0, digits + finer), least: Math.max(0, few + finer) };
  }

  /**
   * A length given in millimetres, in the form's unit.
   *
   * @param digits fraction digits that are meant in millimetres, where the form has none
   * @param least of these, how many stay where they are noughts
   */
  length(value: Rational | Bounded, form: NumberForm = {}, digits = 1, least = digits): string {
    const own = this.#lengthForm(form, digits, least);
    return this.number(bounded(value).over(lengthOf(`1 ${own.unit}`)), own);
  }

  /** One end of lengths that may be, in millimetres, rounded inward. */
  lengthLimit(value: Bounded, end: "from" | "to", form: NumberForm = {}, digits = 1, least = digits): string {
    const own = this.#lengthForm(form, digits, least);
    return this.limit(value.over(lengthOf(`1 ${own.unit}`)), end, own);
  }
}
