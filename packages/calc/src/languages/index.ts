/**
 * The words that figures, verdicts and reports need. English is built in; each other language is a file of its own for each
 * list of words, `figures/de`, `reports/de` or `findings/de`, to be had when it is needed, and `all` has all of them.
 * @module
 */
export { type FigureWords, type VerdictWords, figureWords } from "./figures/en.js";
export { findingWords, type FindingWords } from "./findings/en.js";
export { canonicalLocale, isPlainEnglish, isRightToLeft, languageOf } from "./locale.js";
export { messageOf } from "./message.js";
export { pitchText, reasonText } from "./reason-text.js";
export { type ReasonWords, type ReportWords, reportWords } from "./reports/en.js";
export { fillCount } from "./counted.js";
export { fill } from "./sentences.js";
export { verdictWords } from "./verdicts.js";
export { type Forms, type Table, type Widened, stringsFrom } from "./tables.js";
