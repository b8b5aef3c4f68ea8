import type { Part } from "../drivetrain/index.js";
import { type Bounded, bounded, lengthOf, type Rational, rational, ratioOf } from "../exact/index.js";
import { type Bill, billOf, type BuyLine, type Cost, costOfLine, emptyStock } from "../parts/index.js";
import { arrange, type Batch, costOfAll, type Step, told } from "./batch.js";
import { areHad } from "./ends.js";
import type { GearPick } from "./found.js";
import { merge, type Spots } from "./merge.js";
import { inOrder, Pace, type Working } from "./pace.js";
import { planOf, type Plan } from "./plan.js";
import type { TrainQuestion } from "./question.js";
import { type Groups, sweep } from "./sweep.js";
import { type Gap, totalsOf } from "./wanted.js";
import { Ways } from "./ways.js";

/** What all trains of a search share. */
interface Base {
  readonly plan: Plan;
  readonly question: TrainQuestion;
  /** Parts that more than one place could have: what they come to depends on all of the places. */
  readonly shared: ReadonlySet<Part>;
}

/** A train that meets what is wanted, with everything that taking it means, worked out when it is asked for. */
export class FoundTrain {
  readonly #base: Base;
  readonly #choices: readonly number[];
  readonly #gap: Gap;
  #picks: readonly GearPick[] | undefined;

  /** @internal */
  constructor(base: Base, choices: readonly number[], gap: Gap) {
    this.#base = base;
    this.#choices = choices;
    this.#gap = gap;
  }

  /** In the order of the stages asked about. */
  get picks(): readonly GearPick[] {
    let at = 0;
    return (this.#picks ??= this.#base.plan.stages.map((stage) =>
      stage.pickAt(this.#choices.slice(at, (at += stage.places))),
    ));
  }

