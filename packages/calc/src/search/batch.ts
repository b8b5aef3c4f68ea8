import type { Rational } from "../exact/index.js";

/** What it takes to have something: how many new parts, their price in thousandths, how many have none. */
export interface Cost {
  readonly fresh: number;
  readonly amount: number;
  readonly unpriced: number;
}

/** Nearest to the middle first; or fewest without a price, then cheapest; or fewest new parts; ties by nearest. */
export type Order = "nearest" | "cheapest" | "fewest-new";

/** Finds in order, as many as are exactly equal, or none when it is only time to let others work. */
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

/** Puts finds, nearest first, into another order; each step is short. */
export function* arrange<T extends { readonly cost: Cost }>(
  batches: Iterable<Batch<T>>,
  order: Order = "nearest",
): Generator<Batch<T>, void> {
  if (order === "nearest") return yield* batches;
  const shelves = new Map<string, T[]>();
  let count = 0;
  for (const { found, progress } of batches) {
    for (const one of found) {
      const { fresh, amount, unpriced } = one.cost;
      const key = (order === "cheapest" ? [unpriced, amount, fresh] : [fresh, unpriced, amount]).join();
      const shelf = shelves.get(key);
      if (shelf) shelf.push(one);
      else shelves.set(key, [one]);
      count++;
    }
    yield { found: [], progress: progress / 2 };
  }
  const numbers = (key: string) => key.split(",").map(Number) as [number, number, number];
  const keys = [...shelves.keys()].map(numbers).sort((a, b) => a[0] - b[0] || a[1] - b[1] || a[2] - b[2]);
  let listed = 0;
  for (const key of keys) {
    const found = shelves.get(key.join())!;
    listed += found.length;
    yield { found, count, progress: (1 + listed / count) / 2 };
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
 * const costOf = ({ id }: { id?: string }) => ({ fresh: id ? 1 : 0, amount: id === "dear" ? 900 : 100, unpriced: 0 });
 * const drivers = [{ id: "dear", teeth: 15 }, { id: "near", teeth: 16 }, { id: "far", teeth: 18 }];
 * const best = tradeOffs(findPairs({ drivers, drivens: [60], outputs, costOf }));
 * best.map(({ driver }) => driver.id); // => ["dear", "near"]
 */
export function tradeOffs<T extends Rated>(batches: Iterable<Batch<T>>): T[] {
  let best: T[] = [];
  for (const { found } of batches)
    for (const one of found)
      if (!best.some((other) => beats(other, one))) best = [...best.filter((other) => !beats(one, other)), one];
  return best;
}
