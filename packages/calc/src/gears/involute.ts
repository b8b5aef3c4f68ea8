import type { Approximate } from "./measure.js";

/** The involute function of an angle in radians: inv α = tan α − α (ISO 21771-1). */
export const involute = (angle: Approximate): Approximate => Math.tan(angle) - angle;

/** The angle whose involute function is `value`; NaN below zero, where there is none. */
export function inverseInvolute(value: number): Approximate {
  if (value <= 0) return value && NaN;
  // tan α − α > α³ / 3, so Newton's method starts above the root of a convex function and falls to it.
  let angle = Math.min(Math.cbrt(3 * value), 1.5);
  for (let n = 0; n < 20; n++) angle -= (involute(angle) - value) / Math.tan(angle) ** 2;
  return angle;
}
