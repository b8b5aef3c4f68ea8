import { errorOf, type Finding, type FindingCode, type FindingValues, type Stage } from "../stages/index.js";
import { refused, type Reading } from "./reading.js";
import { checkBuild } from "./check.js";
import {
  type Build,
  type Change,
  type ChangeSet,
  finderIn,
  oneIn,
  spotOf,
  valueAt,
  type Finder,
} from "../drivetrain/index.js";

const problem = (code: FindingCode, address: string, values?: FindingValues): Finding =>
  errorOf("meaning", code, address, { address, ...values });

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
    if (!spot) return problem("missing-address", address);
    const { holder, key } = spot;
    if (to !== null) holder[key] = structuredClone(to);
    else if (Array.isArray(holder)) return problem("not-optional", address);
    else delete holder[key];
    return undefined;
  }
  const id = "remove" in change ? change.remove : "move" in change ? change.move : undefined;
  const spot = id === undefined ? undefined : find(id);
  if (id !== undefined && spot?.stage?.id !== id) return problem("not-a-stage", id);
  const home = spot?.holder as unknown as Stage[];
  const take = (): Stage => home.splice(spot!.key as number, 1)[0]!;
  if ("remove" in change) {
    take();
    return undefined;
  }
  const list = "move" in change && change.into === undefined ? home : listOf(draft, find, change.into);
  if (!list) return problem("missing-address", String(change.into));
  const stage = "insert" in change ? structuredClone(change.insert) : take();
  const { at } = change;
  if (!(Number.isInteger(at) && at >= 0 && at <= list.length))
    return problem("not-a-place", id ?? "", { found: String(at), most: list.length });
  list.splice(at, 0, stage);
  if (id !== undefined && !spotOf(draft, id)) return problem("into-itself", id);
  return undefined;
}

/** A set is sold as a set: one of its counts alone cannot be changed. */
function* torn(before: Build, after: Build, changes: readonly Change[]): Generator<Finding> {
  const was = finderFor(before, changes);
  const touched = new Map<string, Set<string | number>>();
  for (const change of changes) {
    const { stage, key } = ("set" in change && was(change.set)) || {};
    if (stage && "set" in stage && stage.set && (key === "driver" || key === "driven"))
      touched.set(stage.id, (touched.get(stage.id) ?? new Set()).add(key));
  }
  for (const [id, keys] of touched)
    if (keys.size < 2 && valueAt(after, `${id}.set`)) yield problem("set-in-part", id, { label: id });
}

/**
 * A build with changes carried out, checked again; the build given stays as it is.
 *
 * @param changes new values by address, or a list of changes in the order in which they are made
 * @returns `build` exactly when every change could be made and the result is whole; findings else
 *
 * @example
 * import { applyChanges, parseBuild } from "@meshwright/calc/document";
 * const ring = { id: "ring", kind: "pair", driver: 12, driven: 35 };
 * const build = parseBuild({ format: "meshwright-build/1", outputs: [{ id: "rear", stages: [ring] }] });
 * applyChanges(build, { "ring.driver": 13 }).build.outputs[0].stages; // => [{ ...ring, driver: 13 }]
 * applyChanges(build, [{ remove: "ring" }]).build.outputs[0].stages; // => []
 * applyChanges(build, { "ring.driver": 0 }).findings[0].code; // => "not-count"
 * build.outputs[0].stages[0].driver; // => 12
 */
export function applyChanges(build: Build, changes: ChangeSet | readonly Change[]): Reading {
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
      const reading = checkBuild(draft);
      return reading.ok ? refused(problem("not-data", "")) : reading;
    }
  if (findings.length) return refused(...findings);
  const result = checkBuild(draft);
  if (result.ok) findings.push(...torn(build, result.build, list));
  return findings.length ? refused(...findings) : result;
}
