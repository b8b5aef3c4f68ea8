import type { PartKind } from "../../stages/index.js";
import { columnsOf, type Column, type SheetContext, type UnderstoodColumn } from "./columns.js";
import { contextOf } from "./context.js";
import { understandHeads } from "./heads.js";
import { lendingOf, type DataLine } from "./lending.js";
import { withoutPitch } from "./marks.js";
import type { ColumnMeaning, SheetField } from "./meaning.js";
import { tidy } from "./plain.js";
import type { SheetQuestion } from "./question.js";
import { RowReader, type RowRead } from "./row.js";
import type { PassedCode } from "./sheet-words.js";
import { isCounted, isTotal, sectionOf, unitsOf, type Line, type Table } from "./tables.js";
import type { PassedRow, SheetSettings } from "./types.js";

type Answers = ReadonlyMap<number, ReadonlyMap<string, string>>;

/** Answers by row and field. */
function answersOf(answers: SheetSettings["answers"] = {}): Answers {
  const rows = new Map<number, Map<string, string>>();
  for (const [key, answer] of Object.entries(answers)) {
    const at = key.indexOf(".");
    const row = Number(key.slice(0, at));
    if (!rows.has(row)) rows.set(row, new Map());
    rows.get(row)!.set(key.slice(at + 1), answer);
  }
  return rows;
}

const textual: ReadonlySet<SheetField> = new Set<SheetField>([
  "id",
  "number",
  "name",
  "is",
  "maker",
  "source",
  "stage",
]);

/** What a heading says of the rows below it. One that names no part of a drive, "Rear axle", may say where they are. */
const headingOf = (is: PartKind | undefined, line: Line): DataLine["section"] =>
  is && is !== "other" ? { is, text: line.cells[line.filled[0]!]! } : undefined;

/** Gathers what a sheet gives, table by table. */
export class Reading {
  readonly passed: PassedRow[] = [];
  readonly questions: SheetQuestion[] = [];
  readonly columns: UnderstoodColumn[] = [];
  readonly read: { readonly line: Line; readonly row: RowRead }[] = [];
  readonly #answers: Answers;
  readonly #settings: Readonly<Record<string, ColumnMeaning>>;
  readonly #sheet: SheetContext;
  /** The last row that has several cells: what stands alone below it is a remark. */
  readonly #lastRow: number;
  #section: DataLine["section"];

