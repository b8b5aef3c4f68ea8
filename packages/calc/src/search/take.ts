import { type Build, oneIn, type Part, stageShape, valueAt } from "../drivetrain/index.js";
import { rational, type Rational } from "../exact/index.js";
import { limitsOf, toAxes, withKnownShafts } from "../fit/index.js";
import { comparePitch, moduleOf, type Toothed, type ToothPair } from "../gears/index.js";
import { fittedTo, type Need, needsOf, needsOfStage } from "../parts/index.js";
import type { Stage } from "../stages/index.js";
import type { GearPick } from "./found.js";
import type { FoundTrain } from "./trains.js";

/** One change of an edit: a new value at an address; null takes an optional one away. */
export interface Setting {
  readonly set: string;
  readonly to: unknown;
}

/** Whether a stage can say something: what its shape does not know cannot be part of an edit. */
const canSay = ({ kind }: Stage, field: string): boolean => field in stageShape(kind);

/** A length as text: its digits where they end, else a fraction. */
function lengthText(length: Rational): string {
  const digits = length.toDecimal({ maximumFractionDigits: 9 });
  return `${rational(digits).equals(length) ? digits : length.toFraction()} mm`;
}

/**
 * A mount that is counted in teeth of a pitch, with its ends as lengths: the slot stays where it is when gears of another
 * pitch come into it.
 */
export function slotKept(build: Build, stage: Stage, pitch: Toothed): Setting[] {
  const n = build.mounts?.findIndex((mount) => mount.stage === stage.id) ?? -1;
  const mount = build.mounts?.[n];
  const same = comparePitch(stage as Toothed, pitch)?.coarser.sign === 0;
  if (!mount || !(mount.knownPair ?? mount.toothSum) || same || !moduleOf(stage as Toothed)) return [];
  if (withKnownShafts(mount) !== mount) return [];
  const limits = limitsOf(mount, stage as ToothPair & Stage).filter(({ kind }) => kind !== "pivot");
  const endOf = (end: "from" | "to"): Rational | undefined =>
    limits
      .filter((limit) => limit.end === end)
      .map(({ at }) => at.low)
      .reduce<Rational | undefined>(
        (most, at) => (!most || at.compare(most) * (end === "from" ? 1 : -1) > 0 ? at : most),
        undefined,
      );
  // Over shafts whose diameters nobody has told no length can be written: the ends stand between the axes then.
  const areShaftsKnown = mount.shaft !== undefined && mount.drivenShaft !== undefined;
  const fields = [
    "knownPair",
    "closer",
    "farther",
    "toothSum",
    ...(areShaftsKnown ? [] : ["measured" as const]),
  ] as const;
  const gone = fields.filter((field) => mount[field] !== undefined);
  const more = areShaftsKnown ? toAxes(mount) : rational(0);
  return [
    ...(["from", "to"] as const).flatMap((end) => {
      const at = endOf(end);
      // As the slot is measured: between the axes, or over or between the shafts.
      return at ? { set: `mounts.${n}.${end}`, to: lengthText(at.minus(more)) } : [];
    }),
    ...gone.map((field) => ({ set: `mounts.${n}.${field}`, to: null })),
  ];
}

/** What is taken: counts, and the parts that have them. */
export type Picked = Pick<GearPick, "counts" | "driver" | "driven" | "set" | "parts" | "pitch">;

/** A set as it is taken by itself, without what would hold it. */
export const pickedSet = (set: Part): Picked => ({
  counts: [set.driver!, set.driven!],
  driver: set,
  driven: set,
  set,
  parts: [set],
  pitch: set,
});

