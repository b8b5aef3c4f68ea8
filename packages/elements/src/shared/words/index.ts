/**
 * One table of strings a language. English is built in; the others are files of their own, fetched when something on the
 * page stands in them. A page may also bring one itself: `addWords("de", words)`, or `<script src="words-de.js">`.
 * @module
 */
export { en, type Forms, type Words } from "../../languages/words/en.js";
export { fromFiles } from "./files.js";
export { beside } from "./load-classic.js";
export { addTable, languageOf, tableFor, whenWordsArrive } from "./tables.js";
export { addWords, fill, fillCount, offerWords, wordsFor } from "./words.js";
export type { Table } from "../../languages/table.js";
