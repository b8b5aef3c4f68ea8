import type { Stage } from "../stages/index.js";
import { checkBuild } from "./check.js";
import { errorOf } from "./read.js";
import {
  type Build,
  type Change,
  type ChangeSet,
  type Finding,
  finderIn,
  oneIn,
  spotOf,
  valueAt,
  type Finder,
} from "../drivetrain/index.js";

const problem = (code: string, address: string, message: string): Finding => errorOf("meaning", code, address, message);

/** A table of all addresses is worth its making where more than one is looked up. */
const finderFor = (build: Build, changes: readonly Change[]): Finder => (changes.length > 1 ? finderIn : oneIn)(build);

/** A copy in which everything around one place is new, and nothing else: one value can be changed there. */
function copyAround(build: Build, pointer: string): Build {
  const copy = { ...build };
  let at = copy as unknown as Record<string, object>;
  for (const step of pointer.split("/").slice(1, -1)) {
    const key = step.replace(/~1/g, "/").replace(/~0/g, "~");
    const inner = at[key]!;
    at = (at[key] = Array.isArray(inner) ? [...(inner as unknown[])] : { ...inner }) as Record<string, object>;
  }
  return copy;
}

/** A build to carry changes out on; the given one is left as it is. */
function draftOf(build: Build, changes: readonly Change[]): Build {
  const address = changes.length === 1 && (changes[0] as { set?: unknown } | null)?.set;
  if (typeof address === "string")
    try {
      const spot = oneIn(build)(address);
      if (spot) return copyAround(build, spot.pointer);
    } catch {
      // What is no build is for the check to tell.
    }
  return structuredClone(build);
}

/** The list that `into` names: shared stages, an output's, a branch's, or a position's by `stage.position`. */
function listOf(draft: Build, find: Finder, into: string | undefined): Stage[] | undefined {
  if (into === undefined) return draft.stages as Stage[];
  const [id, position] = into.split(".");
  const value = find.value(id!) as { stages?: Stage[]; positions?: { id: string; stages?: Stage[] }[] } | undefined;
  return position ? value?.positions?.find((one) => one.id === position)?.stages : value?.stages;
}

function carryOut(draft: Build, change: Change, find: Finder): Finding | undefined {
  if ("set" in change) {
    const { set: address, to } = change;
    const spot = find(address);
    if (!spot) return problem("missing-address", address, `Nothing is at ${address}.`);
    const { holder, key } = spot;
    if (to !== null) holder[key] = structuredClone(to);
    else if (Array.isArray(holder))
      return problem("not-optional", address, `${address} cannot be left out; expected a value.`);
    else delete holder[key];
    return undefined;
  }
  const id = "remove" in change ? change.remove : "move" in change ? change.move : undefined;
  const spot = id === undefined ? undefined : find(id);
  if (id !== undefined && spot?.stage?.id !== id) return problem("not-a-stage", id, `${id} is not a stage.`);
  const home = spot?.holder as unknown as Stage[];
  const take = (): Stage => home.splice(spot!.key as number, 1)[0]!;
  if ("remove" in change) {
    take();
    return undefined;
  }
  const list = "move" in change && change.into === undefined ? home : listOf(draft, find, change.into);
  if (!list) return problem("missing-address", String(change.into), `No stages at ${change.into}.`);
  const stage = "insert" in change ? structuredClone(change.insert) : take();
  const { at } = change;
  if (!(Number.isInteger(at) && at >= 0 && at <= list.length))
    return problem("not-a-place", id ?? "", `Place ${String(at)}; expected 0 to ${list.length}.`);
  list.splice(at, 0, stage);
  if (id !== undefined && !spotOf(draft, id)) return problem("into-itself", id, `${id} cannot go into itself.`);
  return undefined;
}

/** A set is sold as a set: one of its counts alone cannot be changed. */
function* torn(before: Build, after: Build, changes: readonly Change[]): Generator<Finding> {
  const was = finderFor(before, changes);
  const touched = new Map<string, Set<string | number>>();
  for (const change of changes) {
    const { stage, key } = ("set" in change && was(change.set)) || {};
    if (stage?.kind === "pair" && stage.set && (key === "driver" || key === "driven"))
      touched.set(stage.id, (touched.get(stage.id) ?? new Set()).add(key));
  }
  for (const [id, keys] of touched)
    if (keys.size < 2 && valueAt(after, `${id}.set`))
      yield problem("set-in-part", id, `${id} is sold as a set; change driver and driven together.`);
}

/**
 * A build with changes carried out, checked again; the build given stays as it is.
 *
 * @param changes new values by address, or a list of changes in the order in which they are made
 * @returns `build` exactly when every change could be made and the result is whole; findings else
 *
 * @example
 * import { applyChanges, checkBuild } from "@meshwright/calc/build";
 * const ring = { id: "ring", kind: "pair", driver: 12, driven: 35 };
 * const { build } = checkBuild({ format: "meshwright-build/1", outputs: [{ id: "rear", stages: [ring] }] });
 * applyChanges(build, { "ring.driver": 13 }).build.outputs[0].stages; // => [{ ...ring, driver: 13 }]
 * applyChanges(build, [{ remove: "ring" }]).build.outputs[0].stages; // => []
 * applyChanges(build, { "ring.driver": 0 }).findings[0].code; // => "not-count"
 * build.outputs[0].stages[0].driver; // => 12
 */
export function applyChanges(
  build: Build,
  changes: ChangeSet | readonly Change[],
): { build?: Build; findings: Finding[] } {
  const list: readonly Change[] = Array.isArray(changes)
    ? changes
    : Object.entries(changes).map(([set, to]) => ({ set, to }));
  const draft = draftOf(build, list);
  const findings: Finding[] = [];
  let find: Finder | undefined;
  for (const change of list)
    try {
      find ??= finderFor(draft, list);
      const plain =
        "set" in change &&
        typeof change.to !== "object" &&
        typeof find.value(change.set) !== "object" &&
        !change.set.endsWith(".id");
      const found = carryOut(draft, change, find);
      if (found) findings.push(found);
      // Only a plain value for a plain value, and no id, leaves every address where it was.
      if (!plain) find = undefined;
    } catch {
      // Either what was set is no data, or an earlier change has left nothing to find one's way in.
      const { build: whole, findings: why } = checkBuild(draft);
      return { findings: whole ? [problem("not-data", "", "Expected a change that JSON can hold.")] : why };
    }
  if (findings.length) return { findings };
  const result = checkBuild(draft);
  if (result.build) findings.push(...torn(build, result.build, list));
  return findings.length ? { findings } : result;
}
