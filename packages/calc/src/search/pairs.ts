import { rational, type Rational, ratioOf } from "../exact/index.js";
import { type Toothed, comparePitch, moduleOf } from "../gears/index.js";
import { type FitMount, toothSumsFor } from "../fit/index.js";
import { arrange, type Batch, type Cost, costOfAll, type Order } from "./batch.js";
import { type Adapter, fitBy, type LooseGear, type PairFit, type PairFits } from "./fit.js";
import { type Aim, aimsOf, boundsOf, countOf, farthest, type Gap, type Wanted } from "./wanted.js";
import { type Cast, castFor, greatest, isBelow, type Whole } from "./whole.js";

type Gear = LooseGear | number;
/** The part itself; for a bare count, a gear of it. */
export type GearOf<G extends Gear> = G extends number ? LooseGear : G;

export interface PairQuestion<D extends Gear = Gear, E extends Gear = Gear> {
  /** Parts, or bare counts of the question's pitch. */
  readonly drivers: readonly D[];
  readonly drivens: readonly E[];
  readonly outputs: readonly Wanted[];
  /** The pitch of bare counts, and the one that the mount is counted in where it has none of its own. */
  readonly pitch?: Toothed;
  /** What the pair must fit. */
  readonly mount?: FitMount;
  /** How fit is judged; by the mount alone where not given. See `fitBy`. */
  readonly fit?: PairFits;
  readonly order?: Order;
  /** What a part costs; nothing where not given. */
  costOf?(part: GearOf<D> | GearOf<E> | Adapter): Cost;
}

/** A pair that was looked at. */
export interface FoundPair<D extends Gear = Gear, E extends Gear = Gear> extends PairFit {
  readonly driver: GearOf<D>;
  readonly driven: GearOf<E>;
  /** Motor turns for one wheel turn, in the order of the outputs. */
  readonly reductions: readonly Rational[];
  /** How far each output is outside its range: below zero, zero, or above. */
  readonly outside: readonly Rational[];
  /** How far the worst output is from the middle of its range. */
  readonly distance: Rational;
  readonly cost: Cost;
}

/** Gears of one pitch, by their counts. */
interface Shelf {
  readonly pitch: Toothed;
  readonly byTeeth: Map<number, LooseGear[]>;
}

const order = (a: string | undefined = "", b: string | undefined = ""): number => (a < b ? -1 : a > b ? 1 : 0);

function shelvesOf(gears: readonly Gear[], pitch: Toothed, at: string): Map<string, Shelf> {
  const shelves = new Map<string, Shelf>();
  // By what is written; two ways to write one pitch share a shelf.
  const written = new Map<string, Shelf>();
  for (const one of gears) {
    const gear = typeof one === "number" ? { ...pitch, teeth: one } : one;
    const { module, diametralPitch, pressureAngle = 20 } = gear;
    const text = `${module} ${diametralPitch} ${pressureAngle}`;
    let shelf = written.get(text);
    if (!shelf) {
      const key = `${moduleOf(gear)} ${rational(pressureAngle)}`;
      shelf = shelves.get(key) ?? { pitch: gear, byTeeth: new Map() };
      shelves.set(key, shelf);
      written.set(text, shelf);
    }
    const teeth = countOf(gear.teeth, at);
    const alike = shelf.byTeeth.get(teeth);
    if (alike) alike.push(gear);
    else shelf.byTeeth.set(teeth, [gear]);
  }
  return shelves;
}

interface Class {
  readonly drivers: readonly LooseGear[];
  readonly drivens: readonly LooseGear[];
  readonly teeth: readonly [driver: number, driven: number];
  readonly top: Whole;
  readonly bottom: Whole;
  readonly reaches: boolean;
  readonly same: boolean;
  readonly meshes: boolean;
}

const unjudged: PairFit = { reasons: [], adapters: [] };
const free = costOfAll([]);

