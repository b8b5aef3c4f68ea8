/**
 * Which gears, sets and wheels meet a target: exact, complete, in a stated order, stoppable.
 * @module
 */
export { tradeOffs, type Batch, type Cost, type Order } from "./batch.js";
export { fitBy, type Adapter, type LooseGear, type PairFit, type PairFits } from "./fit.js";
export { findPairs, nearMisses, type FoundPair, type PairQuestion } from "./pairs.js";
export type { Candidate, StageChoice, TrainQuestion, WantedOutput, WheelCandidate } from "./question.js";
export { findTrains, FoundTrain } from "./trains.js";
export type { Wanted as WantedTotal } from "./wanted.js";
