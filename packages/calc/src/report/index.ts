/**
 * What is shown: the one maker of figure text, and the working step by step.
 * @module
 */
export { type AddressFault, addressFault, lettersAt, singleFault } from "./address.js";
export { figureOf, figures } from "./all-figures.js";
export {
  type Figure,
  type FigureContext,
  type FigureOptions,
  type FigureTable,
  type Makers,
  type MakersOf,
  figureIn,
} from "./figure.js";
export { figureAsked } from "./figure-asked.js";
export { figureFrom } from "./figure-from.js";
export { type Mounted, fitFigures, mountedIn } from "./fit-figures.js";
export { commonFigures } from "./common-figures.js";
export { gearFigures } from "./gear-figures.js";
export { motionFigures } from "./motion-figures.js";
export { hasVersion } from "./has-version.js";
export { checkQuery } from "./query.js";
export { noOthers, type Others } from "./query-faults.js";
export { comparedIn } from "./compared.js";
export { type DriveForm, arrowFor, driveText, stageText } from "./stage-text.js";
export { isToothPair } from "./tooth-pair.js";
export { modeFault, versionFault, versionOf } from "./version.js";
export {
  type FigureBase,
  type FigureDrive,
  type FigureMeasure,
  type FigureName,
  type FigureNameOf,
  type FigureNeed,
  type FigureQuery,
  type FigureScope,
  type FigureSpec,
  type FigureUnit,
  type Of,
  type QueryName,
  type QueryText,
  type UnitOf,
  drives,
  figureSpecs,
  queryNames,
  scopes,
  units,
  vocabulary,
} from "./vocabulary.js";
export { type Working, type WorkingStep, working } from "./working.js";
export { BareWriter, type NumberForm, type Writing, writeCount } from "./bare-writer.js";
export { Writer } from "./writer.js";
export { type WorkingTable, type WorkingWriting, toHtml, toMarkdown, toText, workingTable } from "./written.js";
