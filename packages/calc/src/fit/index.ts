/**
 * Whether a pair fits its mount, shaft, hub and walls: one answer with its reasons.
 * @module
 */
export { type Sleeve, boreReasons, shaftsOf } from "./bore.js";
export { type Fit, type FitMount, type FitQuestion, type GearBody, fits } from "./fits.js";
export { type AdapterPlate, type HoleCircle, circleDiameter, hubReasons } from "./hub.js";
export { type CentreMount, type Limit, type PairPitch, countedIn, holesOf, limitsOf } from "./limits.js";
export { toAxes, withKnownShafts } from "./measured.js";
export { type CentreRange, rangesOf, tightest, toothSumsFor } from "./ranges.js";
export { type AxialBody, reachReasons } from "./reach.js";
export type { Reason, ReasonCode } from "./reason.js";
export { type Shortfall, shortfall } from "./shortfall.js";
