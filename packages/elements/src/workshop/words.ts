import { languageOf, wordsArrived } from "../words/index.js";
import { workshopEn, type WorkshopWords } from "./en.js";

const tables = new Map<string, WorkshopWords>();

/** Adds the workshop strings of a language; whatever stands in that language is drawn again. */
export function addWorkshopWords(language: string, words: WorkshopWords): void {
  tables.set(language, words);
  wordsArrived();
}

/** The workshop strings for a locale: English where its language has none. */
export const workshopWordsFor = (locale: string): WorkshopWords => tables.get(languageOf(locale)) ?? workshopEn;
