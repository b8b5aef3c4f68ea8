/**
 * Parts that can be had, and what a change means to buy.
 * @module
 */
export { type BuyLine, type Need, type OrderLine, type OrderList, needsOf, orderOf } from "./order.js";
export { canBeHad, costOf, readParts } from "./part.js";
export {
  type Choice,
  type ColumnMeaning,
  type ColumnReason,
  csvOf,
  type LengthUnit,
  type PartRow,
  partsFromSheet,
  type PassedCode,
  type PassedRow,
  type QuestionCode,
  questionText,
  readSheet,
  type Sheet,
  type SheetField,
  sheetKey,
  sheetOf,
  type SheetParts,
  type SheetQuestion,
  type SheetRow,
  type SheetSettings,
  type SheetWords,
  sheetWords,
  type UnderstoodColumn,
} from "./sheet/index.js";
