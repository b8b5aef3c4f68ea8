import { type Bounded, bounded, lengthOf, rational, ratioOf, type Rational } from "../exact/index.js";
import type { Numeric, Toothed } from "./toothed.js";
import { inverseInvolute, involute } from "./involute.js";
import { enclose, type Approximate } from "./measure.js";
import { moduleOf, pressureAngleOf } from "./pitch.js";

/** What geometry asks of a pair of gears. Lengths are text with a unit, or millimetres; shifts are in modules. */
export interface ToothPair extends Toothed {
  readonly driver: number;
  readonly driven: number;
  /** The driven gear is a ring with teeth inside. */
  readonly internal?: boolean;
  /** Only spur and helical gears have a spur centre distance. */
  readonly form?: "spur" | "helical" | "bevel" | "hypoid" | "crown";
  readonly helixAngle?: Numeric;
  /** Profile shift, in modules. */
  readonly driverShift?: Numeric;
  readonly drivenShift?: Numeric;
  readonly driverTip?: string;
  readonly drivenTip?: string;
  /** How much thinner than half a pitch the teeth of both gears together are made, at the reference circle. */
  readonly thinning?: string;
}

/** Why geometry is not known: the axes cross, or a figure that it hangs on is missing. */
export type NotKnown = "angle-gears" | "pitch-not-given" | "helix-not-given" | "shift-not-given" | "ring-too-small";

/** One gear as a tooth form. Ring gears count their teeth below zero, as ISO 21771-1 does. */
export interface Toothing {
  readonly teeth: number;
  /** In modules. */
  readonly shift: Rational;
  /** Tip diameter. */
  readonly tip: Bounded;
}

/** A pair whose geometry is known. Lengths in millimetres, angles in radians. */
export interface Form {
  readonly module: Rational;
  readonly driver: Toothing;
  readonly driven: Toothing;
  /** Cosine of the helix angle: exactly 1 for spur gears, whose lengths stay fractions. */
  readonly cosHelix: Approximate;
  readonly normalAngle: Approximate;
  readonly transverseAngle: Approximate;
}

const radians = (degrees: Rational): Approximate => (degrees.toNumber() * Math.PI) / 180;

/** So many modules along the circles: exact for spur gears, by the transverse module for helical ones. */
export function transverse({ module, cosHelix }: Pick<Form, "module" | "cosHelix">, modules: Rational): Bounded {
  const length = module.times(modules);
  return cosHelix === 1 ? bounded(length) : enclose(length.toNumber() / cosHelix);
}

/** The diameter that lies so many modules outside the reference circle; inside, for a ring. */
export const diameterAt = (form: Pick<Form, "module" | "cosHelix">, teeth: number, modules: Rational): Bounded =>
  transverse(form, rational(teeth)).plus(form.module.times(modules).times(2)).abs();

/**
 * What the geometry of a pair hangs on, or why it is not known. A tip diameter other than the full-depth one, with no
 * shift beside it, comes from a shift that nobody has told.
 */
export function formOf(pair: ToothPair): Form | NotKnown {
  const { form = "spur", internal, helixAngle, driver, driven } = pair;
  if (form !== "spur" && form !== "helical") return "angle-gears";
  const module = moduleOf(pair);
  if (!module) return "pitch-not-given";
  if (form === "helical" && helixAngle === undefined) return "helix-not-given";
  if (internal && driven <= driver) return "ring-too-small";
  const cosHelix = Math.cos(radians(rational(helixAngle ?? 0)));
  const normalAngle = radians(pressureAngleOf(pair));
  const transverseAngle = Math.atan(Math.tan(normalAngle) / cosHelix);
  const base = { module, cosHelix, normalAngle, transverseAngle };
  const toothing = (which: "driver" | "driven", teeth: number): Toothing | undefined => {
    const shift = pair[`${which}Shift`];
    const given = pair[`${which}Tip`];
    const modules = rational(shift ?? 0);
    const standard = diameterAt(base, teeth, modules.plus(1));
    const tip = given === undefined ? standard : bounded(lengthOf(given, `${which}Tip`));
    return shift === undefined && !standard.contains(tip) ? undefined : { teeth, shift: modules, tip };
  };
  const first = toothing("driver", driver);
  const second = toothing("driven", internal ? -driven : driven);
  return first && second ? { ...base, driver: first, driven: second } : "shift-not-given";
}

/** Half the sum of the reference diameters (half their difference, for a ring): the centre distance without shift. */
export const referenceCentre = (form: Form): Bounded =>
  transverse(form, ratioOf(Math.abs(form.driver.teeth + form.driven.teeth), 2));

/**
 * The centre distance at which the teeth touch without backlash. Exact for spur gears whose shifts cancel; else the
 * pressure angle there follows from the involute: inv αw = inv αt + 2 tan αn (x1 + x2) / (z1 + z2), ISO 21771-1.
 */
export function centreOf(form: Form): Bounded {
  const { driver, driven, normalAngle, transverseAngle } = form;
  const reference = referenceCentre(form);
  const shift = driver.shift.plus(driven.shift).toNumber();
  if (!shift) return reference;
  const more = (2 * Math.tan(normalAngle) * shift) / (driver.teeth + driven.teeth);
  const angle = inverseInvolute(involute(transverseAngle) + more);
  return reference.times(enclose(Math.cos(transverseAngle) / Math.cos(angle)));
}

/**
 * The theoretical centre distance in millimetres of a pair of spur or helical gears, or undefined where it is not known
 * (angle gears, no pitch, a shift that is not told).
 *
 * @example
 * centreDistance({ driver: 15, driven: 62, module: "0.8" })!.toJSON(); // => { low: "154/5", high: "154/5" }
 */
export function centreDistance(pair: ToothPair): Bounded | undefined {
  const form = formOf(pair);
  return typeof form === "string" ? undefined : centreOf(form);
}
