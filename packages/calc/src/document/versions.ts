import type { Build, Measurement } from "../drivetrain/index.js";
import { errorOf } from "../stages/index.js";
import { applyChanges } from "./changes.js";
import { nearestTo } from "./nearest.js";
import { refused, type Reading } from "./reading.js";
import { bareOf, plainChanges, stepsBackTo } from "./steps-back.js";

function revisionOf(build: Build, number: number): Reading | undefined {
  if (number === build.revision?.number) return { ok: true, build, findings: [] };
  const steps = stepsBackTo(build, number);
  if (steps.at(-1)?.number !== number) return undefined;
  let reading: Reading = { ok: true, build: bareOf(build), findings: [] };
  for (const { back, ...revision } of steps) {
    reading = applyChanges(reading.build, [...plainChanges(reading.build, back), { set: "revision", to: revision }]);
    if (!reading.ok) return reading;
  }
  return reading;
}

/**
 * A version of a build by its name: `article` is the build itself, the id of an alternative that alternative, `revision-1`
 * the state that had this number, the id of a reference the build that is referred to. Never throws.
 *
 * @returns told apart by `ok`; a version has no alternatives, references, revisions and measurements of its own
 *
 * @example
 * const rear = { id: "rear", stages: [{ id: "ring", kind: "pair", driver: 12, driven: 35 }] };
 * const alternatives = [{ id: "deep", changes: { "ring.driver": 11 } }];
 * const revisions = [{ number: 1, back: [{ set: "ring.driver", to: 13 }] }];
 * const build = parseBuild({ format: "meshwright-build/1", outputs: [rear], alternatives, revisions });
 * const says = (id: string) => figureOf(evaluate(buildAt(build, id).build!), { figure: "count", of: "ring.driver" });
 * ["article", "deep", "revision-1"].map(says); // => ["12", "11", "13"]
 * buildAt(build, "deeep").findings[0]?.values.nearest; // => ["deep"]
 */
export function buildAt(build: Build, id: string): Reading {
  if (id === "article") return { ok: true, build, findings: [] };
  const alternative = build.alternatives?.find((one) => one.id === id);
  if (alternative) return applyChanges(bareOf(build), alternative.changes);
  const reference = build.references?.find((one) => one.id === id);
  if (reference?.build) return { ok: true, build: reference.build, findings: [] };
  const [, number] = /^revision-(\d{1,7})$/.exec(id) ?? [];
  const revision = number && revisionOf(build, +number);
  if (revision) return revision;
  const known = [
    "article",
    ...(build.alternatives ?? []).map((one) => one.id),
    ...(build.references ?? []).filter((one) => one.build).map((one) => one.id),
    ...(build.revisions ?? []).map((one) => `revision-${one.number}`),
  ];
  return refused(errorOf("meaning", "missing-reference", "", { id, known, nearest: nearestTo(id, known) }));
}

/** A build as it stood on a day, as its dated revisions tell: the last that is not of a later day, else the first of them. */
function buildOn(build: Build, date: string | undefined): Reading {
  const { revision, revisions = [] } = build;
  if (date === undefined || revision?.date === undefined || revision.date <= date || !revisions.length)
    return { ok: true, build, findings: [] };
  const earlier = [...revisions].sort((one, other) => other.number - one.number);
  const then = earlier.find((one) => one.date === undefined || one.date <= date) ?? earlier.at(-1)!;
  return revisionOf(build, then.number)!;
}

/**
 * A build as it was when something was measured: as its revisions tell of that day, with the values put back that the
 * measurement says it was made with. Never throws.
 */
export function buildAsMeasured(build: Build, { with: values, date }: Measurement): Reading {
  const then = buildOn(build, date);
  return then.ok && values ? applyChanges(bareOf(then.build), values) : then;
}
