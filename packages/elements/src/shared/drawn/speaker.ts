import { writerFor, type Speaker } from "@meshwright/calc/article";
import type { Evaluation } from "@meshwright/calc/evaluate";
import { textFor } from "../element/index.js";
import type { BuildStore } from "../store/index.js";
import { figureWordsFor } from "../words/index.js";

/** Whoever says what calc's article room makes of a version, in a language. */
export function speakerFor(evaluation: Evaluation, locale: string, store: BuildStore): Speaker {
  const words = figureWordsFor(locale);
  return {
    evaluation,
    locale,
    words,
    get writer() {
      return writerFor(evaluation, locale, words);
    },
    figure: (query) => textFor(evaluation, query, locale, store) ?? "",
  };
}
