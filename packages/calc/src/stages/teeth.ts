import type { MeshwrightError } from "../exact/index.js";
import { rational } from "../exact/index.js";
import { meshOf, type Numeric, type ToothPair, type Toothed } from "../gears/index.js";
import type { Say } from "./facets.js";

/** Degrees beyond which no gear is cut, and beyond which a tooth no longer winds round its gear. */
const [mostPressure, mostHelix] = [45, 89];

function checkAngle(angle: Numeric | undefined, from: number, to: number, field: string, say: Say): void {
  if (angle === undefined) return;
  const degrees = rational(angle);
  if (degrees.compare(from) < 0 || degrees.compare(to) > 0)
    say("error", "angle-out-of-range", field, { found: angle, from, to });
}

/** Tells where a stage says of its teeth what cannot be. */
export function checkPitch({ module, diametralPitch, pressureAngle }: Toothed, say: Say): void {
  if (module !== undefined && diametralPitch !== undefined) say("error", "pitch-twice", "diametralPitch");
  checkAngle(pressureAngle, 0, mostPressure, "pressureAngle", say);
}

/** Tells where a pair says of its teeth what cannot be; what geometry refuses altogether is told in its own words. */
export function checkTeeth(pair: ToothPair, say: Say): void {
  checkPitch(pair, say);
  checkAngle(pair.helixAngle, -mostHelix, mostHelix, "helixAngle", say);
  const { driverShift, drivenShift, driverTip, drivenTip, thinning } = pair;
  // Teeth of a plain pitch are defined for any count: only where more is said need geometry be asked.
  if ((driverShift ?? drivenShift ?? driverTip ?? drivenTip ?? thinning) === undefined) return;
  const first = (["driverShift", "drivenShift", "driverTip", "drivenTip"] as const).find(
    (one) => pair[one] !== undefined,
  );
  let field: string | undefined;
  try {
    if (Object.values(meshOf(pair)).some(Number.isNaN)) field = first;
  } catch (error) {
    const { at } = error as MeshwrightError;
    field = Object.hasOwn(pair, at) ? at : (first ?? "thinning");
  }
  if (field) say("error", "teeth-refused", field);
}
