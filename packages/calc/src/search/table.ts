import { type Pace, sort, type Working } from "./pace.js";
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
  /** Of whole numbers, or of their inverses, alone: how the numbers were counted. */
  readonly numbers?: Numbers;
  readonly inverse?: boolean;
  /** Of other ratios: a row is a ratio of `before` and a choice; the rows of one ratio stand together. */
  readonly rows?: Uint32Array;
  readonly starts?: readonly number[];
}

/** The products of some lists of whole numbers. */
interface Numbers {
  /** The lists, written out: drivers and drivens are often the same counts, and then are counted once. */
  readonly key: string;
  /** Ascending, each once. */
  readonly values: readonly Whole[];
  /** How many ways lead to the numbers before each; at the end, to all. */
  readonly ways: readonly number[];
  /** How many of the values stand before each number, be it one of them or not. */
  readonly rank: Int32Array;
}

/** What a search has counted so far, by key. */
export type Counted = Map<string, Numbers>;

const unit: Numbers = { key: "", values: [1], ways: [0, 1], rank: Int32Array.of(0, 0, 1) };

/** Nothing to choose: one way to 1. */
export function unitOf(cast: Cast): Table {
  const ones = [cast(1)];
  const whole = isOne(ones[0]!) && { numbers: unit };
  return { tops: ones, bottoms: ones, ways: [0, 1], choices: { tops: ones, bottoms: ones }, place: -1, ...whole };
}

const isOne = (value: Whole): boolean => value === 1;

/** A table with one more column multiplied in. */
export function* multiply(before: Table, choices: Column, place: number, counted: Counted, pace: Pace): Working<Table> {
  const size = choices.tops.length;
  const total = before.tops.length * size;
  for (const [side, other] of [
    ["tops", "bottoms"],
    ["bottoms", "tops"],
  ] as const)
    if (before.numbers && before[other].every(isOne) && choices[other].every(isOne)) {
      const most = greatest(before[side]) * greatest(choices[side]);
      if (most < total * 8 + 1024 && before.ways.at(-1)! * size < 2 ** 31) {
        const factors = choices[side];
        const key = `${before.numbers.key} ${factors.join()}`;
        let numbers = counted.get(key);
        if (!numbers) counted.set(key, (numbers = yield* count(before.numbers, factors, most, key, pace)));
        return { ...columnOf(numbers, side), before, choices, place, numbers, inverse: side === "bottoms" };
      }
    }
  return yield* multiplyAny(before, choices, place, pace);
}

/** Products count themselves, nothing is compared. */
function* count(
  { key: before, values: multiplied, ways: waysTo }: Numbers,
  factors: readonly Whole[],
  most: number,
  key: string,
  pace: Pace,
): Working<Numbers> {
  const counts = new Int32Array(most + 2);
  const size = factors.length;
  // A list by itself: every product of two places comes twice.
  if (key === `${before}${before}`)
    for (let n = 0; n < size; n++) {
      const value = factors[n]!;
      counts[value * value]!++;
      for (let m = n + 1; m < size; m++) counts[value * factors[m]!]! += 2;
      if (pace.due((size - n) >> 3)) yield;
    }
  else
    for (let n = 0; n < multiplied.length; n++) {
      const value = multiplied[n]!;
      const more = waysTo[n + 1]! - waysTo[n]!;
      for (let m = 0; m < size; m++) counts[value * factors[m]!]! += more;
      if (pace.due(size >> 3)) yield;
    }
  const rank = new Int32Array(most + 2);
  const values: Whole[] = [];
  const ways = [0];
  let sum = 0;
  for (let value = 0; value <= most; value++) {
    const here = counts[value]!;
    if (here) {
      values.push(value);
      ways.push((sum += here));
    }
    rank[value + 1] = values.length;
    if (!(value & 4095) && pace.due(512)) yield;
  }
  return { key, values, ways, rank };
}

/** The numbers themselves as a column, or their inverses: ascending either way. */
function columnOf({ values, ways }: Numbers, side: "tops" | "bottoms"): Column & Pick<Table, "ways"> {
  const ones = new Array<Whole>(values.length).fill(1);
  const all = ways.at(-1)!;
  return side === "tops"
    ? { tops: values, bottoms: ones, ways }
    : { tops: ones, bottoms: [...values].reverse(), ways: ways.map((before) => all - before).reverse() };
}

/** So many rows are gone through before anybody looks whether it is time to pause. */
const block = 4096;
const stepsOf = (rows: number): number => rows >> 1;

