import { type Bounded, bounded, rational, ratioOf, type Rational } from "../exact/index.js";
import { angleOf, checkFinite, checkTeeth, depthOf, sizeOf } from "./check.js";
import { inverseInvolute, involute } from "./involute.js";
import { enclose, type Approximate } from "./measure.js";
import { moduleOf, pressureAngleOf } from "./pitch.js";
import { toothFault, type ToothFault, type ToothSection } from "./tooth.js";
import type { Numeric, Toothed } from "./toothed.js";

/** What geometry asks of a pair of gears. Lengths are text with a unit, or millimetres; shifts are in modules. */
export interface ToothPair extends Toothed {
  /** Teeth of the gear that turns the other one. */
  readonly driver: number;
  /** Teeth of the gear that is turned. */
  readonly driven: number;
  /** The driven gear is a ring with teeth inside. */
  readonly internal?: boolean;
  /** Only spur and helical gears have a spur centre distance. */
  readonly form?: "spur" | "helical" | "bevel" | "hypoid" | "crown";
  /** Of helical teeth at the reference cylinder, in degrees; the hand does not matter. */
  readonly helixAngle?: Numeric;
  /** Profile shift of the driver, in modules: 0.5 is half a module outwards. */
  readonly driverShift?: Numeric;
  /** Profile shift of the driven gear, in modules. */
  readonly drivenShift?: Numeric;
  /** Tip diameter of the driver as it was measured, a length with its unit. */
  readonly driverTip?: string;
  /** Tip diameter of the driven gear as it was measured, a length with its unit. */
  readonly drivenTip?: string;
  /** How much thinner than half a pitch the teeth of both gears together are made, at the reference circle. */
  readonly thinning?: string;
}

/**
 * Why geometry is not known: the axes cross, or a figure that it hangs on is missing, or there is no such thing. `no-centre`:
 * shifted so far inwards that no centre distance lets the flanks meet without play. `no-line-of-action`: at this centre
 * distance the base circles leave the flanks nowhere to meet.
 */
export type NotKnown =
  | "angle-gears"
  | "pitch-not-given"
  | "helix-not-given"
  | "shift-not-given"
  | "ring-too-small"
  | "no-centre"
  | "no-line-of-action"
  | ToothFault;

/** One gear as a tooth form. Ring gears count their teeth below zero, as ISO 21771-1 does. */
export interface Toothing {
  readonly teeth: number;
  /** In modules. */
  readonly shift: Rational;
  /** Tip and root diameters. */
  readonly tip: Bounded;
  readonly root: Bounded;
  /** Across the axis, where it comes to floating point. */
  readonly section: ToothSection;
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
  readonly thinning: Approximate;
  /** The theoretical centre distance. */
  readonly centre: Bounded;
}

type Basis = Pick<Form, "module" | "cosHelix">;

const radians = (degrees: Rational): Approximate => (degrees.toNumber() * Math.PI) / 180;

/** So many modules along the circles: exact for spur gears, by the transverse module for helical ones. */
export function transverse({ module, cosHelix }: Basis, modules: Rational): Bounded {
  const length = module.times(modules);
  return cosHelix === 1 ? bounded(length) : enclose(length.toNumber() / cosHelix);
}

/** The diameter that lies so many modules outside the reference circle; inside, for a ring. Below zero there is none. */
export function diameterAt(form: Basis, teeth: number, modules: Rational): Bounded {
  const outward = transverse(form, rational(teeth)).plus(form.module.times(modules).times(2));
  return teeth < 0 ? outward.negate() : outward;
}

/** Beyond this the transverse module loses the digits that are promised: such a gear is a screw. */
const mostHelix = 89;

const helixOf = ({ helixAngle = 0 }: Pick<ToothPair, "helixAngle">): Rational =>
  angleOf(helixAngle, -mostHelix, mostHelix, "helixAngle");

/**
 * So many modules along the reference circles of a pair's gears, in millimetres. Undefined where no pitch is given, or helical teeth
 * without their helix angle.
 *
 * @throws MeshwrightError `out-of-range`
 *
 * @example
 * modulesAcross({ module: "0.8" }, rational(10))!.toJSON(); // => { low: "8/1", high: "8/1" }
 */
export function modulesAcross(
  pair: Toothed & { readonly form?: ToothPair["form"] | undefined; readonly helixAngle?: Numeric | undefined },
  modules: Rational,
): Bounded | undefined {
  const module = moduleOf(pair);
  if (!module || (pair.form === "helical" && pair.helixAngle === undefined)) return undefined;
  const { helixAngle } = pair;
  const cosHelix = helixAngle === undefined ? 1 : Math.cos(radians(helixOf({ helixAngle })));
  return transverse({ module, cosHelix }, modules);
}

/** The figures of a pair, read and checked one by one. */
interface Figures {
  readonly module: Rational | undefined;
  readonly pressureAngle: Rational;
  readonly helixAngle: Rational;
  readonly shift: { readonly driver: Rational; readonly driven: Rational };
  readonly tip: { readonly driver: Rational | undefined; readonly driven: Rational | undefined };
  readonly thinning: Rational;
}

