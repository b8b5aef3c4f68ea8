import {
  finderFor,
  finderIn,
  freeId,
  labelAt,
  stagesOf,
  unitsOf,
  type Build,
  type Change,
  type ChangeSet,
  type Finder,
  type Unit,
} from "../drivetrain/index.js";
import { inners, type Finding, type Stage } from "../stages/index.js";
import { problem } from "./changes.js";
import { asPublished, type Edited, type Layer } from "./edited.js";
import { arrangementOf, based, editedTo, idOf, rootOf, settled, valued } from "./layer.js";
import { refused, type Reading } from "./reading.js";

/** A change that no longer applies, and why. */
export interface Dropped {
  readonly address: string;
  /** What people call what it was a change of. */
  readonly label: string;
  readonly why: Finding;
}

/**
 * So often a part of a layer is tried, and the less often the larger the build is: a page may not stand still. What has not
 * found its place by then is left out.
 */
const triesFor = (build: Build): number => Math.max(8, Math.min(60, Math.floor(50_000 / stagesOf(build).length)));

/**
 * A layer over an author's build that may be another than it was made for: every change that still applies, sets whole,
 * one after the other in their order.
 *
 * @param known a build in which things have names that the author has taken away since
 * @returns what was left out, with its reason, in `dropped`
 */
export function layOver(
  article: Build,
  layer: Layer,
  known = article,
): Edited & { readonly dropped: readonly Dropped[] } {
  const dropped: Dropped[] = [];
  let tries = triesFor(article);
  let finders: readonly (readonly [Build, Finder])[] | undefined;
  const drop: Drop = (address, label, why) => {
    const isGone = why.code === "missing-address" || why.code === "not-a-stage";
    finders ??= [article, known].map((build) => [build, finderIn(build)] as const);
    const named = finders.map(([build, find]) => labelAt(build, address, find)).find((name) => name !== address);
    dropped.push({
      address,
      label: label ?? named ?? address,
      why: isGone ? problem("no-longer-there", address) : why,
    });
  };
  const whole = (structure: readonly Change[], sets: ChangeSet) => {
    tries--;
    const { base, failed, broken } = based(article, structure);
    if (broken) return { reading: refused(problem("not-data", "")), trimmed: false };
    if (!failed.length) return valued(base, sets);
    return { reading: refused(...failed.map(([, why]) => why)), trimmed: false };
  };
  const finish = (structure: readonly Change[], sets: ChangeSet, build: Build, trimmed: boolean) => {
    const { base } = based(article, structure);
    const isMoot = structure.every((one) => "move" in one) && arrangementOf(base) === arrangementOf(article);
    const kept = {
      structure: isMoot ? [] : structure,
      sets: settled(base, build, Object.keys(sets)) ?? sets,
    };
    return { ...editedTo(article, kept, { base: isMoot ? article : base, build, trimmed }), dropped };
  };

  const mine = renamed(article, layer);
  const all = whole(mine.structure, mine.sets);
  if (all.reading.ok) return finish(mine.structure, mine.sets, all.reading.build, all.trimmed);
  const tryOut = (some: readonly Change[]) => whole(some, {}).reading;
  const { structure, absent } = keptStructure(article, mine.structure, tryOut, drop, () => tries > 0);
  const { base } = based(article, structure);
  const sets = Object.fromEntries(Object.entries(mine.sets).filter(([address]) => !absent.has(rootOf(address))));
  const attempt = (some: ChangeSet) => (tries-- > 0 ? valued(base, some).reading : undefined);
  const kept = keptSets(base, sets, attempt, errorIn(all.reading), drop);
  const { reading: last, trimmed } = whole(structure, kept);
  if (last.ok) return finish(structure, kept, last.build, trimmed);
  // Only where tries have run out before anything was settled.
  for (const { address } of unitsOf(base, kept)) drop(address, undefined, errorIn(last));
  return { ...asPublished(article), dropped };
}

/** A layer whose new stages have other ids, where the author has stages of those ids by now. */
function renamed(article: Build, layer: Layer): Layer {
  const find = finderFor(article, layer.structure.length);
  const removed = new Set<string>();
  const names = new Map<string, string>();
  const isTaken = (id: string) => [...names.values()].includes(id);
  for (const change of layer.structure)
    if ("remove" in change) removed.add(change.remove);
    else if ("insert" in change)
      for (const { id, kind } of stagesInside(change.insert))
        if (find(id) && !removed.has(id)) names.set(id, freeId(kind, [article], isTaken));
  if (!names.size) return layer;
  const renamedAt = (address: string): string => {
    const id = rootOf(address);
    return names.has(id) ? names.get(id) + address.slice(id.length) : address;
  };
  const stageOf = (stage: Stage): Stage => {
    const positions = inners[stage.kind]
      ?.positions(stage)
      .map((one) => (one.stages ? { ...one, stages: (one.stages as Stage[]).map(stageOf) } : one));
    return { ...stage, id: renamedAt(stage.id), ...(positions && { positions }) } as Stage;
  };
  return {
    structure: layer.structure.map((change): Change => {
      if ("set" in change) return { ...change, set: renamedAt(change.set) };
      if ("remove" in change) return { remove: renamedAt(change.remove) };
      const into = change.into === undefined ? {} : { into: renamedAt(change.into) };
      return "insert" in change
        ? { ...change, ...into, insert: stageOf(change.insert) }
        : { ...change, ...into, move: renamedAt(change.move) };
    }),
    sets: Object.fromEntries(Object.entries(layer.sets).map(([address, to]) => [renamedAt(address), to])),
  };
}

