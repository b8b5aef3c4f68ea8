/**
 * Which gears, sets and wheels meet a target: exact, complete, in a stated order, stoppable.
 * @module
 */
export { type Among, askPairs, askTrains, type Asking, type NotAsked, type TrainAsking } from "./ask.js";
export { type Batch, type Order, tradeOffs } from "./batch.js";
export {
  type CountChoice,
  countsFor,
  type CountsFound,
  figureNow,
  type NotCounted,
  type WantedFigure,
} from "./counts.js";
export { changesAt } from "./edits.js";
export { FoundPair, GearPick } from "./found.js";
export { mostCombinations, mostHeld } from "./limit.js";
export { nearMisses } from "./near.js";
export { findPairs } from "./pairs.js";
export type { GearChoice, GearOrCount, PairQuestion, StageChoice, TrainQuestion, WantedOutput } from "./question.js";
export { type Setting, takenIn, takePair, takeTrain } from "./take.js";
export { FoundTrain, findTrains } from "./trains.js";
export type { WantedTotal, WantedPairTotal } from "./wanted.js";
