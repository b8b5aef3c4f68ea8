import { lengthOf } from "../exact/index.js";
import { centreOf, referenceCentre, type Form, type ToothPair, type Toothing } from "./form.js";
import { involute } from "./involute.js";
import type { Approximate } from "./measure.js";

/** A pair of gears at the centre distance where it runs. Floating point; angles in degrees, lengths in millimetres. */
export interface Operating {
  readonly operatingCentre: Approximate;
  readonly operatingPressureAngle: Approximate;
  /**
   * Transverse, for full involutes; zero or less where the teeth do not reach each other. Not known for a ring: whether its
   * teeth foul those of the gear inside is not looked at.
   */
  readonly contactRatio?: Approximate;
  /** A tip reaches past the other's base circle: undercut teeth have less contact than the contact ratio says. */
  readonly interference?: boolean;
  /** At the operating pitch circle, along it. Below zero: too tight to turn. */
  readonly circumferentialBacklash: Approximate;
  /** At the operating pitch circle, across the flanks. */
  readonly normalBacklash: Approximate;
}

/**
 * The pair with its centres opened, or nothing where they are closer than its base circles allow.
 *
 * Cosine of the operating pressure angle: a cos αt / aw. Backlash along the operating pitch circle is the pitch there less
 * the two tooth thicknesses, which comes to (aw / a) (thinning − 2 mt tan αn Σx) + 2 aw (inv αw − inv αt); across the
 * flanks, times cos αw cos βb. Contact ratio: the path of contact over the base pitch. All by ISO 21771-1, ring gears with
 * their teeth and the centre distance below zero.
 */
export function operatingAt(form: Form, opening: Approximate, thinning: ToothPair["thinning"]): Operating | undefined {
  const { driver, driven, cosHelix, normalAngle, transverseAngle } = form;
  const side = Math.sign(driver.teeth + driven.teeth);
  const module = form.module.toNumber() / cosHelix;
  const operatingCentre = centreOf(form).low.toNumber() + opening;
  const stretch = operatingCentre / referenceCentre(form).low.toNumber();
  const cosBase = Math.cos(transverseAngle);
  const cosine = cosBase / stretch;
  if (!(cosine > 0 && cosine <= 1)) return undefined;
  const angle = Math.acos(cosine);
  const shift = driver.shift.plus(driven.shift).toNumber();
  const thinner = lengthOf(thinning ?? 0, "thinning").toNumber();
  const circumferentialBacklash =
    stretch * (thinner - 2 * module * Math.tan(normalAngle) * shift) +
    2 * side * operatingCentre * (involute(angle) - involute(transverseAngle));
  // From where the line of action touches a base circle to where that gear's tips cross it.
  const reach = ({ teeth, tip }: Toothing): number =>
    Math.sqrt((tip.low.toNumber() / 2) ** 2 - ((module * teeth * cosBase) / 2) ** 2);
  const line = operatingCentre * Math.sin(angle);
  const reaches = [reach(driver), reach(driven)] as const;
  return {
    operatingCentre,
    operatingPressureAngle: (angle * 180) / Math.PI,
    circumferentialBacklash,
    normalBacklash: circumferentialBacklash * cosine * Math.sqrt(1 - (1 - cosHelix ** 2) * Math.cos(normalAngle) ** 2),
    ...(side > 0 && {
      contactRatio: (reaches[0] + reaches[1] - line) / (Math.PI * module * cosBase),
      interference: Math.max(...reaches) > line,
    }),
  };
}
