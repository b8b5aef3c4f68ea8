import { nameAt } from "@meshwright/calc/article";
import type { More } from "../element/index.js";
import { figureWordsFor, wordsFor } from "../words/index.js";

/** What a value is called: whose it is, and what. */
export const nameIn: NonNullable<More["nameOf"]> = (build, address, locale) =>
  nameAt(build, address, { ...wordsFor(locale), told: figureWordsFor(locale).told });
