import { arrange, type Batch, type Step, told } from "./batch.js";
import type { End } from "./ends.js";
import { FoundPair } from "./found.js";
import { held } from "./held.js";
import { type Looking, lookingFor, nearestFirst, type Placed, placeOf } from "./looking.js";
import { Pace, sort, type Working } from "./pace.js";
import type { PairQuestion } from "./question.js";

/** All pairs of sorts that reach every range and have the right sum of teeth, before anything else is looked at. */
function* reaching({ shelves, sets, sumsOf, meet, wish }: Looking, pace: Pace): Working<Placed[]> {
  const placed: Placed[] = [];
  const { bounds, cast } = wish;
  for (const shelf of shelves) {
    const sums = sumsOf(shelf);
    for (const driver of shelf.drivers) {
      const bottom = cast(driver.teeth);
      for (const driven of shelf.drivens) {
        if (pace.due()) yield;
        const top = cast(driven.teeth);
        const sum = driver.teeth + driven.teeth;
        if (!bounds.every(([a, low, high]) => top * a >= bottom * low && top * a <= bottom * high)) continue;
        if (sums && driver.plain && driven.plain && !sums.some(([from, to]) => sum >= from && sum <= to)) continue;
        placed.push(placeOf(meet(driver, driven), wish));
      }
    }
  }
  for (const set of sets) {
    if (pace.due()) yield;
    const one = placeOf(set, wish);
    if (one.reaches) placed.push(one);
  }
  return placed;
}

function* look(question: PairQuestion): Generator<Step<FoundPair>, void> {
  const pace = new Pace();
  const looking = lookingFor(question);
  const placed = yield* sort(yield* reaching(looking, pace), nearestFirst, pace);
  let count = 0;
  for (let n = 0; n < placed.length;) {
    const from = n++;
    while (n < placed.length && !nearestFirst(placed[from]!, placed[n]!)) n++;
    const make = (one: Placed, driver: End, driven: End) =>
      new FoundPair(one, looking.wish, looking.ends, driver, driven);
    for (const found of held(placed.slice(from, n), looking.ends, make, pace)) {
      count += found?.length ?? 0;
      yield { found: found ?? [], progress: n / placed.length };
    }
  }
  yield { found: [], count, progress: 1 };
}

/**
 * All pairs and sets that reach every range, mesh and fit, in a stated order: the worst output's distance from the middle of
 * its range, first to last; exactly equal ones by driver, driven, then ids. Exact and complete. A pair is judged by what its
 * parts are: pitch, angle, shift, bores and holes, with the cheapest sleeve and plate where they are needed; gears of
 * different pitches are never a pair. Where an output is an interval, all of it has to be in the range.
 *
 * Batches without finds only tell how far the work is: each step takes a few milliseconds. Stop it by leaving the loop, or by
 * the question's signal.
 *
 * @throws MeshwrightError `not-a-count`, `no-target`, `not-above-zero`, `range-backwards`, `pitch-twice`, `out-of-range`;
 * `too-many-choices`, with how many were `found` and how many are `allowed`; what cannot be read as a number or a length
 *
 * @example
 * const shelf = { drivers: [13, 15, 17, 20, 23], drivens: [53, 56, 62, 66, 70], pitch: { module: "0.8" } };
 * const mount = { knownPair: [23, 53], closer: "0.1 mm", farther: "0.9 mm" } as const;
 * const outputs = [{ id: "rear", rest: "4025/384", from: 38, to: 46 }];
 * const found = [...findPairs({ ...shelf, mount, outputs })].flatMap((batch) => batch.found);
 * found.map(({ counts, centre }) => [...counts, centre!.low.toFraction()]); // => [[15, 62, "154/5"]]
 * found[0]!.totals[0]!.low.toFraction(); // => "24955/576"
 */
export const findPairs = (question: PairQuestion): Generator<Batch<FoundPair>, void> =>
  told(arrange(look(question), question.order), question.signal);
