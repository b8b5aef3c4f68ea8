import { firstFrom, type Table } from "./table.js";
import type { Plan } from "./plan.js";
import type { Candidate } from "./question.js";
import type { Whole } from "./whole.js";

/** All that is chosen outside the inner half, as one number a group, and what of the inner half and the wheels goes with it. */
export interface Groups {
  /** Five numbers a group: the choice; the inner ratios from and to; the wheels' ratios from and to. */
  readonly heads: number[];
  /** What `farthest` needs, three numbers an output with a range. */
  readonly factors: Whole[];
  count: number;
}

const waysOf = ({ ways }: Table, from: number, to: number): number => ways[to]! - ways[from]!;

/** Sets what each output is multiplied by, for one choice of everything outside the inner half; answers its ways. */
export function look<C extends Candidate>(plan: Plan<C>, choice: number, tops: Whole[], bottoms: Whole[]): number {
  const { aims, outer, on, cast } = plan;
  const size = aims.length;
  let ways = 1;
  for (let n = 0; n < size; n++) tops[n] = bottoms[n] = cast(1);
  for (let m = 0; m < outer.length; m++) {
    const table = outer[m]!;
    const length = table.tops.length;
    const at = choice % length;
    choice = (choice - at) / length;
    ways *= waysOf(table, at, at + 1);
    for (let n = 0; n < size; n++)
      if (on[m]! & (1 << n)) {
        tops[n]! *= table.tops[at]!;
        bottoms[n]! *= table.bottoms[at]!;
      }
  }
  return ways;
}

/** Finds, for some of the choices outside the inner half, what of the inner half is inside all ranges. */
export function sweep<C extends Candidate>(plan: Plan<C>, groups: Groups, first: number, last: number): void {
  const { bounds, inner, rolling, compared, ends, castRolling } = plan;
  const [of, against] = compared as [number, number];
  const { heads, factors } = groups;
  const tops: Whole[] = [];
  const bottoms: Whole[] = [];
  let from = 0;
  let to = 0;
  for (let choice = first; choice < last; choice++) {
    const ways = look(plan, choice, tops, bottoms);
    let start = 0;
    let end = inner.tops.length;
    for (let n = 0; n < bounds.length; n++) {
      const range = bounds[n];
      if (!range) continue;
      const top = tops[n]! * range[0];
      from = firstFrom(inner, top, bottoms[n]! * range[1], false, from);
      to = firstFrom(inner, top, bottoms[n]! * range[2], true, to);
      if (from > start) start = from;
      if (to < end) end = to;
    }
    let low = 0;
    let high = rolling.tops.length;
    if (ends.length && start < end) {
      const up = castRolling(tops[against]!) * castRolling(bottoms[of]!);
      const down = castRolling(bottoms[against]!) * castRolling(tops[of]!);
      low = firstFrom(rolling, up * ends[0]![0], down * ends[0]![1], false, 0);
      high = firstFrom(rolling, up * ends[1]![0], down * ends[1]![1], true, low);
    }
    if (start >= end || low >= high) continue;
    heads.push(choice, start, end, low, high);
    for (let n = 0; n < bounds.length; n++) {
      const range = bounds[n];
      if (range) factors.push(tops[n]! * range[0], bottoms[n]! * range[3], bottoms[n]! * range[4]);
    }
    groups.count += ways * waysOf(inner, start, end) * waysOf(rolling, low, high);
  }
}
