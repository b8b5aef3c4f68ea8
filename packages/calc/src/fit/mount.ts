import type { Mount } from "../drivetrain/index.js";
import { bounded, type Bounded, lengthOf, MeshwrightError, rational, ratioOf, type Rational } from "../exact/index.js";
import { type Numeric, type Toothed, ceilOf, floorOf, rootOf, moduleOf } from "../gears/index.js";
import { lacking, type Reason } from "./reason.js";

/**
 * How a centre distance can be set: the fields of a build's mount. All limits that are given hold at once. The pitch is the one
 * that the known pair and the tooth sums are counted in, where it is not that of the pair looked at.
 */
export type CentreMount = Toothed &
  Pick<
    Mount,
    "from" | "to" | "knownPair" | "closer" | "farther" | "toothSum" | "pivot" | "holes" | "opening" | "openingTo"
  >;

/** The pitch of a pair, and whether one of it is a ring: then differences of teeth take the place of sums. */
export type PairPitch = Toothed & { readonly internal?: boolean | undefined };

/** One end of the centre distances that can be set, in millimetres. */
export interface Limit {
  readonly kind: "slot" | "known-pair" | "tooth-sum" | "pivot";
  /** `from`: no closer than this. `to`: no farther. */
  readonly end: "from" | "to";
  readonly at: Bounded;
}

/** The opening wanted, from the least to the most, in millimetres. */
function openingsOf({ opening, openingTo }: CentreMount): readonly [Rational, Rational] {
  const least = lengthOf(opening ?? 0, "opening");
  return [least, openingTo === undefined ? least : lengthOf(openingTo, "openingTo")];
}

/** The cosine of an angle from 0 to 180 degrees: exact where it is a fraction (Niven: 0, ±1/2, ±1 only), else enclosed. */
function cosineOf(angle: Numeric): Bounded {
  const degrees = rational(angle).toNumber();
  if (degrees < 0 || degrees > 180)
    throw new MeshwrightError("out-of-range", "pivot", `The angle is ${angle}; expected 0 to 180 degrees.`);
  const twice = [0, 60, 90, 120, 180].indexOf(degrees);
  if (twice >= 0) return bounded(ratioOf([2, 1, 0, -1, -2][twice]!, 2));
  return bounded(Math.cos((degrees * Math.PI) / 180).toFixed(15)).plus(bounded("-3e-15", "3e-15"));
}

/**
 * The ends of the centre distances that a mount can set. A known pair and a maker's range of tooth sums tell where pairs run
 * with their opening, so both ends lie the opening further out than the pairs' theoretical centres.
 *
 * A motor on an arm about a pivot: law of cosines, c² = d² + a² − 2 d a cos(angle at the pivot).
 *
 * @example
 * const limits = limitsOf({ knownPair: [23, 53], closer: "0.1 mm", farther: "0.9 mm" }, { module: "0.8" });
 * limits.map((limit) => limit.at.low.toFraction()); // => ["303/10", "313/10"]
 */
export function limitsOf(mount: CentreMount, pair: PairPitch): Limit[] {
  const { from, to, knownPair, closer, farther, toothSum, pivot } = mount;
  const limits: Limit[] = [];
  const add = (kind: Limit["kind"], ...ends: readonly (Rational | Bounded | undefined)[]): void => {
    for (const [n, at] of ends.entries()) if (at) limits.push({ kind, end: n ? "to" : "from", at: bounded(at) });
  };
  const length = (text: string | undefined, at: string): Rational | undefined =>
    text === undefined ? undefined : lengthOf(text, at);
  add("slot", length(from, "from"), length(to, "to"));
  const module = moduleOf(mount) ?? moduleOf(pair);
  const centre = (sum: number): Rational | undefined => module?.times(ratioOf(sum, 2)).plus(openingsOf(mount)[0]);
  if (knownPair) {
    const known = centre(pair.internal ? knownPair[1] - knownPair[0] : knownPair[0] + knownPair[1]);
    const [less, more] = [length(closer, "closer"), length(farther, "farther")];
    add("known-pair", less && known?.minus(less), more && known?.plus(more));
  }
  if (toothSum) add("tooth-sum", centre(toothSum[0]), centre(toothSum[1]));
  if (pivot) {
    const distance = lengthOf(pivot.distance, "pivot.distance");
    const arm = lengthOf(pivot.arm, "pivot.arm");
    const at = (angle: Numeric): Bounded =>
      rootOf(cosineOf(angle).times(distance.times(arm).times(-2)).plus(distance.power(2)).plus(arm.power(2)));
    add("pivot", at(pivot.from), at(pivot.to));
  }
  return limits;
}

