/**
 * Registers every element.
 * @module
 */
import { define } from "./shared/element/index.js";
import { makeWhole } from "./third/index.js";
import { MwBuild } from "./elements/build/index.js";
import { MwChangeTable } from "./elements/change-table/index.js";
import { MwCountFinder } from "./elements/count-finder/index.js";
import { MwDriveLine } from "./elements/drive-line/index.js";
import { MwEdits } from "./elements/edits/index.js";
import { MwOverdriveGauge } from "./elements/overdrive-gauge/index.js";
import { MwBenchCard } from "./elements/bench-card/index.js";
import { MwOrderList } from "./elements/order-list/index.js";
import { MwPairFinder } from "./elements/pair-finder/index.js";
import { MwPartsList } from "./elements/parts-list/index.js";
import { MwRatioSummary } from "./elements/ratio-summary/index.js";
import { MwStageEditor } from "./elements/stage-editor/index.js";
import { MwTeeth } from "./elements/teeth/index.js";
import { MwTrainFinder } from "./elements/train-finder/index.js";
import { MwTrainDrawing } from "./elements/train-drawing/index.js";
import { MwTurnCount } from "./elements/turn-count/index.js";
import { MwUnmarkedGear } from "./elements/unmarked-gear/index.js";
import { MwMeasurements } from "./elements/measurements/index.js";
import { MwQuantity } from "./elements/quantity/index.js";
import { MwValue } from "./elements/value/index.js";
import { MwWheelSpeed } from "./elements/wheel-speed/index.js";
import { MwWorking } from "./elements/working/index.js";

makeWhole();
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
  MwDriveLine,
  MwWheelSpeed,
  MwWorking,
  MwBenchCard,
  MwOrderList,
  MwPairFinder,
  MwCountFinder,
  MwTrainFinder,
  MwPartsList,
  MwTurnCount,
  MwUnmarkedGear,
  MwMeasurements,
  MwQuantity,
);
