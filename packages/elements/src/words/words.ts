import { en, type Forms, type Words } from "./en.js";

const tables = new Map<string, Words | Promise<void>>([["en", en]]);
const loaders = new Map<string, () => Promise<Words>>();
const waiting = new Set<() => void>();

/** Adds the strings of a language, by its two or three letters; whatever stands in that language is drawn again. */
export function addWords(language: string, words: Words): void {
  tables.set(language, words);
  wordsArrived();
}

/** Draws again whatever may stand in a language that has just arrived. */
export function wordsArrived(): void {
  for (const again of waiting) again();
}

/** Says how a language is fetched when something on the page stands in it, and not before. */
export function offerWords(language: string, load: () => Promise<Words>): void {
  loaders.set(language, load);
}

/** Calls back whenever a language has arrived. */
export const whenWordsArrive = (again: () => void): void => void waiting.add(again);

/** The letters of a locale's language. */
export const languageOf = (locale: string): string => /^[a-z]*/.exec(locale.toLowerCase())![0];

/** The strings for a locale: its language's, English until they are there or where there are none. */
export function wordsFor(locale: string): Words {
  const language = languageOf(locale);
  const table = tables.get(language);
  if (table && "undo" in table) return table;
  const load = loaders.get(language);
  if (load && !table)
    tables.set(
      language,
      load().then(
        (words) => addWords(language, words),
        () => undefined,
      ),
    );
  return en;
}

/** Puts values into a sentence. */
export const fill = (sentence: string, ...values: readonly (string | number)[]): string =>
  sentence.replace(/\{(\d)\}/g, (_, n) => String(values[n]));

/** A sentence in the form that a count asks for. */
export const fillCount = (forms: Forms, count: number, locale: string): string =>
  fill(forms[new Intl.PluralRules(locale).select(count)] ?? forms.other!, new Intl.NumberFormat(locale).format(count));
