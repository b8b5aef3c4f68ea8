import type { Rational } from "../exact/index.js";
import type { Cost } from "../parts/index.js";
import { checkHeld } from "./limit.js";
import { Pace, type Pause, sort } from "./pace.js";

/** Nearest to the middle first; or fewest without a price, then cheapest; or fewest new parts; ties by nearest. */
export type Order = "nearest" | "cheapest" | "fewest-new";

/** Finds in order, all of a batch exactly equal in what they are ordered by first, or none: then others may work. */
export interface Batch<T> {
  readonly found: readonly T[];
  /** How many there are in all, as soon as that is known. */
  readonly count?: number;
  /** The share of the work done, from 0 to 1. */
  readonly progress: number;
}

/** The sum of what several things cost. */
export const costOfAll = (costs: readonly (Cost | undefined)[]): Cost => {
  const sum = { fresh: 0, amount: 0, unpriced: 0 };
  for (const cost of costs)
    if (cost) {
      sum.fresh += cost.fresh;
      sum.amount += cost.amount;
      sum.unpriced += cost.unpriced;
    }
  return sum;
};

/** What a search gives inside: finds, or that it is time to let others work. */
export type Step<T> = Batch<T> | Pause;

/** Tells what a search gives to whoever asked, until it is stopped. */
export function* told<T>(steps: Iterable<Step<T>>, signal?: { readonly aborted: boolean }): Generator<Batch<T>, void> {
  let progress = 0;
  for (const step of steps) {
    if (signal?.aborted) return;
    progress = Math.max(progress, step?.progress ?? 0);
    yield { found: [], ...step, progress };
  }
}

/** Puts finds, nearest first, into another order. */
export function* arrange<T extends { readonly cost: Cost }>(
  steps: Iterable<Step<T>>,
  order: Order = "nearest",
): Generator<Step<T>, void> {
  if (order === "nearest") return yield* steps;
  const shelves = new Map<string, T[]>();
  const pace = new Pace();
  let count = 0;
  for (const step of steps) {
    // All of them have to be held: too many are refused as soon as it is known how many there are.
    if (step?.count !== undefined) checkHeld(step.count, "order");
    for (const one of step?.found ?? []) {
      const { fresh, amount, unpriced } = one.cost;
      const key = (order === "cheapest" ? [unpriced, amount, fresh] : [fresh, unpriced, amount]).join();
      const shelf = shelves.get(key);
      if (shelf) shelf.push(one);
      else shelves.set(key, [one]);
      checkHeld(++count, "order");
    }
    yield step && { found: [], progress: step.progress / 2 };
  }
  const numbers = (key: string) => key.split(",").map(Number) as [number, number, number];
  const keys = yield* sort([...shelves.keys()].map(numbers), (a, b) => a[0] - b[0] || a[1] - b[1] || a[2] - b[2], pace);
  yield { found: [], count, progress: count ? 0.5 : 1 };
  let listed = 0;
  for (const key of keys) {
    const shelf = shelves.get(key.join())!;
    for (let n = 0; n < shelf.length; n += 1024) {
      const found = shelf.slice(n, n + 1024);
      listed += found.length;
      yield { found, count, progress: (1 + listed / count) / 2 };
    }
  }
}

interface Rated {
  readonly cost: Cost;
  readonly distance: Rational;
}

/** Whether one is surely no worse in anything than the other, and better in something. What has no price beats nothing. */
function beats(one: Rated, other: Rated): boolean {
  const { fresh, amount, unpriced } = one.cost;
  if (unpriced || fresh > other.cost.fresh || amount > other.cost.amount) return false;
  const nearer = one.distance.compare(other.distance);
  return nearer < 0 || (!nearer && (fresh < other.cost.fresh || amount < other.cost.amount));
}

/**
 * The trade-offs: what nothing else beats in nearness, price and new parts at once. Looks at all finds of a search before it
 * answers; keeps their order.
 *
 * @example
 * const outputs = [{ id: "pair", from: 3, to: 5 }];
 * const pitch = { module: "0.8" };
 * const drivers = ([["dear", 15, 9], ["near", 16, 1], ["far", 18, 1]] as const).map(([id, teeth, amount]) => ({ ...pitch, id, is: "pinion", teeth, price: { amount, currency: "EUR" } }) as const);
 * const best = tradeOffs(findPairs({ drivers, drivens: [60], pitch, outputs }));
 * best.map(({ driver }) => driver.id); // => ["dear", "near"]
 */
export function tradeOffs<T extends Rated>(batches: Iterable<Batch<T>>): T[] {
  let best: T[] = [];
  for (const { found } of batches)
    for (const one of found)
      if (!best.some((other) => beats(other, one))) best = [...best.filter((other) => !beats(one, other)), one];
  return best;
}