  constructor(lines: readonly Line[], above: readonly Line[], settings: SheetSettings) {
    this.#answers = answersOf(settings.answers);
    this.#settings = Object.fromEntries(
      Object.entries(settings.columns ?? {}).map(([key, set]) => [key, typeof set === "string" ? { field: set } : set]),
    );
    this.#sheet = contextOf(lines, above);
    this.#lastRow = lines.findLast(({ filled }) => filled.length > 1)?.row ?? -1;
  }

  #answer(line: Line, field: string): string | undefined {
    return this.#answers.get(line.row)?.get(field);
  }

  #pass(line: Line, code: PassedCode): void {
    const text = line.filled
      .map((n) => line.cells[n])
      .join(" · ")
      .slice(0, 200);
    this.passed.push({ row: line.row, line: line.line, code, text, key: `${line.row}.row` });
  }

  #askRow({ row, line, cells, filled }: Line, code: SheetQuestion["code"], column?: number): void {
    if (this.#answers.get(row)?.has("row")) return;
    const text = cells[column ?? filled[0]!] ?? "";
    this.questions.push({
      key: `${row}.row`,
      row,
      line,
      text,
      code,
      taken: true,
      choices: [{ answer: "part" }, { answer: "pass" }],
      ...(column !== undefined && { column }),
    });
  }

  /** Rows above the first heads: titles, a heading for what follows, and rows that somebody wants for parts all the same. */
  above(lines: readonly Line[]): Line[] {
    const wanted: Line[] = [];
    for (const line of lines) {
      if (!line.filled.length) continue;
      if (this.#answer(line, "row") === "part") {
        wanted.push(line);
        continue;
      }
      const is = line.filled.length === 1 ? sectionOf(line.cells[line.filled[0]!]!) : undefined;
      this.#section = headingOf(is, line) ?? this.#section;
      this.#pass(line, is ? "section" : "above");
      if (line.filled.length > 1 && isCounted(line)) this.#askRow(line, "row-above");
    }
    return wanted;
  }

  table(table: Table, wanted: readonly Line[], following: Line | undefined): void {
    const { head, group, units, lines } = table;
    for (const line of [group, head]) if (line) this.#pass(line, "head");
    if (units) this.#pass(units, "units");
    const columns = this.#columnsOf(table);
    const data = this.#dataOf(table, columns, [...wanted, ...lines], following);
    const lent = lendingOf(data, columns);
    const reader = new RowReader(columns);
    data.forEach((one, n) => {
      const { line } = one;
      this.read.push({ line, row: reader.read(one, lent[n], this.#answers.get(line.row)) });
      const beyond = line.filled.find((m) => m >= columns.length);
      if (beyond !== undefined) this.#askRow(line, "beyond-head", beyond);
      if (line.isDoubtful) this.#askRow(line, "quote-doubtful");
    });
  }

  #columnsOf({ number, head, group, units, lines }: Table): Column[] {
    const first = lines.find(({ filled }) => filled.length);
    const width = head
      ? (head.filled.at(-1) ?? 0) + 1
      : Math.max(0, ...lines.slice(0, 50).map(({ cells }) => cells.length));
    const wide = Math.max(width, (group?.filled.at(-1) ?? -1) + 1);
    const heads = Array.from({ length: wide }, (_, n) => head?.cells[n] ?? "");
    const at = head ?? first;
    const columns = columnsOf(
      heads.map((one, n) => one || (group?.cells[n] ?? "")),
      understandHeads(heads, group?.cells, units && unitsOf(units)),
      (n) => (number ? `${number}.${n}` : `${n}`),
      at?.line ?? 1,
      function* (n) {
        for (const { cells } of lines) if (cells[n]) yield tidy(cells[n]);
      },
      this.#settings,
      this.#sheet,
    );
    for (const { told, ask } of columns) {
      this.columns.push(told);
      if (!ask) continue;
      const { key, index, head: text } = told;
      this.questions.push({
        ...ask,
        key: `column.${key}`,
        row: at?.row ?? 0,
        line: told.line,
        column: index,
        columnKey: key,
        head: text,
        text,
      });
    }
    return columns;
  }

  /** The rows that are parts. Of those with a single cell some are headings, totals or remarks. */
  #dataOf({ again }: Table, columns: readonly Column[], lines: readonly Line[], following?: Line): DataLine[] {
    const data: DataLine[] = [];
    let isAfterGap = true;
    let isFresh = this.#section !== undefined;
    if (!isFresh) this.#section = undefined;
    const put = (line: Line) => {
      data.push({ line, section: this.#section, isAfterGap });
      [isAfterGap, isFresh] = [false, false];
    };
    // For each row the next one that says something.
    const nexts: (Line | undefined)[] = [];
    for (let n = lines.length - 1, next: Line | undefined; n >= 0; n--) {
      nexts[n] = next;
      if (lines[n]!.filled.length) next = lines[n];
    }
    const headings = new Set(again);
    lines.forEach((line, n) => {
      const answer = this.#answer(line, "row");
      if (!line.filled.length) isAfterGap = true;
      else if (headings.has(line)) this.#pass(line, "head");
      else if (answer === "pass") this.#pass(line, "set");
      else if (answer === "part") put(line);
      else if (this.#isTotal(line, columns, isAfterGap || !nexts[n])) {
        this.#pass(line, "total");
        isAfterGap = true;
      } else if (line.filled.length > 1 || columns.length < 2) put(line);
      else {
        const code = this.#aloneIs(line, columns, nexts[n] ?? following, isAfterGap);
        if (code) this.#pass(line, code);
        else {
          const { field } = columns[line.filled[0]!] ?? {};
          // A count alone is no remark.
          const isText = field === undefined || textual.has(field);
          put(line);
          if (isText && !sectionOf(line.cells[line.filled[0]!]!)) this.#askRow(line, "row-alone");
        }
        if (code === "section") {
          const is = sectionOf(line.cells[line.filled[0]!]!);
          this.#section = headingOf(is, line);
          [isAfterGap, isFresh] = [true, true];
        }
      }
    });
    if (!isFresh) this.#section = undefined;
    return data;
  }

  /** What a row with one cell is, where it is no part: a heading for rows below that do not say what they are, or a remark. */
  #aloneIs(
    line: Line,
    columns: readonly Column[],
    next: Line | undefined,
    isAfterGap: boolean,
  ): PassedCode | undefined {
    const at = line.filled[0]!;
    const text = line.cells[at]!;
    const is = sectionOf(text);
    if (!is && next && /[:：]$/.test(text)) return "section";
    if (!is) return line.row > this.#lastRow && isAfterGap ? "below" : undefined;
    if (/[:：]$/.test(text)) return "section";
    // A heading may say the pitch of what it heads, but no counts.
    if (!next || /\d/.test(withoutPitch(text))) return undefined;
    const kinds = columns.filter(({ field }) => field === "is" || field === "name");
    const isName = kinds.some(({ told }) => told.index === at);
    return isName && kinds.some(({ told }) => sectionOf(next.cells[told.index] ?? "")) ? undefined : "section";
  }

  #isTotal({ filled, cells }: Line, columns: readonly Column[], isLast: boolean): boolean {
    const first = filled[0]!;
    const kind = columns.find(({ field }) => field === "is")?.told.index ?? -1;
    if (isTotal(cells[first]!)) return kind < 0 || kind === first || !cells[kind];
    const sums = new Set<SheetField | undefined>(["price", "owned", "pack", undefined]);
    return (
      isLast && filled.every((n) => sums.has(columns[n]?.field) && /\d/.test(cells[n]!) && !/\p{L}{3}/u.test(cells[n]!))
    );
  }
}
