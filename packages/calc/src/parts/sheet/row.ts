import { fieldsNeeded, missingIn } from "../../document/index.js";
import { partKinds, type Part } from "../../drivetrain/index.js";
import type { PartKind } from "../../stages/index.js";
import { rational } from "../../exact/index.js";
import type { Column } from "./columns.js";
import { isTogether, pairOf } from "./counts.js";
import { isText, readers } from "./fields.js";
import { kindOf } from "./kinds.js";
import type { DataLine, Lent } from "./lending.js";
import { formMark, marksOf, type Marks } from "./marks.js";
import type { Ask, CellRead, SheetField } from "./meaning.js";
import { isEmpty, tidy } from "./plain.js";
import { longestText } from "./question.js";
import { isOtherWord, isWheelWord, kindIn } from "./row-kind.js";

/** A question about a row before it has its place: about a column's cell, or about a field that no column has. */
export interface RowAsk extends Ask {
  readonly field: SheetField;
  readonly column?: Column;
  readonly text: string;
  readonly taken: boolean;
}

/** A part as it grows: its id comes last, when those of all rows are known. */
export type PartFields = Record<string, unknown> & { id: string; is: PartKind };

/** What a row gives: fields of a part, and questions. */
export interface RowRead {
  readonly part: PartFields;
  /** What stands as its id. */
  readonly own: string | undefined;
  readonly asks: readonly RowAsk[];
}

/** What is put together at last. */
interface Loose {
  id?: string;
  amount?: string;
  currency?: string;
  checked?: string;
}

/** Fields of what has teeth. */
const toothed = ["teeth", "driver", "driven", "value", "module", "diametralPitch"];

const alone = new Map<SheetField, readonly string[]>();

/** The part's fields that a question about a field of the sheet is about. */
function covered(field: SheetField): readonly string[] {
  if (field === "teeth") return ["teeth", "driver", "driven", "value"];
  if (field === "toothPitch") return ["toothPitch", "module", "diametralPitch", "pitch"];
  if (field === "round" || field === "across") return [field, "outside", "tipDiameter", "diameter"];
  if (!alone.has(field)) alone.set(field, [field]);
  return alone.get(field)!;
}

const noAnswers: ReadonlyMap<string, string> = new Map();

/** Reads the rows of one table, each whole: first what the part is, then its cells, then what its name says beside them. */
export class RowReader {
  readonly #columns: readonly Column[];
  readonly #of = new Map<SheetField, Column>();
  /** The column that says what a part is. */
  readonly #kinds: Column | undefined;
  /** Columns whose cells are read one by one. */
  readonly #plain: readonly Column[];

  // What is gathered of the row in hand.
  #part: PartFields = { id: "", is: "other" };
  #loose: Loose = {};
  #asks: RowAsk[] = [];
  readonly #asked = new Set<string>();
  /** Fields that an answer says. */
  readonly #said = new Set<string>();
  /** Fields that a cell or an answer says nothing of: the name does not say them either. */
  readonly #blank = new Set<string>();
  #cells: readonly string[] = [];
  #lent: Lent | undefined;
  #answers = noAnswers;

  constructor(columns: readonly Column[]) {
    this.#columns = columns;
    for (const column of columns) if (column.field && !column.isSecond) this.#of.set(column.field, column);
    this.#kinds = this.#of.get("is") ?? this.#of.get("name");
    this.#plain = columns.filter(({ field }) => field && field !== "is" && field !== "currency");
  }

