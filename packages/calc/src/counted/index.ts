/**
 * Which teeth can be behind a printed or measured ratio; what a gear without a mark can be; measurements against the build.
 * @module
 */
export { type BoxCount, type CountedBox, countedBox } from "./box.js";
export type { Gauge, MeasuredLength, PitchCandidate, UnmarkedGear } from "./gauges.js";
export { type CountRanges, toothPairsFor } from "./identify.js";
export { type Checked, countsBehind, measurementsOf } from "./measurements.js";
export { usualPitches } from "./pitches.js";
export type { Blur, Settling } from "./settle.js";
export { type Agreement, type TurnCount, type CountedTurns, agreement, measuredReduction } from "./turn-count.js";
export { type Excluded, type Unmarked, unmarkedGear } from "./unmarked.js";
