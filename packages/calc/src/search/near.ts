import { rational, type Rational, ratioOf } from "../exact/index.js";
import type { Fit } from "../fit/index.js";
import { moduleOf } from "../gears/index.js";
import type { Cost } from "../parts/index.js";
import { type Batch, type Step, told } from "./batch.js";
import type { End } from "./ends.js";
import { FoundPair } from "./found.js";
import type { Meeting, Shelf, Sort } from "./gears.js";
import { type Looking, lookingFor, nearestFirst, type Placed, placeOf, type Wish } from "./looking.js";
import { inOrder, Pace, sort, type Working } from "./pace.js";
import type { PairQuestion } from "./question.js";

/** Two sorts, and what would have to change about their teeth. */
interface Miss extends Placed {
  /** Slot and range together, in teeth. */
  readonly off: Rational;
  /** Nothing is wrong with them but how they are held. */
  readonly suits: boolean;
}

const none = rational(0);
const greater = (a: Rational, b: Rational): Rational => (a.compare(b) >= 0 ? a : b);

/** The most that the mount lacks in millimetres, of those that a test picks. */
const lackOf = ({ reasons }: Fit, picks: (code: string, of: string | undefined) => boolean): Rational =>
  reasons.reduce(
    (most, { code, of, short, weight }) =>
      short && weight !== "information" && picks(code, of) ? greater(most, short.high) : most,
    none,
  );

const isSlot = (code: string): boolean => code === "too-close" || code === "too-far" || code === "no-hole";

/** What a mount lacks for the pairs of a shelf, each thing looked at once: the sum of the teeth settles the centres, each gear its walls. */
class Room {
  readonly #slots = new Map<number, Rational>();
  readonly #walls = { driver: new Map<Sort, Rational>(), driven: new Map<Sort, Rational>() };

  lackOf(meeting: Meeting): Rational {
    const { driver, driven, plain, counts } = meeting;
    const sum = counts[0] + counts[1];
    let slot = plain ? this.#slots.get(sum) : undefined;
    let first = this.#walls.driver.get(driver);
    let second = this.#walls.driven.get(driven);
    if (!slot || !first || !second) {
      const { fit } = meeting;
      slot = lackOf(fit, isSlot);
      first = lackOf(fit, (code, of) => code === "wall" && of === "driver");
      second = lackOf(fit, (code, of) => code === "wall" && of === "driven");
      if (plain) this.#slots.set(sum, slot);
      this.#walls.driver.set(driver, first);
      this.#walls.driven.set(driven, second);
    }
    return greater(slot, greater(first, second));
  }
}

/**
 * How far the worst output is outside its range, by what one tooth more on the driver changes of its total T: outside by e,
 * of a pair that is e / (T / (driver + 1)).
 */
function rangeOff({ aims }: Wish, meeting: Meeting): Rational {
  let most = none;
  const ratio = ratioOf(...meeting.ratio);
  for (const { rest, range } of aims) {
    if (!range) continue;
    const total = rest.times(ratio);
    const off = greater(range[0].minus(total), total.minus(range[1]));
    if (off.sign > 0) most = greater(most, meeting.inTeeth(off, total));
  }
  return most;
}

function* misses(looking: Looking, mounted: boolean, pace: Pace): Working<Miss[]> {
  const { shelves, sets, meet, wish } = looking;
  const list: Miss[] = [];
  const add = (meeting: Meeting, room: Room): void => {
    const placed = placeOf(meeting, wish);
    const module = moduleOf(meeting.driver.pitch);
    const slot = mounted && module ? room.lackOf(meeting).over(module.over(2)) : none;
    const off = slot.plus(rangeOff(wish, meeting));
    list.push({ ...placed, off, suits: !off.sign && meeting.suits });
  };
  const each = function* (shelf: Shelf): Working<void> {
    const room = new Room();
    for (const driver of shelf.drivers)
      for (const driven of shelf.drivens) {
        if (pace.due(128)) yield;
        add(meet(driver, driven), room);
      }
  };
  for (const shelf of shelves) yield* each(shelf);
  for (const set of sets) {
    if (pace.due(128)) yield;
    add(set, new Room());
  }
  return yield* sort(list, (a, b) => a.off.compare(b.off), pace);
}

/** How the two ends of a pair can be held, by what both add: 1 for a part between, 4 where they are not held. */
const additions: readonly (readonly [sum: number, ends: readonly (readonly [End["term"], End["term"]])[]])[] = [
  [0, [[0, 0]]],
  [1, [[0, 1], [1, 0]]],
  [2, [[1, 1]]],
  [4, [[0, 4], [4, 0]]],
  [5, [[1, 4], [4, 1]]],
  [8, [[4, 4]]],
]; // prettier-ignore

