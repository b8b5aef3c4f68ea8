export type { UnderstoodColumn } from "./columns.js";
export type { Choice, ColumnMeaning, LengthUnit, SheetField } from "./meaning.js";
export { partsFromSheet } from "./parts.js";
export { questionText, type SheetQuestion } from "./question.js";
export { readSheet, type Sheet, type SheetRow } from "./rows.js";
export { type ColumnReason, type PassedCode, type QuestionCode, type SheetWords, sheetWords } from "./sheet-words.js";
export { textOf } from "./text.js";
export { csvOf, sheetKey, sheetOf } from "./write.js";
export type { PartRow, PassedRow, SheetParts, SheetSettings } from "./types.js";
