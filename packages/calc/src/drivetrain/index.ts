/**
 * What a drivetrain is: its types and shapes, ids and addresses.
 * @module
 */
export { type ChemistryName, chemistryNames } from "./chemistry.js";
export { isReserved } from "./ids.js";
export type { HoleCircle } from "./circle.js";
export { freeId, labelAt } from "./label.js";
export type { Part, Price } from "./part.js";
export { pointerTo } from "./pointer.js";
export { isRead, markRead } from "./read-mark.js";
export { type GearSet, changesOf, sameSet, setOf } from "./sets.js";
export { partKinds } from "./part-kinds.js";
export { shapes, stageShape } from "./shapes.js";
export { type SplitPlace, splitsOf } from "./splits.js";
export type {
  Alternative,
  Battery,
  Branch,
  Build,
  Change,
  ChangeSet,
  Compare,
  Controller,
  EarlierRevision,
  Measurement,
  Mode,
  Motor,
  Mount,
  Output,
  Reference,
  Revision,
  Split,
  Target,
  Wall,
  Wheel,
  WrittenChange,
} from "./types.js";
export { type Unit, finderFor, partedSets, partsSet, unitsOf } from "./units.js";
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
