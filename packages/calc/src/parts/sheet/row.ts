import type { Part, PartKind } from "../../drivetrain/index.js";
import { needed } from "../part.js";
import type { Column } from "./columns.js";
import { isTogether, pairOf } from "./counts.js";
import { isText, readers } from "./fields.js";
import { kindOf } from "./kinds.js";
import { marksOf } from "./marks.js";
import type { Ask, CellRead, SheetField } from "./meaning.js";
import { isEmpty, plain, setOf, tidy } from "./plain.js";

/** A question about a row before it has its place: about a column's cell, or about a field that no column has. */
export interface RowAsk extends Ask {
  readonly field: SheetField;
  readonly column?: Column;
  readonly text: string;
  readonly taken: boolean;
}

/** What a row gives: fields of a part, and questions. */
export interface RowRead {
  readonly part: Record<string, unknown> & { is: PartKind };
  readonly asks: readonly RowAsk[];
}

/** What a row is read with. */
export interface RowInput {
  readonly columns: readonly Column[];
  readonly cells: readonly string[];
  /** Answers for this row, by field. */
  readonly answers: ReadonlyMap<string, string>;
  /** What a heading above says, and what marks it bears. */
  readonly section: { readonly is: PartKind; readonly text: string } | undefined;
  /** For columns whose empty cells mean the one above: its text, and whether that was said or is guessed. */
  readonly above: ReadonlyMap<Column, { readonly text: string; readonly isSaid: boolean }>;
}

const kinds: readonly PartKind[] = [
  "pinion", "spur", "gear", "set", "hub", "gearbox", "worm", "planetary", "belt", "pulley", "wheel", "sleeve", "plate", "motor", "battery", "other",
];

let general: ReadonlySet<string> | undefined;
/** "Gears" as the name of a category: the part's own name says which. */
const isGeneral = (text: string): boolean =>
  (general ??= setOf("gear|gears|zahnrad|zahnräder|engrenage|engrenages|engranaje|engranajes|ギア|ギヤ|歯車|ترس|تروس")).has(plain(text));

interface KindFound {
  readonly is: PartKind;
  readonly ask?: Ask;
  readonly taken?: boolean;
}

/** What the part of a row is, by the column of kinds, its name, or the heading above. */
export function kindIn(what: string, name: string, section: PartKind | undefined): KindFound {
  const ofWhat = what === "" ? undefined : kindOf(what);
  const ofName = name === "" ? undefined : kindOf(name);
  if (ofWhat?.sure) {
    const isFiner = ofName?.sure && (ofName.is === "pinion" || ofName.is === "spur") && isGeneral(what);
    return { is: isFiner ? ofName.is : ofWhat.is };
  }
  if (ofName?.sure) return { is: ofName.is };
  const perhaps = ofWhat ?? ofName;
  if (section) return { is: section };
  if (perhaps) return { is: perhaps.is, ask: { code: "kind-unsure", guess: perhaps.is, choices: kinds }, taken: true };
  return { is: "other", ask: { code: "kind-unknown", choices: kinds } };
}

/** The needed fields of a kind that one manner of question covers. */
const neededOf = (is: PartKind): readonly (keyof Part)[] => needed[is] ?? [];

/** One row, read whole: first what the part is, then its cells, then what its name says beside them. */
export function readRow({ columns, cells, answers, section, above }: RowInput): RowRead {
  const asks: RowAsk[] = [];
  const part: RowRead["part"] = { is: "other" };
  const blank = new Set<SheetField>();
  const questioned = new Set<string>();
  const ask = (field: SheetField, one: Ask, text: string, column?: Column, taken = false) => {
    asks.push({ ...one, field, text, taken, ...(column && { column }) });
    for (const also of covered(field)) questioned.add(also);
  };
  const cellOf = (column: Column): string => cells[column.told.index] ?? "";
  const columnOf = (field: SheetField): Column | undefined => columns.find((column) => column.field === field);
  /** A cell as it counts: said above where it is empty. */
  const textOf = (column: Column | undefined): string => (column ? cellOf(column) || (above.get(column)?.text ?? "") : "");

  const [whats, names] = [columnOf("is"), columnOf("name")];
  const what = textOf(whats);
  const said = whats?.told.words?.[what];
  const answered = answers.get("is") ?? said;
  const isKind = kinds.includes(answered as PartKind);
  const found: KindFound = isKind ? { is: answered as PartKind } : kindIn(isEmpty(what) ? "" : what, textOf(names), section?.is);
  part.is = found.is;
  const kindColumn = whats ?? names;
  if (found.ask && answered !== "") {
    const settles = whats && what !== "" ? ({ settles: "words" } as const) : {};
    ask("is", { ...found.ask, ...settles }, textOf(kindColumn), kindColumn, found.taken);
  }
  for (const column of columns) {
    const { field } = column;
    const lent = above.get(column);
    if (lent && !lent.isSaid && field && cellOf(column) === "" && (column === kindColumn ? !answers.has("is") : !answers.has(field)))
      ask(column === kindColumn ? "is" : field, { code: "blanks", guess: lent.text, settles: "blanks" }, "", column, true);
  }

  const put = (field: SheetField, { set, ask: open }: CellRead, text: string, column?: Column) => {
    if (set) Object.assign(part, set);
    if (open) ask(field, open, text, column, set !== undefined && open.guess !== undefined && Object.keys(set).length > 0);
  };
  let currency: string | undefined;
  const read = (field: SheetField, column: Column | undefined) => {
    const answer = answers.get(field);
    const cell = textOf(column);
    if (answer !== undefined) {
      if (answer !== "") put(field, readers[field as "teeth"](tidy(answer), { field, decimal: ".", ...(currency && { currency }) }, part.is), answer, column);
      blank.add(field);
      for (const also of covered(field)) questioned.add(also);
      return;
    }
    if (!column || cell === "") return;
    const text = isText(field) ? cell : tidy(cell);
    if (isEmpty(text) && !(field === "available" && /\p{L}/u.test(text))) {
      blank.add(field);
      return;
    }
    if (text !== "") put(field, column.read(text, part.is, currency), cell, column);
  };
  const priced = columnOf("currency");
  if (priced) {
    const { set, ask: open } = cellOf(priced) === "" || isEmpty(tidy(cellOf(priced))) ? ({} as CellRead) : priced.read(tidy(cellOf(priced)), part.is, undefined);
    currency = set?.currency as string | undefined;
    const price = columnOf("price");
    if (open && price && cellOf(price) !== "") ask("currency", open, cellOf(priced), priced, !!set);
  }
  for (const column of columns) if (column.field && column.field !== "is" && column.field !== "currency") read(column.field, column);
  for (const field of answers.keys())
    if (field in readers && field !== "currency" && !columnOf(field as SheetField)) read(field as SheetField, undefined);

  addMarks(part, [part.name as string | undefined, what, section?.text], blank, ask, questioned, columnOf);
  if (part.module !== undefined && part.diametralPitch !== undefined) {
    delete part.diametralPitch;
    ask("toothPitch", { code: "pitch-twice", guess: `module ${part.module as string}` }, "", columnOf("diametralPitch"), true);
  }
  const missing = neededOf(part.is).filter((field) => part[field] === undefined && !questioned.has(field));
  for (const field of isTogether(part.is) && missing.length === 2 && !columnOf("driver") ? (["teeth"] as const) : missing) {
    const isTeeth = field === "teeth" && part.driver !== undefined;
    ask(field as SheetField, { code: "missing", ...(isTeeth && { guess: String(part.driver) }) }, "", columnOf(field as SheetField));
  }
  return { part: finished(part, whats && !names ? what : undefined, columnOf("price")?.isEach, ask, answers.has("price")), asks };
}

