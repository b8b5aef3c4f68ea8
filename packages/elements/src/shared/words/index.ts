/**
 * One table of strings a language. English is built in; the others are files of their own, fetched when something on the
 * page stands in them. A page may also bring one itself: `addWords("de", words)`, or `<script src="words-de.js">`. What
 * figures, tables and cards say is calc's, and comes in the same way: `figures-de.js`, `reports-de.js`.
 * @module
 */
export { fill, fillCount, languageOf, type Forms, type Table } from "@meshwright/calc/languages";
export { en, type Words } from "../../languages/words/en.js";
export { fromFiles } from "./files.js";
export { beside } from "./load-classic.js";
export { addTable, tableFor, whenWordsArrive } from "../tables/index.js";
export {
  addWords,
  fetchWords,
  figureWordsFor,
  findingText,
  offerWords,
  reportWordsFor,
  wordsFor,
  type Languages,
} from "./words.js";