/**
 * Rounded quotients put the products into buckets, each close to where it belongs. Quotients of numbers whose greatest
 * products stay below 2 ** 50 are as distinct as the fractions are, and settle the order; else exact comparison does.
 */
function* multiplyAny(before: Table, choices: Column, place: number, pace: Pace): Working<Table> {
  const size = choices.tops.length;
  const total = before.tops.length * size;
  const topOf = (row: number): Whole => before.tops[(row / size) | 0]! * choices.tops[row % size]!;
  const bottomOf = (row: number): Whole => before.bottoms[(row / size) | 0]! * choices.bottoms[row % size]!;
  const keys = new Float64Array(total);
  const rounded = new Float32Array(total);
  // The bits of floats above zero, read as whole numbers, are in the order of the floats.
  const bits = new Int32Array(rounded.buffer);
  let low = 2 ** 31 - 1;
  let high = 0;
  const blocks = function* (work: (row: number) => void): Working<void> {
    for (let start = 0; start < total; start += block) {
      const end = Math.min(start + block, total);
      for (let row = start; row < end; row++) work(row);
      if (pace.due(stepsOf(end - start))) yield;
    }
  };
  yield* blocks((row) => {
    rounded[row] = keys[row] = Number(topOf(row)) / Number(bottomOf(row));
    if (bits[row]! < low) low = bits[row]!;
    if (bits[row]! > high) high = bits[row]!;
  });
  const sharp =
    greatest(before.tops) * greatest(before.bottoms) * greatest(choices.tops) * greatest(choices.bottoms) < 2 ** 50;
  const compare = (a: number, b: number): number => {
    if (sharp) return keys[a]! - keys[b]!;
    const x = topOf(a) * bottomOf(b);
    const y = topOf(b) * bottomOf(a);
    return x < y ? -1 : x > y ? 1 : 0;
  };

  let shift = 0;
  while ((high - low) >> shift > total) shift++;
  const ends = new Uint32Array(((high - low) >> shift) + 2);
  yield* blocks((row) => void ends[((bits[row]! - low) >> shift) + 1]!++);
  for (let n = 1; n < ends.length; n++) {
    ends[n]! += ends[n - 1]!;
    if (!(n & 1023) && pace.due(256)) yield;
  }
  const next = ends.slice();
  const rows = new Uint32Array(total);
  yield* blocks((row) => (rows[next[(bits[row]! - low) >> shift]!++] = row));
  for (let n = 1; n < ends.length; n++) {
    const [start, end] = [ends[n - 1]!, ends[n]!];
    if (end - start > block) rows.set(yield* sort([...rows.subarray(start, end)], compare, pace), start);
    else if (end - start > 32) rows.subarray(start, end).sort(compare);
    if (pace.due(end - start > 32 ? (end - start) * 8 : 1)) yield;
  }
  for (let start = 1; start < total; start += block) {
    const end = Math.min(start + block, total);
    for (let n = start; n < end; n++) {
      const row = rows[n]!;
      let at = n;
      for (; at && compare(rows[at - 1]!, row) > 0; at--) rows[at] = rows[at - 1]!;
      rows[at] = row;
    }
    if (pace.due(stepsOf(end - start))) yield;
  }

  const tops: Whole[] = [];
  const bottoms: Whole[] = [];
  const starts: number[] = [];
  const ways: number[] = [];
  let sum = 0;
  yield* blocks((n) => {
    const row = rows[n]!;
    if (!n || compare(rows[n - 1]!, row)) {
      tops.push(topOf(row));
      bottoms.push(bottomOf(row));
      starts.push(n);
      ways.push(sum);
    }
    const from = (row / size) | 0;
    sum += before.ways[from + 1]! - before.ways[from]!;
  });
  starts.push(total);
  ways.push(sum);
  return { tops, bottoms, ways, before, choices, place, rows, starts };
}

/** The first place whose ratio times a / b is at least 1, or above 1 where `beyond`. Looks around `near` first. */
export function firstFrom(
  { tops, bottoms, numbers, inverse }: Table,
  a: Whole,
  b: Whole,
  beyond: boolean,
  near: number,
): number {
  if (numbers && !inverse) {
    // Rounded quotients of safe numbers round to a whole number only where they are one.
    const value = Math.max(0, beyond ? Math.floor(b / a) + 1 : Math.ceil(b / a));
    return value < numbers.rank.length ? numbers.rank[value]! : tops.length;
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
