/**
 * Geometry of gears from plain numbers: tooth forms, pairs in mesh, outlines; belts and chains; worms.
 * @module
 */
export {
  type Belt,
  type BeltChoice,
  type BeltQuestion,
  beltCentre,
  beltLength,
  beltOf,
  pitchDiameter,
} from "./belt.js";
export { checkTeeth, depthOf, finiteOf, refuse, sizeOf } from "./check.js";
export {
  type Form,
  type NotKnown,
  type ToothPair,
  type Toothing,
  centreDistance,
  checkPair,
  formOf,
  modulesAcross,
  transverse,
} from "./form.js";
export { basePitch, type GaugedGear, jawShare, spanLength, spanTeeth, tipDiameter } from "./gauge.js";
export { type Approximate, ceilOf, enclose, floorOf, rootOf } from "./measure.js";
export { type Gear, type Mesh, meshOf } from "./mesh.js";
export { type Operating, widestOpening } from "./operating.js";
export { type GearRadii, type GearShape, gearOutline, meshingPhase, outlinePoints, radiiOf } from "./outline.js";
export { type PitchComparison, comparePitch, moduleOf, pressureAngleOf } from "./pitch.js";
export { type Recurrence, recurrenceOf } from "./recurrence.js";
export type { Numeric, Toothed } from "./toothed.js";
export { type WormBack, type WormDrive, type WormFriction, type WormPair, wormOf } from "./worm.js";
