import type { PartKind } from "../../stages/index.js";
import type { Column } from "./columns.js";
import { kindOf } from "./kinds.js";
import type { SheetField } from "./meaning.js";
import type { Line } from "./tables.js";

/** A row that is a part, with the heading that it stands under. */
export interface DataLine {
  readonly line: Line;
  readonly section: { readonly is: PartKind; readonly text: string } | undefined;
  /** Whether an empty row or a heading stands before it. */
  readonly isAfterGap: boolean;
}

/** What an empty cell has from above. */
export type Lent = ReadonlyMap<Column, { readonly text: string; readonly isSaid: boolean }>;

/** What stands in merged cells beside the kind. */
const merged: readonly SheetField[] = ["maker", "source", "module", "diametralPitch", "toothPitch", "stage"];

/**
 * What the empty cells of merged groups mean. A spreadsheet keeps the text of merged cells in their first row only: rows that
 * do not say what they are, below one that does, are perhaps the same; so are the columns that are empty wherever the kind is.
 */
export function lendingOf(lines: readonly DataLine[], columns: readonly Column[]): readonly (Lent | undefined)[] {
  const find = (field: SheetField): Column | undefined => columns.find((column) => column.field === field);
  const [whats, names] = [find("is"), find("name")];
  const kind = whats ?? names;
  const cell = ({ line }: DataLine, column: Column): string => line.cells[column.told.index] ?? "";
  const saysKind = (one: DataLine): boolean =>
    (kind && cell(one, kind) !== "") ||
    !!one.section ||
    (!!whats && !!names && kindOf(cell(one, names))?.sure === true);
  // For each row the first of its group, where it is not that itself.
  const first: (DataLine | undefined)[] = [];
  let lender: DataLine | undefined;
  for (const one of lines) {
    if (one.isAfterGap) lender = undefined;
    const isContinued = kind && kind.told.blanks !== "empty" && lender && !saysKind(one);
    first.push(isContinued ? lender : undefined);
    if (!isContinued) lender = kind && cell(one, kind) !== "" ? one : undefined;
  }
  const continued = lines.filter((_, n) => first[n]);
  const lent = columns.filter((column) => {
    if (column === kind) return true;
    const { blanks } = column.told;
    const isMerged =
      merged.includes(column.field!) && blanks !== "empty" && continued.every((one) => cell(one, column) === "");
    return blanks === "as-above" || isMerged;
  });
  if (!continued.length && !lent.some((column) => column.told.blanks === "as-above")) return [];
  const last = new Map<Column, string>();
  return lines.map((one, n): Lent | undefined => {
    const own = new Map<Column, { text: string; isSaid: boolean }>();
    for (const column of lent) {
      const isSaid = column.told.blanks === "as-above";
      const text = isSaid ? last.get(column) : first[n] && cell(first[n], column);
      if (cell(one, column) !== "") last.set(column, cell(one, column));
      else if (text) own.set(column, { text, isSaid });
    }
    return own.size ? own : undefined;
  });
}
