import { rational, ratioOf, type Rational } from "../exact/index.js";
import { angleOf, checkAbove, refuse } from "./check.js";
import type { Toothed } from "./toothed.js";

/**
 * The module in millimetres, exactly, or undefined where no pitch is given. A diametral pitch counts teeth for each inch of
 * reference diameter, so its module is 25.4 mm divided by it (ISO 54, ISO 21771-1).
 *
 * @throws MeshwrightError `out-of-range` where it is not above zero
 *
 * @example
 * moduleOf({ diametralPitch: 32 })?.toFraction(); // => "127/160"
 */
export function moduleOf({ module, diametralPitch }: Toothed): Rational | undefined {
  if (module !== undefined) return checkAbove(rational(module, { at: "module" }), "module");
  if (diametralPitch === undefined) return undefined;
  return ratioOf(127, 5).over(checkAbove(rational(diametralPitch, { at: "diametralPitch" }), "diametralPitch"));
}

/**
 * The pressure angle in degrees; 20 where none is given. Beyond 45 degrees a rack's teeth come to a point before they are as
 * high as they must be to run.
 *
 * @throws MeshwrightError `out-of-range` where it is not above 0 and up to 45
 */
export function pressureAngleOf({ pressureAngle = 20 }: Toothed): Rational {
  const angle = angleOf(pressureAngle, 0, 45, "pressureAngle");
  return angle.sign ? angle : refuse("out-of-range", "pressureAngle", 0, "more than 0 and up to 45 degrees");
}

/** How near two pitches are to each other. */
export interface PitchComparison {
  /** `near`: equal pressure angles and modules less than 2.5 % apart: easily mistaken, not to be meshed. */
  readonly pitch: "same" | "near" | "different";
  /** How much coarser the first is: its module over the other's, minus one. */
  readonly coarser: Rational;
  readonly sameAngle: boolean;
}

/**
 * Compares two pitches, module and diametral pitch alike, exactly. Undefined where either is not given.
 *
 * @throws MeshwrightError `out-of-range`
 *
 * @example
 * const { pitch, coarser } = comparePitch({ module: "0.8" }, { diametralPitch: 32 })!;
 * [pitch, coarser.toFraction()]; // => ["near", "1/127"]
 */
export function comparePitch(a: Toothed, b: Toothed): PitchComparison | undefined {
  const modules = [moduleOf(a), moduleOf(b)] as const;
  if (!modules[0] || !modules[1]) return undefined;
  const coarser = modules[0].over(modules[1]).minus(1);
  const sameAngle = pressureAngleOf(a).equals(pressureAngleOf(b));
  const near = coarser.abs().compare(ratioOf(1, 40)) < 0;
  return { pitch: !sameAngle || !near ? "different" : coarser.sign ? "near" : "same", coarser, sameAngle };
}
