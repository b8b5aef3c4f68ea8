import type { Part } from "../drivetrain/index.js";
import { Bounded, lengthOf, MeshwrightError, rational } from "../exact/index.js";
import { choicesOf, type Fraction, type StageChoices } from "./choices.js";
import { currencyFor, Ends } from "./ends.js";
import type { Known } from "./gears.js";
import { checkHeld } from "./limit.js";
import type { Pace, Working } from "./pace.js";
import type { TrainQuestion } from "./question.js";
import { type Counted, multiply, type Table, unitOf } from "./table.js";
import { type Aim, aimsOf, type Bounds, boundsOf } from "./wanted.js";
import { type Cast, castFor, greatest, type Whole } from "./whole.js";

/** One place to choose. */
interface Place {
  readonly choices: readonly Fraction[];
  /** Which aims it is part of, one bit each; 0 for a wheel. */
  readonly on: number;
  /** Drivens alone, drivers alone, or both: what multiplies well comes first. */
  readonly rank: number;
}

/** A question made ready: what drives all outputs split in two, to be met in the middle, and all else beside it. */
export interface Plan {
  readonly aims: readonly Aim[];
  readonly bounds: readonly (Bounds | undefined)[];
  readonly stages: readonly StageChoices[];
  /** The bits of the aims that each stage is part of. */
  readonly drives: readonly number[];
  /** How many choices each place has, in the order of the stages, then of the wheels. */
  readonly sizes: readonly number[];
  readonly inner: Table;
  /** The outer half, and what drives some outputs only; `on` tells which. One at least. */
  readonly outer: readonly Table[];
  readonly on: readonly number[];
  /** How the wheels compare. */
  readonly rolling: Table;
  /** The aims of the outputs that are compared, and the ends of their comparison as fractions of the wheels'. */
  readonly compared: readonly number[];
  readonly ends: readonly (readonly [Whole, Whole])[];
  /** The rest of what is compared, its wheels aside. */
  readonly rest: Bounded;
  /** Whether chosen wheels count in the comparison. */
  readonly tyres: boolean;
  readonly currency: () => string;
  readonly castRolling: Cast;
  readonly cast: Cast;
}

/** The most that one choice of each place can multiply to, on either side. */
const bound = (places: readonly Place[]): number =>
  Math.max(
    ...[0, 1].map((side) => places.reduce((most, { choices }) => most * greatest(choices.map((one) => one[side]!)), 1)),
  );

/** Which places fill the inner half: those that drive all outputs, as long as there is room. */
function halves(
  places: readonly Place[],
  all: number,
): { readonly inside: readonly boolean[]; readonly order: number[] } {
  const combinations = places.reduce((product, { choices, on }) => (on ? product * choices.length : product), 1);
  const half = Math.max(4096, Math.sqrt(combinations) * 1.000001);
  const order = places.map((_, index) => index).sort((a, b) => places[a]!.rank - places[b]!.rank);
  let rows = 1;
  const inside: boolean[] = [];
  for (const index of order) {
    const { choices, on } = places[index]!;
    inside[index] = on === all && rows * choices.length <= half;
    if (inside[index]) rows *= choices.length;
  }
  return { inside, order };
}

/** Refuses what would not fit into memory, by counting all combinations and what of them has to be held. */
function checkSize(places: readonly Place[], inside: readonly boolean[], all: number): void {
  const rows = (chosen: (place: Place, index: number) => boolean) =>
    places.reduce((product, place, index) => (chosen(place, index) ? product * place.choices.length : product), 1);
  const inner = rows((_, index) => inside[index]!);
  const outer = rows(({ on }, index) => on === all && !inside[index]);
  const rest = rows(({ on }) => on !== all && on !== 0);
  const rolling = rows(({ on }) => !on);
  // Of the two halves the smaller one is gone through, beside all that drives some outputs only.
  const most = Math.max(inner, outer, rolling, rest * Math.min(inner, outer));
  checkHeld(
    most,
    "stages",
    places.reduce((product, { choices }) => product * BigInt(choices.length), 1n),
  );
}

