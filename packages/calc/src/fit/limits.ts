import type { Mount } from "../drivetrain/index.js";
import { bounded, type Bounded, lengthOf, rational, ratioOf, type Rational } from "../exact/index.js";
import {
  checkTeeth,
  depthOf,
  finiteOf,
  moduleOf,
  modulesAcross,
  type Numeric,
  refuse,
  rootOf,
  sizeOf,
  type Toothed,
  type ToothPair,
} from "../gears/index.js";
import { toAxes } from "./measured.js";

/**
 * How a centre distance can be set: the fields of a build's mount. All limits that are given hold at once. The pitch is the one
 * that the known pair and the tooth sums are counted in, where it is not that of the pair looked at.
 */
export type CentreMount = Toothed &
  Pick<
    Mount,
    | "from"
    | "to"
    | "measured"
    | "shaft"
    | "drivenShaft"
    | "knownPair"
    | "closer"
    | "farther"
    | "toothSum"
    | "pivot"
    | "holes"
    | "opening"
    | "openingTo"
  >;

/** The teeth of a pair, and whether one of it is a ring: then differences of teeth take the place of sums. */
export type PairPitch = Toothed & {
  readonly internal?: boolean | undefined;
  readonly form?: ToothPair["form"] | undefined;
  readonly helixAngle?: Numeric | undefined;
};

/** A mount with the pitch that its known pair and its sums of teeth are counted in: its own, or else the one that is given. */
export const countedIn = <M extends object>(mount: M, { module, diametralPitch }: Toothed): M & Toothed =>
  moduleOf(mount as Toothed) ? mount : ({ ...mount, module, diametralPitch } as M & Toothed);

/** One end of the centre distances that can be set, in millimetres. */
export interface Limit {
  readonly kind: "slot" | "known-pair" | "tooth-sum" | "pivot";
  /** `from`: no closer than this. `to`: no farther. */
  readonly end: "from" | "to";
  readonly at: Bounded;
}

/** What a pair's openings do to its centre distance: apart, and for a ring together. */
export interface Openings {
  /** The opening wanted, from the least to the most, in millimetres. */
  readonly least: Rational;
  readonly most: Rational;
  /** What they add to the theoretical centre distance, from the closest to the farthest. */
  readonly closest: Rational;
  readonly farthest: Rational;
}

/** @throws MeshwrightError `ends-reversed` where the widest opening is less than the least */
export function openingsOf({ opening, openingTo }: CentreMount, { internal }: PairPitch): Openings {
  const least = finiteOf(opening ?? 0, "opening");
  const most = openingTo === undefined ? least : finiteOf(openingTo, "openingTo");
  if (least.compare(most) > 0) refuse("ends-reversed", "openingTo", openingTo, `at least ${opening ?? "0 mm"}`);
  const [closest, farthest] = internal ? [most.negate(), least.negate()] : [least, most];
  return { least, most, closest, farthest };
}

/** The cosine of an angle from 0 to 180 degrees: exact where it is a fraction (Niven: 0, ±1/2, ±1 only), else enclosed. */
function cosineOf(angle: Rational): Bounded {
  const degrees = angle.toNumber();
  const twice = [0, 60, 90, 120, 180].indexOf(degrees);
  if (twice >= 0) return bounded(ratioOf([2, 1, 0, -1, -2][twice]!, 2));
  return bounded(Math.cos((degrees * Math.PI) / 180).toFixed(15)).plus(bounded("-3e-15", "3e-15"));
}

/**
 * A motor on an arm about a pivot: law of cosines, c² = d² + a² − 2 d a cos(angle at the pivot). It swings between the two
 * angles, whichever is named first.
 */
function pivotEnds({ distance, arm, from, to }: NonNullable<Mount["pivot"]>): readonly Bounded[] {
  const away = sizeOf(distance, "pivot.distance");
  const long = sizeOf(arm, "pivot.arm");
  const angleOf = (angle: Numeric): Rational => {
    const degrees = rational(angle, { at: "pivot" });
    const inside = degrees.sign >= 0 && degrees.compare(180) <= 0;
    return inside ? degrees : refuse("out-of-range", "pivot", `an angle of ${angle}`, "0 to 180 degrees");
  };
  return [angleOf(from), angleOf(to)]
    .sort((a, b) => a.compare(b))
    .map((angle) => rootOf(cosineOf(angle).times(away.times(long).times(-2)).plus(away.power(2)).plus(long.power(2))));
}

/**
 * The ends of the centre distances that a mount can set, row of holes apart: {@link rangesOf} joins them all. A known pair and a
 * maker's range of tooth sums tell where pairs run with their opening, so both ends lie the opening away from the pairs'
 * theoretical centres: further out, and for a ring further in.
 *
 * @throws MeshwrightError `shafts-not-given`, `not-a-count`, `out-of-range`, and what cannot be read as a length
 *
 * @example
 * const limits = limitsOf({ knownPair: [23, 53], closer: "0.1 mm", farther: "0.9 mm" }, { module: "0.8" });
 * limits.map((limit) => limit.at.low.toFraction()); // => ["303/10", "313/10"]
 * const over = { measured: "over shafts", shaft: "4 mm", drivenShaft: "6 mm", from: "35 mm", to: "36 mm" } as const;
 * limitsOf(over, {}).map((limit) => limit.at.low.toFraction()); // => ["30/1", "31/1"]
 */
export function limitsOf(mount: CentreMount, pair: PairPitch): Limit[] {
  const { from, to, knownPair, closer, farther, toothSum, pivot } = mount;
  const { internal, form, helixAngle } = pair;
  const limits: Limit[] = [];
  const add = (kind: Limit["kind"], ...ends: readonly (Rational | Bounded | undefined)[]): void => {
    for (const [n, at] of ends.entries()) if (at) limits.push({ kind, end: n ? "to" : "from", at: bounded(at) });
  };
  const axes = (text: string | undefined, at: string): Rational | undefined =>
    text === undefined ? undefined : finiteOf(text, at).plus(toAxes(mount));
  add("slot", axes(from, "from"), axes(to, "to"));
  const { least } = openingsOf(mount, pair);
  // They are gears like those of the pair, of the pitch that the mount is counted in.
  const counted = { ...(moduleOf(mount) ? mount : pair), form, helixAngle };
  const centre = (sum: number): Bounded | undefined =>
    modulesAcross(counted, ratioOf(sum, 2))?.plus(internal ? least.negate() : least);
  if (knownPair) {
    const [driver, driven] = knownPair.map((teeth) => checkTeeth(teeth, "knownPair")) as [number, number];
    const known = centre(internal ? driven - driver : driver + driven);
    const moved = (text: string | undefined, at: string) => (text === undefined ? undefined : depthOf(text, at));
    const [less, more] = [moved(closer, "closer"), moved(farther, "farther")];
    add("known-pair", less && known?.minus(less), more && known?.plus(more));
  }
  if (toothSum) {
    const sums = toothSum.map((sum) => checkTeeth(sum, "toothSum")).sort((a, b) => a - b);
    add("tooth-sum", ...sums.map(centre));
  }
  if (pivot) add("pivot", ...pivotEnds(pivot));
  return limits;
}

/** The holes of a row as centre distances in millimetres, the closest first. */
export function holesOf(mount: CentreMount): Rational[] {
  return (mount.holes ?? []).map((hole) => lengthOf(hole, "holes").plus(toAxes(mount))).sort((a, b) => a.compare(b));
}
