import { MeshwrightError } from "../exact/index.js";
import { type Cast, greatest, type Whole } from "./whole.js";

/** What can be chosen in one place, as fractions. */
export interface Column {
  readonly tops: readonly Whole[];
  readonly bottoms: readonly Whole[];
}

/** All ratios that the choices of some columns give together, ascending and each once, with the ways to each. */
export interface Table extends Column {
  /** How many ways lead to the ratios before each; at the end, to all. */
  readonly ways: readonly number[];
  /** The table without its last column; none where there is no column at all. */
  readonly before?: Table;
  readonly choices: Column;
  readonly place: number;
  /** Of whole numbers (step 1) or their inverses (step −1) alone: how many stand before each number, in it or not. */
  readonly rank?: Int32Array;
  readonly step?: number;
  /** Of other ratios: a row is a ratio of `before` and a choice; the rows of one ratio stand together. */
  readonly rows?: Uint32Array;
  readonly starts?: readonly number[];
}

const mostRows = 2 ** 23;

/** Nothing to choose: one way to 1. */
export function unitOf(cast: Cast): Table {
  const ones = [cast(1)];
  const whole = isOne(ones[0]!) && { rank: Int32Array.of(0, 0, 1), step: 1 };
  return { tops: ones, bottoms: ones, ways: [0, 1], choices: { tops: ones, bottoms: ones }, place: -1, ...whole };
}

const isOne = (value: Whole): boolean => value === 1;

/** A table with one more column multiplied in. */
export function multiply(before: Table, choices: Column, place: number): Table {
  const size = choices.tops.length;
  const total = before.tops.length * size;
  if (total > mostRows)
    throw new MeshwrightError(
      "too-many-choices",
      "stages",
      `${total} combinations to sort; expected ${mostRows} at the most.`,
    );
  for (const [side, other] of [
    ["tops", "bottoms"],
    ["bottoms", "tops"],
  ] as const)
    if (before.rank && before[other].every(isOne) && choices[other].every(isOne)) {
      const most = greatest(before[side]) * greatest(choices[side]);
      if (most < total * 8 + 1024 && before.ways.at(-1)! * size < 2 ** 31)
        return multiplyWhole(before, choices, place, side, most);
    }
  return multiplyAny(before, choices, place);
}

/** Of whole numbers, or of their inverses: products count themselves, nothing is compared. */
function multiplyWhole(before: Table, choices: Column, place: number, side: "tops" | "bottoms", most: number): Table {
  const factors = choices[side];
  const counts = new Int32Array(most + 2);
  before[side].forEach((value, n) => {
    const ways = before.ways[n + 1]! - before.ways[n]!;
    for (let m = 0; m < factors.length; m++) counts[value * factors[m]!]! += ways;
  });
  const rank = new Int32Array(most + 2);
  const values: Whole[] = [];
  const ways = [0];
  let sum = 0;
  const step = side === "tops" ? 1 : -1;
  for (let left = most + 2, value = step > 0 ? 0 : most + 1; left--; value += step) {
    rank[value] = values.length;
    const count = counts[value]!;
    if (count) {
      values.push(value);
      ways.push((sum += count));
    }
  }
  const ones = new Array<Whole>(values.length).fill(1);
  const [tops, bottoms] = step > 0 ? [values, ones] : [ones, values];
  return { tops, bottoms, ways, before, choices, place, rank, step };
}

/**
 * Rounded quotients put the products into buckets, each close to where it belongs. Quotients of numbers whose greatest
 * products stay below 2 ** 50 are as distinct as the fractions are, and settle the order; else exact comparison does.
 */
