import { lengthOf, MeshwrightError, type Rational, rational, type RationalInput, ratioOf } from "../exact/index.js";
import { arrange, type Batch, type Cost, costOfAll, type Order } from "./batch.js";
import { heapify, sink } from "./heap.js";
import { firstFrom, multiply, type Table, unfold, unitOf } from "./table.js";
import { aimsOf, boundsOf, farthest, type Gap, type Wanted } from "./wanted.js";
import { type Cast, castFor, type Fraction, fractionOf, greatest, isBelow, type Whole } from "./whole.js";

/** A pair or a set that a stage could have. */
export interface Candidate {
  readonly driver: number;
  readonly driven: number;
  readonly id?: string;
  readonly cost?: Cost;
}

/** What a stage may be: some pairs or sets, or any of these counts with any of those. */
export type StageChoice<C extends Candidate = Candidate> = {
  readonly id: string;
  /** The outputs that it drives; all where none is named. */
  readonly on?: readonly string[];
} & ({ readonly choose: readonly C[] } | { readonly drivers: readonly number[]; readonly drivens: readonly number[] });

/** A wheel that an output could have. */
export interface WheelCandidate {
  /** Text with a unit, or millimetres. */
  readonly diameter: string | number;
  readonly id?: string;
  readonly cost?: Cost;
}

export interface WantedOutput extends Wanted {
  readonly wheels?: readonly WheelCandidate[];
}

export interface TrainQuestion<C extends Candidate = Candidate> {
  readonly stages: readonly StageChoice<C>[];
  readonly outputs: readonly WantedOutput[];
  /** How much farther `of` may roll than `with`, as a share of `with`: 0.02 is 2 %. Ends included. Without wheels: gears alone. */
  readonly compare?: {
    readonly of: string;
    readonly with: string;
    readonly from: RationalInput;
    readonly to: RationalInput;
  };
  readonly order?: Order;
}

