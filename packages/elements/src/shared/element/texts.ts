import type { Evaluation } from "@meshwright/calc/evaluate";
import { verdictWords, type FigureWords } from "@meshwright/calc/languages";
import { commonFigures, figureIn, type QueryText } from "@meshwright/calc/report";
import type { BuildStore } from "../store/index.js";
import { languageOf, wordsThere } from "../tables/index.js";

/** Makes the text of a figure; throws where it asks for what there is not, and answers nothing where it cannot tell yet. */
export type SayFigure = (
  evaluation: Evaluation,
  query: QueryText,
  locale: string,
  version: (id: string) => Evaluation | undefined,
) => string | undefined;

/** As much as a sentence needs: in a language whose words are not here yet, numbers alone. */
let say: SayFigure = (evaluation, query, locale, version) => {
  const words = wordsThere<FigureWords>("figures", verdictWords as FigureWords, locale);
  const text = figureIn(commonFigures, evaluation, query, { locale, words, version });
  const isForeign = words === verdictWords && languageOf(locale) !== "en";
  return isForeign && text && /\p{L}{3}/u.test(text) ? undefined : text;
};

/** Has figures made by somebody else from now on. */
export const sayBy = (other: SayFigure): void => void (say = other);

/** Texts of figures by what they are figures of: an article says the same in many places. */
let texts = new WeakMap<Evaluation, Map<string, string | undefined>>();

/** Has every text made anew. */
export const forgetTexts = (): void => void (texts = new WeakMap());

/** The text of a figure, made once for all that show it. */
export function textFor(
  evaluation: Evaluation,
  query: QueryText,
  locale: string,
  store: BuildStore,
  at?: string | null,
): string | undefined {
  let known = texts.get(evaluation);
  if (!known) texts.set(evaluation, (known = new Map<string, string | undefined>()));
  // Another build may have been changed where this one has not.
  const key = locale + (query.from ? at : "") + JSON.stringify(query);
  if (!known.has(key))
    known.set(
      key,
      say(evaluation, query, locale, (id) => store.against(id, at ?? "")),
    );
  return known.get(key);
}
