/**
 * Tables of strings, one a language: those that are here. Who fetches others comes with the rooms that need them.
 * @module
 */
export { languageOf } from "@meshwright/calc/languages";
export { addTable, fetchBy, tableFor, whenWordsArrive, wordsThere } from "./tables.js";
