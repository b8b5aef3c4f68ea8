import type { PartKind } from "../../stages/index.js";
import { datesIn } from "./dates.js";
import { isText, readers } from "./fields.js";
import { guessOf, nameless, type ColumnAsk, type Guess } from "./guesses.js";
import type { UnderstoodHead } from "./heads.js";
import type { CellContext, CellRead, ColumnMeaning, SheetField } from "./meaning.js";
import { decimalOf } from "./number.js";
import { isEmpty, isFailure, plain, tidy } from "./plain.js";
import { currencyOf } from "./prices.js";
import type { ColumnReason } from "./sheet-words.js";
import { crossOf } from "./yes.js";

/** A column, what it was taken for and why. */
export interface UnderstoodColumn extends ColumnMeaning {
  /** Under it `columns` sets what it means; it stays the same as long as the heads do. */
  readonly key: string;
  /** Counted from 0. */
  readonly index: number;
  readonly head: string;
  /** The line of its head; of a column without heads that of the first row. */
  readonly line: number;
  readonly why: ColumnReason;
  /** The first few of its cells. */
  readonly sample: readonly string[];
}

/** A column with what is needed to read its cells. */
export interface Column {
  readonly told: UnderstoodColumn;
  readonly field: SheetField | undefined;
  /** A price of one piece. */
  readonly isEach: boolean;
  /** A second column of one length, in another unit: it counts where the first is empty. */
  readonly isSecond: boolean;
  readonly ask: ColumnAsk | undefined;
  /** Reads a cell that is not empty. */
  read(text: string, is: PartKind, currency: string | undefined): CellRead;
}

/** What is known of a sheet beside a column. */
export interface SheetContext {
  readonly isJapanese: boolean;
  /** Said above the heads, of all prices or lengths. */
  readonly currency?: string;
  readonly unit?: ColumnMeaning["unit"];
}

/** Cells of a column as far as they are filled, tidied. */
export type CellsOf = (index: number) => Iterable<string>;

/** What the cells of a column decide for each other. */
function decided(
  field: SheetField,
  set: ColumnMeaning,
  cells: () => Iterable<string>,
  isJapanese: boolean,
): Partial<CellContext> {
  if (field === "checked") {
    const { order, years } = datesIn(cells(), isJapanese);
    return { years, ...(order && !set.order && { order }) };
  }
  if (field === "available" || field === "owned") {
    const cross = set.cross ?? crossOf(cells());
    return cross ? { cross } : {};
  }
  if (isText(field) || field === "is" || field === "teeth") return {};
  const decimal = set.decimal ?? decimalOf(cells());
  return decimal ? { decimal } : {};
}

function currenciesIn(cells: Iterable<string>): string[] {
  const found = new Set<string>();
  const seen = new Set<string>();
  for (const cell of cells) {
    const words = plain(cell.length > 40 ? "" : cell)
      .replace(/[\d.,' -]+/g, " ")
      .trim();
    if (words === "" || seen.has(words)) continue;
    seen.add(words);
    for (const word of [words, ...words.split(" ")]) {
      const currency = currencyOf(word);
      if (typeof currency === "string") found.add(currency);
    }
  }
  return [...found];
}

function readerOf(field: SheetField, context: CellContext): Column["read"] {
  if (field === "is") return () => ({});
  const read = readers[field];
  const words = context.words && new Map(Object.entries(context.words));
  const depends = !isText(field);
  const before = new Map<string, CellRead>();
  return (text, is, currency) => {
    const own = currency === undefined || field !== "price" ? context : { ...context, currency };
    if (!depends) return read(text, own, is);
    const key = `${is} ${field === "price" ? (currency ?? "") : ""} ${text}`;
    let found = before.get(key);
    if (found) return found;
    const said = words?.get(text);
    found = isFailure(text) ? { ask: { code: "failure" } } : read(said === undefined ? text : tidy(said), own, is);
    if (before.size > 4000) before.clear();
    before.set(key, found);
    return found;
  };
}

/** What the heads of a table stand for, with what was set of them. */
export function columnsOf(
  heads: readonly string[],
  understood: readonly UnderstoodHead[],
  keyOf: (index: number) => string,
  line: number,
  cellsOf: CellsOf,
  settings: Readonly<Record<string, ColumnMeaning>>,
  sheet: SheetContext,
): Column[] {
  const taken = new Set<SheetField>();
  const units = new Map<SheetField, ColumnMeaning["unit"]>();
  const samples = heads.map((_, index) => {
    const some: string[] = [];
    for (const cell of cellsOf(index)) if (!isEmpty(cell) && some.push(cell) >= 50) break;
    return some;
  });
  const guesses = heads.map((head, index): Guess => {
    const set = settings[keyOf(index)]?.field;
    if (set) return { field: set === "unused" ? undefined : set, why: "set" };
    return guessOf(understood[index]!, head, samples[index]!, understood);
  });
  for (const { field, why } of guesses) if (field && why === "set") taken.add(field);
  nameless(guesses, samples);
  const currencyColumn = guesses.findIndex(({ field }) => field === "currency");
  return heads.map((head, index): Column => {
    const guess = guesses[index]!;
    const set = settings[keyOf(index)] ?? {};
    let { field, why, ask } = guess;
    let isSecond = false;
    const unitHere = understood[index]!.unit;
    if (field && why !== "set") {
      isSecond =
        lengthFields.has(field) && units.get(field) !== undefined && !!unitHere && units.get(field) !== unitHere;
      if (taken.has(field) && !isSecond) {
        ask = {
          code: "column-twice",
          taken: false,
          choices: [field, "unused" as const].map((answer) => ({ answer, column: { field: answer } })),
        };
        [field, why] = [undefined, "twice"];
      } else {
        taken.add(field);
        units.set(field, unitHere);
      }
    }
    const { unit, currency, order, isEither, why: byGroup } = understood[index]!;
    const isPrice = field === "price" || field === "currency";
    const isLength = field !== undefined && lengthFields.has(field);
    const found = field
      ? decided(field, { ...(order && { order }), ...set }, () => cellsOf(index), sheet.isJapanese)
      : {};
    const said = {
      ...(unit && { unit }),
      ...(!unit && isLength && sheet.unit && { unit: sheet.unit }),
      ...(currency && { currency }),
      ...(!currency && isPrice && currencyColumn < 0 && sheet.currency && { currency: sheet.currency }),
      ...(order && { order }),
      ...found,
      ...set,
    };
    const { years, ...meaning } = said as CellContext;
    const currencies = isPrice ? currenciesIn(cellsOf(currencyColumn < 0 ? index : currencyColumn)) : [];
    const context: CellContext = {
      ...meaning,
      field: field ?? "name",
      isJapanese: sheet.isJapanese,
      ...(years && { years }),
      ...(isEither && { isEither }),
      currencies,
    };
    const told = {
      ...meaning,
      field: field ?? ("unused" as const),
      key: keyOf(index),
      index,
      head,
      line,
      why: why === "head" && byGroup ? byGroup : why,
      sample: samples[index]!.slice(0, 3),
    };
    return {
      told,
      field,
      isEach: understood[index]!.sense === "each" && why === "head",
      isSecond,
      ask,
      read: field ? readerOf(field, context) : () => ({}),
    };
  });
}

const lengthFields: ReadonlySet<SheetField> = new Set<SheetField>([
  "bore",
  "outside",
  "round",
  "across",
  "diameter",
  "width",
  "hub",
  "tipDiameter",
  "circles",
  "pitch",
]);