/** All pairs that are worth a look, nearest to the middle first: what is not to be found is left out before the product. */
function* look(question: PairQuestion, missed: boolean): Generator<Batch<FoundPair>, void> {
  const { pitch = {} } = question;
  const mount = question.mount && (moduleOf(question.mount) ? question.mount : { ...question.mount, ...pitch });
  const fit = question.fit ?? fitBy(mount);
  const judged = question.fit ?? mount;
  const aims = aimsOf(question.outputs);
  const drivers = shelvesOf(question.drivers, pitch, "drivers");
  const drivens = shelvesOf(question.drivens, pitch, "drivens");
  const counts = [...drivers.values(), ...drivens.values()].flatMap((shelf) => [...shelf.byTeeth.keys()]);
  const sizes = aims.flatMap((aim) => boundsOf(aim, Number as Cast) ?? []);
  const cast = castFor(greatest(counts) * greatest(sizes));
  const bounds = aims.flatMap((aim) => {
    const one = boundsOf(aim, cast);
    return one ? [one] : [];
  });
  const factors = bounds.flatMap(([a, , , middle, c]) => [a, middle, c]);

  const classes: Class[] = [];
  for (const [key, shelf] of drivers)
    for (const [otherKey, other] of drivens) {
      const same = key === otherKey;
      if (!same && !(missed && comparePitch(shelf.pitch, other.pitch)?.pitch === "near")) continue;
      const sums = mount && moduleOf(shelf.pitch) && same ? toothSumsFor(mount, shelf.pitch) : undefined;
      for (const [driver, some] of shelf.byTeeth)
        for (const [driven, others] of other.byTeeth) {
          const top = cast(driven);
          const bottom = cast(driver);
          const reaches = bounds.every(([a, low, high]) => top * a >= bottom * low && top * a <= bottom * high);
          const meshes = same && (!sums || sums.some(([from, to]) => driver + driven >= from && driver + driven <= to));
          if (missed ? !reaches && !meshes : !reaches || !meshes) continue;
          const gap = {} as Gap;
          farthest(top, bottom, factors, 0, factors.length, gap);
          classes.push({ drivers: some, drivens: others, teeth: [driver, driven], ...gap, reaches, same, meshes });
        }
      yield { found: [], progress: 0 };
    }
  classes.sort((a, b) => {
    if (isBelow(a.top, a.bottom, b.top, b.bottom)) return -1;
    if (isBelow(b.top, b.bottom, a.top, a.bottom)) return 1;
    return a.teeth[0] - b.teeth[0] || a.teeth[1] - b.teeth[1];
  });

  let count = 0;
  for (let n = 0; n < classes.length;) {
    const { top, bottom, teeth } = classes[n]!;
    const found: FoundPair[] = [];
    const distance = ratioOf(top, bottom);
    const reductions = aims.map(({ rest }) => rest.times(ratioOf(teeth[1], teeth[0])));
    const outside = aims.map((aim, output) => outsideOf(aim, reductions[output]!));
    for (; n < classes.length && classes[n]!.teeth.join() === teeth.join(); n++) {
      const { drivers: some, drivens: others, reaches, same, meshes } = classes[n]!;
      for (const driver of some)
        for (const driven of others) {
          const { reasons, adapters } = judged || !same ? fit(driver, driven) : unjudged;
          const suits = meshes && reasons.every(({ weight }) => weight === "information");
          if (missed ? suits === reaches : !suits) continue;
          const cost = question.costOf
            ? costOfAll([driver, driven, ...adapters].map((part) => question.costOf!(part)))
            : free;
          found.push({ driver, driven, reductions, outside, distance, reasons, adapters, cost });
        }
    }
    found.sort((a, b) => order(a.driver.id, b.driver.id) || order(a.driven.id, b.driven.id));
    count += found.length;
    yield { found, progress: n / classes.length };
  }
  yield { found: [], count, progress: 1 };
}

const outsideOf = ({ range }: Aim, reduction: Rational): Rational => {
  const below = range && reduction.minus(range[0]);
  const above = range && reduction.minus(range[1]);
  return below && below.sign < 0 ? below : above && above.sign > 0 ? above : rational(0);
};

/**
 * All pairs that reach every range, mesh and fit, in a stated order: the worst output's distance from the middle of its
 * range, first to last; exactly equal ones by driver, driven, then ids. Exact and complete. Pitch, range and tooth sums
 * leave out what is not to be found before gears are paired; batches without finds only tell how far the work is.
 *
 * @throws MeshwrightError `not-a-count`, `no-target`, `not-above-zero`; what cannot be read as a number
 *
 * @example
 * const shelf = { drivers: [13, 15, 17, 20, 23], drivens: [53, 56, 62, 66, 70], pitch: { module: "0.8" } };
 * const mount = { knownPair: [23, 53], closer: "0.1 mm", farther: "0.9 mm" } as const;
 * const outputs = [{ id: "rear", rest: "4025/384", from: 38, to: 46 }];
 * const found = [...findPairs({ ...shelf, mount, outputs })].flatMap((batch) => batch.found);
 * found.map(({ driver, driven }) => [driver.teeth, driven.teeth]); // => [[15, 62]]
 * found[0]!.reductions[0]!.toFraction(); // => "24955/576"
 */
export function findPairs<D extends Gear, E extends Gear>(
  question: PairQuestion<D, E>,
): Generator<Batch<FoundPair<D, E>>, void> {
  return arrange(look(question as PairQuestion, false) as Generator<Batch<FoundPair<D, E>>, void>, question.order);
}

/**
 * The pairs that nearly are what is looked for, in the same order: those that reach every range but do not fit or mesh, or
 * may not, with the reasons; and those that fit but do not reach, with how far outside they are. Pitches that are near
 * each other are looked at too, because they are mistaken for each other.
 *
 * @example
 * const drivers = [{ teeth: 16, diametralPitch: 32 }, { teeth: 17, module: "0.8" }];
 * const mount = { knownPair: [23, 53], closer: "0.1 mm", farther: "0.9 mm" } as const;
 * const question = { drivers, drivens: [{ teeth: 66, module: "0.8" }], mount, outputs: [{ id: "pair", from: 3, to: 5 }] };
 * const missed = [...nearMisses(question)].flatMap((batch) => batch.found);
 * missed.map(({ driver, reasons }) => [driver.teeth, reasons[0]!.code]); // => [[17, "too-far"], [16, "pitch-near"]]
 */
export function nearMisses<D extends Gear, E extends Gear>(
  question: PairQuestion<D, E>,
): Generator<Batch<FoundPair<D, E>>, void> {
  return arrange(look(question as PairQuestion, true) as Generator<Batch<FoundPair<D, E>>, void>, question.order);
}
