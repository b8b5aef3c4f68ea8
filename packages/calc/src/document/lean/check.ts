import {
  branchesOf,
  finderIn,
  isReserved,
  markRead,
  oneIn,
  sameSet,
  setOf,
  stagesOf,
  type Build,
  type Change,
  type ChangeSet,
} from "../../drivetrain/index.js";
import { rational, type Rounding } from "../../exact/index.js";
import { inners, stageShapes, surePitch, sures, unknowns, type Stage } from "../../stages/index.js";
import { isClear } from "../clear.js";
import { leanShape, must } from "./shape.js";

type Named = { readonly id: string };
const idsOf = (list: readonly Named[] = []): string[] => list.map(({ id }) => id);

/** Ids that are all different. */
const apart = (ids: readonly (string | number)[]): unknown => must(new Set(ids).size === ids.length);

const upwards = ({ from, to }: { readonly from: string | number; readonly to: string | number }): unknown =>
  must(rational(from).compare(to) <= 0);

/** Throws where a build does not plainly mean something. */
function checkMeaning(build: Build): void {
  const { outputs, branches = [], alternatives = [], references = [], modes = [], parts = [], uses = [] } = build;
  const { mounts = [], measurements = [], revisions = [], revision, target, compare, headline, rounding } = build;
  const places = stagesOf(build);
  const stages = places.map(({ stage }) => stage);
  const byId = new Map(stages.map((stage) => [stage.id, stage]));
  const shafts = idsOf(outputs);
  const known = (id: string | undefined, ids: readonly string[]): unknown => must(id === undefined || ids.includes(id));
  must(stages.length <= 10_000 && parts.every(surePitch));
  for (const use of uses) must(Object.hasOwn(stageShapes, use));

  const names = [stages, branches, outputs, alternatives, references].flatMap(idsOf);
  apart(names);
  for (const name of names) must(!isReserved(name) && !Object.hasOwn(build, name));
  apart(idsOf(modes));
  apart(idsOf(parts));

  const partIds = new Set(idsOf(parts));
  const sure = (stage: Stage): void => {
    const { kind } = stage;
    const unknown = unknowns[kind];
    must(sures[kind](stage));
    for (const one of (unknown?.spans(stage) ?? []) as readonly Stage[]) {
      must(!inners[one.kind]);
      sure(one);
    }
  };
  for (const stage of stages) {
    const { fitted = [], kind } = stage;
    sure(stage);
    apart(fitted);
    for (const id of fitted) must(partIds.has(id));
    const unknown = unknowns[kind];
    const same = unknown?.sameAs(stage);
    if (same === undefined) continue;
    const other = byId.get(same)!;
    // A row of things that are the same may come back to itself: only one step is plain.
    must(other?.kind === kind && unknown!.sameAs(other) === undefined && unknown!.text(other) === unknown!.text(stage));
  }

  const ends = idsOf(branches);
  for (const end of [...branches, ...outputs]) {
    known(end.from, ends);
    must(!branchesOf(build, end)[0]?.from);
    if ("motor" in end && end.motor) must(end.from === undefined);
    if ("wheel" in end && end.wheel) must(isClear(end.wheel));
  }
  // Whether shares are whole is told by what the splits feed: more than totals need.
  must(!build.centre?.share && branches.every(({ split }) => !split?.share));

  for (const id of [target?.output, compare?.of, compare?.with, headline]) known(id, shafts);
  if (target) upwards(target);
  // What has to be worked out is compared by the full reader.
  for (const { stage, openingTo, pivot } of mounts) must(byId.has(stage) && !(openingTo ?? pivot));
  for (const { positions } of modes)
    for (const id in positions) {
      const stage = byId.get(id);
      must(stage && inners[stage.kind] && idsOf(inners[stage.kind]!.positions(stage)).includes(positions[id]!));
    }
  const find = finderIn(build);
  const settable = (changes: object): void => {
    for (const address in changes) must(find(address));
  };
  for (const { changes } of alternatives) settable(changes);
  for (const { what, wheelTurns, with: values = {} } of measurements) {
    known(what, shafts);
    if (typeof wheelTurns === "object") upwards(wheelTurns);
    settable(values);
  }
  apart(revisions.map(({ number }) => number));
  for (const { number, back } of revisions) {
    must(!(revision?.number !== undefined && number >= revision.number));
    for (const change of back as readonly object[]) {
      must(Object.keys(change).every((key) => /^(set|to)$/.test(key)));
      const { set } = change as { set?: unknown };
      must(Object(set) === set ? !Array.isArray(set) : typeof set === "string" && "to" in change);
    }
  }
  // Throws where ECMA-402 refuses the options together.
  rational(1).toDecimal(rounding as Rounding | undefined);
  for (const { build: other, src } of references) {
    must(!other !== (src === undefined) && !other?.references);
    if (other) checkMeaning(other);
  }
}

/** A build that is read, and those that it refers to. */
function marked(data: Build): Build {
  const build = { ...data, stages: data.stages ?? [] };
  const { references } = build;
  return markRead(
    references
      ? { ...build, references: references.map((one) => (one.build ? { ...one, build: marked(one.build) } : one)) }
      : build,
  );
}

/** Plain data as a build; throws where it is not plainly one. Its versions are not tried. */
export function leanCheck(data: unknown): Build {
  const build = marked(leanShape(data) as Build);
  checkMeaning(build);
  return build;
}

/**
 * A build with changes carried out; nothing where one cannot plainly be made.
 *
 * @example
 * import { leanApply, leanRead } from "@meshwright/calc/document/lean";
 * const build = leanRead({ format: "meshwright-build/1", outputs: [{ id: "rear", stages: [] }] })!;
 * leanApply(build, { title: "Plover" })?.title; // => "Plover"
 * leanApply(build, { title: 7 }); // => undefined
 */
export function leanApply(build: Build, changes: ChangeSet | readonly Change[]): Build | undefined {
  try {
    const draft = structuredClone(build);
    const list = Array.isArray(changes)
      ? (changes as readonly Change[])
      : Object.entries(changes).map(([set, to]) => ({ set, to: to as unknown }));
    for (const change of list) {
      const { set, to } = change as { set: string; to: unknown };
      const { holder, key } = oneIn(draft)(set)!;
      if (to !== null) holder[key] = structuredClone(to);
      else {
        must(!Array.isArray(holder));
        delete holder[key];
      }
    }
    const result = leanCheck(draft);
    const [was, is] = [oneIn(build), oneIn(result)];
    const named = list.map((change) => (change as { set: string }).set);
    for (const address of named) {
      const [id = ""] = address.split(".");
      const [before, after] = [setOf(was(id)?.stage), setOf(is(id)?.stage)];
      const isWhole = address === id || Object.keys(before ?? {}).every((field) => named.includes(`${id}.${field}`));
      must(isWhole || !after || sameSet(before, after));
    }
    return result;
  } catch {
    return undefined;
  }
}
