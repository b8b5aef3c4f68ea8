/**
 * Parts that can be had, and what a change means to buy.
 * @module
 */
export { asDriven, asDriver, type Carried } from "./adapters.js";
export {
  type Bill,
  billOf,
  type BuyLine,
  cheapestFirst,
  type Cost,
  costOfLine,
  type Money,
  type OrderLine,
} from "./cost.js";
export { fittedFindings } from "./fitted.js";
export { needsOf } from "./needs.js";
export { emptyStock, type OrderList, orderOf, type Stock, stockFor } from "./order.js";
export { canBeHad, currencyOf, type Held, ownedOf, readParts } from "./part.js";
export type { Need } from "./places.js";
export { standingIn } from "./standing.js";
export { fittedTo, isOfForm, needsOfStage, type Spec } from "./stage-needs.js";
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
  textOf,
  type UnderstoodColumn,
} from "./sheet/index.js";
