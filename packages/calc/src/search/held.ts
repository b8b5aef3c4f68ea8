import type { End, Ends } from "./ends.js";
import type { GearPick } from "./found.js";
import type { Meeting } from "./gears.js";
import { type Pace, type Pause, sort } from "./pace.js";

/** A driver, or a set, with what can be driven. */
interface Row<M> {
  readonly end: End;
  readonly one: M;
}

const byPart = (a: Row<unknown>, b: Row<unknown>): number =>
  a.end.part.id < b.end.part.id ? -1 : a.end.part.id > b.end.part.id ? 1 : 0;

/** The pairs of sorts that suit each other and are held, by the ids of their parts, whichever sorts they come from. */
export function* held<M extends { readonly meeting: Meeting }, T extends GearPick>(
  group: readonly M[],
  ends: Ends,
  make: (one: M, driver: End, driven: End) => T,
  pace: Pace,
): Generator<T[] | Pause, void> {
  const rows: Row<M>[] = [];
  for (const one of group) {
    if (pace.due(128)) yield;
    if (!one.meeting.suits) continue;
    for (const part of one.meeting.driver.parts) {
      const end = ends.shaft(part);
      if (pace.due(4)) yield;
      if (end.term < 4) rows.push({ end, one });
    }
  }
  yield* sort(rows, byPart, pace);
  let found: T[] = [];
  for (const { end, one } of rows) {
    const { set, driven } = one.meeting;
    for (const part of set ? [end.part] : driven.parts) {
      const other = ends.hub(part, !!set);
      if (other.term < 4) {
        const pair = make(one, end, other);
        if (!pair.isTwice || pair.had !== false) found.push(pair);
      }
      if (pace.due(4) || found.length === 1024) {
        yield found;
        found = [];
      }
    }
  }
  yield found;
}