function figuresOf(pair: ToothPair): Figures {
  checkTeeth(pair.driver, "driver");
  checkTeeth(pair.driven, "driven");
  const shift = (which: "driver" | "driven"): Rational => {
    const [given, at] = [pair[`${which}Shift`] ?? 0, `${which}Shift`];
    return checkFinite(rational(given, { at }), at, "a shift");
  };
  const tip = (which: "driver" | "driven"): Rational | undefined => {
    const [given, at] = [pair[`${which}Tip`], `${which}Tip`];
    return given === undefined ? undefined : sizeOf(given, at);
  };
  return {
    module: moduleOf(pair),
    pressureAngle: pressureAngleOf(pair),
    helixAngle: helixOf(pair),
    shift: { driver: shift("driver"), driven: shift("driven") },
    tip: { driver: tip("driver"), driven: tip("driven") },
    thinning: depthOf(pair.thinning ?? 0, "thinning"),
  };
}

/**
 * Refuses a pair whose figures cannot be those of gears: counts that are no whole numbers from 1, a module, diametral pitch or
 * tip that is not above zero, a pressure angle not above 0 and up to 45 degrees, a helix angle beyond 89, a thinning below
 * zero. Whether two gears of such figures can run is another question: {@link meshOf} and `fits` answer it.
 *
 * @throws MeshwrightError `not-a-count`, `out-of-range`, and what cannot be read as a number or a length
 *
 * @example
 * checkPair({ driver: 0, driven: 62, module: "0.8" }); // throws not-a-count
 * checkPair({ driver: 15, driven: 62, module: 0 }); // throws out-of-range
 */
export function checkPair(pair: ToothPair): void {
  figuresOf(pair);
}

/**
 * The centre distance at which the teeth touch without backlash. Exact for spur gears whose shifts cancel; else the
 * pressure angle there follows from the involute: inv αw = inv αt + 2 tan αn (x1 + x2) / (z1 + z2), ISO 21771-1.
 */
function theoretical(form: Omit<Form, "centre">): Bounded | undefined {
  const { driver, driven, normalAngle, transverseAngle } = form;
  const reference = referenceCentre(form);
  const shift = driver.shift.plus(driven.shift).toNumber();
  if (!shift) return reference;
  const more = (2 * Math.tan(normalAngle) * shift) / (driver.teeth + driven.teeth);
  const angle = inverseInvolute(involute(transverseAngle) + more);
  return angle === undefined ? undefined : reference.times(enclose(Math.cos(transverseAngle) / Math.cos(angle)));
}

/**
 * What the geometry of a pair hangs on, or why it is not known. A tip diameter other than the full-depth one, with no
 * shift beside it, comes from a shift that nobody has told.
 *
 * @throws MeshwrightError as {@link checkPair}
 */
export function formOf(pair: ToothPair): Form | NotKnown {
  const figures = figuresOf(pair);
  const { form = "spur", internal, driver, driven } = pair;
  if (form !== "spur" && form !== "helical") return "angle-gears";
  if (internal && driven <= driver) return "ring-too-small";
  const { module } = figures;
  if (!module) return "pitch-not-given";
  if (form === "helical" && pair.helixAngle === undefined) return "helix-not-given";
  const cosHelix = Math.cos(radians(figures.helixAngle));
  const normalAngle = radians(figures.pressureAngle);
  const transverseAngle = Math.atan(Math.tan(normalAngle) / cosHelix);
  const basis = { module, cosHelix, normalAngle, transverseAngle };
  const thinning = figures.thinning.toNumber();
  const toothing = (which: "driver" | "driven", teeth: number): Toothing | undefined => {
    const given = figures.tip[which];
    const shift = figures.shift[which];
    const standard = diameterAt(basis, teeth, shift.plus(1));
    const tip = given === undefined ? standard : bounded(given);
    if (pair[`${which}Shift`] === undefined && !standard.contains(tip)) return undefined;
    const root = diameterAt(basis, teeth, shift.minus(ratioOf(5, 4)));
    const reference = (Math.abs(teeth) * module.toNumber()) / cosHelix / 2;
    const section: ToothSection = {
      teeth,
      base: reference * Math.cos(transverseAngle),
      tip: tip.low.toNumber() / 2,
      root: root.low.toNumber() / 2,
      // Nobody says which of the two is thinned: each by half.
      half: (Math.PI / 2 + 2 * shift.toNumber() * Math.tan(normalAngle)) / Math.abs(teeth) - thinning / (4 * reference),
      angle: transverseAngle,
    };
    return { teeth, shift, tip, root, section };
  };
  const first = toothing("driver", driver);
  const second = toothing("driven", internal ? -driven : driven);
  if (!first || !second) return "shift-not-given";
  const whole = { ...basis, thinning, driver: first, driven: second };
  const fault = toothFault(first.section) ?? toothFault(second.section);
  if (fault) return fault;
  const centre = theoretical(whole);
  return centre ? { ...whole, centre } : "no-centre";
}

/** Half the sum of the reference diameters (half their difference, for a ring): the centre distance without shift. */
export const referenceCentre = (form: Omit<Form, "centre">): Bounded =>
  transverse(form, ratioOf(Math.abs(form.driver.teeth + form.driven.teeth), 2));

/**
 * The theoretical centre distance in millimetres of a pair of spur or helical gears, or undefined where it is not known
 * (angle gears, no pitch, a shift that is not told, teeth that cannot be).
 *
 * @throws MeshwrightError as {@link checkPair}
 *
 * @example
 * centreDistance({ driver: 15, driven: 62, module: "0.8" })!.toJSON(); // => { low: "154/5", high: "154/5" }
 */
export function centreDistance(pair: ToothPair): Bounded | undefined {
  const form = formOf(pair);
  return typeof form === "string" ? undefined : form.centre;
}