  /** Reads one row. */
  read({ line, section }: DataLine, lent: Lent | undefined, answers: ReadonlyMap<string, string> = noAnswers): RowRead {
    this.#part = { id: "", is: "other" };
    this.#loose = {};
    this.#asks = [];
    this.#cells = line.cells;
    this.#lent = lent;
    this.#answers = answers;
    this.#asked.clear();
    this.#blank.clear();
    this.#said.clear();
    for (const field of answers.keys()) for (const one of covered(field as SheetField)) this.#said.add(one);
    const what = this.#text(this.#of.get("is"));
    this.#readKind(what, section?.is);
    if (lent) this.#askLent();
    const currency = this.#readCurrency();
    for (const column of this.#plain) this.#readField(column.field!, column, currency);
    for (const field of answers.keys())
      if (Object.hasOwn(readers, field) && field !== "currency" && !this.#of.has(field as SheetField))
        this.#readField(field as SheetField, undefined, currency);
    for (const text of [this.#part.name as string | undefined, what, section?.text]) if (text) this.#readMarks(text);
    this.#finish(what);
    return { part: this.#part, own: this.#loose.id, asks: this.#asks };
  }

  #ask(field: SheetField, ask: Ask, text: string, column: Column | undefined, taken: boolean): void {
    this.#asks.push({ ...ask, field, text, taken, ...(column && { column }) });
    for (const one of covered(field)) this.#asked.add(one);
  }

  #cell = (column: Column): string => this.#cells[column.told.index] ?? "";

  /** A cell as it counts: the one above where it is empty and means that. */
  #text(column: Column | undefined): string {
    if (!column) return "";
    return this.#cell(column) || (this.#lent?.get(column)?.text ?? "");
  }

  #readKind(what: string, section: PartKind | undefined): void {
    const answer = this.#answers.get("is") ?? this.#of.get("is")?.told.words?.[what];
    if (partKinds.includes(answer as PartKind)) {
      this.#part.is = answer as PartKind;
      this.#said.add("is");
      return;
    }
    const { is, ask } = kindIn(isEmpty(what) ? "" : what, this.#text(this.#of.get("name")), section);
    // Two counts are of what is sold together; teeth and their pitch are a gear's.
    const isPair =
      ask &&
      (pairOf(tidy(this.#text(this.#of.get("teeth")))) !== undefined ||
        (this.#says("driver", "set") && this.#says("driven", "set")));
    const seems = isPair ? "set" : ask?.code === "kind-unknown" && this.#isToothed() ? "gear" : undefined;
    this.#part.is = seems ?? is;
    if (!ask || answer === "") return;
    this.#askKind(seems ? { code: isPair ? "kind-unsure" : ask.code, guess: seems } : ask, what);
  }

  /** Whether cells and name say a count of teeth, and a module or diametral pitch. */
  #isToothed(): boolean {
    const named = marksOf(this.#text(this.#of.get("name")), "gear").set;
    const hasPitch = (["module", "diametralPitch", "toothPitch"] as const).some((field) => this.#says(field, "gear"));
    return (this.#says("teeth", "gear") || !!named.teeth) && (hasPitch || !!(named.module ?? named.diametralPitch));
  }

  /** Whether the cell of a field, read as that of a kind, says something. */
  #says(field: SheetField, is: PartKind): boolean {
    const column = this.#of.get(field);
    const text = tidy(this.#text(column));
    return !isEmpty(text) && Object.keys(column!.read(text, is, undefined).set ?? {}).length > 0;
  }

  #askKind(ask: Ask, what: string): void {
    const text = this.#text(this.#kinds);
    const isWorded = this.#of.has("is") && what !== "";
    const choices = partKinds.map((one) => ({ answer: one, ...(isWorded && { column: { words: { [what]: one } } }) }));
    const code = text === "" ? "kind-unknown" : ask.code;
    this.#ask("is", { ...ask, code, choices }, text, this.#kinds, ask.guess !== undefined);
  }

  /** Asks about cells that were taken to be the same as above. */
  #askLent(): void {
    for (const [column, { text, isSaid }] of this.#lent!) {
      const field = column === this.#kinds ? "is" : column.field!;
      if (isSaid || this.#answers.has(field)) continue;
      const choices = [
        { answer: text, column: { blanks: "as-above" } },
        { answer: "", column: { blanks: "empty" } },
      ] as const;
      this.#ask(field, { code: "blanks", guess: text, choices }, "", column, true);
    }
  }

  #readCurrency(): string | undefined {
    const [column, price] = [this.#of.get("currency"), this.#of.get("price")];
    const text = column ? tidy(this.#text(column)) : "";
    if (isEmpty(text)) return undefined;
    const { set, ask } = column!.read(text, this.#part.is, undefined);
    if (ask && price && this.#cell(price) !== "") this.#ask("currency", ask, text, column, set !== undefined);
    return set?.currency as string | undefined;
  }

  #readField(field: SheetField, column: Column | undefined, currency: string | undefined): void {
    const answer = this.#answers.size ? this.#answers.get(field) : undefined;
    if (answer !== undefined) {
      const context = {
        field,
        decimal: ".",
        order: "driver-driven",
        isAnswer: true,
        ...(currency && { currency }),
      } as const;
      if (answer !== "")
        this.#put(field, readers[field as "teeth"](tidy(answer), context, this.#part.is), answer, column);
      for (const one of covered(field)) {
        this.#asked.add(one);
        this.#blank.add(one);
      }
      return;
    }
    if (this.#said.has(field)) return;
    const cell = this.#text(column);
    if (cell === "") return;
    if (column!.isSecond && this.#part[field] !== undefined) return;
    const text = isText(field) ? cell : tidy(cell.startsWith("'") ? cell.slice(1) : cell);
    // In a column of yes and no a word for none is an answer.
    if ((isEmpty(text) || (cell.length < 16 && isEmpty(tidy(cell)))) && !(field === "available" && /\p{L}/u.test(text)))
      for (const one of covered(field)) this.#blank.add(one);
    else this.#put(field, column!.read(text, this.#part.is, currency), cell, column);
  }

  #put(field: SheetField, { set, ask }: CellRead, text: string, column: Column | undefined): void {
    for (const key in set) {
      const isLoose = key === "id" || key === "amount" || key === "currency" || key === "checked";
      ((isLoose ? this.#loose : this.#part) as Record<string, unknown>)[key] = set[key as keyof typeof set];
    }
    if (ask)
      this.#ask(field, ask, text, column, ask.guess !== undefined && set !== undefined && Object.keys(set).length > 0);
  }

  #isFree = (field: string): boolean =>
    this.#part[field] === undefined && !this.#asked.has(field) && !this.#blank.has(field);

  /** What the name says, where neither a cell nor an answer does. */
  #readMarks(text: string): void {
    const part = this.#part;
    const form = this.#isFree("form") && formMark(text, part.is);
    if (form) part.form = form;
    const isPitchFree = this.#isFree("module") && this.#isFree("diametralPitch");
    const areCountsFree = ["teeth", "driver", "driven"].every(this.#isFree);
    const isRestTaken = !this.#isFree("bore") && !(part.is === "gearbox" && this.#isFree("value"));
    if (!isPitchFree && !areCountsFree && isRestTaken) return;
    const { set, pair, guess }: Marks = marksOf(text, part.is);
    for (const field in set) {
      const isPitch = field === "module" || field === "diametralPitch";
      if (isPitch ? isPitchFree : field === "teeth" ? areCountsFree : this.#isFree(field))
        part[field] = set[field as keyof Part];
    }
    if (pair && areCountsFree) {
      const { set: both, ask } = readers.teeth(pair, { field: "teeth" }, part.is);
      Object.assign(part, both);
      if (ask) this.#ask("teeth", ask, text, this.#of.get("teeth"), both !== undefined);
    }
    for (const field in guess) {
      const value = guess[field as keyof typeof guess]!;
      if (!this.#isFree(field) || !(field === "value" || this.#needs(field))) continue;
      part[field] = field === "teeth" ? Number(value) : value;
      this.#ask(
        field as SheetField,
        { code: "from-name", guess: value },
        text,
        this.#of.get(field as SheetField) ?? this.#of.get("name"),
        true,
      );
    }
  }

  /** Asks about what is no gear by its words, and has teeth or a ratio all the same. */
  #doubtKind(what: string): void {
    const { is } = this.#part;
    if ((is !== "other" && is !== "wheel") || this.#asked.has("is") || this.#said.has("is")) return;
    if (!toothed.some((field) => this.#part[field] !== undefined)) return;
    const text = what || this.#text(this.#of.get("name"));
    if (is === "wheel" ? !isWheelWord(text) : isOtherWord(text)) return;
    this.#part.is = is === "wheel" ? "gear" : "other";
    this.#askKind({ code: "kind-unsure", guess: this.#part.is }, what);
  }

  #needs = (field: string): boolean => fieldsNeeded(this.#part.is).includes(field as keyof Part);

  /** What is missing, twice there, or has to be put together. */
  #finish(what: string): void {
    const part = this.#part;
    if (part.module !== undefined && part.diametralPitch !== undefined) {
      const choices = [
        { answer: `module ${part.module as string}` },
        { answer: `${part.diametralPitch as string} DP` },
      ];
      delete part.diametralPitch;
      this.#ask(
        "toothPitch",
        { code: "pitch-twice", guess: choices[0]!.answer, choices },
        "",
        this.#of.get("diametralPitch"),
        true,
      );
    }
    this.#doubtKind(what);
    const missing = missingIn(part).filter((field) => !this.#asked.has(field as SheetField)) as SheetField[];
    const isPair = missing.length === 2 && isTogether(part.is) && !this.#of.has("driver");
    for (const field of isPair ? (["teeth"] as const) : missing) {
      const guess = field === "teeth" && part.driver !== undefined ? { guess: String(part.driver) } : undefined;
      this.#ask(field, { code: "missing", ...guess }, "", this.#of.get(field), false);
    }
    this.#makePrice();
    // Where nothing else is its name, the words of its kind are, as far as they say more than the kind.
    if (what !== "" && part.name === undefined && !this.#of.has("name") && !isEmpty(what) && !kindOf(what)?.only)
      part.name = what.slice(0, longestText);
  }

  #makePrice(): void {
    const { amount, currency, checked } = this.#loose;
    if (amount === undefined || currency === undefined) return;
    this.#part.price = checked === undefined ? { amount, currency } : { amount, currency, checked };
    const column = this.#of.get("price");
    if (!column?.isEach || this.#answers.has("price") || !((this.#part.pack as number) > 1)) return;
    const guess = `${amount} ${currency}`;
    const whole = `${rational(amount)
      .times(this.#part.pack as number)
      .toDecimal()} ${currency}`;
    this.#ask(
      "price",
      { code: "price-each", guess, choices: [{ answer: guess }, { answer: whole }] },
      this.#cell(column),
      column,
      true,
    );
  }
}
