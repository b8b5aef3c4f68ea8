/**
 * The notebook's document, and what can be done to it: without a page.
 * @module
 */
export { countedAgain } from "./counted-again.js";
export { type Asking, type Blank, answerFault, askings, blanksOf, isAnswered, stageFrom } from "./asking.js";
export {
  type ExportChoice,
  type Opened,
  fileName,
  fileText,
  notebookFrom,
  openFile,
  openText,
  revived,
  usualExport,
} from "./file.js";
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
export { partsOf, shelve, withoutPart, withPart } from "./shelf.js";
export { countsBehind, measure } from "./bench.js";
export { Session, withFields } from "./session.js";
export { axleChange, axleChoices, begin, firstBuild, splitChange, totalsText, withoutAxle } from "./start.js";
export { backToVersion, keepVersion } from "./versions.js";
