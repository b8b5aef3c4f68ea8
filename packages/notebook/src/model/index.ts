/**
 * The notebook's document, and what can be done to it: without a page.
 * @module
 */
export { type Brought, broughtTo, type Carried, carriedIn, linkForBench, linkWithMeasured } from "./carried.js";
export { countedAgain } from "./counted-again.js";
export { type Asking, type Blank, answerFault, askings, blanksOf, isAnswered, isMounted, stageFrom } from "./asking.js";
export {
  type ExportChoice,
  type Opened,
  fileName,
  fileText,
  noSheet,
  openFile,
  openText,
  revived,
  usualExport,
} from "./file.js";
export type { WithNotebook } from "./read-notebook.js";
export { type Fields, type Notebook, type PostNode, type Run, type SheetMeaning, newNotebook } from "./notebook.js";
export { addPart, partsOf, shelve, withoutPart, withPart } from "./shelf.js";
export { handedOut, type Merging, merging, type Side } from "./merge.js";
export { centresRead, measure, noteCentre } from "./bench.js";
export { lengthFault, thousandsFault, typedLength, withPoint } from "./typed.js";
export { type Following, followingText, Session, withFields } from "./session.js";
export { axleChange, axleChoices, begin, firstBuild, splitChange, totalsText } from "./start.js";
export { assemblyText, putOn, swapFor, takeOff } from "./assemblies.js";
export { rename } from "./rename.js";
export { changeToWay, forgetWay, keepWay } from "./ways.js";
export { dayText } from "./days.js";
export { backToDay, backToVersion, keepVersion } from "./versions.js";
