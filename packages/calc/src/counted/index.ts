/**
 * Which teeth can be behind a printed or measured ratio; measurements against the build.
 * @module
 */
export { type CountRanges, toothPairsFor } from "./identify.js";
export { type Checked, measurementsOf } from "./measurements.js";
export { type Agreement, type TurnCount, agreement, measuredReduction } from "./turn-count.js";