/** What a stage's fields are to be, whether it can say them or not. */
export function settingsFor(build: Build, stage: Stage, pick: Picked): Setting[] {
  const { counts, driver, driven, set, parts, pitch } = pick;
  const now = stage as Stage & Readonly<Record<string, unknown>>;
  const [first, second] = needsOfStage(stage).together!.fields;
  const settings: Setting[] = [
    { set: `${stage.id}.${first}`, to: counts[0] },
    { set: `${stage.id}.${second}`, to: counts[1] },
  ];
  const put = (field: string, to: unknown, was: unknown = now[field]) => {
    if ((to ?? null) !== (was ?? null)) settings.push({ set: `${stage.id}.${field}`, to: to ?? null });
  };
  put("set", set ? true : undefined, now.set === true ? true : undefined);
  // A part that does not say its pitch leaves the stage's as it is; two ways to write one pitch are no change.
  const compared = comparePitch(now as Toothed, pitch);
  if (moduleOf(pitch) && compared?.coarser.sign !== 0) {
    put("module", pitch.module);
    put("diametralPitch", pitch.diametralPitch);
  }
  if (moduleOf(pitch) && !rational((now as Toothed).pressureAngle ?? 20).equals(pitch.pressureAngle ?? 20))
    put("pressureAngle", pitch.pressureAngle);
  // What the gears before were shifted, measured or thinned by went with them.
  const alone = set ? {} : { driverShift: driver.shift, drivenShift: driven.shift };
  const tips = set ? {} : { driverTip: driver.tipDiameter, drivenTip: driven.tipDiameter };
  for (const [field, value] of Object.entries({ driverShift: undefined, drivenShift: undefined, ...alone }))
    put(field, value);
  for (const [field, value] of Object.entries({ driverTip: undefined, drivenTip: undefined, ...tips }))
    put(field, value);
  put("thinning", undefined);
  // The planets of another set are another's: how many there are is not known.
  if (counts[0] !== now[first!] || counts[1] !== now[second!]) {
    put("planet", set?.teeth);
    put("planets", undefined);
  }
  const ids = parts.map(({ id }) => id);
  if (ids.length || now.fitted) settings.push({ set: `${stage.id}.fitted`, to: ids.length ? ids : null });
  return settings;
}

/**
 * What taking a pair or a set means, as the changes of one edit: counts, pitch, shift, and the parts fitted, with the sleeve
 * and the plate that they need. A slot that is counted in teeth of another pitch is written out as lengths, and so stays where
 * it is; the opening follows from the mount.
 *
 * @param stage the stage that the pair was found for
 *
 * @example
 * const stages = [{ id: "primary", kind: "pair", driver: 23, driven: 53, module: "0.8" } as const];
 * const build = { format: "meshwright-build/1", stages, outputs: [{ id: "rear", stages: [] }] } as const;
 * const gear = { module: "0.8" } as const;
 * const drivers = [{ id: "p15", is: "pinion", teeth: 15, ...gear } as const];
 * const drivens = [{ id: "s62", is: "spur", teeth: 62, ...gear } as const];
 * const [{ found }] = [...findPairs({ drivers, drivens, outputs: [{ id: "rear", from: 4, to: 5 }] })].filter((one) => one.found.length);
 * takePair(build, "primary", found[0]!).slice(0, 2); // => [{ set: "primary.driver", to: 15 }, { set: "primary.driven", to: 62 }]
 */
export function takePair(build: Build, stage: string, pick: Picked): Setting[] {
  const found = oneIn(build)(stage)?.stage;
  if (found?.id !== stage || !needsOfStage(found).together) return [];
  const said = settingsFor(build, found, pick).filter(({ set }) => canSay(found, set.slice(stage.length + 1)));
  return [...said, ...(moduleOf(pick.pitch) ? slotKept(build, found, pick.pitch) : [])];
}

/**
 * Tells of pairs whether a stage stands as taking them would leave it: counts, pitch, and the parts that are fitted; where the
 * stage names none, those that answer its needs.
 *
 * @param needs those of the build
 */
export function takenIn(
  build: Build,
  stage: string,
  needs: readonly Need[] = needsOf(build),
): (pick: GearPick) => boolean {
  const found = oneIn(build)(stage)?.stage;
  const fitted = found && fittedTo(found);
  const there = needs.flatMap(({ stage: place, part }) => (place === stage && part ? part.id : []));
  const is = (one: unknown, other: unknown) => JSON.stringify(one ?? null) === JSON.stringify(other);
  return (pick) => {
    const ids = pick.parts.map(({ id }) => id);
    const gears = pick.set ? [pick.set.id] : [pick.driver.id, pick.driven.id];
    const isThere = fitted?.length
      ? ids.length === fitted.length && ids.every((id) => fitted.includes(id))
      : gears.every((id) => !id || !there.length || there.includes(id));
    const settings = takePair(build, stage, pick).filter(({ set }) => set !== `${stage}.fitted`);
    return isThere && settings.every(({ set, to }) => is(valueAt(build, set), to));
  };
}

/** What taking a whole train means, as the changes of one edit: its pairs, and its wheels by their diameters. */
export function takeTrain(
  build: Build,
  stages: readonly string[],
  outputs: readonly string[],
  train: FoundTrain,
): Setting[] {
  return [
    ...train.picks.flatMap((pick, n) => takePair(build, stages[n]!, pick)),
    ...train.wheels.flatMap((wheel, n) =>
      wheel ? { set: `${outputs[n]}.wheel`, to: { diameter: wheel.diameter } } : [],
    ),
  ];
}