function multiplyAny(before: Table, choices: Column, place: number): Table {
  const size = choices.tops.length;
  const total = before.tops.length * size;
  const topOf = (row: number): Whole => before.tops[(row / size) | 0]! * choices.tops[row % size]!;
  const bottomOf = (row: number): Whole => before.bottoms[(row / size) | 0]! * choices.bottoms[row % size]!;
  const keys = new Float64Array(total);
  const rounded = new Float32Array(total);
  for (let row = 0; row < total; row++) rounded[row] = keys[row] = Number(topOf(row)) / Number(bottomOf(row));
  const sharp =
    greatest(before.tops) * greatest(before.bottoms) * greatest(choices.tops) * greatest(choices.bottoms) < 2 ** 50;
  const compare = (a: number, b: number): number => {
    if (sharp) return keys[a]! - keys[b]!;
    const x = topOf(a) * bottomOf(b);
    const y = topOf(b) * bottomOf(a);
    return x < y ? -1 : x > y ? 1 : 0;
  };

  // The bits of floats above zero, read as whole numbers, are in the order of the floats.
  const bits = new Int32Array(rounded.buffer);
  const low = bits.reduce((least, one) => Math.min(least, one));
  const high = bits.reduce((most, one) => Math.max(most, one));
  let shift = 0;
  while ((high - low) >> shift > total) shift++;
  const ends = new Uint32Array(((high - low) >> shift) + 2);
  for (let row = 0; row < total; row++) ends[((bits[row]! - low) >> shift) + 1]!++;
  for (let n = 1; n < ends.length; n++) ends[n]! += ends[n - 1]!;
  const next = ends.slice();
  const rows = new Uint32Array(total);
  for (let row = 0; row < total; row++) rows[next[(bits[row]! - low) >> shift]!++] = row;
  for (let n = 1; n < ends.length; n++)
    if (ends[n]! - ends[n - 1]! > 32) rows.subarray(ends[n - 1], ends[n]).sort(compare);
  for (let n = 1; n < total; n++) {
    const row = rows[n]!;
    let at = n;
    for (; at && compare(rows[at - 1]!, row) > 0; at--) rows[at] = rows[at - 1]!;
    rows[at] = row;
  }

  const tops: Whole[] = [];
  const bottoms: Whole[] = [];
  const starts: number[] = [];
  const ways: number[] = [];
  let sum = 0;
  for (let n = 0; n < total; n++) {
    const row = rows[n]!;
    if (!n || compare(rows[n - 1]!, row)) {
      tops.push(topOf(row));
      bottoms.push(bottomOf(row));
      starts.push(n);
      ways.push(sum);
    }
    const from = (row / size) | 0;
    sum += before.ways[from + 1]! - before.ways[from]!;
  }
  starts.push(total);
  ways.push(sum);
  return { tops, bottoms, ways, before, choices, place, rows, starts };
}

/** The first place whose ratio times a / b is at least 1, or above 1 where `beyond`. Looks around `near` first. */
export function firstFrom(
  { tops, bottoms, rank, step }: Table,
  a: Whole,
  b: Whole,
  beyond: boolean,
  near: number,
): number {
  if (rank && step === 1) {
    // Rounded quotients of safe numbers round to a whole number only where they are one.
    const value = Math.max(0, beyond ? Math.floor(b / a) + 1 : Math.ceil(b / a));
    return value < rank.length ? rank[value]! : tops.length;
  }
  let low = 0;
  let high = tops.length;
  // Strides that double, upwards or downwards, until the place lies between; then halves.
  let stride = near < high ? 1 : 0;
  let at = stride ? near : high >> 1;
  while (low < high) {
    const x = tops[at]! * a;
    const y = bottoms[at]! * b;
    if (beyond ? x > y : x >= y) {
      high = at;
      at -= stride;
    } else {
      low = at + 1;
      at += stride;
    }
    stride *= 2;
    if (!stride || at < low || at >= high) {
      stride = 0;
      at = (low + high) >> 1;
    }
  }
  return low;
}

/** Writes each way to the ratio at `at` into `picks`, by place, and calls `then`. */
export function unfold(table: Table, at: number, picks: number[], then: () => void): void {
  const { before, choices, place, rank, rows, starts } = table;
  if (!before) return then();
  const size = choices.tops.length;
  if (rank) {
    const { rank: places, step } = before as Required<Table>;
    const value = table.tops[at]! * table.bottoms[at]!;
    for (let n = 0; n < size; n++) {
      const rest = value / (choices.tops[n]! * choices.bottoms[n]!);
      if (!Number.isInteger(rest)) continue;
      const from = places[rest]!;
      // A number that is in the table moves the next one's rank.
      if (places[rest + step]! > from) {
        picks[place] = n;
        unfold(before, from, picks, then);
      }
    }
  } else
    for (let n = starts![at]!; n < starts![at + 1]!; n++) {
      picks[place] = rows![n]! % size;
      unfold(before, (rows![n]! / size) | 0, picks, then);
    }
}
