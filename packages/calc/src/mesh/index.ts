/**
 * Geometry of a tooth pair, of a belt, of a worm; whether a pair fits the mount, the shaft, the hub; which counts can be
 * behind a ratio.
 * @module
 */
export { beltCentre, beltLength, beltOf, type Belt, type BeltChoice, type BeltQuestion } from "./belt.js";
export { boreReasons, type Sleeve } from "./bore.js";
export { fits, type Fit, type FitMount, type FitQuestion, type GearBody } from "./fits.js";
export { centreDistance, type NotKnown, type ToothPair } from "./form.js";
export { hubReasons, type AdapterPlate, type HoleCircle } from "./hub.js";
export { toothPairsFor, type CountRanges } from "./identify.js";
export { layoutOf, type Layout, type PlacedMount, type PlacedWall, type PlacedWheel, type Span } from "./layout.js";
export { agreement, measuredReduction, type Agreement, type TurnCount } from "./measured.js";
export { ceilOf, enclose, floorOf, rootOf, type Approximate } from "./measure.js";
export { meshOf, type Gear, type Mesh } from "./mesh.js";
export { limitsOf, toothSumsFor, type CentreMount, type Limit, type PairPitch } from "./mount.js";
export type { Operating } from "./operating.js";
export { gearOutline, meshingPhase, outlinePoints, radiiOf, type GearRadii, type GearShape } from "./outline.js";
export { comparePitch, moduleOf, type PitchComparison } from "./pitch.js";
export { reachReasons, type AxialBody } from "./reach.js";
export { reasonText, reasonWords, type ReasonWords } from "./reason-text.js";
export type { Reason, ReasonCode } from "./reason.js";
export { recurrenceOf, type Recurrence } from "./recurrence.js";
export { wormOf, type WormDrive } from "./worm.js";
