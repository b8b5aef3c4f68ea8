import type { BuildStore } from "../store/index.js";
import { valuesChanged } from "../drawn/index.js";
import { fill, fillCount, reportWordsFor, wordsFor } from "../words/index.js";

/**
 * Whose values are shown, in a sentence for paper, which does not say it by itself: an alternative's, the reader's, the author's.
 *
 * @param isOwn whether the build is in the hands of whoever reads it: then the author's go without saying
 * @param at `article` or an alternative's id, where what is shown is pinned to it
 */
export function whoseValues(store: BuildStore, locale: string, isOwn: boolean | undefined, at?: string | null): string {
  const { authorsValues, valuesOf } = reportWordsFor(locale);
  const alternative = store.article?.alternatives?.find(({ id }) => id === at);
  if (alternative) return fill(valuesOf, alternative.label ?? alternative.id);
  const changed = at ? 0 : valuesChanged(store);
  if (changed) return fillCount(wordsFor(locale).readers, changed, locale);
  return isOwn ? "" : authorsValues;
}
