import { headFillers, headWords, priceFillers, type HeadSense } from "./head-words.js";
import { unitOf } from "./lengths.js";
import type { ColumnMeaning, LengthUnit } from "./meaning.js";
import { plain, setOf, wordsOf } from "./plain.js";
import { currencyOf } from "./prices.js";
import type { ColumnReason } from "./sheet-words.js";
import { remembering } from "./remember.js";

/** What a head was understood as. */
export interface Head {
  readonly sense?: HeadSense;
  /** Words of it that are of no list: what it stands for is not certain. */
  readonly isUnsure?: boolean;
  readonly unit?: LengthUnit;
  readonly currency?: string;
  readonly order?: ColumnMeaning["order"];
  /** It speaks of both, module and diametral pitch. */
  readonly isEither?: boolean;
}

interface Lists {
  /** Whole heads, their words with a blank between them, and with nothing. */
  readonly whole: ReadonlyMap<string, HeadSense>;
  /** Heads of one word, for what is shortened. */
  readonly single: readonly (readonly [string, HeadSense])[];
  readonly fillers: ReadonlySet<string>;
  readonly tax: ReadonlySet<string>;
}
let lists: Lists | undefined;

const keyOf = (words: readonly string[]): string => words.join(" ");

function listsOf(): Lists {
  if (lists) return lists;
  const fillers = setOf(headFillers);
  const whole = new Map<string, HeadSense>();
  const entries = Object.entries(headWords).flatMap(([sense, all]) =>
    all.split("|").map((one) => [wordsOf(plain(one)), sense as HeadSense] as const),
  );
  const put = (words: readonly string[], sense: HeadSense) => {
    if (words.length && !whole.has(keyOf(words))) whole.set(keyOf(words), sense);
  };
  for (const [words, sense] of entries) put(words, sense);
  // What differs in small words only is the same head.
  for (const [words, sense] of entries)
    put(
      words.filter((word) => !fillers.has(word)),
      sense,
    );
  const single = [...whole].filter(([head]) => !head.includes(" "));
  // "toothCount", "Facewidth": a program's names, and hasty ones. What stands so by itself is the thing already.
  for (const [words, sense] of entries) if (words.length > 1) put([words.join("")], sense);
  return (lists = { whole, single, fillers, tax: setOf(priceFillers) });
}

/** One piece of a head: between brackets, slashes and commas. */
function pieceOf(words: readonly string[]): Head {
  const { whole, fillers, tax } = listsOf();
  const sense = whole.get(keyOf(words));
  if (sense) return { sense };
  const currencies = words.flatMap((word) => (currencyOf(word) ? [currencyOf(word)!] : []));
  const currency = currencies.find((one) => typeof one === "string");
  const units = words.flatMap((word) =>
    unitOf(word) && (word.length > 1 || words.length === 1 || word === '"') ? [word] : [],
  );
  // "Bohrung in mm": a unit of its own makes of "in" a small word.
  const unitWord = units.find((word) => word !== "in") ?? units[0];
  const left = words.filter((word) => !currencyOf(word) && !units.includes(word) && !fillers.has(word));
  const known =
    whole.get(keyOf(left)) ?? whole.get(keyOf(words.filter((word) => !units.includes(word) && !currencyOf(word))));
  const rest = { ...(unitWord && { unit: unitOf(unitWord)! }), ...(currency && { currency }) };
  if (!left.length) return currencies.length ? { sense: "price", ...rest } : rest;
  if (known) return { sense: known, ...rest };
  // "Breite b", "歯数(枚)": a letter that a drawing gives it, or what is counted.
  const named = whole.get(keyOf(left.filter((word) => word.length > 1 || word > "z")));
  if (named || (left.length === 1 && left[0]!.length === 1)) return { ...(named && { sense: named }), ...rest };
  const untaxed = left.filter((word) => !tax.has(word));
  if (!untaxed.length) return rest;
  const taxed = whole.get(keyOf(untaxed));
  return taxed === "price" || taxed === "each" ? { sense: taxed, ...rest } : { ...rest, isUnsure: true };
}

/** "Bohr. Ø", "Bez.": a word that a point shortens, where all heads that begin so stand for one thing. */
const unshortened = (text: string): string =>
  text.replace(/([^\s\d\p{P}\p{S}]{3,})\.(?![a-z])/gu, (short, begin: string) => {
    const { single, whole } = listsOf();
    if (whole.has(begin)) return short;
    const found = single.filter(([head]) => head.startsWith(begin));
    return found.length && found.every(([, sense]) => sense === found[0]![1]) ? `${found[0]![0]} ` : short;
  });