  /** In the order of the outputs; undefined where there was no wheel to choose. */
  get wheels(): readonly (Part | undefined)[] {
    const { plan, question } = this.#base;
    let at = plan.stages.reduce((sum, { places }) => sum + places, 0);
    return question.outputs.map(({ wheels }) => wheels && wheels[this.#choices[at++]!]);
  }

  /** What the picks come to that drive some aims. */
  #ratio(bits: number): Rational {
    const { drives } = this.#base.plan;
    return this.picks.reduce(
      (product, { ratio }, n) => (drives[n]! & bits ? product.times(ratioOf(...ratio)) : product),
      rational(1),
    );
  }

  /** Motor turns for one wheel turn, in the order of the outputs; an interval where the rest of the train is one. */
  get totals(): readonly Bounded[] {
    const { plan, question } = this.#base;
    const bitOf = (output: number) => 1 << plan.aims.findIndex((aim) => aim.output === output);
    return totalsOf(plan.aims, question.outputs.length, (output) => this.#ratio(bitOf(output)));
  }

  /** How far the worst output is from the middle of its range. */
  get distance(): Rational {
    return ratioOf(this.#gap.top, this.#gap.bottom);
  }

  /** How much farther the one output rolls than the other, as a share of the other, where that was asked. */
  get ahead(): Bounded | undefined {
    const { plan } = this.#base;
    const [of, against] = plan.compared;
    if (of === undefined || against === undefined) return undefined;
    const gears = plan.rest.times(bounded(this.#ratio(1 << against).over(this.#ratio(1 << of))));
    const { wheels } = this;
    const size = (aim: number): Rational => {
      const wheel = plan.tyres ? wheels[plan.aims[aim]!.output] : undefined;
      return wheel ? lengthOf(wheel.diameter!) : rational(1);
    };
    return gears.times(bounded(size(of).over(size(against)))).minus(1);
  }

  get #lines(): readonly BuyLine[] {
    const { question, shared } = this.#base;
    const { stock = emptyStock } = question;
    const wheels = this.wheels.flatMap((part, n) => {
      return part ? ([[part, question.outputs[n]!.pieces ?? 1]] as const) : [];
    });
    const all = [...this.picks.flatMap(({ wants }) => wants), ...wheels];
    if (!all.some(([part]) => shared.has(part)))
      return [...this.picks.flatMap(({ lines }) => lines), ...wheels.map(([part, n]) => stock.lineFor(part, n))];
    const pieces = new Map<Part, number>();
    for (const [part, count] of all) pieces.set(part, (pieces.get(part) ?? 0) + count);
    return [...pieces].map(([part, count]) => stock.lineFor(part, count));
  }

  /** Whether all parts can be had; undefined where nobody has said. */
  get had(): boolean | undefined {
    return areHad(this.#lines);
  }

  /** What it takes to have the parts, for the order of a search. */
  get cost(): Cost {
    return costOfAll(this.#lines.map((line) => costOfLine(line, this.#base.plan.currency())));
  }

  /** What is to pay for the parts, a part that is used twice in whole packs together. */
  get pay(): Bill {
    return billOf(this.#lines.filter(({ packs }) => packs));
  }
}

/** Parts that more than one place could have, and whether there may be too few of one. */
function sharedIn({ stages }: Plan, { outputs, stock = emptyStock, stages: asked }: TrainQuestion) {
  const pieces = new Map<Part, number[]>();
  const add = (part: Part, count: number) => pieces.set(part, [...(pieces.get(part) ?? []), count]);
  stages.forEach(({ parts }, n) => parts.forEach((part) => part.id && add(part, asked[n]!.pieces ?? 1)));
  for (const { wheels = [], pieces: count = 1 } of outputs) for (const part of wheels) add(part, count);
  const several = [...pieces].filter(([, counts]) => counts.length > 1);
  const scarce = several.some(
    ([part, counts]) => areHad([stock.lineFor(part, 2 * counts.reduce((sum, count) => sum + count))]) === false,
  );
  return { shared: new Set(several.map(([part]) => part)), scarce };
}

/** Writes the choice in each place as one number whose order is that of the choices, and back. */
class Coding {
  readonly #weights: readonly number[];
  readonly #sizes: readonly number[];

  constructor(sizes: readonly number[]) {
    this.#sizes = sizes;
    const weights = [...sizes];
    let weight = 1;
    for (let n = sizes.length; n--;) {
      weights[n] = weight;
      weight *= sizes[n]!;
    }
    this.#weights = weights;
  }

  write(choices: readonly number[]): number {
    let sum = 0;
    for (let n = 0; n < this.#weights.length; n++) sum += choices[n]! * this.#weights[n]!;
    return sum;
  }

  read(code: number): number[] {
    return this.#weights.map((weight, n) => Math.floor(code / weight) % this.#sizes[n]!);
  }
}

/** Goes through all ways to some spots. */
function* walk(
  { outer, inner, rolling }: Plan,
  heads: readonly number[],
  { groups, places }: Spots,
  ways: Ways,
  meet: (choices: readonly number[]) => void,
  pace: Pace,
): Working<void> {
  const tables = [rolling, inner, ...outer];
  for (let n = 0; n < groups.length; n++) {
    const head = groups[n]! * 5;
    const at = [0, places[n]!];
    let choice = heads[head]!;
    for (const { tops } of outer) {
      at.push(choice % tops.length);
      choice = Math.floor(choice / tops.length);
    }
    for (let tyre = heads[head + 3]!; tyre < heads[head + 4]!; tyre++) {
      at[0] = tyre;
      ways.begin(tables, at);
      for (let way; (way = ways.next(pace)) !== false;) {
        if (way) meet(ways.picks);
        else yield;
      }
    }
  }
}

const ascending = (a: number, b: number): number => a - b;

function* look(question: TrainQuestion): Generator<Step<FoundTrain>, void> {
  const pace = new Pace();
  const plan = yield* planOf(question, pace);
  if (!plan) return yield { found: [], count: 0, progress: 1 };
  const { shared, scarce } = sharedIn(plan, question);
  const base: Base = { plan, question, shared };
  const groups: Groups = { heads: [], count: 0 };
  yield* sweep(plan, groups, pace);
  const { heads, count } = groups;
  // Where a part is scarce, some of these cannot be had: how many there are is known when all have been looked at.
  const known = scarce ? {} : { count };
  yield { found: [], ...known, progress: count ? 0.5 : 1 };
  const coding = new Coding(plan.sizes);
  const ways = new Ways();
  let seen = 0;
  let given = 0;
  for (const spots of count ? merge(plan, heads, pace) : []) {
    if (!spots) {
      yield undefined;
      continue;
    }
    const codes = inOrder<number>(
      (meet) => walk(plan, heads, spots, ways, (choices) => meet(coding.write(choices)), pace),
      ascending,
      pace,
    );
    for (const some of codes) {
      if (!some) {
        yield undefined;
        continue;
      }
      const trains = some.map((code) => new FoundTrain(base, coding.read(code), spots.gap));
      const found = scarce ? trains.filter(({ had }) => had !== false) : trains;
      seen += some.length;
      given += found.length;
      yield { found, ...known, progress: (1 + seen / count) / 2 };
    }
  }
  if (scarce) yield { found: [], count: given, progress: 1 };
}

/**
 * All trains that meet what is wanted, in a stated order: the worst output's distance from the middle of its range, first
 * to last; exactly equal ones by the picks of each stage (driver, driven, ids), stage after stage, then by the wheels. Exact
 * and complete. What a stage may be is pairs that mesh and fit its mount, sets, or bare counts; a part that is there once
 * is not used twice. Sleeves and plates are chosen for each stage by itself.
 *
 * The count is told before the finds, unless parts are scarce; batches without finds only tell how far the work is: each step
 * takes a few milliseconds. Stop it by leaving the loop, or by the question's signal.
 *
 * @throws MeshwrightError as `findPairs`, and `missing-reference`. `too-many-choices` where more than a million ways to fill
 * one half of the train would have to be held at once, or there are more combinations than whole numbers count: `values` say
 * how many `combinations` there are, how many ways were `found`, and how many are `allowed`. In another order than nearest
 * first all finds are held, a million at the most.
 *
 * @example
 * const sets = [[12, 35], [11, 36]].map(([driver, driven]) => ({ id: `set-${driver}`, is: "set", driver, driven }) as Part);
 * const stages = [{ id: "primary", drivers: [15, 17], drivens: [62, 66] }, { id: "ring", on: ["rear"], sets }];
 * const found = [...findTrains({ stages, outputs: [{ id: "rear", from: 12, to: 13 }] })].flatMap((batch) => batch.found);
 * found.map(({ picks }) => picks[0]!.counts.join(" to ")); // => ["17 to 66", "15 to 66", "15 to 62"]
 * found[0]!.distance.toFraction(); // => "7/34"
 */
export const findTrains = (question: TrainQuestion): Generator<Batch<FoundTrain>, void> =>
  told(arrange(look(question), question.order), question.signal);
