import { stageShapes, type PairStage, type Stage } from "../stages/index.js";

/** Whether a stage is two gears in mesh: only those can have one of them inside a ring. */
export const isToothPair = (stage: Stage): stage is PairStage => "internal" in stageShapes[stage.kind];
