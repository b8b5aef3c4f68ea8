import { lengthOf, MeshwrightError, rational, type RationalInput } from "../exact/index.js";
import type { Toothed } from "./toothed.js";
import type { Approximate } from "./measure.js";
import { moduleOf, pressureAngleOf } from "./pitch.js";

/** A worm and its wheel. */
export interface WormPair extends Toothed {
  readonly starts: number;
  readonly teeth: number;
  /** Reference diameter of the worm. */
  readonly diameter?: string;
}

export interface WormDrive {
  /** At the worm's reference diameter, in degrees; absent where module or diameter are not given. */
  readonly leadAngle?: Approximate;
  /** Share of the power that reaches the wheel, from 0 to 1; absent where no friction is stated. */
  readonly efficiency?: Approximate;
  /** Always: friction falls when things shake, wear or warm up. Never trust a worm to hold a load that can hurt someone. */
  readonly caution: "holding-is-not-a-brake";
}

/**
 * Lead angle and efficiency of a worm. Unrolled, its thread is a slope that rises starts × module × π in one turn, over
 * diameter × π: tan γ = starts × module / diameter. A wedge at that slope with friction μ on flanks inclined by the
 * pressure angle pushes with efficiency tan γ / tan(γ + ρ), where tan ρ = μ / cos αn.
 *
 * @param friction coefficient on the flanks, stated by whoever knows it: none is assumed
 * @throws MeshwrightError `out-of-range` where the friction is below zero
 *
 * @example
 * const { leadAngle, efficiency } = wormOf({ starts: 1, teeth: 30, module: 1, diameter: "16 mm" }, "0.08");
 * [leadAngle?.toFixed(2), efficiency?.toFixed(2)]; // => ["3.58", "0.42"]
 */
export function wormOf(worm: WormPair, friction?: RationalInput): WormDrive {
  const caution = "holding-is-not-a-brake";
  const module = moduleOf(worm);
  if (!module || worm.diameter === undefined) return { caution };
  const slope = module.times(worm.starts).over(lengthOf(worm.diameter, "diameter")).toNumber();
  const lead = Math.atan(slope);
  const leadAngle = (lead * 180) / Math.PI;
  if (friction === undefined) return { leadAngle, caution };
  const coefficient = rational(friction, { at: "friction" });
  if (coefficient.sign < 0)
    throw new MeshwrightError("out-of-range", "friction", `Friction ${friction}; expected 0 or more.`);
  const angle = Math.atan(coefficient.toNumber() / Math.cos((pressureAngleOf(worm).toNumber() * Math.PI) / 180));
  return {
    leadAngle,
    efficiency: slope / Math.tan(lead + angle),
    caution,
  };
}
