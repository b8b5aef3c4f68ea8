import type { Part } from "../drivetrain/index.js";
import { checkTeeth, moduleOf } from "../gears/index.js";
import type { End, Ends } from "./ends.js";
import { GearPick } from "./found.js";
import { type Known, Meeting, type Shelf, Sort } from "./gears.js";
import { held } from "./held.js";
import { checkHeld } from "./limit.js";
import { gearsOf } from "./looking.js";
import { type Pace, sort, type Working } from "./pace.js";
import { gearOf, pitchOf, type StageChoice } from "./question.js";

export type Fraction = readonly [top: number | bigint, bottom: number | bigint];

/** What a stage can be: whole pairs, or a driver and a driven one apart, where any goes with any. */
export interface StageChoices {
  readonly places: number;
  readonly columns: readonly (readonly Fraction[])[];
  /** The pair that some choices stand for, one a place. */
  pickAt(choices: readonly number[]): GearPick;
  /** Every part that may be picked. */
  readonly parts: readonly Part[];
}

const byId = (a: Part, b: Part): number => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);
const byPick = (a: GearPick, b: GearPick): number =>
  a.counts[0] - b.counts[0] || a.counts[1] - b.counts[1] || byId(a.driver, b.driver) || byId(a.driven, b.driven);

/** The parts of some sorts with the sort of each, by count, then id. */
const inRow = (sorts: readonly Sort[]): { sort: Sort; part: Part }[] =>
  sorts
    .flatMap((one) => one.parts.map((part) => ({ sort: one, part })))
    .sort((a, b) => a.sort.teeth - b.sort.teeth || byId(a.part, b.part));

/** Where any driver goes with any driven gear, the two are chosen apart: that is far less than all pairs. */
function apart(choice: StageChoice, shelves: readonly Shelf[]): Shelf | undefined {
  const [shelf, ...more] = shelves;
  if (!shelf || more.length || choice.mount || choice.sets?.length) return undefined;
  // Of drivers with equal counts, what they drive comes first in the order, and not which they are.
  if (
    shelf.drivers.some(({ parts }) => parts.length > 1) ||
    new Set(shelf.drivers.map(({ teeth }) => teeth)).size < shelf.drivers.length
  )
    return undefined;
  const parts = [shelf.drivers, shelf.drivens].map((sorts) => sorts.flatMap((one) => one.parts));
  if (!moduleOf(shelf.pitch) && parts.flat().some(({ id }) => id)) return undefined;
  const twice = new Set(parts[0]);
  return parts[1]!.some((part) => twice.has(part)) ? undefined : shelf;
}

/** Bare counts alone, in order, each once: what is asked most often, and needs least. */
function bare({ drivers = [], drivens = [], sets, mount, id }: StageChoice): [number[], number[]] | undefined {
  if (mount || sets?.length) return undefined;
  const lists: number[][] = [];
  for (const [at, list] of Object.entries({ drivers, drivens })) {
    if (!list.every((one) => typeof one === "number")) return undefined;
    lists.push([...new Set(list.map((teeth) => checkTeeth(teeth, `${id}.${at}`)))].sort((a, b) => a - b));
  }
  return lists as [number[], number[]];
}

/** What a stage of bare counts can be. */
function bareChoices(choice: StageChoice, [drivers, drivens]: [number[], number[]], ends: Ends): StageChoices {
  const pitch = pitchOf(choice, `${choice.id}.pitch`);
  const sortOf = (teeth: number) => new Sort(teeth, gearOf(teeth, pitch, choice.id), true);
  return {
    places: 2,
    columns: [drivers.map((teeth) => [1, teeth]), drivens.map((teeth) => [teeth, 1])],
    pickAt([first, second]) {
      const [driver, driven] = [sortOf(drivers[first!]!), sortOf(drivens[second!]!)];
      const meeting = new Meeting(driver, driven, {});
      return new GearPick(meeting, ends, ends.shaft(driver.first), ends.hub(driven.first, false));
    },
    parts: [],
  };
}

/** What a stage can be, in order. */
export function* choicesOf(choice: StageChoice, ends: Ends, known: Known, pace: Pace): Working<StageChoices> {
  const counts = bare(choice);
  if (counts) return bareChoices(choice, counts, ends);
  const { shelves, sets, sumsOf, meet } = gearsOf(choice, known);
  const free = apart(choice, shelves);
  if (free) {
    const [drivers, drivens] = [inRow(free.drivers), inRow(free.drivens)];
    return {
      places: 2,
      columns: [drivers.map(({ sort: { teeth } }) => [1, teeth]), drivens.map(({ sort: { teeth } }) => [teeth, 1])],
      pickAt([first, second]) {
        const [driver, driven] = [drivers[first!]!, drivens[second!]!];
        const meeting = new Meeting(driver.sort, driven.sort, {});
        return new GearPick(meeting, ends, ends.shaft(driver.part), ends.hub(driven.part, false));
      },
      parts: [...drivers, ...drivens].map(({ part }) => part),
    };
  }
  const meetings: { meeting: Meeting }[] = sets.map((meeting) => ({ meeting }));
  let pairs = sets.length;
  for (const shelf of shelves) {
    const sums = sumsOf(shelf);
    for (const driver of shelf.drivers)
      for (const driven of shelf.drivens) {
        if (pace.due()) yield;
        const sum = driver.teeth + driven.teeth;
        if (sums && driver.plain && driven.plain && !sums.some(([from, to]) => sum >= from && sum <= to)) continue;
        pairs += driver.parts.length * driven.parts.length;
        meetings.push({ meeting: meet(driver, driven) });
      }
  }
  checkHeld(pairs, choice.id);
  const picks: GearPick[] = [];
  const make = ({ meeting }: { meeting: Meeting }, driver: End, driven: End) =>
    new GearPick(meeting, ends, driver, driven);
  for (const found of held(meetings, ends, make, pace))
    if (found) for (const pick of found) picks.push(pick);
    else yield;
  yield* sort(picks, byPick, pace);
  return {
    places: 1,
    columns: [picks.map(({ ratio }) => ratio)],
    pickAt: ([n]) => picks[n!]!,
    parts: [...new Set(picks.flatMap(({ parts }) => parts))],
  };
}
