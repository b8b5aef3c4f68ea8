import { lengthOf, MeshwrightError, rational, type Rational } from "../exact/index.js";
import type { Batch } from "./batch.js";
import { type Counted, multiply, type Table, unitOf } from "./table.js";
import type { Candidate, StageChoice, TrainQuestion, WheelCandidate } from "./question.js";
import { type Aim, aimsOf, type Bounds, boundsOf, countOf } from "./wanted.js";
import { type Cast, castFor, greatest, type Whole } from "./whole.js";

type Fraction = readonly [top: number | bigint, bottom: number | bigint];

/** One place to choose. */
interface Place {
  readonly choices: readonly Fraction[];
  /** Which outputs it drives, one bit each; 0 for a wheel. */
  readonly on: number;
  /** Drivens alone, drivers alone, or both: what multiplies well comes first. */
  readonly rank: number;
}

/** A question made ready: what drives all outputs split in two, to be met in the middle, and all else beside it. */
export interface Plan<C extends Candidate> {
  readonly aims: readonly Aim[];
  readonly bounds: readonly (Bounds | undefined)[];
  /** Sorted: the order among equals follows from it. */
  readonly stages: readonly StageChoice<C>[];
  readonly wheels: readonly (readonly WheelCandidate[] | undefined)[];
  readonly inner: Table;
  /** The outer half, and what drives some outputs only; `on` tells which. One at least. */
  readonly outer: readonly Table[];
  readonly on: readonly number[];
  /** How the wheels compare. */
  readonly rolling: Table;
  /** Which outputs are compared, and the ends of their comparison as fractions of the wheels'. */
  readonly compared: readonly number[];
  readonly ends: readonly (readonly [Whole, Whole])[];
  readonly cast: Cast;
  readonly castRolling: Cast;
}

const byText = (a = "", b = ""): number => (a < b ? -1 : a > b ? 1 : 0);
const byNumber = (list: readonly number[]): number[] => [...list].sort((a, b) => a - b);

const inOrder = <C extends Candidate>(stage: StageChoice<C>): StageChoice<C> =>
  "choose" in stage
    ? {
        ...stage,
        choose: [...stage.choose].sort((a, b) => a.driver - b.driver || a.driven - b.driven || byText(a.id, b.id)),
      }
    : { ...stage, drivers: byNumber(stage.drivers), drivens: byNumber(stage.drivens) };

/** The most that one choice of each place can multiply to, on either side. */
const bound = (places: readonly Place[]): number =>
  Math.max(
    ...[0, 1].map((side) => places.reduce((most, { choices }) => most * greatest(choices.map((one) => one[side]!)), 1)),
  );

/** Makes a question ready, step by step; nothing where a list is empty. */
export function* planOf<C extends Candidate>(question: TrainQuestion<C>): Generator<Batch<never>, Plan<C> | undefined> {
  const { outputs, compare } = question;
  const aims = aimsOf(outputs);
  const indexOf = (id: string): number => {
    const index = aims.findIndex((aim) => aim.id === id);
    if (index >= 0) return index;
    throw new MeshwrightError("missing-reference", id, `No "${id}"; expected an output that is asked about.`);
  };
  const all = 2 ** aims.length - 1;
  const compared = compare ? [indexOf(compare.of), indexOf(compare.with)] : [];
  const wheels = outputs.map((one) => one.wheels);
  // Where one of the two has no wheel, gears alone are compared.
  const tyres = compared.every((n) => wheels[n]);

  const stages = question.stages.map(inOrder);
  const places = stages.flatMap((stage): Place[] => {
    const on = stage.on ? stage.on.reduce((sum, id) => sum | (1 << indexOf(id)), 0) : all;
    const count = (teeth: number) => countOf(teeth, stage.id);
    return "choose" in stage
      ? [{ choices: stage.choose.map((one) => [count(one.driven), count(one.driver)]), on, rank: 2 }]
      : [
          { choices: stage.drivers.map((teeth) => [1, count(teeth)]), on, rank: 1 },
          { choices: stage.drivens.map((teeth) => [count(teeth), 1]), on, rank: 0 },
        ];
  });
  wheels.forEach((list, n) => {
    const power = tyres ? Number(n === compared[0]) - Number(n === compared[1]) : 0;
    const fractionOf = ({ diameter }: WheelCandidate): Fraction => {
      const { numerator, denominator } = lengthOf(diameter, "diameter").power(power);
      return [numerator, denominator];
    };
    if (list) places.push({ choices: list.map(fractionOf), on: 0, rank: 2 });
  });
  if (places.some(({ choices }) => !choices.length)) return undefined;

  const largest = bound(places.filter(({ on }) => on));
  const cast = castFor(largest * greatest(aims.flatMap((aim) => boundsOf(aim, Number as Cast) ?? [])));
  const ratio = (index: number): Rational => aims[compared[index]!]!.rest;
  const ends = compare
    ? [compare.from, compare.to].map((one): Fraction => {
        const share = rational(one).plus(1);
        const rest = ratio(1).over(ratio(0));
        return [rest.numerator * share.denominator, rest.denominator * share.numerator];
      })
    : [];
  const castRolling = castFor(largest ** 2 * bound(places.filter(({ on }) => !on)) * greatest(ends.flat()));

  const tables = new Map<number, Table>();
  const counted: Counted = new Map();
  let inner = unitOf(cast);
  const combinations = places.reduce((product, { choices, on }) => (on ? product * choices.length : product), 1);
  const half = Math.max(4096, Math.sqrt(combinations) * 1.000001);
  let rows = 1;
  const ranked = places.map((place, index) => ({ ...place, index })).sort((a, b) => a.rank - b.rank);
  for (const { choices, on, index } of ranked) {
    const sort = on ? cast : castRolling;
    const column = { tops: choices.map(([top]) => sort(top)), bottoms: choices.map(([, bottom]) => sort(bottom)) };
    if (on === all && rows * choices.length <= half) {
      rows *= choices.length;
      inner = multiply(inner, column, index, counted);
    } else tables.set(on, multiply(tables.get(on) ?? unitOf(sort), column, index, counted));
    yield { found: [], progress: 0 };
  }
  const rolling = tables.get(0) ?? unitOf(castRolling);
  tables.delete(0);
  if (!tables.size) tables.set(all, unitOf(cast));
  const outer = tables.get(all);
  if (outer && outer.tops.length > inner.tops.length) {
    tables.set(all, inner);
    inner = outer;
  }
  return {
    aims,
    bounds: aims.map((aim) => boundsOf(aim, cast)),
    stages,
    wheels,
    inner,
    outer: [...tables.values()],
    on: [...tables.keys()],
    rolling,
    compared,
    ends: ends.map(([a, b]) => [castRolling(a), castRolling(b)]),
    cast,
    castRolling,
  };
}
