import type { Pace, Pause } from "./pace.js";
import type { Plan } from "./plan.js";
import { addFactors } from "./sweep.js";
import { farthest, type Gap } from "./wanted.js";
import { isBelow, type Whole } from "./whole.js";

/** Where groups' inner ratios are as far from the middle as others: of each a group, and a place in the inner table. */
export interface Spots {
  readonly groups: readonly number[];
  readonly places: readonly number[];
  readonly gap: Gap;
}

type Before = (a: number, b: number) => boolean;

/** Lets the entry at `place` sink until none below comes before it. */
function sink(heap: number[], place: number, before: Before): void {
  const one = heap[place]!;
  for (let child; (child = place * 2 + 1) < heap.length; place = child) {
    if (child + 1 < heap.length && before(heap[child + 1]!, heap[child]!)) child++;
    if (!before(heap[child]!, one)) break;
    heap[place] = heap[child]!;
  }
  heap[place] = one;
}

/**
 * All ratios of all groups in the order of their distance from the middle, those exactly as far together. Within a group
 * the distance falls to one place and rises from there: two runs, each in order. A heap merges them.
 */
export function* merge(plan: Plan, heads: readonly number[], pace: Pace): Generator<Spots | Pause, void> {
  const { inner } = plan;
  const wide = plan.bounds.filter(Boolean).length * 3;
  const factors: Whole[] = [];
  const heap: number[] = [];
  const at: number[] = [];
  const tops: Whole[] = [];
  const bottoms: Whole[] = [];
  const gap = {} as Gap;
  const measure = (group: number, place: number): void =>
    farthest(inner.tops[place]!, inner.bottoms[place]!, factors, group * wide, (group + 1) * wide, gap);
  /** Moves a run to a place; false beyond its end. Even runs rise, odd ones fall. */
  const move = (run: number, place: number): boolean => {
    const group = run >> 1;
    if (place < heads[group * 5 + 1]! || place >= heads[group * 5 + 2]!) return false;
    measure(group, place);
    at[run] = place;
    tops[run] = gap.top;
    bottoms[run] = gap.bottom;
    return true;
  };
  for (let group = 0; group * 5 < heads.length; group++) {
    addFactors(plan, heads[group * 5]!, factors);
    let low = heads[group * 5 + 1]!;
    let high = heads[group * 5 + 2]! - 1;
    while (low < high) {
      const middle = (low + high) >> 1;
      measure(group, middle);
      const { top, bottom } = gap;
      measure(group, middle + 1);
      if (isBelow(gap.top, gap.bottom, top, bottom)) low = middle + 1;
      else high = middle;
      if (pace.due(2)) yield;
    }
    for (const run of [0, 1]) if (move(group * 2 + run, low - run)) heap.push(group * 2 + run);
    if (pace.due(4)) yield;
  }
  const before: Before = (a, b) => isBelow(tops[a]!, bottoms[a]!, tops[b]!, bottoms[b]!);
  for (let place = heap.length >> 1; place--;) {
    sink(heap, place, before);
    if (pace.due(2)) yield;
  }

  while (heap.length) {
    const groups: number[] = [];
    const places: number[] = [];
    const first = { top: tops[heap[0]!]!, bottom: bottoms[heap[0]!]! };
    while (heap.length && !isBelow(first.top, first.bottom, tops[heap[0]!]!, bottoms[heap[0]!]!)) {
      const run = heap[0]!;
      const place = at[run]!;
      groups.push(run >> 1);
      places.push(place);
      if (!move(run, run & 1 ? place - 1 : place + 1)) {
        const last = heap.pop()!;
        if (heap.length) heap[0] = last;
      }
      if (heap.length) sink(heap, 0, before);
      if (pace.due(8)) yield;
    }
    yield { groups, places, gap: first };
  }
}
