/**
 * One table of strings a language. English is built in; another language is a file of its own that ends in
 * `addWords("de", de)`, or that `offerWords` fetches when it is needed.
 * @module
 */
export { en, type Forms, type Words } from "./en.js";
export { addWords, fill, fillCount, languageOf, offerWords, whenWordsArrive, wordsArrived, wordsFor } from "./words.js";
