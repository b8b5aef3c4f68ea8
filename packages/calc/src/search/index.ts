/**
 * Which gears, sets and wheels meet a target: exact, complete, in a stated order, stoppable.
 * @module
 */
export { type Batch, type Cost, type Order, tradeOffs } from "./batch.js";
export { type Adapter, type LooseGear, type PairFit, type PairFits, fitBy } from "./fit.js";
export { type FoundPair, type PairQuestion, findPairs, nearMisses } from "./pairs.js";
export type { Candidate, StageChoice, TrainQuestion, WantedOutput, WheelCandidate } from "./question.js";
export { FoundTrain, findTrains } from "./trains.js";
export type { Wanted as WantedTotal } from "./wanted.js";
