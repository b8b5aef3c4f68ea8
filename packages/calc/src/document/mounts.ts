import { lengthOf, rational, type Rational, ratioOf } from "../exact/index.js";
import { modulesAcross, type Numeric } from "../gears/index.js";
import type { FindingValues, Say, Stage } from "../stages/index.js";
import { labelAt, pointerTo, type Build, type ChangeSet, type Mount } from "../drivetrain/index.js";

/** What tells how long a slot is that is counted in teeth of its pair. */
const pitchFields = ["module", "diametralPitch", "helixAngle"] as const;
type Pitched = Stage & { readonly [field in (typeof pitchFields)[number]]?: Numeric } & {
  readonly internal?: boolean;
  readonly form?: "spur" | "helical";
};

/** Two lengths of which the second is the smaller. */
const backwards = (from: string | undefined, to: string | undefined): FindingValues | undefined =>
  from === undefined || to === undefined || lengthOf(from).compare(lengthOf(to)) <= 0 ? undefined : { from, to };

/** What a length that puts both axes into one place, or beyond it, is told with. */
const belowZero = (distance: Rational, field: string): FindingValues | undefined =>
  distance.sign > 0 ? undefined : { field, found: `${distance.toDecimal({ maximumFractionDigits: 3 })} mm` };

/** What is measured over shafts is longer than half of both. */
function checkShafts(mount: Mount, pointer: string, say: Say): void {
  const { measured, shaft, drivenShaft, from, to, holes = [] } = mount;
  if (measured !== "over shafts" || shaft === undefined || drivenShaft === undefined) return;
  const half = lengthOf(shaft).plus(lengthOf(drivenShaft)).over(2);
  const lengths = { from, to, ...Object.fromEntries(holes.map((hole, n) => [`holes/${n}`, hole])) };
  for (const [field, text] of Object.entries(lengths)) {
    const values = text !== undefined && belowZero(lengthOf(text).minus(half), field.split("/")[0]!);
    if (values) say("warning", "centre-below-zero", `${pointer}/${field}`, values);
  }
}

/** The centre distance of so many teeth in a pair's pitch; nothing where that is not known, or refused where the pair stands. */
function centreOf(stage: Pitched, teeth: number): Rational | undefined {
  try {
    return modulesAcross(stage, ratioOf(teeth, 2))?.low;
  } catch {
    return undefined;
  }
}

/** A known pair that can run, and an end of its slot that lies on the same side of the other axis. */
function checkKnownPair({ knownPair, closer }: Mount, stage: Pitched, pointer: string, say: Say): void {
  if (!knownPair) return;
  const [driver, driven] = knownPair;
  if (stage.internal && driven <= driver)
    return say("warning", "ring-too-small", `${pointer}/knownPair`, { ring: driven, gear: driver });
  const centre = centreOf(stage, stage.internal ? driven - driver : driver + driven);
  const values = centre && closer !== undefined && belowZero(centre.minus(lengthOf(closer)), "closer");
  if (values) say("warning", "centre-below-zero", `${pointer}/closer`, values);
}

/** Where a version gives a pair another pitch: the field that does it. Nothing where it writes the same in another way. */
function pitchMoved(stage: Pitched, changes: ChangeSet): string | undefined {
  const given = pitchFields.flatMap((field) => {
    const value = changes[`${stage.id}.${field}`] as Numeric | null | undefined;
    return value === undefined ? [] : [[field, value ?? undefined] as const];
  });
  if (!given.length) return undefined;
  const was = centreOf(stage, 1);
  const moves = (fields: typeof given): boolean => {
    const is = centreOf({ ...stage, ...Object.fromEntries(fields) }, 1);
    return !!was && !!is && !was.equals(is);
  };
  return moves(given) ? (given.find((one) => moves([one])) ?? given.at(-1)!)[0] : undefined;
}

/** Versions that give a pair another pitch, and carry its slot along because that is counted in teeth. */
function checkSlots(build: Build, byId: ReadonlyMap<string, Stage>, say: Say): void {
  const { mounts = [], alternatives = [] } = build;
  // A version that says where a mount is has thought of it.
  const placed = alternatives.map(
    ({ changes }) => new Set(Object.keys(changes).map((address) => /^mounts\.\d+(?=\.)/.exec(address)?.[0])),
  );
  mounts.forEach(({ stage: id, knownPair, toothSum }, n) => {
    const stage = byId.get(id) as Pitched | undefined;
    if (!stage || !(knownPair ?? toothSum) || (stage.module ?? stage.diametralPitch) === undefined) return;
    alternatives.forEach(({ changes }, place) => {
      if (placed[place]!.has(`mounts.${n}`)) return;
      const field = pitchMoved(stage, changes);
      if (field === undefined) return;
      const at = pointerTo(`/alternatives/${place}/changes`, `${id}.${field}`);
      say("warning", "slot-moves", at, { label: labelAt(build, id) });
    });
  });
}

/**
 * What keeps a mount from being worked out is an error: openings in the wrong order, an angle beyond half a turn. What works out to a
 * mount that nobody has is told: a second one for the same stage, which is passed over; ends in the wrong order; axes in one place; a
 * slot that moves along with a pitch.
 *
 * @param say is told the pointer in the place of a field
 */
export function checkMounts(build: Build, byId: ReadonlyMap<string, Stage>, say: Say): void {
  const seen = new Set<string>();
  build.mounts?.forEach((mount, n) => {
    const { stage: id, from, to, opening = "0 mm", openingTo, pivot, line } = mount;
    const pointer = `/mounts/${n}`;
    const stage = byId.get(id) as Pitched | undefined;
    if (seen.has(id)) say("warning", "mount-repeated", `${pointer}/stage`, { label: labelAt(build, id) });
    seen.add(id);
    const openings = backwards(opening, openingTo);
    if (openings) say("error", "range-backwards", `${pointer}/openingTo`, openings);
    for (const [at, values] of [
      ["to", backwards(from, to)],
      ["line/to", backwards(line?.from, line?.to)],
    ] as const)
      if (values) say("warning", "range-backwards", `${pointer}/${at}`, values);
    for (const end of pivot ? (["from", "to"] as const) : []) {
      const found = pivot![end];
      const angle = rational(found);
      if (angle.sign < 0 || angle.compare(180) > 0)
        say("error", "angle-out-of-range", `${pointer}/pivot/${end}`, { from: 0, to: 180, found: String(found) });
    }
    checkShafts(mount, pointer, say);
    if (stage) checkKnownPair(mount, stage, pointer, say);
  });
  checkSlots(build, byId, say);
}
