/**
 * Every element's class, none of them registered: `define(MwTeeth)` does that, `@meshwright/elements/all` for all of them.
 * @module
 */
export { define, MeshwrightElement } from "./base/index.js";
export { MwBuild } from "./build/index.js";
export { MwChangeTable } from "./change-table/index.js";
export { MwEdits } from "./edits/index.js";
export { MwOverdriveGauge } from "./overdrive-gauge/index.js";
export { MwRatioSummary } from "./ratio-summary/index.js";
export { MwStageEditor } from "./stage-editor/index.js";
export { MwTeeth } from "./teeth/index.js";
export { MwTrainDrawing } from "./train-drawing/index.js";
export { MwValue } from "./value/index.js";
export { MwWheelSpeed } from "./wheel-speed/index.js";
export { MwWorking } from "./working/index.js";
export { addWords, offerWords } from "./words/index.js";
export { MwBenchCard } from "./bench-card/index.js";
export { MwOrderList } from "./order-list/index.js";
export { MwPairFinder } from "./pair-finder/index.js";
export { MwPartsList } from "./parts-list/index.js";