/** What a program writes as one word, as several. */
const apart = (text: string): string => text.replace(/([a-z])([A-Z])(?=[a-z])/g, "$1 $2");

const lengths: readonly (HeadSense | undefined)[] = [
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
  "toothPitch",
];

/** What a head of two pieces is, where each is known: a set's counts, either pitch, or the more exact of the two. */
function both(first: Head, second: Head): Head | undefined {
  const [a, b] = [first.sense!, second.sense!];
  if (a === b) return first;
  const has = (one: HeadSense, other: HeadSense): boolean => (a === one && b === other) || (a === other && b === one);
  if (has("driver", "driven")) return { sense: "teeth", order: a === "driver" ? "driver-driven" : "driven-driver" };
  if (has("module", "diametralPitch")) return { sense: "toothPitch", isEither: true };
  for (const one of ["module", "diametralPitch", "pitch"] as const) if (has("toothPitch", one)) return { sense: one };
  for (const one of ["driver", "driven", "quantity"] as const)
    if (has("teeth", one)) return { sense: one === "quantity" ? "teeth" : one };
  for (const one of ["bore", "round", "outside"] as const) if (has("across", one)) return { sense: one };
  if (a === "price" || a === "each") return b === "checked" || b === "currency" ? second : first;
  return undefined;
}

/** What a head stands for, as it is written. */
function writtenHead(flat: string): Head {
  const sense = listsOf().whole.get(keyOf(wordsOf(flat)));
  if (sense) return { sense, ...(sense === "toothPitch" && /mod.*dp|dp.*mod/.test(flat) && { isEither: true }) };
  const pieces = flat
    .split(/[()[\]{}/|,;:?]| - /)
    .map(wordsOf)
    .filter((words) => words.length)
    .map(pieceOf);
  const unit = pieces.find((one) => one.unit)?.unit;
  const currency = pieces.find((one) => one.currency)?.currency;
  // A currency or unit by itself is what another piece is counted in.
  const named = pieces.filter((one) => one.sense !== undefined);
  const [first, second] =
    named.length > 1
      ? named.filter((one) => !(one.sense === "price" && one.currency && named.some((other) => other.sense === "each")))
      : named;
  let head: Head | undefined = first;
  if (first && second) head = named.length > 2 ? undefined : both(first, second);
  if (!head?.sense) return { ...(pieces.length && { isUnsure: true }) };
  const isUnsure = pieces.some((one) => one.isUnsure);
  const isPrice = head.sense === "price" || head.sense === "each";
  return {
    ...head,
    ...(isUnsure && { isUnsure }),
    ...(unit && (lengths.includes(head.sense) || head.sense === "module" || head.sense === "id") && { unit }),
    ...(currency && (isPrice || head.sense === "currency") && { currency }),
  };
}

/**
 * What a head stands for, in any of the six languages: the whole of it, its unit and currency in brackets, behind a comma or
 * slash, or with nothing between. A head of which only some words are known is unsure.
 */
export const headOf = /* @__PURE__ */ remembering((text: string): Head => {
  if (text.length > 100 || text.trim() === "") return {};
  const head = writtenHead(plain(text));
  if (head.sense && !head.isUnsure) return head;
  const others = [plain(apart(text)), unshortened(plain(text))].map(writtenHead);
  return others.find(({ sense, isUnsure }) => sense && !isUnsure) ?? head;
});

/** Whether a cell is nothing but a unit or a currency, as they stand in a row of their own below the heads. */
export function unitRowCell(text: string): Pick<Head, "unit" | "currency"> | undefined {
  const words = wordsOf(plain(text));
  if (!words.length && text.trim() !== "") return {};
  const piece = words.length === 1 ? pieceOf(words) : undefined;
  if (piece?.unit) return { unit: piece.unit };
  return piece?.currency && piece.sense === "price" ? { currency: piece.currency } : undefined;
}

/** A head with the reason why it is understood so, where that is not the head alone. */
export type UnderstoodHead = Head & { readonly why?: ColumnReason };

/** What every head of a row stands for; a row of groups above is read with the heads below it. */
export function understandHeads(
  heads: readonly string[],
  groups: readonly string[] | undefined,
  units: readonly Pick<Head, "unit" | "currency">[] | undefined,
): UnderstoodHead[] {
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
