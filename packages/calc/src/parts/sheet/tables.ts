import type { PartKind } from "../../stages/index.js";
import { headOf, unitRowCell, type Head } from "./heads.js";
import { kindOf } from "./kinds.js";
import { tidy } from "./plain.js";

/** A row with what is asked of it again and again. */
export interface Line {
  readonly row: number;
  readonly line: number;
  /** Cells without the blanks around them. */
  readonly cells: readonly string[];
  readonly filled: readonly number[];
  readonly isDoubtful: boolean;
}

/** Rows under one row of heads, or under none. */
export interface Table {
  /** Counted from 0. */
  readonly number: number;
  readonly head?: Line;
  readonly group?: Line;
  readonly units?: Line;
  /** Rows with these same heads again, as pages repeat them. */
  readonly again: readonly Line[];
  /** All rows up to the next table's heads, empty ones among them. */
  readonly lines: readonly Line[];
}

const isNumber = (cell: string): boolean => /^[\d.,]+$/.test(cell);
export const isCounted = (line: Line): boolean =>
  line.filled.some((n) => /^[^\p{L}]*\d[^\p{L}]*$/u.test(line.cells[n]!));

/** A row as a line: cells trimmed, and which of them say something. */
export function lineOf(row: number, line: number, raw: readonly string[], isDoubtful: boolean): Line {
  const cells: string[] = [];
  const filled: number[] = [];
  for (let n = 0; n < raw.length; n++) {
    cells.push(raw[n]!.trim());
    if (cells[n] !== "") filled.push(n);
  }
  return { row, line, cells, filled, isDoubtful };
}

interface Sought {
  /** Whether heads were found before: then more has to speak for it. */
  readonly isLater: boolean;
  /** The column of kinds, in the table so far. */
  readonly kinds: number;
}

/** Whether a row is one of heads: several different ones that are known, most of it, and hardly a number. */
function isHead({ cells, filled }: Line, { isLater, kinds }: Sought): boolean {
  const numbers = filled.filter((n) => isNumber(cells[n]!)).length;
  if (!filled.length || numbers > (isLater ? 0 : filled.length / 4)) return false;
  const kind = kinds < 0 ? undefined : cells[kinds];
  if (kind && kindOf(kind)?.sure && headOf(kind).sense !== "is") return false;
  // Far more rows are none: the first cells tell.
  if (isLater && filled.length > 3 && !filled.slice(0, 4).some((n) => headOf(cells[n]!).sense)) return false;
  const senses = filled.flatMap((n) => {
    const { sense, isUnsure } = headOf(cells[n]!);
    return sense && !isUnsure ? [sense] : [];
  });
  const different = new Set(senses).size;
  return different >= (isLater ? 3 : 2) && senses.length * (isLater ? 2 : 3) >= filled.length;
}

const sameHeads = (a: Line, b: Line): boolean =>
  a.filled.length === b.filled.length &&
  a.filled.every((column, n) => b.filled[n] === column && a.cells[column] === b.cells[column]);

/** Whether a row is of units and currencies only. */
const isUnits = ({ cells, filled }: Line): boolean => {
  const read = filled.map((n) => unitRowCell(cells[n]!));
  return read.every((one) => one) && read.some((one) => one!.unit ?? one!.currency);
};

export const unitsOf = ({ cells }: Line): Pick<Head, "unit" | "currency">[] =>
  cells.map((cell) => unitRowCell(cell) ?? {});

/** A sheet as the rows above its first heads, and a table for each row of heads. Where there are none, all of it is one table. */
export function tablesIn(lines: readonly Line[]): {
  readonly above: readonly Line[];
  readonly tables: readonly Table[];
} {
  const heads: number[] = [];
  let kinds = -1;
  lines.forEach((line, n) => {
    const isLater = heads.length > 0 && heads.at(-1) !== n - 1;
    // What stood there as heads are heads wherever they stand again.
    const isAgain = isLater && line.filled.length > 1 && sameHeads(lines[heads.at(-1)!]!, line);
    if (!isAgain && !isHead(line, { isLater, kinds })) return;
    // Two rows of heads: the upper one groups what the lower one names.
    if (heads.at(-1) === n - 1 && heads.length) heads.pop();
    heads.push(n);
    kinds = line.cells.findIndex((cell) => headOf(cell).sense === "is");
  });
  // A sheet of one column has one head.
  const first = lines.findIndex(({ filled }) => filled.length > 0);
  if (
    !heads.length &&
    first >= 0 &&
    lines[first]!.filled.length === 1 &&
    lines.every(({ filled }) => filled.length < 2)
  ) {
    const { sense, isUnsure } = headOf(lines[first]!.cells[lines[first]!.filled[0]!]!);
    if (sense && !isUnsure) heads.push(first);
  }
  const tables: Table[] = [];
  const groupAt = (n: number): Line | undefined => {
    const line = lines[n - 1];
    // Further down, what stands right above heads can be a part: then nothing but a title or a gap stands over a group.
    const isApart = n === heads[0] || (lines[n - 2]?.filled.length ?? 0) < 2;
    return line && isApart && line.filled.length > 1 && !isCounted(line) ? line : undefined;
  };
  const above = lines.slice(0, heads.length ? heads[0]! - (groupAt(heads[0]!) ? 1 : 0) : 0);
  // Many rows with numbers above the first heads are a table without any.
  const isTable = above.filter((line) => line.filled.length > 1 && isCounted(line)).length > 2;
  if (isTable || !heads.length) tables.push({ number: 0, again: [], lines: isTable ? above : lines });
  heads.forEach((n, k) => {
    const last = tables.at(-1);
    const head = lines[n]!;
    const end = heads[k + 1] ?? lines.length;
    const next = heads[k + 1];
    const until = next !== undefined && groupAt(next) ? next - 1 : end;
    const units = lines[n + 1] && isUnits(lines[n + 1]!) ? lines[n + 1] : undefined;
    const rows = lines.slice(n + (units ? 2 : 1), until);
    if (last?.head && sameHeads(last.head, head))
      tables[tables.length - 1] = { ...last, again: [...last.again, head], lines: [...last.lines, head, ...rows] };
    else {
      const group = groupAt(n);
      tables.push({
        number: tables.length,
        head,
        ...(group && { group }),
        ...(units && { units }),
        again: [],
        lines: rows,
      });
    }
  });
  return { above: isTable ? [] : above, tables };
}

const totals =
  /^(?:grand |sub)?totals?$|^sum$|^(?:zwischen|gesamt|end)?summe$|^gesamt$|^(?:sous[ -])?total(?: g[ée]n[ée]ral)?$|^somme$|^suma(?: total)?$|^subtotal$|^(?:総|合|小)計$|^ال(?:مجموع|إجمالي)$|^مجموع$/i;

/** Whether a cell is the word for a total, perhaps with a currency behind it. */
export const isTotal = (cell: string): boolean =>
  cell.length < 40 &&
  totals.test(
    tidy(cell)
      .replace(/ ?[:(].*$| (?:in )?(?:€|£|\$|¥|[A-Z]{3})$/, "")
      .trim(),
  );

/** What a heading of one cell says of the rows below it. */
export const sectionOf = (text: string): PartKind | undefined => {
  const read = text.length < 60 ? kindOf(text.replace(/[:：]$/, "")) : undefined;
  return read?.sure ? read.is : undefined;
};
