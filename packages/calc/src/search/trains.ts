import { lengthOf, type Rational, ratioOf } from "../exact/index.js";
import { arrange, type Batch, type Cost, costOfAll } from "./batch.js";
import { merge } from "./merge.js";
import { planOf, type Plan } from "./plan.js";
import type { Candidate, TrainQuestion, WheelCandidate } from "./question.js";
import { type Groups, look, sweep } from "./sweep.js";
import { unfold } from "./table.js";
import type { Gap } from "./wanted.js";
import type { Whole } from "./whole.js";

/** What all the ways to one ratio share. */
interface Result {
  readonly ratios: readonly Rational[];
  readonly gap: Gap;
}

/** A train that meets what is wanted: what was picked, and what that gives, worked out when it is asked for. */
export class FoundTrain<C extends Candidate = Candidate> {
  /** In the order of the stages asked about. */
  readonly picks: readonly (C | Candidate)[];
  /** In the order of the outputs; undefined where there was no wheel to choose. */
  readonly wheels: readonly (WheelCandidate | undefined)[];
  readonly cost: Cost;
  readonly #result: Result;
  readonly #compared: readonly number[];

  /** @internal */
  constructor(
    picks: readonly (C | Candidate)[],
    wheels: readonly (WheelCandidate | undefined)[],
    result: Result,
    compared: readonly number[],
  ) {
    this.picks = picks;
    this.wheels = wheels;
    this.cost = costOfAll([...picks, ...wheels].map((one) => one?.cost));
    this.#result = result;
    this.#compared = compared;
  }

  /** Motor turns for one wheel turn, in the order of the outputs. */
  get reductions(): readonly Rational[] {
    return this.#result.ratios;
  }

  /** How far the worst output is from the middle of its range. */
  get distance(): Rational {
    return ratioOf(this.#result.gap.top, this.#result.gap.bottom);
  }

  /** How much farther the one output rolls than the other, as a share of the other, where that was asked. */
  get ahead(): Rational | undefined {
    const [of, against] = this.#compared;
    if (of === undefined) return undefined;
    const { reductions } = this;
    const gears = reductions[against!]!.over(reductions[of]!);
    const [wheel, other] = [this.wheels[of], this.wheels[against!]];
    return (wheel && other ? gears.times(lengthOf(wheel.diameter).over(lengthOf(other.diameter))) : gears).minus(1);
  }
}

/** One way to what is wanted: the choice in each place. */
interface Hit {
  readonly picks: readonly number[];
  readonly result: Result;
}

/** All ways to one ratio of the inner half in one group. */
function hitsOf<C extends Candidate>(plan: Plan<C>, head: readonly number[], place: number, gap: Gap): Hit[] {
  const { aims, inner, outer, rolling } = plan;
  const [choice, , , low, high] = head as [number, number, number, number, number];
  const tops: Whole[] = [];
  const bottoms: Whole[] = [];
  look(plan, choice, tops, bottoms);
  const ratios = aims.map(({ rest }, n) =>
    rest.times(ratioOf(tops[n]!, bottoms[n]!)).times(ratioOf(inner.tops[place]!, inner.bottoms[place]!)),
  );
  const result = { ratios, gap };
  const hits: Hit[] = [];
  const picks: number[] = [];
  const within = (n: number, left: number): void => {
    const table = outer[n];
    if (table) {
      const length = table.tops.length;
      unfold(table, left % length, picks, () => within(n + 1, Math.floor(left / length)));
    } else hits.push({ picks: [...picks], result });
  };
  for (let tyre = low; tyre < high; tyre++)
    unfold(rolling, tyre, picks, () => unfold(inner, place, picks, () => within(0, choice)));
  return hits;
}

/** Picks as what was asked about. */
function show<C extends Candidate>({ stages, wheels, compared }: Plan<C>, { picks, result }: Hit): FoundTrain<C> {
  let n = 0;
  const next = <T>(list: readonly T[]): T => list[picks[n++]!]!;
  const chosen = stages.map((stage): C | Candidate =>
    "choose" in stage ? next(stage.choose) : { driver: next(stage.drivers), driven: next(stage.drivens) },
  );
  return new FoundTrain(
    chosen,
    wheels.map((list) => list && next(list)),
    result,
    compared,
  );
}

const chunk = 4096;

function* nearest<C extends Candidate>(question: TrainQuestion<C>): Generator<Batch<FoundTrain<C>>, void> {
  const plan = yield* planOf(question);
  const groups: Groups = { heads: [], count: 0 };
  const total = plan ? plan.outer.reduce((product, table) => product * table.tops.length, 1) : 0;
  for (let first = 0; first < total; first += chunk) {
    sweep(plan!, groups, first, Math.min(first + chunk, total));
    yield { found: [], progress: first / total / 2 };
  }
  const { heads, count } = groups;
  yield { found: [], count, progress: count ? 0.5 : 1 };
  let listed = 0;
  for (const step of count ? merge(plan!, heads) : []) {
    const hits = step
      ? step.spots.flatMap(({ group, place }) => hitsOf(plan!, heads.slice(group * 5, group * 5 + 5), place, step.gap))
      : [];
    hits.sort((a, b) => {
      const n = a.picks.findIndex((pick, place) => pick !== b.picks[place]);
      return n < 0 ? 0 : a.picks[n]! - b.picks[n]!;
    });
    listed += hits.length;
    yield { found: hits.map((hit) => show(plan!, hit)), count, progress: (1 + listed / count) / 2 };
  }
}

/**
 * All trains that meet what is wanted, in a stated order: the worst output's distance from the middle of its range, first
 * to last; exactly equal ones by the picks of each stage (driver, driven, id), stage after stage, then by the wheels.
 * Exact and complete. The count is told before the finds; batches without finds only tell how far the work is. Stop it
 * by leaving the loop.
 *
 * @throws MeshwrightError `not-a-count`, `no-target`, `not-above-zero`, `missing-reference`, `too-many-choices`; what cannot
 * be read as a number or a length
 *
 * @example
 * const ring = { id: "ring", on: ["rear"], choose: [{ driver: 12, driven: 35 }, { driver: 11, driven: 36 }] };
 * const stages = [{ id: "primary", drivers: [15, 17], drivens: [62, 66] }, ring];
 * const found = [...findTrains({ stages, outputs: [{ id: "rear", from: 12, to: 13 }] })].flatMap((batch) => batch.found);
 * found.map(({ picks }) => picks[0]!.driver + " to " + picks[0]!.driven); // => ["17 to 66", "15 to 66", "15 to 62"]
 * found[0]!.distance.toFraction(); // => "7/34"
 */
export function findTrains<C extends Candidate>(question: TrainQuestion<C>): Generator<Batch<FoundTrain<C>>, void> {
  return arrange(nearest(question), question.order);
}
