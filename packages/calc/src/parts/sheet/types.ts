import type { Part } from "../../drivetrain/index.js";
import type { UnderstoodColumn } from "./columns.js";
import type { ColumnMeaning, SheetField } from "./meaning.js";
import type { SheetQuestion } from "./question.js";
import type { PassedCode } from "./sheet-words.js";

/** What is known better than the sheet says. */
export interface SheetSettings {
  /** What columns mean, by their keys: a field alone, or all that is to be set. */
  readonly columns?: Readonly<Record<string, SheetField | "unused" | ColumnMeaning>>;
  /**
   * Answers to questions, by their keys, each as a cell would say it plainly: `"17"`, `"13/38"`, `"5 mm"`, `"module 0.8"`,
   * `"4.20 EUR"`, `"2026-10-03"`, `"pinion"`; an empty one says that it is not known. Of a row: `"part"` or `"pass"`.
   */
  readonly answers?: Readonly<Record<string, string>>;
}

/** The row that a part was read from. */
export interface PartRow {
  /** Counted from 0. */
  readonly row: number;
  /** The line of the file. */
  readonly line: number;
  /** Whether the part has all that its kind needs. */
  readonly isComplete: boolean;
  /** Whether its id is one that the sheet gives; else it was made of its number, name and counts, and another sheet may make the same of another part. */
  readonly hasOwnId: boolean;
}

/** A row that is no part, and why. */
export interface PassedRow {
  readonly row: number;
  readonly line: number;
  readonly code: PassedCode;
  readonly text: string;
  /** Under it the answer "part" makes it one. */
  readonly key: string;
}

/** A sheet understood. Every row that is not empty is in `rows` or in `passed`. */
export interface SheetParts {
  readonly parts: readonly Part[];
  /** Where each part was read, in the same order. */
  readonly rows: readonly PartRow[];
  readonly passed: readonly PassedRow[];
  readonly columns: readonly UnderstoodColumn[];
  readonly questions: readonly SheetQuestion[];
}