/** Makes a question ready, step by step; nothing where a list is empty. */
export function* planOf(question: TrainQuestion, pace: Pace): Working<Plan | undefined> {
  const { outputs, compare } = question;
  const aims = aimsOf(outputs);
  const outputOf = (id: string): number => {
    const index = outputs.findIndex((one) => one.id === id);
    if (index >= 0) return index;
    throw new MeshwrightError("missing-reference", id, `No "${id}"; expected an output that is asked about.`);
  };
  const bitsOf = (output: number): number =>
    aims.reduce((bits, aim, n) => (aim.output === output ? bits | (1 << n) : bits), 0);
  const all = 2 ** aims.length - 1;
  const both = compare ? [outputOf(compare.of), outputOf(compare.with)] : [];
  const compared = both.map((output) => aims.findIndex((aim) => aim.output === output));
  const wheels = outputs.map((one) => one.wheels);
  // Where one of the two has no wheel, gears alone are compared.
  const tyres = compare?.tyres ?? both.every((output) => wheels[output]);

  const currency = currencyFor(question.stages, question);
  // Stages are often alike: the two axles of a build.
  const known: Known = new Map();
  const stages: StageChoices[] = [];
  const drives: number[] = [];
  const places: Place[] = [];
  for (const stage of question.stages) {
    const on = stage.on ? stage.on.reduce((bits, id) => bits | bitsOf(outputOf(id)), 0) : all;
    const choices = yield* choicesOf(stage, new Ends(stage, question, currency), known, pace);
    stages.push(choices);
    drives.push(on);
    const ranks = choices.places === 2 ? [1, 0] : [2];
    choices.columns.forEach((column, n) => places.push({ choices: column, on, rank: ranks[n]! }));
  }
  wheels.forEach((list, output) => {
    const power = tyres ? Number(output === both[0]) - Number(output === both[1]) : 0;
    const fractionOf = ({ diameter }: Part): Fraction => {
      const { numerator, denominator } = lengthOf(diameter ?? "", "diameter").power(power);
      return [numerator, denominator];
    };
    if (list) places.push({ choices: list.map(fractionOf), on: 0, rank: 2 });
  });
  if (places.some(({ choices }) => !choices.length)) return undefined;
  const { inside, order } = halves(places, all);
  checkSize(places, inside, all);

  const largest = bound(places.filter(({ on }) => on));
  const cast = castFor(largest * greatest(aims.flatMap((aim) => boundsOf(aim, Number as Cast) ?? [])));
  const rest = restOf(question, both);
  const ends = compare
    ? ([[rest.low, compare.from], [rest.high, compare.to]] as const).map(([left, share]): Fraction => {
        const by = rational(share).plus(1);
        return [left.numerator * by.denominator, left.denominator * by.numerator];
      })
    : []; // prettier-ignore
  const castRolling = castFor(largest ** 2 * bound(places.filter(({ on }) => !on)) * greatest(ends.flat()));

  const tables = new Map<number, Table>();
  const counted: Counted = new Map();
  let inner = unitOf(cast);
  for (const index of order) {
    const { choices, on } = places[index]!;
    const kind = on ? cast : castRolling;
    const column = { tops: choices.map(([top]) => kind(top)), bottoms: choices.map(([, bottom]) => kind(bottom)) };
    if (inside[index]) inner = yield* multiply(inner, column, index, counted, pace);
    else tables.set(on, yield* multiply(tables.get(on) ?? unitOf(kind), column, index, counted, pace));
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
    drives,
    sizes: places.map(({ choices }) => choices.length),
    inner,
    outer: [...tables.values()],
    on: [...tables.keys()],
    rolling,
    compared,
    ends: ends.map(([a, b]) => [castRolling(a), castRolling(b)]),
    rest,
    tyres,
    currency,
    cast,
    castRolling,
  };
}

/** What the rest of the one output that is compared is over that of the other. */
function restOf({ outputs, compare }: TrainQuestion, both: readonly number[]): Bounded {
  const bounds = (value: Parameters<typeof rational>[0] | Bounded): Bounded =>
    value instanceof Bounded ? value : new Bounded(rational(value), rational(value));
  if (!compare) return bounds(1);
  if (compare.rest !== undefined) return bounds(compare.rest);
  const [of, against] = both.map((output) => bounds(outputs[output]!.rest ?? 1)) as [Bounded, Bounded];
  return against.over(of);
}
