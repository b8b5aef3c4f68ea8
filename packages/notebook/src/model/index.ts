/**
 * The notebook's document, and what can be done to it: without a page.
 * @module
 */
export { type Asking, type Blank, answerFault, askings, blanksOf, isAnswered, stageFrom } from "./asking.js";
export {
  type ExportChoice,
  type Opened,
  fileName,
  fileText,
  notebookFrom,
  openFile,
  openText,
  usualExport,
} from "./file.js";
export { stepName } from "./names.js";
export {
  type BenchNote,
  type Fields,
  type LogLine,
  type Notebook,
  type PostNode,
  type Run,
  type SheetMeaning,
  type Version,
  emptyTitle,
  newNotebook,
} from "./notebook.js";
export { Session, withFields } from "./session.js";
export { axleChange, axleChoices, begin, splitChange, totalText, totalsText, withoutAxle } from "./start.js";
export { backToVersion, keepVersion } from "./versions.js";
