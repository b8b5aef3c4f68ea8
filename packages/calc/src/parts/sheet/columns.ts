import type { PartKind } from "../../stages/index.js";
import { datesIn } from "./dates.js";
import { isText, readers } from "./fields.js";
import { headOf, type Head } from "./heads.js";
import { kindOf } from "./kinds.js";
import type { Ask, CellContext, CellRead, ColumnMeaning, SheetField } from "./meaning.js";
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

/** What is asked about a whole column. */
export type ColumnAsk = Ask & { readonly taken: boolean };

/** A column with what is needed to read its cells. */
export interface Column {
  readonly told: UnderstoodColumn;
  readonly field: SheetField | undefined;
  /** A price of one piece. */
  readonly isEach: boolean;
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

interface Guess {
  readonly field: SheetField | undefined;
  readonly why: ColumnReason;
  readonly ask?: ColumnAsk;
}

const isNumeric = (text: string): boolean => /^[>+]? ?\d[\d.,]*$/.test(text);
const share = (texts: readonly string[], test: (text: string) => boolean): number =>
  texts.length ? texts.filter(test).length / texts.length : 0;

/** What the cells of a column without a known head look like, by their marks. */
function fieldByCells(texts: readonly string[]): SheetField | undefined {
  const has = (test: (text: string) => boolean): boolean => texts.length > 0 && share(texts, test) >= 0.7;
  if (has((text) => kindOf(text)?.sure === true)) return share(texts, (text) => /\d/.test(text)) > 0.5 ? "name" : "is";
  if (has((text) => /^\d{1,3} ?[tz]\.?$|^z ?=? ?\d{1,3}$/i.test(text))) return "teeth";
  if (has((text) => /^m(od(ule?)?)? ?[\d.,]+$|^[\d.,]+ ?(dp|mod)$/i.test(text))) return "toothPitch";
  if (
    has(
      (text) =>
        /\d/.test(text) &&
        plain(text)
          .split(/[\d.,' -]+/)
          .some((word) => word !== "" && currencyOf(word.trim())),
    )
  )
    return "price";
  if (has((text) => !!readers.checked(text, { field: "checked", order: "day-month" }, "other").set)) return "checked";
  return undefined;
}

/** A head as a field, with what is to be asked where it can be several or stands for nothing known. */
function guessOf(head: Head, text: string, texts: readonly string[], heads: readonly Head[]): Guess {
  const { sense, isUnsure } = head;
  const open = (
    code: Ask["code"],
    field: SheetField | undefined,
    taken: boolean,
    others: readonly (SheetField | "unused")[] = [],
  ): ColumnAsk => ({
    code,
    guess: field,
    taken,
    choices: [...(field ? [field] : []), ...others, "unused" as const].map((answer) => ({
      answer,
      column: { field: answer },
    })),
  });
  if (sense === undefined) {
    const field = texts.length ? fieldByCells(texts) : undefined;
    const isUsed = field && !heads.some((other) => other.sense === field);
    if (isUsed) return { field, why: "cells", ask: open("column-by-cells", field, true) };
    return { field: undefined, why: "unknown", ...(texts.length && { ask: open("column-unknown", undefined, false) }) };
  }
  if (sense === "unused") return { field: undefined, why: "no-field" };
  if (sense === "counting") return { field: undefined, why: "counting" };
  if (sense === "quantity")
    return { field: undefined, why: "head", ask: open("quantity-unclear", "owned", false, ["pack"]) };
  if (sense === "stock") {
    const isCounted = share(texts, isNumeric) > 0.5;
    return {
      field: "available",
      why: "head",
      ...(isCounted && { ask: open("stock-unclear", "available", true, ["owned"]) }),
    };
  }
  if (sense === "item") {
    const isName = !heads.some((other) => other.sense === "name") && share(texts, (one) => /\p{L}{3}/u.test(one)) > 0.5;
    return { field: isName ? "name" : "number", why: "head" };
  }
  // "ID" beside an outside diameter, or of lengths, is the inside one.
  const isInside =
    sense === "id" && (!!head.unit || share(texts, (one) => /^[\d.,/ ]+ ?(mm|in|")$|^\d*[.,/]\d+$/.test(one)) > 0.5);
  if (sense === "id" && (isInside || (heads.some((other) => other.sense === "round") && share(texts, isNumeric) > 0.5)))
    return { field: "bore", why: "head" };
  if (
    sense === "number" &&
    plain(text).match(/^(?:no|nr|n|numero)\W*$/) &&
    texts.length > 2 &&
    texts.every((one, n) => one === String(n + 1))
  )
    return { field: undefined, why: "counting" };
  const field = sense === "each" ? "price" : sense;
  return isUnsure ? { field, why: "head", ask: open("column-unsure", field, true) } : { field, why: "head" };
}

/** Cells of a column as far as they are filled, tidied. */
export type CellsOf = (index: number) => Iterable<string>;

/** What the cells of a column decide for each other. */
function decided(field: SheetField, set: ColumnMeaning, cells: () => Iterable<string>): Partial<CellContext> {
  if (field === "checked") {
    const { order, years } = datesIn(cells());
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
  understood: readonly (Head & { readonly why?: ColumnReason })[],
  keyOf: (index: number) => string,
  line: number,
  cellsOf: CellsOf,
  settings: Readonly<Record<string, ColumnMeaning>>,
  sheet: SheetContext,
): Column[] {
  const taken = new Set<SheetField>();
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
  const currencyColumn = guesses.findIndex(({ field }) => field === "currency");
  return heads.map((head, index): Column => {
    const guess = guesses[index]!;
    const set = settings[keyOf(index)] ?? {};
    let { field, why, ask } = guess;
    if (field && why !== "set") {
      if (taken.has(field)) {
        ask = {
          code: "column-twice",
          taken: false,
          choices: [field, "unused" as const].map((answer) => ({ answer, column: { field: answer } })),
        };
        [field, why] = [undefined, "twice"];
      } else taken.add(field);
    }
    const { unit, currency, order, isEither, why: byGroup } = understood[index]!;
    const isPrice = field === "price" || field === "currency";
    const isLength = field !== undefined && lengthFields.has(field);
    const found = field ? decided(field, { ...(order && { order }), ...set }, () => cellsOf(index)) : {};
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

/** What every head of a row stands for; a row of groups above is read with the heads below it. */
export function understandHeads(
  heads: readonly string[],
  groups: readonly string[] | undefined,
  units: readonly Pick<Head, "unit" | "currency">[] | undefined,
): (Head & { readonly why?: ColumnReason })[] {
  let group = "";
  return heads.map((head, index) => {
    const own = headOf(head);
    const unit = units?.[index] ?? {};
    const above = groups?.[index]?.trim() ?? "";
    if (above !== "") group = above;
    // A group reaches over the empty cells beside it, as far as there are heads below.
    if (!groups || group === "") return { ...own, ...unit };
    if (head.trim() === "") return { ...headOf(above), ...unit, ...(above && { why: "group" as const }) };
    const together = headOf(`${group} ${head}`);
    const isBetter =
      together.sense !== undefined &&
      !together.isUnsure &&
      (own.sense === undefined || own.sense === "quantity" || own.isUnsure || own.sense !== together.sense);
    return isBetter ? { ...own, ...together, isUnsure: false, ...unit, why: "group" as const } : { ...own, ...unit };
  });
}
