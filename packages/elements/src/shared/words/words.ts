import {
  figureWords,
  findingWords,
  messageOf,
  reportWords,
  type FigureWords,
  type FindingWords,
  type ReportWords,
  type Table,
} from "@meshwright/calc/languages";
import type { FindingCause } from "@meshwright/calc/stages";
import { en, type Words } from "../../languages/words/en.js";
import { load, loadFigures, loadFindings, loadReports } from "./load.js";
import { addTable, tableFor } from "../tables/index.js";

/** What a page may bring of one language: the elements' controls, what figures say, what tables and cards say. */
export interface Languages {
  readonly words: Words;
  readonly figures: FigureWords;
  readonly reports: ReportWords;
}

type Kind = keyof Languages;
type Fetch = () => Promise<Table<object>>;
const offered = new Map<string, Fetch>();
const offer = (kind: Kind, language: string): Fetch | undefined => offered.get(`${kind}-${language}`);

/** Adds the strings of a language, by its two or three letters; whatever stands in that language is drawn again. */
export function addWords(language: string, words: Table<Words>, figures?: Table<FigureWords>): void {
  addTable(`words-${language}`, words);
  if (figures) addTable(`figures-${language}`, figures);
}

/** Says how strings of a language are fetched when something on the page stands in it, and not before; the library's own have no need. */
export function offerWords<Of extends Kind = "words">(
  language: string,
  fetch: () => Promise<Table<Languages[Of]>>,
  kind?: Of,
): void {
  offered.set(`${kind ?? "words"}-${language}`, fetch);
}

/** The strings for a locale: its language's, English until they are there or where there are none. */
export const wordsFor = (locale: string): Words =>
  tableFor<Words>("words", en, locale, (language) => offer("words", language)?.() ?? load(language));

/** The words of figures for a locale, in the same way. */
export const figureWordsFor = (locale: string): FigureWords =>
  tableFor<FigureWords>(
    "figures",
    figureWords,
    locale,
    (language) => offer("figures", language)?.() ?? loadFigures(language),
  );

/** The words of tables, cards and drawings for a locale, in the same way. */
export const reportWordsFor = (locale: string): ReportWords =>
  tableFor<ReportWords>(
    "reports",
    reportWords,
    locale,
    (language) => offer("reports", language)?.() ?? loadReports(language),
  );

/** What was found, in a sentence of the language that stands there: in English until its words have come. */
export const findingText = (finding: FindingCause, locale: string): string =>
  messageOf(finding, tableFor<FindingWords>("findings", findingWords, locale, loadFindings));

/** Fetches a table of strings by its kind, for `fetchBy`. */
export const fetchWords = (kind: string, language: string): Promise<object | undefined> | undefined =>
  offer(kind as Kind, language)?.() ??
  (kind === "words" ? load : kind === "figures" ? loadFigures : loadReports)(language);
