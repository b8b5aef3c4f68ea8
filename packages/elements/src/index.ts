/**
 * Every element's class, none of them registered: `define(MwTeeth)` does that, `@meshwright/elements/all` for all of them.
 * @module
 */
export { define, makeWhole } from "./third/index.js";
export { MeshwrightElement } from "./shared/element/index.js";
export { DrawnElement } from "./shared/drawn/index.js";
export { MwBuild } from "./elements/build/index.js";
export { MwChangeTable } from "./elements/change-table/index.js";
export { MwCountFinder } from "./elements/count-finder/index.js";
export { MwDriveLine } from "./elements/drive-line/index.js";
export { MwEdits } from "./elements/edits/index.js";
export { MwOverdriveGauge } from "./elements/overdrive-gauge/index.js";
export { MwRatioSummary } from "./elements/ratio-summary/index.js";
export { MwStageEditor } from "./elements/stage-editor/index.js";
export { MwTeeth } from "./elements/teeth/index.js";
export { MwTrainFinder } from "./elements/train-finder/index.js";
export { MwTrainDrawing } from "./elements/train-drawing/index.js";
export { MwValue } from "./elements/value/index.js";
export { MwWheelSpeed } from "./elements/wheel-speed/index.js";
export { MwWorking } from "./elements/working/index.js";
export { addWords, offerWords } from "./shared/words/index.js";
export { MwBenchCard } from "./elements/bench-card/index.js";
export { MwOrderList } from "./elements/order-list/index.js";
export { MwTurnCount } from "./elements/turn-count/index.js";
export { MwUnmarkedGear } from "./elements/unmarked-gear/index.js";
export { MwMeasurements } from "./elements/measurements/index.js";
export { MwQuantity } from "./elements/quantity/index.js";
export { MwPairFinder } from "./elements/pair-finder/index.js";
export { MwPartsList } from "./elements/parts-list/index.js";
export { watchFindings } from "./shared/findings/index.js";
export type { PageFinding } from "./shared/element/index.js";
