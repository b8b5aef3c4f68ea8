/**
 * Geometry of gears from plain numbers: tooth forms, pairs in mesh, outlines; belts and chains; worms.
 * @module
 */
export { type Belt, type BeltChoice, type BeltQuestion, beltCentre, beltLength, beltOf } from "./belt.js";
export {
  type Form,
  type NotKnown,
  type ToothPair,
  type Toothing,
  centreDistance,
  centreOf,
  formOf,
  transverse,
} from "./form.js";
export { type Approximate, ceilOf, enclose, floorOf, rootOf } from "./measure.js";
export { type Gear, type Mesh, meshOf } from "./mesh.js";
export type { Operating } from "./operating.js";
export { type GearRadii, type GearShape, gearOutline, meshingPhase, outlinePoints, radiiOf } from "./outline.js";
export { type PitchComparison, comparePitch, moduleOf } from "./pitch.js";
export { type Recurrence, recurrenceOf } from "./recurrence.js";
export type { Numeric, Toothed } from "./toothed.js";
export { type WormDrive, type WormPair, wormOf } from "./worm.js";
