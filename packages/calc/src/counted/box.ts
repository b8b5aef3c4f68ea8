import { type Bounded, rational, type Rational, ratioOf } from "../exact/index.js";
import { checkTeeth } from "../gears/index.js";
import { type CountRanges, toothPairsFor } from "./identify.js";
import { measuredReduction, type TurnCount } from "./turn-count.js";

/** A box counted by turns, with what is known around it. */
export interface BoxCount extends TurnCount {
  /** Pairs before and behind the box whose counts are known. */
  readonly knownPairs?: readonly (readonly [driver: number, driven: number])[];
}

/** What a box can be. */
export interface CountedBox {
  /** Of all that was turned. */
  readonly total: Bounded;
  /** Of the box alone: what is known has been divided out. */
  readonly box: Bounded;
  /** Every [driver, driven] that can be behind it, in the order of the driver; none where no ranges are given. */
  readonly counts: readonly (readonly [driver: number, driven: number])[];
}

/**
 * What turning a drive by hand tells about the box in it: the reduction of all that turned, as an interval; that of the box, the
 * known pairs divided out exactly; and every pair of counts that can be behind it, ends included. Teeth that can be seen
 * narrow the ranges down to one count.
 *
 * @throws MeshwrightError as {@link measuredReduction} and {@link toothPairsFor}
 *
 * @example
 * const count = { motorTurns: 20, wheelTurns: { from: "9.1", to: "9.15" } };
 * const { box, counts } = countedBox(count, { driver: [10, 20], driven: [30, 60] });
 * [box.toJSON(), counts]; // => [{ low: "400/183", high: "200/91" }, [[16, 35]]]
 */
export function countedBox(count: BoxCount, ranges?: CountRanges): CountedBox {
  const known = (count.knownPairs ?? []).reduce(
    (product: Rational, [driver, driven]) =>
      product.times(ratioOf(checkTeeth(driven, "knownPairs"), checkTeeth(driver, "knownPairs"))),
    rational(1),
  );
  const total = measuredReduction(count);
  const box = total.over(known);
  return { total, box, counts: ranges ? toothPairsFor(box, ranges) : [] };
}
