import { Bounded, MeshwrightError } from "../exact/index.js";
import { printedInterval, type PrintedReading } from "../stages/index.js";
import { ceilOf, checkTeeth, floorOf } from "../gears/index.js";
import { measuredReduction, type TurnCount } from "./turn-count.js";

/** Counts to look among, both ends included. */
export interface CountRanges {
  readonly driver: readonly [from: number, to: number];
  readonly driven: readonly [from: number, to: number];
}

/** More pairs than anybody looks through, and than memory should hold. */
const mostPairs = 100_000;

/**
 * Every pair of counts that can be behind a ratio: one as printed, one as an interval, or one as counted by hand. In the order
 * of the driver, then the driven count. A value that was cut off lies below the next printed one, whose exact value is left out.
 *
 * @param read how a printed ratio was shortened
 * @throws MeshwrightError `not-a-count`, `too-many-choices`, `not-a-printed-ratio`
 *
 * @example
 * toothPairsFor("2.74", { driver: [8, 40], driven: [8, 80] }); // => [[19, 52], [23, 63], [27, 74]]
 */
export function toothPairsFor(
  ratio: string | Bounded | TurnCount,
  { driver, driven }: CountRanges,
  read: PrintedReading = "rounded",
): [driver: number, driven: number][] {
  for (const end of driver) checkTeeth(end, "driver");
  for (const end of driven) checkTeeth(end, "driven");
  const printed = typeof ratio === "string";
  const { low, high } = printed
    ? printedInterval(ratio, read)
    : ratio instanceof Bounded
      ? ratio
      : measuredReduction(ratio);
  const open = printed && read !== "rounded" && !low.equals(high);
  const pairs: [number, number][] = [];
  for (let from = driver[0]; from <= driver[1]; from++) {
    const top = high.times(from);
    const last = Math.min(driven[1], open && top.isInteger ? floorOf(top) - 1 : floorOf(top));
    for (let to = Math.max(driven[0], ceilOf(low.times(from))); to <= last; to++) {
      pairs.push([from, to]);
      if (pairs.length > mostPairs)
        throw new MeshwrightError(
          "too-many-choices",
          "ratio",
          `More than ${mostPairs} pairs; expected a narrower ratio.`,
        );
    }
  }
  return pairs;
}
