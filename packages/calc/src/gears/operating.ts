import { referenceCentre, type Form, type Toothing } from "./form.js";
import { involute } from "./involute.js";
import type { Approximate } from "./measure.js";
import { halfAt } from "./tooth.js";

/** A pair of gears at the centre distance where it runs. Floating point; angles in degrees, lengths in millimetres. */
export interface Operating {
  readonly operatingCentre: Approximate;
  readonly operatingPressureAngle: Approximate;
  /** Transverse, for full involutes; zero or less where the teeth do not reach each other. */
  readonly contactRatio: Approximate;
  /** A tip reaches past the other's base circle: undercut teeth have less contact than the contact ratio says. */
  readonly interference: boolean;
  /** Of a ring: the gear's teeth run into the ring's where both leave each other, so that neither can turn. */
  readonly fouls?: boolean;
  /** Play at the operating pitch circle, along it. Below zero: too tight to turn. */
  readonly circumferentialBacklash: Approximate;
  /** The same play straight across the flanks. */
  readonly normalBacklash: Approximate;
}

/**
 * Whether the corners of a gear's tips run into those of a ring's, even in the middle of their play. Both corners lie on one
 * spot where the tip circles cross; there the ring's must not be the one further out. It is fouled where the ring has only
 * a few teeth more.
 */
function fouls({ driver, driven }: Form, centre: Approximate): boolean {
  const [own, ring] = [driver.section.tip, driven.section.tip];
  const difference = ring ** 2 - own ** 2;
  const cosines = [
    (difference - centre ** 2) / (2 * centre * own),
    (difference + centre ** 2) / (2 * centre * ring),
  ] as const;
  if (cosines.some((cosine) => cosine >= 1)) return false;
  if (cosines.some((cosine) => cosine <= -1)) return true;
  const [crossing, ringCrossing] = cosines.map(Math.acos) as [number, number];
  const turned = (crossing - halfAt(driver.section, own)) * Math.abs(driver.teeth / driven.teeth);
  const corner = turned + Math.PI / -driven.teeth - halfAt(driven.section, ring);
  return corner < ringCrossing;
}

/**
 * The pair with its centres opened, or nothing where the base circles leave its flanks nowhere to meet.
 *
 * An opening moves the gears away from tight: apart, and together for a ring. Cosine of the operating pressure angle:
 * a cos αt / aw. Play along the operating pitch circle is the pitch there less the two tooth thicknesses, which comes to
 * (aw / a) (thinning − 2 mt tan αn Σx) + 2 aw (inv αw − inv αt); across the flanks, times cos αw cos βb. For small openings it
 * is 2 opening tan αw. Contact ratio: the path of contact over the base pitch. All by ISO 21771-1, ring gears with their teeth
 * and the centre distance below zero.
 */
export function operatingAt(form: Form, opening: Approximate): Operating | undefined {
  const { driver, driven, cosHelix, normalAngle, transverseAngle, thinning } = form;
  const side = Math.sign(driven.teeth);
  const module = form.module.toNumber() / cosHelix;
  const operatingCentre = form.centre.low.toNumber() + side * opening;
  const stretch = operatingCentre / referenceCentre(form).low.toNumber();
  const cosBase = Math.cos(transverseAngle);
  const cosine = cosBase / stretch;
  if (!(cosine > 0 && cosine <= 1)) return undefined;
  const angle = Math.acos(cosine);
  const shift = driver.shift.plus(driven.shift).toNumber();
  const circumferentialBacklash =
    stretch * (thinning - 2 * module * Math.tan(normalAngle) * shift) +
    2 * side * operatingCentre * (involute(angle) - involute(transverseAngle));
  // From where the line of action touches a base circle to where that gear's tips cross it; a ring's flanks begin there.
  const reach = ({ section: { tip, base } }: Toothing): number =>
    tip > base ? Math.sqrt((tip - base) * (tip + base)) : 0;
  const line = operatingCentre * Math.sin(angle);
  const [own, other] = [reach(driver), reach(driven)];
  return {
    operatingCentre,
    operatingPressureAngle: (angle * 180) / Math.PI,
    circumferentialBacklash,
    normalBacklash: circumferentialBacklash * cosine * Math.sqrt(1 - (1 - cosHelix ** 2) * Math.cos(normalAngle) ** 2),
    contactRatio: (own + side * (other - line)) / (Math.PI * module * cosBase),
    interference: side > 0 ? Math.max(own, other) > line : other < line,
    ...(side < 0 && { fouls: fouls(form, operatingCentre) }),
  };
}

/**
 * The widest opening in millimetres, up to one that is too wide, at which so many pairs of teeth touch on average; nothing where
 * too few do even without play.
 */
export function widestOpening(form: Form, least: number, opening: Approximate): Approximate | undefined {
  const touches = (open: number): boolean => (operatingAt(form, open)?.contactRatio ?? -Infinity) >= least;
  let [low, high] = [0, opening];
  if (!touches(low)) return undefined;
  for (let n = 0; n < 50; n++) {
    const middle = (low + high) / 2;
    if (touches(middle)) low = middle;
    else high = middle;
  }
  return low;
}
