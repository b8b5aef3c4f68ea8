import { partsFromSheet, type SheetParts, type SheetSettings } from "../../../src/parts/index.js";
import type { Part } from "../../../src/drivetrain/index.js";

/** A sheet out of lines, cells divided by bars. */
export const sheet = (lines: readonly string[], settings?: SheetSettings): SheetParts =>
  partsFromSheet(
    lines.map((line) => line.split("|")),
    settings,
  );

/** One row under heads, with a name and a kind beside it that ask nothing. */
export const one = (heads: string, cells: string, kind = "other"): SheetParts =>
  sheet([`Name|What|${heads}`, `A part|${kind}|${cells}`]);

/** What the cells of a row give, where nothing is asked about them; else the codes of what is. */
export function plainly(heads: string, cells: string, kind?: string): Partial<Part> | string[] {
  const { parts, questions } = one(heads, cells, kind);
  if (questions.length) return questions.map(({ code }) => code);
  const { id: _id, is: _is, name: _name, ...rest } = parts[0]!;
  return rest;
}

/** Questions as `code of field: guess`, with a sign where the guess stands in the part. */
export const asked = ({ questions }: SheetParts): string[] =>
  questions.map(({ code, field, guess, taken }) =>
    [code, ...(field ? ["of", field] : []), ...(guess === undefined ? [] : [taken ? "=" : "?", guess])].join(" "),
  );
