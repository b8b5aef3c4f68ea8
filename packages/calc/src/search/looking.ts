import { rational } from "../exact/index.js";
import { toothSumsFor, withKnownShafts } from "../fit/index.js";
import { modulesAcross } from "../gears/index.js";
import { currencyFor, Ends } from "./ends.js";
import { type Known, Meeting, meetingOf, mountOf, type Shelf, shelvesOf } from "./gears.js";
import { checkHeld } from "./limit.js";
import type { GearChoice, PairQuestion } from "./question.js";
import { type Aim, aimsOf, type Bounds, boundsOf, farthest, type Gap } from "./wanted.js";
import { type Cast, castFor, greatest, isBelow, type Whole } from "./whole.js";

/** What is asked of a pair, made ready for the loops. */
export interface Wish {
  readonly aims: readonly Aim[];
  readonly outputs: number;
  readonly bounds: readonly Bounds[];
  readonly factors: readonly Whole[];
  readonly cast: Cast;
}

/** Two sorts of gears, and where they bring the totals. */
export interface Placed {
  readonly meeting: Meeting;
  readonly reaches: boolean;
  readonly gap: Gap;
}

/** Everything that a search of pairs goes by. */
export interface Looking {
  readonly wish: Wish;
  readonly ends: Ends;
  readonly shelves: readonly Shelf[];
  readonly sets: readonly Meeting[];
  /** The sums of teeth that the mount takes, of a shelf; nothing where it does not say or nobody knows. */
  sumsOf(shelf: Shelf): readonly (readonly [number, number])[] | undefined;
  meet(driver: Shelf["drivers"][number], driven: Shelf["drivens"][number]): Meeting;
}

/** The sums of teeth that a choice's mount takes, by shelf. */
export function gearsOf(
  choice: GearChoice & { readonly id?: string },
  known?: Known,
): Pick<Looking, "shelves" | "sets" | "sumsOf" | "meet"> {
  const mount = mountOf(choice);
  const { internal, form, helixAngle, whole, reductions } = choice;
  const place = { mount, teeth: { internal, form, helixAngle }, known };
  const at = choice.id === undefined ? "" : `${choice.id}.`;
  const shelves = shelvesOf(choice, at);
  checkHeld(
    shelves.reduce((sum, { drivers, drivens }) => sum + drivers.length * drivens.length, 0),
    `${at}drivers`,
  );
  return {
    shelves,
    sets: (choice.sets ?? []).map((part, n) => meetingOf(part, place, { reduction: reductions?.[n], whole }, at)),
    sumsOf: ({ pitch }) => {
      const teeth = { ...pitch, form, helixAngle };
      // What was measured over shafts that nobody knows says nothing.
      return mount && !internal && withKnownShafts(mount) === mount && modulesAcross(teeth, rational(1))
        ? toothSumsFor(mount, teeth)
        : undefined;
    },
    meet: (driver, driven) => new Meeting(driver, driven, place),
  };
}

export function lookingFor(question: PairQuestion): Looking {
  const gears = gearsOf(question);
  const aims = aimsOf(question.outputs);
  const counts = [
    ...gears.shelves.flatMap(({ drivers, drivens }) => [...drivers, ...drivens].map(({ teeth }) => teeth)),
    ...gears.sets.flatMap((meeting) => meeting.ratio),
  ];
  const sizes = aims.flatMap((aim) => (boundsOf(aim, Number as Cast) ?? []).map((one) => Math.abs(Number(one))));
  const cast = castFor(greatest(counts) * greatest(sizes));
  const bounds = aims.flatMap((aim) => {
    const one = boundsOf(aim, cast);
    return one ? [one] : [];
  });
  const factors = bounds.flatMap(([a, , , middle, c]) => [a, middle, c]);
  return {
    ...gears,
    ends: new Ends(question, question, currencyFor([question], question)),
    wish: { aims, outputs: question.outputs.length, bounds, factors, cast },
  };
}

/** Where two counts bring the totals. */
export function placeOf(meeting: Meeting, { bounds, factors, cast }: Wish): Placed {
  const [top, bottom] = meeting.ratio.map(cast) as [Whole, Whole];
  const reaches = bounds.every(([a, low, high]) => top * a >= bottom * low && top * a <= bottom * high);
  const gap = {} as Gap;
  farthest(top, bottom, factors, 0, factors.length, gap);
  return { meeting, reaches, gap };
}

/** Nearest to the middle first, then by driver and driven. */
export const nearestFirst = (a: Placed, b: Placed): number => {
  if (isBelow(a.gap.top, a.gap.bottom, b.gap.top, b.gap.bottom)) return -1;
  if (isBelow(b.gap.top, b.gap.bottom, a.gap.top, a.gap.bottom)) return 1;
  return a.meeting.counts[0] - b.meeting.counts[0] || a.meeting.counts[1] - b.meeting.counts[1];
};
