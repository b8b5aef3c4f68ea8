import { sayEffects, sayWheels, setText, type Speaker } from "@meshwright/calc/article";
import { setOf, spotOf, valueAt, type Build } from "@meshwright/calc/drivetrain";
import { Writer } from "@meshwright/calc/report";
import { writeCount } from "../element/index.js";
import type { BuildStore } from "../store/index.js";
import { figureWordsFor, wordsFor } from "../words/index.js";
import { nameIn } from "./names.js";
import { speakerFor } from "./speaker.js";

/** One change of a value: what it is called, what it is now and in the article; empty where that is no text. */
export interface ChangeText {
  readonly name: string;
  readonly now: string;
  readonly was: string;
}

/** What a build has at an address: a count, a text, all counts of a set. */
function valueText(build: Build, address: string, locale: string): string {
  const set = address.includes(".") ? undefined : setOf(spotOf(build, address)?.stage);
  if (set) return setText(set, new Writer({ locale, words: figureWordsFor(locale) }));
  const value = valueAt(build, address);
  return typeof value === "number" ? writeCount(value, locale) : typeof value === "string" ? value : "";
}

/** What holds where nothing is said. */
const unsaid = (address: string): string => (address === "lengths" ? "mm" : "");

/** Every value that differs from the article, by its name; a set is one. */
export const changeTexts = ({ units, article, build }: BuildStore, locale: string): readonly ChangeText[] =>
  units.map(({ address }) => ({
    name: address === "lengths" ? wordsFor(locale).unitOfLength : nameIn(build!, address, locale),
    now: valueText(build!, address, locale) || unsaid(address),
    was: valueText(article!, address, locale) || unsaid(address),
  }));

/** What the build as it stands comes to against the article, by what it says or by how its wheels turn. */
const against =
  (say: (now: Speaker, published: Speaker) => readonly string[]) =>
  (store: BuildStore, locale: string): readonly string[] => {
    const [now, article] = [store.evaluation(), store.evaluation("article")];
    return now && article ? say(speakerFor(now, locale, store), speakerFor(article, locale, store)) : [];
  };

export const effectTexts = against(sayEffects);
export const wheelTexts = against(sayWheels);
