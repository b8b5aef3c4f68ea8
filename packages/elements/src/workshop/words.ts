import { addTable, tableFor, type Table } from "../words/index.js";
import { workshopEn, type WorkshopWords } from "./en.js";
import { load } from "./load.js";

/** Adds the workshop strings of a language; whatever stands in that language is drawn again. */
export const addWorkshopWords = (language: string, words: Table<WorkshopWords>): void =>
  addTable(`workshop-${language}`, words);

/** The workshop strings for a locale: its language's, English until they are there or where there are none. */
export const workshopWordsFor = (locale: string): WorkshopWords =>
  tableFor<WorkshopWords>("workshop", workshopEn, locale, load);
