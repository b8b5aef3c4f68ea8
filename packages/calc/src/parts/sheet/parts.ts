import { missingIn } from "../../document/index.js";
import type { Part } from "../../drivetrain/index.js";
import { idsFor } from "./ids.js";
import type { SheetQuestion } from "./question.js";
import { Reading } from "./reading.js";
import type { RowAsk } from "./row.js";
import type { SheetRow } from "./rows.js";
import { lineOf, tablesIn, type Line } from "./tables.js";
import type { SheetParts, SheetSettings } from "./types.js";

/**
 * Parts from the rows of a sheet as people keep it: heads in six languages, in any order and on one row or two, titles above,
 * totals below, units in heads or cells, either decimal sign, dates in the common orders. No row is lost: each is a part, or
 * told as passed over with the reason. What cannot be read with certainty is a question in its place, and the part is there
 * without it, or with the guess where the question says so. Answers, and what a column means, are given back with the same
 * rows; remember them under {@link sheetKey}.
 *
 * @param rows as {@link readSheet} gives them, or cells alone: then a row's line is its number
 *
 * @example
 * const rows = readSheet("Part no.;Bezeichnung;Zähne;Bohrung (mm);Preis\nT-15;Motorritzel;15;5,0;6,40 €\nT-16;Ritzel;~16;;\n").rows;
 * const { parts, questions } = partsFromSheet(rows);
 * parts[0]; // => { id: "t-15", number: "T-15", name: "Motorritzel", is: "pinion", teeth: 15, bore: "5.0 mm", price: { amount: "6.40", currency: "EUR" } }
 * questions.map(({ line, head, code, guess, key }) => [line, head, code, guess, key]); // => [[3, "Zähne", "count-unclear", "16", "2.teeth"]]
 * partsFromSheet(rows, { answers: { "2.teeth": "17" } }).parts[1]?.teeth; // => 17
 */
export function partsFromSheet(
  rows: readonly (SheetRow | readonly string[])[],
  settings: SheetSettings = {},
): SheetParts {
  const lines = rows.map((row, n) =>
    "cells" in row ? lineOf(n, row.line, row.cells, !!row.doubtful) : lineOf(n, n + 1, row, false),
  );
  const { above, tables } = tablesIn(lines);
  const reading = new Reading(lines, above, settings);
  const wanted = reading.above(above);
  tables.forEach((table, n) => reading.table(table, n ? [] : wanted, tables[n + 1]?.head));
  const { read, passed, columns } = reading;
  const ids = idsFor(
    read.map(({ row: { own, part } }) => ({
      own,
      number: part.number as string | undefined,
      part: part as unknown as Part,
    })),
  );
  for (const [n, { row }] of read.entries()) {
    row.part.id = ids[n]!;
    // What was written as an id and is none is its number.
    if (row.own !== undefined && row.own !== ids[n]) row.part.number ??= row.own;
  }
  const questions = [
    ...reading.questions,
    ...read.flatMap(({ line, row }) => row.asks.map((ask) => placed(line, ask))),
  ];
  return {
    parts: read.map(({ row: { part } }) => part as unknown as Part),
    rows: read.map(({ line, row: { own, part } }) => ({
      row: line.row,
      line: line.line,
      isComplete: !missingIn(part).length,
      hasOwnId: own !== undefined && own === part.id,
    })),
    passed: passed.sort((a, b) => a.row - b.row),
    columns,
    questions: questions.sort((a, b) => a.row - b.row),
  };
}

/** A question in its place. */
function placed({ row, line }: Line, { column, ...ask }: RowAsk): SheetQuestion {
  const at = column && { column: column.told.index, columnKey: column.told.key, head: column.told.head };
  return { key: `${row}.${ask.field}`, row, line, ...at, ...ask };
}
