/**
 * Registers every element.
 * @module
 */
import { fitFigures, motionFigures } from "@meshwright/calc/report";
import { addFigures, define } from "./base/index.js";
import { MwBuild } from "./build/index.js";
import { MwChangeTable } from "./change-table/index.js";
import { MwEdits } from "./edits/index.js";
import { MwOverdriveGauge } from "./overdrive-gauge/index.js";
import { MwBenchCard } from "./bench-card/index.js";
import { MwOrderList } from "./order-list/index.js";
import { MwPairFinder } from "./pair-finder/index.js";
import { MwPartsList } from "./parts-list/index.js";
import { MwRatioSummary } from "./ratio-summary/index.js";
import { MwStageEditor } from "./stage-editor/index.js";
import { MwTeeth } from "./teeth/index.js";
import { MwTrainDrawing } from "./train-drawing/index.js";
import { MwValue } from "./value/index.js";
import { MwWheelSpeed } from "./wheel-speed/index.js";
import { MwWorking } from "./working/index.js";

addFigures({ ...fitFigures, ...motionFigures });
define(
  MwBuild,
  MwTeeth,
  MwValue,
  MwRatioSummary,
  MwOverdriveGauge,
  MwEdits,
  MwStageEditor,
  MwChangeTable,
  MwTrainDrawing,
  MwWheelSpeed,
  MwWorking,
  MwBenchCard,
  MwOrderList,
  MwPairFinder,
  MwPartsList,
);
