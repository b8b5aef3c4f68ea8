import { fill, type FigureWords } from "../languages/index.js";

/** One line of a table: its head, what stands beside that, and a text for each further column. */
export interface BlockRow {
  readonly head: string;
  /** A stage's counts, where its row's head shows them too. */
  readonly beside?: string | undefined;
  readonly kind?: "subtotal" | "total" | undefined;
  readonly texts: readonly (string | undefined)[];
}

/** A table: its heads, the first of them above the rows' own. */
export interface BlockTable {
  readonly caption?: string | undefined;
  readonly heads: readonly string[];
  readonly rows: readonly BlockRow[];
}

/** What a block says: tables, and sentences about them. */
export interface Block {
  readonly tables: readonly BlockTable[];
  readonly notes: readonly string[];
}

/** Texts one after the other, as a language lists them. */
export const listed = (texts: readonly string[], { aside }: Pick<FigureWords, "aside">): string =>
  texts.length ? texts.reduce((text, one) => fill(aside, text, one)) : "";
