/**
 * What a build comes to: reductions as exact factors times named unknowns, directions, differences, standing in a range.
 * @module
 */
export { type Base, Comparison, type Scope, differenceOf } from "./comparison.js";
export { type Difference, changeOf, difference } from "./difference.js";
export type { Released } from "./drive.js";
export { Evaluation, evaluate } from "./evaluation.js";
export { type Group, OutputEvaluation, type Standing, type Step, type Turns, rolledBy } from "./output.js";
export { type Power, Quantity, pi, quantityOf } from "./quantity.js";
