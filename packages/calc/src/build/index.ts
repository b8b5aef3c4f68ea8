/**
 * What a build is: its types and shapes, ids and addresses, checks, and changes.
 * @module
 */
export { applyChanges } from "./changes.js";
export { checkBuild } from "./check.js";
export { addressPattern, errorOf, Reader, step } from "./read.js";
export { longestText, scalars, type Scalar } from "./scalars.js";
export { shapes, stageShape } from "./shapes.js";
export type * from "./part.js";
export type * from "./types.js";
export {
  branchesOf,
  finderIn,
  innerOf,
  pathTo,
  placesOf,
  spotOf,
  stagesOf,
  valueAt,
  type Place,
  type Spot,
} from "./walk.js";
