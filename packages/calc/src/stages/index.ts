/**
 * The kinds of stage, one file each: reader, Schema, notation, stage editor and documentation derive from them.
 * @module
 */
export type { BeltStage } from "./belt.js";
export { Effect, type Unknown } from "./effect.js";
export type { Kind, Say, Shape } from "./kind.js";
export { type Stage, kinds } from "./kinds.js";
export type { PairStage } from "./pair.js";
export type { PlanetaryStage } from "./planetary.js";
export { type PrintedReading, printedInterval } from "./printed.js";
export { productOf } from "./product.js";
export type { PublishedStage } from "./published.js";
export type { Position, SelectableStage } from "./selectable.js";
export type { StageBase, Turn } from "./stage.js";
export type { TrainStage } from "./train.js";
export type { WormStage } from "./worm.js";
