/**
 * Speed, torque and electrical limits; the turning circle that an overdrive matches; which count gives what is wanted;
 * measurements against the build.
 * @module
 */
export { chemistries, packVolts, type Chemistry, type PackVolts } from "./battery.js";
export { electricalFindings } from "./limits.js";
export { measurementsOf, type Checked } from "./measurements.js";
export { travelPerPulse } from "./pulses.js";
export {
  solveCount,
  solveDiameter,
  solveSet,
  type CountSolution,
  type Neighbour,
  type Solution,
  type Wanted,
  type WantedMotion,
} from "./solve.js";
export {
  freeSpeed,
  speedAt,
  speedsOf,
  type Assumption,
  type Loaded,
  type SpeedQuestion,
  type Speeds,
  type WheelSpeed,
} from "./speed.js";
export { wheelTorque } from "./torque.js";
export { overdriveFor, turningRadius } from "./turning.js";
export { speedFigures, speedSymbols, speedUnits, type SpeedUnit } from "./units.js";
