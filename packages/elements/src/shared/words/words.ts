import { isPlainEnglish } from "@meshwright/calc/report";
import { en, type Forms, type Words } from "../../languages/words/en.js";
import { load } from "./load.js";
import type { Table } from "../../languages/table.js";
import { addTable, tableFor } from "./tables.js";

const offered = new Map<string, () => Promise<Table<Words>>>();

/** Adds the strings of a language, by its two or three letters; whatever stands in that language is drawn again. */
export const addWords = (language: string, words: Table<Words>): void => addTable(`words-${language}`, words);

/** Says how a language is fetched when something on the page stands in it, and not before; the library's own have no need. */
export const offerWords = (language: string, fetch: () => Promise<Table<Words>>): void =>
  void offered.set(language, fetch);

/** The strings for a locale: its language's, English until they are there or where there are none. */
export const wordsFor = (locale: string): Words =>
  tableFor<Words>("words", en, locale, (language) => (offered.get(language) ?? load)(language));

/** Puts values into a sentence. */
export const fill = (sentence: string, ...values: readonly (string | number)[]): string =>
  sentence.replace(/\{(\d)\}/g, (_, n) => String(values[n]));

// Making these costs a hundred times as much as asking them.
const counters = new Map<string, readonly [Intl.PluralRules, Intl.NumberFormat]>();

/** A sentence in the form that a count asks for. */
export function fillCount(forms: Forms, count: number, locale: string): string {
  if (isPlainEnglish(locale) && count < 1000) return fill((count === 1 && forms.one) || forms.other!, count);
  let counter = counters.get(locale);
  if (!counter) counters.set(locale, (counter = [new Intl.PluralRules(locale), new Intl.NumberFormat(locale)]));
  const [rules, numbers] = counter;
  return fill(forms[rules.select(count)] ?? forms.other!, numbers.format(count));
}
