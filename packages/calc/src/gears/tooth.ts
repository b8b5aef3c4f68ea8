import { angleAt, involute } from "./involute.js";
import type { Approximate } from "./measure.js";

/** One gear across its axis, as far as its teeth hang on it. Radii in millimetres, angles in radians. */
export interface ToothSection {
  /** Below zero for a ring. */
  readonly teeth: number;
  readonly base: Approximate;
  readonly tip: Approximate;
  readonly root: Approximate;
  /** Half the angle of a tooth at the reference circle. */
  readonly half: Approximate;
  /** The pressure angle at the reference circle. */
  readonly angle: Approximate;
}

/** Why there is no such tooth: it comes to a point below its tip circle, or its circles leave nothing of it. */
export type ToothFault = "tooth-pointed" | "tooth-missing";

/** Half the angle of a tooth where it meets a circle: between involutes it narrows outwards, in a ring inwards. */
export function halfAt({ teeth, base, half, angle }: ToothSection, radius: Approximate): Approximate {
  const lean = involute(angle) - involute(angleAt(base, radius));
  return half + Math.sign(teeth) * lean;
}

/**
 * Why a gear's teeth cannot be, or nothing: there must be a flank between root and tip (outside the base circle, for it is an
 * involute of it), a tooth at the tip and a space at the root.
 */
export function toothFault(section: ToothSection): ToothFault | undefined {
  const { teeth, base, tip, root } = section;
  const inside = teeth > 0 ? root : tip;
  const outside = teeth > 0 ? tip : root;
  if (!(inside > 0 && outside > inside && outside > base)) return "tooth-missing";
  if (!(halfAt(section, tip) > 0)) return "tooth-pointed";
  const space = Math.PI / Math.abs(teeth) - halfAt(section, Math.max(root, base));
  return space > 0 ? undefined : "tooth-missing";
}
