import type { Part } from "../../drivetrain/index.js";
import type { Decimal } from "./number.js";
import type { QuestionCode } from "./sheet-words.js";

/**
 * What a column, or a cell, can stand for: a field of a part, or a manner of writing one.
 * `teeth` takes both counts of a set too; `toothPitch` a module, a diametral pitch or a belt's pitch, whichever is marked;
 * `round` an outside diameter and `across` any diameter of whatever the part is; `price` an amount with or without its currency.
 */
export type SheetField =
  | "id"
  | "number"
  | "name"
  | "is"
  | "stage"
  | "teeth"
  | "driver"
  | "driven"
  | "value"
  | "module"
  | "diametralPitch"
  | "toothPitch"
  | "pitch"
  | "pressureAngle"
  | "form"
  | "shift"
  | "tipDiameter"
  | "bore"
  | "outside"
  | "diameter"
  | "round"
  | "across"
  | "width"
  | "hub"
  | "facing"
  | "circles"
  | "maker"
  | "price"
  | "currency"
  | "checked"
  | "source"
  | "available"
  | "pack"
  | "pieces"
  | "per"
  | "owned"
  | "status";

/** A unit of length that a sheet may use. */
export type LengthUnit = "mm" | "cm" | "m" | "in" | "ft";

/** What a column means. All of it can be set; what is not set is found out. */
export interface ColumnMeaning {
  /** `"unused"` where it stands for nothing. */
  readonly field?: SheetField | "unused";
  /** Of lengths without a unit, and of pitches without a mark. */
  readonly unit?: LengthUnit | "module" | "DP";
  /** Of prices without one, and what a sign such as $ means. ISO 4217. */
  readonly currency?: string;
  readonly decimal?: Decimal;
  /** Of dates such as 03/10/2026, and of both counts of a set. */
  readonly order?: "day-month" | "month-day" | "driver-driven" | "driven-driver";
  /** What an empty cell means: the same as above, as merged cells leave it, or nothing. */
  readonly blanks?: "as-above" | "empty";
  /** What a cross means, in a column of yes and no. */
  readonly cross?: "yes" | "no";
  /** What its words mean: a cell's whole text, to what an answer would say. */
  readonly words?: Readonly<Record<string, string>>;
}

/** What a reader of cells knows beside the cell. */
export interface CellContext extends ColumnMeaning {
  readonly field: SheetField;
  /** Currencies that other cells of the column, or a column of currencies, name. */
  readonly currencies?: readonly string[];
  /** Years that dates of the column write in full. */
  readonly years?: ReadonlySet<number>;
  /** Whether the sheet is written in kana. */
  readonly isJapanese?: boolean;
  /** Whether the column's head speaks of both, module and diametral pitch. */
  readonly isEither?: boolean;
  /** The text is an answer: what it says is meant. */
  readonly isAnswer?: boolean;
}

/** One of the answers that are offered. */
export interface Choice {
  /** As an answer says it. */
  readonly answer: string;
  /** What the column would mean if this were so for all of its cells. */
  readonly column?: ColumnMeaning;
}

/** What is asked about a cell, before it is known which one. */
export interface Ask {
  readonly code: QuestionCode;
  /** What it is perhaps, in the form of an answer. */
  readonly guess?: string | undefined;
  readonly choices?: readonly Choice[] | undefined;
}

/** A cell read: the part's fields that it gives, and what there is to ask. Fields beside a question are its guess, taken. */
export interface CellRead {
  readonly set?: Partial<Record<keyof Part | "amount" | "currency" | "checked", unknown>>;
  readonly ask?: Ask;
}

/** Reads a tidied cell. */
export type CellReader = (text: string, context: CellContext, is: Part["is"]) => CellRead;