/** The part's fields that a question about a field of the sheet is about. */
export function covered(field: SheetField): readonly string[] {
  if (field === "teeth") return ["teeth", "driver", "driven", "value"];
  if (field === "toothPitch") return ["toothPitch", "module", "diametralPitch", "pitch"];
  if (field === "round" || field === "across") return [field, "outside", "tipDiameter", "diameter"];
  return [field];
}

/** What the name says, where neither a cell nor an answer does. */
function addMarks(
  part: RowRead["part"],
  texts: readonly (string | undefined)[],
  blank: ReadonlySet<SheetField>,
  ask: (field: SheetField, one: Ask, text: string, column?: Column, taken?: boolean) => void,
  questioned: ReadonlySet<string>,
  columnOf: (field: SheetField) => Column | undefined,
): void {
  for (const text of texts) {
    if (!text) continue;
    const { set, pair, guess } = marksOf(text, part.is);
    const isFree = (field: string): boolean =>
      part[field] === undefined && !questioned.has(field) && !blank.has(field as SheetField);
    const isPitchFree = isFree("module") && isFree("diametralPitch") && !blank.has("toothPitch");
    const isCounted = !isFree("teeth") || part.driver !== undefined || part.driven !== undefined;
    for (const [field, value] of Object.entries(set))
      if (field === "module" || field === "diametralPitch" ? isPitchFree : isFree(field) && !(field === "teeth" && isCounted)) part[field] = value;
    if (pair && !isCounted && !blank.has("driver") && !blank.has("driven")) {
      const counts = pairOf(pair)!;
      const { set: both, ask: open } = readers.teeth(pair, { field: "teeth" }, part.is);
      if (both) Object.assign(part, both);
      if (open) ask("teeth", { ...open, guess: `${Math.min(...counts)}/${Math.max(...counts)}` }, text, columnOf("teeth"), true);
    }
    for (const [field, value] of Object.entries(guess ?? {})) {
      const isNeeded = neededOf(part.is).includes(field as keyof Part) || field === "value";
      if (!isFree(field) || !isNeeded) continue;
      part[field] = field === "teeth" ? Number(value) : value;
      ask(field as SheetField, { code: "from-name", guess: value }, text, columnOf(field as SheetField) ?? columnOf("name"), true);
    }
  }
}

/** The part with its price put together, and with the words of its kind as a name where they say more than the kind. */
function finished(
  fields: RowRead["part"],
  what: string | undefined,
  isEach: boolean | undefined,
  ask: (field: SheetField, one: Ask, text: string, column?: Column, taken?: boolean) => void,
  isAnswered: boolean,
): RowRead["part"] {
  const { amount, currency, checked, ...part } = fields;
  if (amount !== undefined && currency !== undefined) part.price = { amount, currency, ...(checked !== undefined && { checked }) };
  if (isEach && !isAnswered && part.price && (part.pack as number) > 1)
    ask("price", { code: "price-each", guess: `${amount as string} ${currency as string}` }, `${amount as string} ${currency as string}`, undefined, true);
  if (what !== undefined && what !== "" && !isEmpty(what) && part.name === undefined && !kindOf(what)?.only) part.name = what.slice(0, 5000);
  return part;
}