const text = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

interface Priced {
  readonly pair: FoundPair;
  readonly miss: Miss;
  readonly cost: Cost;
}

const byPrice = (a: Priced, b: Priced): number =>
  a.cost.unpriced - b.cost.unpriced ||
  a.cost.amount - b.cost.amount ||
  nearestFirst(a.miss, b.miss) ||
  text(a.pair.driver.id, b.pair.driver.id) ||
  text(a.pair.driven.id, b.pair.driven.id);

/** All pairs of some misses whose ends are held in one of some ways. */
function* meetAll(
  group: readonly (readonly [Miss, number])[],
  { wish, ends }: Looking,
  meet: (one: Priced) => void,
  pace: Pace,
): Working<void> {
  const drivers = termsOf((part) => ends.shaft(part));
  for (const [miss, addition] of group) {
    const { driver, driven, set } = miss.meeting;
    const drivens = termsOf((part) => ends.hub(part, !!set));
    for (const [first, second] of additions[addition]![1]) {
      if (miss.suits && first < 4 && second < 4) continue;
      for (const one of drivers(driver, first))
        for (const other of drivens(driven, second)) {
          if (pace.due(8)) yield;
          if (set && one.part !== other.part) continue;
          const pair = new FoundPair(miss, wish, ends, one, other);
          if (pair.isTwice && pair.had === false) continue;
          meet({ pair, miss, cost: pair.cost });
        }
    }
    if (pace.due()) yield;
  }
}

const termsOf = (endOf: (part: Sort["parts"][number]) => End) => (sort: Sort, term: End["term"]) =>
  sort.parts.map(endOf).filter((end) => end.term === term);

function* look(question: PairQuestion): Generator<Step<FoundPair>, void> {
  const pace = new Pace();
  const looking = lookingFor(question);
  const list = yield* misses(looking, !!question.mount, pace);
  const at = additions.map(() => 0);
  const totals = additions.map(([sum]) => list[0]?.off.plus(sum));
  const size = list.length * additions.length;
  let count = 0;
  for (let done = 0; done < size;) {
    // What adds least comes first in each row of sums; the least of the rows is next, with all that are equal to it.
    const least = totals.reduce((a, b) => (!a || (b && b.compare(a) < 0) ? b : a))!;
    const group: [Miss, number][] = [];
    for (const [addition, [sum]] of additions.entries())
      while (at[addition]! < list.length && totals[addition]!.equals(least)) {
        group.push([list[at[addition]!]!, addition]);
        const next = list[++at[addition]!];
        totals[addition] = next?.off.plus(sum);
        done++;
        if (pace.due(4)) yield;
      }
    for (const found of inOrder<Priced>((meet) => meetAll(group, looking, meet, pace), byPrice, pace)) {
      count += found?.length ?? 0;
      yield { found: found?.map(({ pair }) => pair) ?? [], progress: done / size };
    }
  }
  yield { found: [], count, progress: 1 };
}

/**
 * The pairs and sets that are not what is looked for, those first that need the least to change: what the mount lacks in
 * room (its ends, holes and walls) ÷ half a module, which is what a tooth more or less changes, + what the worst output is
 * outside its range ÷ what one driver tooth more changes + 1 for a driver that goes on with a sleeve that exists, 4 for one
 * that does not go on + 1 for a driven gear that goes on with a plate that exists, 4 for one that does not; then what has
 * fewest parts without a price, the cheapest, the nearest to the middle, by driver, driven and ids. Gears of different
 * pitches are never among them. There are many: take those that are wanted, and leave the loop.
 *
 * @throws as `findPairs`
 *
 * @example
 * const drivers = [15, 17, 20];
 * const mount = { knownPair: [23, 53], closer: "0.1 mm", farther: "0.9 mm" } as const;
 * const question = { drivers, drivens: [62, 66], pitch: { module: "0.8" }, mount, outputs: [{ id: "pair", from: 4, to: 5 }] };
 * const missed = [...nearMisses(question)].flatMap((batch) => batch.found);
 * missed.slice(0, 2).map(({ counts, reasons }) => [counts[0], reasons[0]!.code]); // => [[17, "too-far"], [15, "too-far"]]
 */
export const nearMisses = (question: PairQuestion): Generator<Batch<FoundPair>, void> =>
  told(look(question), question.signal);
