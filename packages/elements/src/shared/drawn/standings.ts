import { sayStandings } from "@meshwright/calc/article";
import { textFor } from "../element/index.js";
import type { BuildStore } from "../store/index.js";
import { figureWordsFor } from "../words/index.js";

/** Where every output of the build stands as it is now, a sentence each: what a change has come to, for those who listen. */
export function standingTexts(store: BuildStore, locale: string): readonly string[] {
  const evaluation = store.evaluation();
  if (!evaluation) return [];
  const figure = (query: Parameters<typeof textFor>[1]): string => textFor(evaluation, query, locale, store) ?? "";
  return sayStandings({ evaluation, words: figureWordsFor(locale), figure });
}