/** The sum of teeth whose centre distance comes nearest to a limit from within. */
function sumWithin({ end, at }: Limit, module: Rational, opening: Rational): number {
  const sum = at.minus(opening).times(module.inverse().times(2));
  return end === "from" ? Math.max(1, ceilOf(sum.high)) : floorOf(sum.low);
}

export interface Setting {
  readonly reasons: readonly Reason[];
  /** The smallest opening, of those wanted, that the mount can set, in millimetres. */
  readonly opening: Bounded;
}

/** Whether a mount can set a theoretical centre distance with an opening of those wanted. */
export function setCentre(mount: CentreMount, pair: PairPitch, theoretical: Bounded): Setting {
  const reasons: Reason[] = [];
  const [least, most] = openingsOf(mount);
  const [first, last] = [theoretical.plus(least), theoretical.plus(most)];
  let opening = bounded(least);
  for (const limit of limitsOf(mount, pair)) {
    const { kind: label, end, at: available } = limit;
    const near = end === "from";
    const needed = near ? last : first;
    const short = near ? available.minus(needed) : needed.minus(available);
    const teeth = sumWithin(limit, moduleOf(pair)!, near ? most : least);
    reasons.push(...lacking(near ? "too-close" : "too-far", short, { label, needed, available, teeth }));
    const more = available.minus(theoretical);
    if (near && more.low.compare(opening.low) > 0) opening = more;
  }
  const holes = (mount.holes ?? [])
    .map((hole) => {
      const available = bounded(lengthOf(hole, "holes"));
      const [inner, outer] = [first.minus(available), available.minus(last)];
      return { available, short: inner.low.compare(outer.low) > 0 ? inner : outer };
    })
    .sort((a, b) => a.available.low.compare(b.available.low));
  const nearest = [...holes].sort((a, b) => a.short.low.compare(b.short.low))[0];
  const hole = holes.find(({ short }) => short.high.sign <= 0) ?? nearest;
  if (hole) {
    const { available, short } = hole;
    reasons.push(...lacking("no-hole", short, { needed: first, available }));
    opening = available.minus(theoretical);
  }
  return { reasons, opening };
}

/**
 * The sums of teeth (of driver and driven; their difference, for a ring) that a mount takes at one pitch, for gears
 * without helix or shift: a list of ranges, both ends included, in rising order.
 *
 * @throws MeshwrightError `pitch-not-given`
 *
 * @example
 * toothSumsFor({ knownPair: [23, 53], closer: "0.1 mm", farther: "0.9 mm" }, { module: "0.8" }); // => [[76, 78]]
 */
export function toothSumsFor(mount: CentreMount, pair: PairPitch): [from: number, to: number][] {
  const module = moduleOf(pair);
  if (!module) throw new MeshwrightError("pitch-not-given", "pair", "No module or diametral pitch; expected one.");
  const [least, most] = openingsOf(mount);
  const holes: readonly (string | undefined)[] = mount.holes ?? [undefined];
  return holes
    .map((hole): [number, number] => {
      const limits = [...limitsOf(mount, pair), ...limitsOf({ from: hole, to: hole } as CentreMount, pair)];
      const sums = (end: Limit["end"], opening: Rational): number[] =>
        limits.filter((limit) => limit.end === end).map((limit) => sumWithin(limit, module, opening));
      return [Math.max(1, ...sums("from", most)), Math.min(...sums("to", least))];
    })
    .filter(([low, high]) => low <= high)
    .sort((a, b) => a[0] - b[0]);
}
