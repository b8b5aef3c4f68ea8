import { firstFrom } from "./table.js";
import type { Pace, Working } from "./pace.js";
import type { Plan } from "./plan.js";
import type { Whole } from "./whole.js";

/** All that is chosen outside the inner half, as one number a group, and what of the inner half and the wheels goes with it. */
export interface Groups {
  /** Five numbers a group: the choice; the inner ratios from and to; the wheels' ratios from and to. */
  readonly heads: number[];
  count: number;
}

const waysOf = (ways: readonly number[], from: number, to: number): number => ways[to]! - ways[from]!;

/** Sets what each output is multiplied by, for one choice in the outer tables from `first` on; answers its ways. */
function look({ aims, outer, on, cast }: Plan, choice: number, tops: Whole[], bottoms: Whole[], first = 0): number {
  const size = aims.length;
  let ways = 1;
  for (let n = 0; n < size; n++) tops[n] = bottoms[n] = cast(1);
  for (let m = first; m < outer.length; m++) {
    const table = outer[m]!;
    const length = table.tops.length;
    const at = choice % length;
    choice = (choice - at) / length;
    ways *= waysOf(table.ways, at, at + 1);
    for (let n = 0; n < size; n++)
      if (on[m]! & (1 << n)) {
        tops[n]! *= table.tops[at]!;
        bottoms[n]! *= table.bottoms[at]!;
      }
  }
  return ways;
}

/** Finds, for all of the choices outside the inner half, what of the inner half is inside all ranges. */
export function* sweep(plan: Plan, groups: Groups, pace: Pace): Working<void> {
  const tops: Whole[] = [];
  const bottoms: Whole[] = [];
  const total = plan.outer.reduce((product, table) => product * table.tops.length, 1);
  const length = plan.outer[0]!.tops.length;
  // Whole numbers are looked up, all else is searched for.
  const whole = plan.inner.numbers && !plan.inner.inverse;
  const [block, steps] = [whole ? 2048 : 256, (whole ? 1 : 8) * plan.aims.length];
  for (let first = 0; first < total;) {
    const rest = Math.floor(first / length);
    const end = Math.min(first + block, (rest + 1) * length);
    const ways = look(plan, rest, tops, bottoms, 1);
    run(plan, groups, tops, bottoms, ways, first, end);
    if (pace.due((end - first) * steps)) yield;
    first = end;
  }
}

/** Those that differ in the first outer table alone: this is where a search spends its time. */
function run(
  { bounds, inner, outer, on, rolling, compared, ends, castRolling }: Plan,
  groups: Groups,
  tops: readonly Whole[],
  bottoms: readonly Whole[],
  waysOfRest: number,
  first: number,
  last: number,
): void {
  const table = outer[0]!;
  const length = table.tops.length;
  const [of, against] = compared as [number, number];
  const { heads } = groups;
  const ranged = bounds.flatMap((range, n) => (range ? [n] : []));
  const drives = bounds.map((_, n) => (on[0]! & (1 << n)) > 0);
  // Of every output with a range: what multiplies its top, and its bottom for the low end and the high one.
  const parts = ranged.map((n) => bounds[n]!.slice(0, 3).map((part, m) => part * (m ? bottoms[n]! : tops[n]!)));
  let from = 0;
  let to = 0;
  for (let choice = first, at = first % length; choice < last; choice++, at++) {
    const x = table.tops[at]!;
    const y = table.bottoms[at]!;
    let start = 0;
    let end = inner.tops.length;
    for (let n = 0; n < ranged.length; n++) {
      const part = parts[n]!;
      const driven = drives[ranged[n]!];
      const top = driven ? part[0]! * x : part[0]!;
      from = firstFrom(inner, top, driven ? part[1]! * y : part[1]!, false, from);
      to = firstFrom(inner, top, driven ? part[2]! * y : part[2]!, true, to);
      if (from > start) start = from;
      if (to < end) end = to;
    }
    if (start >= end) continue;
    let low = 0;
    let high = rolling.tops.length;
    if (ends.length) {
      const top = (n: number) => castRolling(drives[n] ? tops[n]! * x : tops[n]!);
      const bottom = (n: number) => castRolling(drives[n] ? bottoms[n]! * y : bottoms[n]!);
      const up = top(against) * bottom(of);
      const down = bottom(against) * top(of);
      low = firstFrom(rolling, up * ends[0]![0], down * ends[0]![1], false, 0);
      high = firstFrom(rolling, up * ends[1]![0], down * ends[1]![1], true, low);
      if (low >= high) continue;
    }
    heads.push(choice, start, end, low, high);
    groups.count +=
      waysOfRest * waysOf(table.ways, at, at + 1) * waysOf(inner.ways, start, end) * waysOf(rolling.ways, low, high);
  }
}

/** Adds what `farthest` needs of a group, three numbers an output with a range: not before somebody wants the finds themselves. */
export function addFactors(plan: Plan, choice: number, factors: Whole[]): void {
  const tops: Whole[] = [];
  const bottoms: Whole[] = [];
  look(plan, choice, tops, bottoms);
  plan.bounds.forEach((range, n) => {
    if (range) factors.push(tops[n]! * range[0], bottoms[n]! * range[3], bottoms[n]! * range[4]);
  });
}
