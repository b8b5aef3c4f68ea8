import type { Stage } from "../kinds/index.js";
import { checkBuild } from "./check.js";
import type { Build, Change, ChangeSet, Finding } from "./types.js";
import { spotOf, valueAt, type Spot } from "./walk.js";

const problem = (code: string, address: string, message: string): Finding => ({
  severity: "error",
  about: "meaning",
  code,
  pointer: address,
  message,
});

/** The list that `into` names: shared stages, an output's, a branch's, or a position's by `stage.position`. */
function listOf(build: Build, into: string | undefined): Stage[] | undefined {
  if (into === undefined) return build.stages as Stage[];
  const [id, position] = into.split(".");
  const value = valueAt(build, id!) as { stages?: Stage[]; positions?: { id: string; stages?: Stage[] }[] } | undefined;
  return position ? value?.positions?.find((one) => one.id === position)?.stages : value?.stages;
}

type Find = ReturnType<typeof finderIn>;

function carryOut(draft: Build, change: Change, find: Find): Finding | undefined {
  const address =
    "set" in change ? change.set : "remove" in change ? change.remove : "move" in change ? change.move : "";
  const spot = address ? find(address) : undefined;
  if (address && !spot) return problem("missing-address", address, `Nothing is at ${address}.`);
  if ("set" in change) {
    const { holder, key } = spot!;
    if (change.to !== null) holder[key] = change.to;
    else if (Array.isArray(holder))
      return problem("not-optional", address, `${address} is in a list; expected a value.`);
    else delete holder[key];
    return undefined;
  }
  const list = "into" in change || "insert" in change ? listOf(draft, change.into) : undefined;
  if (!list && "into" in change && change.into !== undefined)
    return problem("missing-address", change.into, `No stages at ${change.into}.`);
  let stage: Stage;
  let own = list;
  if ("insert" in change) stage = change.insert;
  else {
    if (!spot!.stage || address.includes(".")) return problem("not-a-stage", address, `${address} is not a stage.`);
    const from = spot!.holder as unknown as Stage[];
    own ??= from;
    if ("move" in change && list) {
      // Not into itself: what is inside a stage goes where the stage goes.
      const inside = JSON.stringify(spot!.stage);
    }
    stage = from.splice(spot!.key as number, 1)[0]!;
    if ("remove" in change) return undefined;
  }
  own!.splice(change.at, 0, stage);
  return undefined;
}

/** A set is sold as a set: one of its counts alone cannot be changed. */
function* torn(before: Build, after: Build, sets: readonly Spot[]): Generator<Finding> {
  const touched = new Map<string, Set<unknown>>();
  for (const { stage, key, holder } of sets)
    if (stage?.kind === "pair" && stage.set && !Array.isArray(holder) && (key === "driver" || key === "driven"))
      touched.set(stage.id, (touched.get(stage.id) ?? new Set()).add(key));
  for (const [id, keys] of touched)
    if (keys.size < 2 && valueAt(after, `${id}.set`) && valueAt(before, `${id}.set`))
      yield problem("set-in-part", id, `${id} is sold as a set; change driver and driven together.`);
}

/**
 * A build with changes carried out, checked again; the build given stays as it is.
 *
 * @param changes new values by address, or a list of changes in the order in which they are made
 * @returns `build` exactly when every change could be made and the result is whole; findings else
 */
export function applyChanges(
  build: Build,
  changes: ChangeSet | readonly Change[],
): { build?: Build; findings: Finding[] } {
  const list: readonly Change[] = Array.isArray(changes)
    ? changes
    : Object.entries(changes).map(([set, to]) => ({ set, to }));
  const draft = structuredClone(build);
  const sets = list.flatMap((change) => ("set" in change ? (spotOf(build, change.set) ?? []) : []));
  const findings = list.flatMap((change) => carryOut(draft, change) ?? []);
  if (!findings.length) findings.push(...torn(build, draft, sets));
  return findings.length ? { findings } : checkBuild(draft);
}
