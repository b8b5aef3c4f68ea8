/**
 * The kinds of stage, one file each, facet by facet: reader, Schema, notation, stage editor, order and documentation
 * derive from them. A facet's table is all that its users load.
 * @module
 */
export type { BeltStage } from "./belt.js";
export { checks } from "./checks.js";
export { directions } from "./directions.js";
export { displays } from "./displays.js";
export { drawings } from "./drawings.js";
export { Effect, type Unknown } from "./effect.js";
export { effects } from "./effects.js";
export type {
  Drawing,
  Joint,
  Notation,
  PartForm,
  PartKind,
  Piece,
  PieceNeed,
  Say,
  Shape,
  StageNeeds,
  Surroundings,
} from "./facets.js";
export {
  errorOf,
  findingOf,
  findingWords,
  sentenceOf,
  type Finding,
  type FindingCause,
  type FindingCode,
  type FindingTerm,
  type FindingValue,
  type FindingValues,
  type FindingWords,
} from "./finding.js";
export { inners } from "./inners.js";
export type { Stage, StageKind, StageOf } from "./kinds.js";
export type { MeasuredStage } from "./measured.js";
export { needed } from "./needed.js";
export { notations } from "./notations.js";
export type { PairStage } from "./pair.js";
export type { PlanetaryStage } from "./planetary.js";
export { plainRatio, printedInterval, type PrintedReading } from "./printed-interval.js";
export { productOf } from "./product.js";
export type { PrintedStage } from "./printed.js";
export { samples } from "./samples.js";
export type { SelectableStage } from "./selectable.js";
export { stageShapes } from "./shapes.js";
export type { Position, StageBase, Turn } from "./stage.js";
export type { TrainStage } from "./train.js";
export { checkPitch } from "./teeth.js";
export { surePitch } from "./sure.js";
export { sures } from "./sures.js";
export { unknowns } from "./unknowns.js";
export type { WormStage } from "./worm.js";
