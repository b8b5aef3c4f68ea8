import { lengthOf, rational, type Bounded, type Rational } from "../exact/index.js";
import { checkFinite } from "./check.js";
import { diameterAt, formOf, type Form, type NotKnown, type ToothPair, type Toothing } from "./form.js";
import { enclose } from "./measure.js";
import { operatingAt, type Operating } from "./operating.js";
import { recurrenceOf, type Recurrence } from "./recurrence.js";

/** One gear of a pair. Diameters in millimetres, exact for spur gears but for the base circle; a ring's teeth point inwards. */
export interface Gear {
  readonly reference: Bounded;
  readonly base: Bounded;
  readonly root: Bounded;
  readonly tip: Bounded;
  /** Information: cut by a rack, the teeth are hollowed at the root, unless shifted further. */
  readonly undercut: boolean;
  /** Information: undercut past the practical limit, five sixths of the theoretical count, where contact is lost to it (DIN 3960). */
  readonly shortened: boolean;
}

/** The geometry of a pair at its opening. What is not known is absent, and `notKnown` says why. */
export interface Mesh extends Recurrence, Partial<Operating> {
  readonly notKnown?: NotKnown;
  readonly module?: Rational;
  readonly driver?: Gear;
  readonly driven?: Gear;
  /** The theoretical centre distance in millimetres. */
  readonly centreDistance?: Bounded;
}

/** A rack of full depth undercuts fewer teeth than 2 (1 − x) cos β / sin² αt (ISO 21771-1). Rings are not cut by a rack. */
function gearOf(form: Form, { teeth, shift, tip, root }: Toothing): Gear {
  const reference = diameterAt(form, teeth, rational(0));
  const unshifted = (2 * form.cosHelix) / Math.sin(form.transverseAngle) ** 2;
  const least = unshifted * (1 - shift.toNumber());
  return {
    reference,
    base: reference.times(enclose(Math.cos(form.transverseAngle))),
    root,
    tip,
    undercut: teeth > 0 && teeth < least - 1e-9,
    shortened: teeth > 0 && teeth < least - unshifted / 6 - 1e-9,
  };
}

/**
 * The geometry of two gears in mesh, by ISO 21771-1: full-depth teeth (an addendum of one module, a dedendum of 1¼),
 * ideal but for the thinning that is given.
 *
 * @param opening how far from tight the axes are set: so much further apart than the theoretical centre distance, and for a
 *   ring so much closer together. Text with a unit, or millimetres; below zero it is tighter than the teeth allow.
 * @throws MeshwrightError `not-a-count`, `out-of-range`, and where a number or a length cannot be read
 *
 * @example
 * const mesh = meshOf({ driver: 15, driven: 62, module: "0.8" }, "0.05 mm");
 * [mesh.centreDistance!.low.toFraction(), mesh.hunting, mesh.normalBacklash!.toFixed(3)]; // => ["154/5", true, "0.034"]
 * meshOf({ driver: 14, driven: 50, module: 1, internal: true }, "0.05 mm").circumferentialBacklash!.toFixed(3); // => "0.036"
 * meshOf({ driver: 10, driven: 30, module: 1, driverShift: 1 }).notKnown; // => "tooth-pointed"
 */
export function meshOf(pair: ToothPair, opening: string | Rational = "0 mm"): Mesh {
  const form = formOf(pair);
  const open = checkFinite(typeof opening === "string" ? lengthOf(opening, "opening") : opening, "opening", "a length");
  const recurrence = recurrenceOf(pair.driver, pair.driven);
  if (typeof form === "string") return { ...recurrence, notKnown: form };
  const operating = operatingAt(form, open.toNumber());
  return {
    ...recurrence,
    module: form.module,
    driver: gearOf(form, form.driver),
    driven: gearOf(form, form.driven),
    centreDistance: form.centre,
    ...(operating ?? { notKnown: "no-line-of-action" }),
  };
}
