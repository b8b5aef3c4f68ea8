import type { Choice, SheetField } from "./meaning.js";
import { sheetWords, type QuestionCode, type SheetWords } from "./sheet-words.js";

/** What cannot be told with certainty, in its place. */
export interface SheetQuestion {
  /** Under it an answer is given. A question about a whole column is answered by what the column means. */
  readonly key: string;
  /** The row, counted from 0; of a column its head's. */
  readonly row: number;
  /** The line of the file. */
  readonly line: number;
  /** The column, counted from 0; none where the whole row is meant, or a field that no column has. */
  readonly column?: number;
  /** Under it what a column means is set. */
  readonly columnKey?: string;
  readonly head?: string;
  /** None where a whole row or column is meant. */
  readonly field?: SheetField;
  /** The cell as it stands. */
  readonly text: string;
  readonly code: QuestionCode;
  /** What it is perhaps, in the form of an answer. */
  readonly guess?: string;
  /** Whether the guess stands in the part; else the part goes without. */
  readonly taken: boolean;
  readonly choices?: readonly Choice[];
}

/** The longest text of a part. */
export const longestText = 5000;

/**
 * A question as a sentence, and what was guessed as another.
 *
 * @example
 * const { questions } = partsFromSheet([["Part", "Teeth"], ["Pinion", "~17"]]);
 * questions.map((one) => questionText(one)); // => ["“~17” is no plain whole number. Taken for 17."]
 */
export function questionText(question: SheetQuestion, words: SheetWords = sheetWords): string {
  const { code, text, head = "", line, guess, taken, field } = question;
  const values: Readonly<Record<string, string>> = {
    text: text.length > 60 ? `${text.slice(0, 60)}…` : text,
    head,
    line: String(line),
    guess: guess ?? "",
    field: field ? words.fields[field] : "",
    most: String(longestText),
  };
  const fill = (sentence: string): string => sentence.replace(/\{(\w+)\}/g, (_, name: string) => values[name]!);
  const sentences = [
    words.questions[code],
    ...(guess === undefined ? [] : [words.guesses[taken ? "taken" : "offered"]]),
  ];
  return sentences.map(fill).join(" ");
}
