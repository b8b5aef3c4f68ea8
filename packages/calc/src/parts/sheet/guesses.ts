import { readers } from "./fields.js";
import type { HeadSense } from "./head-words.js";
import type { Head } from "./heads.js";
import { kindOf } from "./kinds.js";
import type { Ask, SheetField } from "./meaning.js";
import { plain } from "./plain.js";
import { currencyOf } from "./prices.js";
import type { ColumnReason } from "./sheet-words.js";

/** What is asked about a whole column. */
export type ColumnAsk = Ask & { readonly taken: boolean };

/** What a column is taken for, before its cells are read. */
export interface Guess {
  readonly field: SheetField | undefined;
  readonly why: ColumnReason;
  readonly ask?: ColumnAsk;
}

const isNumeric = (text: string): boolean => /^[>+]? ?\d[\d.,]*$/.test(text);
const share = (texts: readonly string[], test: (text: string) => boolean): number =>
  texts.length ? texts.filter(test).length / texts.length : 0;

/** What the cells of a column without a known head look like: by their marks, or as the only words of the sheet, its names. */
function fieldByCells(texts: readonly string[], isNamed: boolean): SheetField | undefined {
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
  return !isNamed && has((text) => /\p{L}{3}/u.test(text)) ? "name" : undefined;
}

/** A question about what a column is, with what it can be. */
const open = (
  code: Ask["code"],
  field: SheetField | undefined,
  taken: boolean,
  others: readonly SheetField[] = [],
): ColumnAsk => ({
  code,
  guess: field,
  taken,
  choices: [...(field ? [field] : []), ...others, "unused" as const].map((answer) => ({
    answer,
    column: { field: answer },
  })),
});

const counted = /^z|\d ?-?(?:t|z|teeth|tooth|z[aä]hne|dents|dientes|歯|枚)\.?$/i;
const length = /^[\d.,/ ]+ ?(mm|in|")$|^\d*[.,/]\d+$/;

/** A column whose head is of no list. */
function unknownHead(texts: readonly string[], heads: readonly Head[]): Guess {
  const isNamed = heads.some(({ sense }) => sense === "name" || sense === "is" || sense === "item");
  const field = texts.length ? fieldByCells(texts, isNamed) : undefined;
  if (field && !heads.some(({ sense }) => sense === field))
    return { field, why: "cells", ask: open("column-by-cells", field, true) };
  return { field: undefined, why: "unknown", ...(texts.length && { ask: open("column-unknown", undefined, false) }) };
}

/** A head as a field, with what is to be asked where it can be several or stands for nothing known. */
export function guessOf(head: Head, text: string, texts: readonly string[], heads: readonly Head[]): Guess {
  const { sense, isUnsure, unit } = head;
  const isThere = (other: HeadSense): boolean => heads.some((one) => one.sense === other);
  const known = (field: SheetField | undefined, ask?: ColumnAsk): Guess => ({
    field,
    why: "head",
    ...(ask && { ask }),
  });
  switch (sense) {
    case undefined:
      return unknownHead(texts, heads);
    case "unused":
      return { field: undefined, why: "no-field" };
    case "counting":
      return { field: undefined, why: "counting" };
    case "quantity":
      if (!isThere("teeth") && texts.some((one) => counted.test(one))) return known("teeth");
      return known(undefined, open("quantity-unclear", "owned", false, ["pack", "teeth"]));
    case "stock":
      return known(
        "available",
        share(texts, isNumeric) > 0.5 ? open("stock-unclear", "available", true, ["owned"]) : undefined,
      );
    case "item":
      return known(!isThere("name") && share(texts, (one) => /\p{L}{3}/u.test(one)) > 0.5 ? "name" : "number");
    case "id":
      // "ID" beside an outside diameter, or of lengths, is the inside one.
      if (unit || share(texts, (one) => length.test(one)) > 0.5) return known("bore");
      return known(isThere("round") && share(texts, isNumeric) > 0.5 ? "bore" : "id");
    case "number":
      if (isCounting(text, texts)) return { field: undefined, why: "counting" };
  }
  const field = sense === "each" ? "price" : sense;
  return known(field, isUnsure ? open("column-unsure", field, true) : undefined);
}

/** "No." above 1, 2, 3: the rows are counted, and no part is named. */
const isCounting = (head: string, texts: readonly string[]): boolean =>
  texts.length > 2 && /^(?:no|nr|n|numero)\W*$/.test(plain(head)) && texts.every((one, n) => one === String(n + 1));

/** Where no column says what the parts are called, the first that has words does, perhaps. */
export function nameless(guesses: Guess[], samples: readonly (readonly string[])[]): void {
  if (guesses.some(({ field }) => field === "name" || field === "is" || field === "number" || field === "id")) return;
  const at = guesses.findIndex(
    ({ why }, n) => why === "unknown" && share(samples[n]!, (text) => /\p{L}/u.test(text)) > 0.5,
  );
  const choices = (["name", "unused"] as const).map((answer) => ({ answer, column: { field: answer } }));
  if (at >= 0)
    guesses[at] = {
      field: "name",
      why: "cells",
      ask: { code: "column-by-cells", guess: "name", taken: true, choices },
    };
}
