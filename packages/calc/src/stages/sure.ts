import { rational } from "../exact/index.js";
import type { Toothed } from "../gears/index.js";

/** Whether a stage says of its teeth what can be: one pitch, and a pressure angle that is cut. */
export const surePitch = ({ module, diametralPitch, pressureAngle = 0 }: Toothed): boolean =>
  (module === undefined || diametralPitch === undefined) && rational(pressureAngle).compare(45) <= 0;
