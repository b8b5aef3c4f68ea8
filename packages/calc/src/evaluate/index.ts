/**
 * What a build comes to: reductions as exact factors times named unknowns, locked and straight on; directions, differences,
 * standing in a range.
 * @module
 */
export { type OutputChange, changeOf, difference } from "./change.js";
export { Comparison, type ComparisonBase, type Scope, differenceOf } from "./comparison.js";
export { detailsOf } from "./details.js";
export type { Released } from "./drive.js";
export { evaluate } from "./evaluate.js";
export { Evaluation, totalsOf } from "./evaluation.js";
export { OutputEvaluation, type Standing } from "./output.js";
export { type Power, Quantity, pi, quantityOf } from "./quantity.js";
export type { TyreAssumption } from "./splitting.js";
export type { Group, Step } from "./steps.js";
export type { Turns } from "./turns.js";
export { rolledBy } from "./wheel.js";
