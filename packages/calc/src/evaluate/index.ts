/**
 * What a build comes to: reductions as exact factors times named unknowns, directions, differences, standing in a range.
 * @module
 */
export { Comparison, differenceOf, type Base, type Scope } from "./comparison.js";
export { changeOf, difference, type Difference } from "./difference.js";
export type { Released } from "./drive.js";
export { Evaluation, evaluate } from "./evaluation.js";
export { OutputEvaluation, rolledBy, type Group, type Standing, type Step, type Turns } from "./output.js";
export { pi, Quantity, quantityOf, type Power } from "./quantity.js";
