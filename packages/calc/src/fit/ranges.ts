import { bounded, type Bounded, MeshwrightError, type Rational, ratioOf } from "../exact/index.js";
import { ceilOf, floorOf, modulesAcross } from "../gears/index.js";
import { type CentreMount, holesOf, type Limit, limitsOf, openingsOf, type PairPitch } from "./limits.js";

/** Centre distances that can be set, ends included, in millimetres; an end that nothing limits is absent. */
export interface CentreRange {
  readonly from?: Bounded;
  readonly to?: Bounded;
}

const tighter = (side: 1 | -1, a: Rational, b: Rational): Rational => (a.compare(b) === side ? a : b);

/** The tightest of the limits at one end: the one that all the others lie behind. */
export function tightest(limits: readonly Limit[], end: Limit["end"]): Bounded | undefined {
  const side = end === "from" ? 1 : -1;
  const ends = limits.filter((limit) => limit.end === end).map(({ at }) => at);
  return ends.length === 0
    ? undefined
    : ends.reduce((a, b) => bounded(tighter(side, a.low, b.low), tighter(side, a.high, b.high)));
}

/**
 * The centre distances that a mount can set, as a list of ranges in rising order: what all its limits leave, and of that, where
 * there is a row of holes, each hole by itself. None where the limits leave nothing.
 *
 * @throws MeshwrightError as {@link limitsOf}
 *
 * @example
 * const text = (mount: CentreMount) => rangesOf(mount, {}).map(({ from, to }) => [from?.low.toDecimal(), to?.low.toDecimal()]);
 * text({ from: "20 mm", to: "31 mm", holes: ["32 mm", "30 mm", "29 mm"] }); // => [["29", "29"], ["30", "30"]]
 * text({ from: "20 mm", to: "19 mm" }); // => []
 */
export function rangesOf(mount: CentreMount, pair: PairPitch): CentreRange[] {
  const limits = limitsOf(mount, pair);
  const [from, to] = [tightest(limits, "from"), tightest(limits, "to")];
  const isEmpty = (low: Bounded | undefined, high: Bounded | undefined): boolean =>
    low !== undefined && high !== undefined && low.compare(high) === 1;
  if (isEmpty(from, to)) return [];
  if (!mount.holes?.length) return [{ ...(from && { from }), ...(to && { to }) }];
  return holesOf(mount)
    .map((hole) => bounded(hole))
    .filter((hole) => !isEmpty(from, hole) && !isEmpty(hole, to))
    .map((hole) => ({ from: hole, to: hole }));
}

/**
 * The sum of teeth whose centre distance comes nearest to a limit from within, when it is moved so far by its opening; one that may
 * stand at the limit itself is within.
 *
 * @param half what one tooth more adds to the centre distance
 */
export function sumWithin({ end, at }: Pick<Limit, "end" | "at">, half: Bounded, moved: Rational): number {
  const sum = at.minus(moved).over(half);
  return end === "from" ? Math.max(1, ceilOf(sum.low)) : floorOf(sum.high);
}

/**
 * The sums of teeth (of driver and driven; their difference, for a ring) that a mount takes at one pitch, for gears
 * without shift: a list of ranges, both ends included, in rising order.
 *
 * @throws MeshwrightError `pitch-not-given`, of helical teeth also without their angle, and as {@link limitsOf}
 *
 * @example
 * toothSumsFor({ knownPair: [23, 53], closer: "0.1 mm", farther: "0.9 mm" }, { module: "0.8" }); // => [[76, 78]]
 */
export function toothSumsFor(mount: CentreMount, pair: PairPitch): [from: number, to: number][] {
  const half = modulesAcross(pair, ratioOf(1, 2));
  if (!half) throw new MeshwrightError("pitch-not-given", "pair", "No module or diametral pitch; expected one.");
  const { closest, farthest } = openingsOf(mount, pair);
  return rangesOf(mount, pair)
    .map(({ from, to }): [number, number] => [
      from ? sumWithin({ end: "from", at: from }, half, farthest) : 1,
      to ? sumWithin({ end: "to", at: to }, half, closest) : Infinity,
    ])
    .filter(([low, high]) => low <= high);
}