type Drop = (address: string, label: string | undefined, why: Finding) => void;

const errorIn = ({ findings }: { readonly findings: readonly Finding[] }): Finding =>
  findings.find(({ severity }) => severity === "error")!;

/** The changes of structure that can still be made; and the stages that they would have put in, and did not. */
function keptStructure(
  article: Build,
  structure: readonly Change[],
  attempt: (structure: readonly Change[]) => Reading,
  drop: Drop,
  mayTry: () => boolean,
) {
  const absent = new Set<string>();
  const leave = (change: Change, why: Finding) => {
    if ("insert" in change) for (const { id } of stagesInside(change.insert)) absent.add(id);
    // What the author has taken away as well needs no word.
    if ("remove" in change && why.code === "not-a-stage") return;
    drop(idOf(change), "insert" in change ? (change.insert.label ?? change.insert.id) : undefined, why);
  };
  const failed = new Map(based(article, structure).failed);
  for (const [change, why] of failed) leave(change, why);
  const left = structure.filter((change) => !failed.has(change));
  const together = attempt(left);
  if (together.ok) return { structure: left, absent };
  let kept: readonly Change[] = [];
  for (const change of left) {
    const isLost = [rootOf(idOf(change)), "into" in change ? rootOf(change.into ?? "") : ""].some((id) =>
      absent.has(id),
    );
    if (isLost) {
      // It goes with what is told already.
      if ("insert" in change) for (const { id } of stagesInside(change.insert)) absent.add(id);
      continue;
    }
    const reading = mayTry() ? attempt([...kept, change]) : together;
    if (reading.ok) kept = [...kept, change];
    else leave(change, errorIn(reading));
  }
  return { structure: kept, absent };
}

/** A stage and all that stands inside it. */
function stagesInside(stage: Stage): readonly Stage[] {
  const inside = inners[stage.kind]?.positions(stage) ?? [];
  return [stage, ...inside.flatMap(({ stages = [] }) => (stages as Stage[]).flatMap(stagesInside))];
}

/** Values that can still be set, sets whole: first those that nothing speaks against, then the others one by one. */
function keptSets(
  base: Build,
  sets: ChangeSet,
  attempt: (sets: ChangeSet) => Reading | undefined,
  why: Finding,
  drop: Drop,
): ChangeSet {
  const units = unitsOf(base, sets);
  const kept = new Set<Unit>();
  const reasons = new Map<Unit, Finding>();
  const late: Unit[] = [];
  let first = why;
  const merged = (some: ReadonlySet<Unit>): ChangeSet =>
    Object.assign({}, ...units.filter((unit) => some.has(unit)).map((unit) => unit.sets)) as ChangeSet;
  const accept = (some: readonly Unit[], again = false): void => {
    if (!some.length) return;
    const reading = attempt(merged(new Set([...kept, ...some])));
    if (!reading) return;
    if (reading.ok) {
      for (const unit of some) kept.add(unit);
      return;
    }
    first = errorIn(reading);
    if (some.length === 1) {
      reasons.set(some[0]!, errorIn(reading));
      if (!again) late.push(some[0]!);
      return;
    }
    const blamed = new Set(blamedAmong(base, some, reading.findings));
    const innocent = some.filter((unit) => !blamed.has(unit));
    const half = some.length >> 1;
    if (!blamed.size) for (const part of [some.slice(0, half), some.slice(half)]) accept(part);
    else for (const part of [innocent, ...[...blamed].map((unit) => [unit])]) accept(part);
  };
  accept(units);
  // What was tried too early may have its ground by now.
  for (const unit of late) accept([unit], true);
  for (const unit of units) if (!kept.has(unit)) drop(unit.address, undefined, reasons.get(unit) ?? first);
  return merged(kept);
}

/** Which changes findings point to. */
function blamedAmong(base: Build, units: readonly Unit[], findings: readonly Finding[]): readonly Unit[] {
  const find = finderFor(base, units.length);
  const places = new Set<string>();
  for (const { at } of findings) {
    places.add(at);
    for (let end = at.lastIndexOf("/"); end > 0; end = at.lastIndexOf("/", end - 1)) places.add(at.slice(0, end));
  }
  return units.filter(({ address }) => {
    const pointer = find(rootOf(address))?.pointer;
    return places.has(address) || (pointer !== undefined && places.has(pointer));
  });
}