/** What all the ways to one ratio share. */
interface Result {
  readonly ratios: readonly Whole[];
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
  get reductions(): Rational[] {
    const { ratios } = this.#result;
    return this.wheels.map((_, n) => ratioOf(ratios[n * 2]!, ratios[n * 2 + 1]!));
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

/** One place to choose, with exact fractions as yet. */
interface Place {
  readonly choices: readonly Fraction[];
  /** Which outputs it drives, one bit each; 0 for a wheel. */
  readonly on: number;
  /** Drivens alone, drivers alone, or both: what multiplies well comes first. */
  readonly rank: number;
}

const counted = (list: readonly number[], at: string): bigint[] =>
  list.map((teeth) => {
    if (Number.isSafeInteger(teeth) && teeth > 0) return BigInt(teeth);
    throw new MeshwrightError("not-a-count", at, `Found ${teeth} teeth; expected a whole number from 1.`);
  });

const textOrder = (a = "", b = ""): number => (a < b ? -1 : a > b ? 1 : 0);
const ascending = (list: readonly number[]): number[] => [...list].sort((a, b) => a - b);

/** The stages with their choices by driver, then driven, then id. The order among equals follows from it. */
const inOrder = <C extends Candidate>(stage: StageChoice<C>): StageChoice<C> =>
  "choose" in stage
    ? {
        ...stage,
        choose: [...stage.choose].sort((a, b) => a.driver - b.driver || a.driven - b.driven || textOrder(a.id, b.id)),
      }
    : { ...stage, drivers: ascending(stage.drivers), drivens: ascending(stage.drivens) };

function* nearest<C extends Candidate>(question: TrainQuestion<C>): Generator<Batch<FoundTrain<C>>, void> {
  const { outputs, compare } = question;
  const aims = aimsOf(outputs);
  const size = aims.length;
  const indexOf = (id: string): number => {
    const index = aims.findIndex((aim) => aim.id === id);
    if (index < 0)
      throw new MeshwrightError("missing-reference", id, `No "${id}"; expected an output that is asked about.`);
    return index;
  };
  const all = 2 ** size - 1;
  const stages = question.stages.map(inOrder);
  const wheels = outputs.map((one) => one.wheels);
  const of = compare ? indexOf(compare.of) : 0;
  const against = compare ? indexOf(compare.with) : 0;
  // Where one of the two has no wheel, gears alone are compared.
  const tyres = compare && wheels[of] && wheels[against];

  const places: Place[] = [];
  for (const stage of stages) {
    const { id } = stage;
    const on = stage.on ? stage.on.reduce((sum, output) => sum | (1 << indexOf(output)), 0) : all;
    const choose = "choose" in stage ? stage.choose : [];
    const drivers = counted("choose" in stage ? choose.map((one) => one.driver) : stage.drivers, id);
    const drivens = counted("choose" in stage ? choose.map((one) => one.driven) : stage.drivens, id);
    if ("choose" in stage) places.push({ choices: drivens.map((teeth, n) => [teeth, drivers[n]!]), on, rank: 2 });
    else
      places.push(
        { choices: drivers.map((teeth) => [1n, teeth]), on, rank: 1 },
        { choices: drivens.map((teeth) => [teeth, 1n]), on, rank: 0 },
      );
  }
  const gears = places.length;
  wheels.forEach((list, n) => {
    const power = tyres ? Number(n === of) - Number(n === against) : 0;
    if (list) {
      const choices = list.map((one) => fractionOf(lengthOf(one.diameter, "diameter").power(power)));
      places.push({ choices, on: 0, rank: 2 });
    }
  });
  if (places.some(({ choices }) => !choices.length)) return yield { found: [], count: 0, progress: 1 };

  const ranges = aims.flatMap((aim, output) => (aim.range ? { output, aim: { ...aim, range: aim.range } } : []));
  const shares = compare ? [compare.from, compare.to].map((one) => rational(one).plus(1)) : [];
  const ratio = aims[against]!.rest.over(aims[of]!.rest);
  const scales = shares.map((share): Fraction => [
    ratio.numerator * share.denominator,
    ratio.denominator * share.numerator,
  ]);
  /** A bound of the products of one choice of each of these places. */
  const bound = (some: readonly Place[]): number =>
    Math.max(
      ...[0, 1].map((side) => some.reduce((most, { choices }) => most * greatest(choices.map((one) => one[side]!)), 1)),
    );
  const geared = bound(places.filter((place) => place.on));
  const cast = castFor(geared * greatest(ranges.flatMap(({ aim }) => Object.values(boundsOf(aim, Number as Cast)))));
  const castTyre = castFor(geared * geared * bound(places.filter((place) => !place.on)) * greatest(scales.flat()));

  // What drives all outputs is split in two, to be met in the middle; what drives some of them multiplies the outer half.
  const tables = new Map<number, Table>();
  let inner = unitOf(cast);
  let combinations = 1;
  for (const { choices, on } of places) if (on) combinations *= choices.length;
  const half = Math.max(4096, Math.sqrt(combinations) * 1.000001);
  let rows = 1;
  const ranked = places.map((place, index) => ({ ...place, index })).sort((a, b) => a.rank - b.rank);
  for (const { choices, on, index } of ranked) {
    const sort = on ? cast : castTyre;
    const column = { tops: choices.map(([top]) => sort(top)), bottoms: choices.map(([, bottom]) => sort(bottom)) };
    if (on === all && rows * choices.length <= half) {
      rows *= choices.length;
      inner = multiply(inner, column, index);
    } else tables.set(on, multiply(tables.get(on) ?? unitOf(sort), column, index));
    yield { found: [], progress: 0 };
  }
  const rolling = tables.get(0) ?? unitOf(castTyre);
  tables.delete(0);
  const outer = tables.get(all);
  if (outer && outer.tops.length > inner.tops.length) {
    tables.set(all, inner);
    inner = outer;
  }
  const others = [...tables].sort((a, b) => b[0] - a[0]);
  let total = 1;
  for (const [, table] of others) total *= table.tops.length;

  const tops: Whole[] = [];
  const bottoms: Whole[] = [];
  /** Sets what every output is multiplied by for one choice of everything outside the inner half; answers its ways. */
  const look = (group: number): number => {
    let ways = 1;
    for (let n = 0; n < size; n++) tops[n] = bottoms[n] = cast(1);
    for (const [on, table] of others) {
      const length = table.tops.length;
      const at = group % length;
      group = (group - at) / length;
      ways *= table.ways[at + 1]! - table.ways[at]!;
      for (let n = 0; n < size; n++)
        if (on & (1 << n)) {
          tops[n]! *= table.tops[at]!;
          bottoms[n]! *= table.bottoms[at]!;
        }
    }
    return ways;
  };

  // Five numbers a group: what was chosen, the inner ratios from and to, the tyres' ratios from and to.
  const groups: number[] = [];
  const factors: Whole[] = [];
  const ranged = ranges.map(({ output, aim }) => ({ output, ...boundsOf(aim, cast) }));
  let count = 0;
  let from = 0;
  let to = 0;
  for (let group = 0; group < total; group++) {
    const ways = look(group);
    let start = 0;
    let end = inner.tops.length;
    for (const { output, lowA, lowB, highA, highB } of ranged) {
      const top = tops[output]!;
      const bottom = bottoms[output]!;
      from = firstFrom(inner, top * lowA, bottom * lowB, false, from);
      to = firstFrom(inner, top * highA, bottom * highB, true, to);
      if (from > start) start = from;
      if (to < end) end = to;
    }
    let low = 0;
    let high = rolling.tops.length;
    if (compare && start < end) {
      const up = castTyre(tops[against]!) * castTyre(bottoms[of]!);
      const down = castTyre(bottoms[against]!) * castTyre(tops[of]!);
      const [least, most] = scales as [Fraction, Fraction];
      low = firstFrom(rolling, up * castTyre(least[0]), down * castTyre(least[1]), false, 0);
      high = firstFrom(rolling, up * castTyre(most[0]), down * castTyre(most[1]), true, low);
    }
    if (start < end && low < high) {
      groups.push(group, start, end, low, high);
      for (const { output, a, b, c } of ranged)
        factors.push(tops[output]! * a, bottoms[output]! * b, bottoms[output]! * c);
      count += ways * (inner.ways[end]! - inner.ways[start]!) * (rolling.ways[high]! - rolling.ways[low]!);
    }
    if (group % 4096 === 4095) yield { found: [], progress: group / total / 2 };
  }
  yield { found: [], count, progress: 0.5 };

  // Within a group the distance falls to one place and rises from there: two runs, each in order. A heap merges them.
  const heap: number[] = [];
  const at: number[] = [];
  const gapTops: Whole[] = [];
  const gapBottoms: Whole[] = [];
  const gap = {} as Gap;
  const wide = ranged.length * 3;
  const measure = (group: number, place: number): void =>
    farthest(inner.tops[place]!, inner.bottoms[place]!, factors, group * wide, (group + 1) * wide, gap);
  /** Moves a run to a place; false beyond its end. Even runs rise, odd ones fall. */
  const move = (run: number, place: number): boolean => {
    const group = run >> 1;
    if (place < groups[group * 5 + 1]! || place >= groups[group * 5 + 2]!) return false;
    measure(group, place);
    at[run] = place;
    gapTops[run] = gap.top;
    gapBottoms[run] = gap.bottom;
    return true;
  };
  for (let group = 0; group * 5 < groups.length; group++) {
    let low = groups[group * 5 + 1]!;
    let high = groups[group * 5 + 2]! - 1;
    while (low < high) {
      const middle = (low + high) >> 1;
      measure(group, middle);
      const { top, bottom } = gap;
      measure(group, middle + 1);
      if (isBelow(gap.top, gap.bottom, top, bottom)) low = middle + 1;
      else high = middle;
    }
    for (const run of [0, 1]) if (move(group * 2 + run, low - run)) heap.push(group * 2 + run);
    if (group % 4096 === 4095) yield { found: [], count, progress: 0.5 };
  }
  const before = (a: number, b: number): boolean => isBelow(gapTops[a]!, gapBottoms[a]!, gapTops[b]!, gapBottoms[b]!);
  heapify(heap, before);

  interface Hit {
    readonly picks: readonly number[];
    readonly result: Result;
  }
  /** All ways to where a run stands. */
  const hitsAt = (run: number, hits: Hit[]): void => {
    const [group, , , low, high] = groups.slice((run >> 1) * 5, (run >> 1) * 5 + 5) as [
      number,
      number,
      number,
      number,
      number,
    ];
    const place = at[run]!;
    look(group);
    const ratios = aims.flatMap(({ rest }, n) => [
      BigInt(tops[n]!) * BigInt(inner.tops[place]!) * rest.numerator,
      BigInt(bottoms[n]!) * BigInt(inner.bottoms[place]!) * rest.denominator,
    ]);
    const result = { ratios: ratios as never, gap: { top: gapTops[run]!, bottom: gapBottoms[run]! } };
    const picks: number[] = [];
    const within = (n: number, left: number): void => {
      const table = others[n]?.[1];
      if (!table) hits.push({ picks: [...picks], result });
      else {
        const length = table.tops.length;
        unfold(table, left % length, picks, () => within(n + 1, Math.floor(left / length)));
      }
    };
    for (let tyre = low; tyre < high; tyre++)
      unfold(rolling, tyre, picks, () => unfold(inner, place, picks, () => within(0, group)));
  };
  const show = ({ picks, result }: Hit): FoundTrain<C> => {
    let n = 0;
    const chosen = stages.map((stage): C | Candidate =>
      "choose" in stage
        ? stage.choose[picks[n++]!]!
        : { driver: stage.drivers[picks[n++]!]!, driven: stage.drivens[picks[n++]!]! },
    );
    n = gears;
    const rolled = wheels.map((list) => list?.[picks[n++]!]);
    return new FoundTrain(chosen, rolled, result, compare ? [of, against] : []);
  };

  let listed = 0;
  while (heap.length) {
    const hits: Hit[] = [];
    const first = { top: gapTops[heap[0]!]!, bottom: gapBottoms[heap[0]!]! };
    // All that are exactly as far belong together.
    while (heap.length && !isBelow(first.top, first.bottom, gapTops[heap[0]!]!, gapBottoms[heap[0]!]!)) {
      const run = heap[0]!;
      hitsAt(run, hits);
      if (!move(run, at[run]! + (run & 1 ? -1 : 1))) {
        const last = heap.pop()!;
        if (heap.length) heap[0] = last;
      }
      if (heap.length) sink(heap, 0, before);
    }
    hits.sort((a, b) => {
      let n = 0;
      while (n < places.length - 1 && a.picks[n] === b.picks[n]) n++;
      return a.picks[n]! - b.picks[n]!;
    });
    listed += hits.length;
    yield { found: hits.map(show), count, progress: (1 + listed / count) / 2 };
  }
}

/**
 * All trains that meet what is wanted, in a stated order: the worst output's distance from the middle of its range, first
 * to last; exactly equal ones by the picks of each stage (driver, driven, id), stage after stage, then by the wheels.
 * Exact and complete. The count is told before the finds; batches without finds only tell how far the work is. Stop it
 * by leaving the loop.
 */
export function findTrains<C extends Candidate>(question: TrainQuestion<C>): Generator<Batch<FoundTrain<C>>, void> {
  return arrange(nearest(question), question.order);
}
