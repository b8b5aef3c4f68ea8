/**
 * What a drivetrain is: its types and shapes, ids and addresses.
 * @module
 */
export type { HoleCircle } from "./circle.js";
export { freeId, labelAt } from "./label.js";
export type { Part, Price } from "./part.js";
export { step } from "./pointer.js";
export { isRead, markRead } from "./read-mark.js";
export { type GearSet, type Unit, changesOf, finderFor, partedSets, sameSet, setOf, unitsOf } from "./sets.js";
export { shapes, stageShape } from "./shapes.js";
export type {
  Alternative,
  Battery,
  Branch,
  Build,
  Centre,
  Change,
  ChangeSet,
  Compare,
  Controller,
  Measurement,
  Mode,
  Motor,
  Mount,
  Output,
  Target,
  Wall,
  Wheel,
} from "./types.js";
export {
  type Finder,
  type Place,
  type Spot,
  branchesOf,
  finderIn,
  innerOf,
  oneIn,
  pathTo,
  placesOf,
  spotOf,
  stagesOf,
  valueAt,
} from "./walk.js";
