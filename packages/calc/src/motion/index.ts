/**
 * Speed, torque and electrical limits; the turning circle that an overdrive matches; which count gives what is wanted.
 * @module
 */
export { type Chemistry, type PackVolts, chemistries, packVolts } from "./battery.js";
export { electricalFindings } from "./limits.js";
export { travelPerPulse } from "./pulses.js";
export {
  type CountSolution,
  type Neighbour,
  type Solution,
  type Wanted,
  type WantedMotion,
  solveCount,
  solveDiameter,
  solveSet,
} from "./solve.js";
export {
  type Assumption,
  type Loaded,
  type SpeedQuestion,
  type Speeds,
  type WheelSpeed,
  freeSpeed,
  speedAt,
  speedsOf,
} from "./speed.js";
export { wheelTorque } from "./torque.js";
export { overdriveFor, turningRadius } from "./turning.js";
export { type SpeedUnit, speedFigures, speedSymbols, speedUnits } from "./units.js";
