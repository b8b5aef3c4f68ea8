import type { Approximate } from "./measure.js";

/** The involute function of an angle in radians: inv α = tan α − α (ISO 21771-1). */
export const involute = (angle: Approximate): Approximate => Math.tan(angle) - angle;

/** The angle, from 0 to a right one, whose involute function is `value`; undefined below zero, where there is none. */
export function inverseInvolute(value: number): Approximate | undefined {
  if (!(value >= 0)) return undefined;
  // With t = tan α: t − atan t = value. As tan α − α > α³ / 3, one step of Newton's method from there lands beyond the
  // root of a convex function, and falls to it.
  let tangent = Math.tan(Math.min(Math.cbrt(3 * value), 1.5));
  for (let n = 0; n < 60 && tangent; n++) {
    const next = tangent + (value - (tangent - Math.atan(tangent))) * (1 + 1 / tangent ** 2);
    if (!(next > 0) || Math.abs(next - tangent) <= 1e-16 * tangent) break;
    tangent = next;
  }
  return Math.atan(tangent);
}

/** The angle at a radius of an involute: cos α = base radius / radius; zero inside the base circle. */
export const angleAt = (base: number, radius: number): Approximate => (radius > base ? Math.acos(base / radius) : 0);
