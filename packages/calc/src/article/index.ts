/**
 * Which build, version and language an element of an article has, and what it says: without a page, so that the page, the
 * command that mends articles and the notebook say the same. A function an element, each with only what it needs.
 * @module
 */
export { askedFindings } from "./asked.js";
export type { Block, BlockRow, BlockTable } from "./block.js";
export { type SaidCard, sayCard } from "./card.js";
export {
  type Against,
  type ChangeGroup,
  type ChangeRow,
  type SaidChanges,
  type Column,
  sayChanges,
} from "./changes.js";
export { sayEffects, sayWheels } from "./effects.js";
export { standsForBlock } from "./block-content.js";
export { type Content, hasDigit, standsForValue } from "./content.js";
export { type SaidCount, type SaidCounts, type WantedName, sayCounts, wantedExample, wantedFigures } from "./counts.js";
export {
  type DrawnEnds,
  type SaidDrawing,
  drawnEnds,
  drawnLength,
  sayDrawing,
  stepsToDraw,
  verdictOf,
  wallText,
} from "./drawing.js";
export { readEmbedded } from "./embedded.js";
export { type MendedDraft, mendedDraft } from "./drive-draft.js";
export {
  type LinePiece,
  type SaidCell,
  type SaidLane,
  type SaidLine,
  type SaidLineTotal,
  type SaidShaft,
  type SaidStrand,
  sayDriveLine,
} from "./drive-line.js";
export { driveFindings } from "./drive-findings.js";
export { heldBuild, type Besides, type HeldBuild } from "./held-build.js";
export { holderFault } from "./holder-fault.js";
export { type SaidGauge, sayGauge } from "./gauge.js";
export { type MeasuredRow, type SaidMeasurements, sayMeasurements } from "./measurements.js";
export { type PairTotal, type SaidTotal, pairText, sayTotals } from "./pairs.js";
export { nameAt, type ValueNames } from "./names.js";
export { dateText, moneyText, needText, partName, partsOf, sumText } from "./part-text.js";
export { type BuyRow, type SaidOrder, type SaidPart, type SaidParts, sayOrder, sayParts } from "./parts.js";
export { misfits, placeName } from "./places.js";
export { type TypedQuantity, quantityText, sayQuantity, steppedQuantity, typedQuantity } from "./quantity.js";
export {
  type Reporter,
  type Speaker,
  type Speaking,
  type Unsaid,
  atFault,
  isUnsaid,
  outputsFor,
  speakerOf,
  writerFor,
} from "./speaker.js";
export { said, type Attributes } from "./said.js";
export { withShortcodes, withTags } from "./shortcodes.js";
export { type SaidSpeed, type SaidSpeeds, saySpeeds } from "./speeds.js";
export { sayStandings } from "./standings.js";
export { type SaidSummary, saySummary } from "./summary.js";
export { type SummaryRow, summaryRows } from "./summary-rows.js";
export { type Marking, type System, type SystemName, systems } from "./systems.js";
export { type SaidTrain, leadFrom, leadsFrom, sayTrain, stagesToChoose } from "./trains.js";
export {
  type Holders,
  type Inside,
  type Tree,
  holderIn,
  holderOf,
  holdersOf,
  inOrder,
  inherited,
  localeOf,
} from "./tree.js";
export { type AskedTurns, type SaidTurns, type TurnField, sayTurnCount } from "./turn-count.js";
export {
  type AskedGear,
  type SaidPitch,
  type SaidUnmarked,
  type UnmarkedField,
  sayUnmarked,
  unmarkedFields,
  usualWithin,
} from "./unmarked.js";
export { queryOf } from "./query.js";
export { sayTeeth, sayValue, setText } from "./value.js";
export { type SaidWorking, sayWorking } from "./working.js";
export { versionOf } from "../report/index.js";
