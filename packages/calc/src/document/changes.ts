import { partedSets, type Build, type Change, type ChangeSet } from "../drivetrain/index.js";
import { errorOf, type Finding, type FindingCode, type FindingValues } from "../stages/index.js";
import { drafted, listed, type Obstacle } from "./carry.js";
import { checkBuild } from "./check.js";
import { found } from "./read.js";
import { refused, type Reading } from "./reading.js";

export const problem = (code: FindingCode, address: string, values?: FindingValues): Finding =>
  errorOf("meaning", code, address, { address, ...values });

/** An obstacle as a finding. */
export const told = ({ code, address, values }: Obstacle): Finding => problem(code, address, values);

/** Looks at a draft: a build, or what keeps it from being one. */
export type Check = (draft: Build, plain: boolean) => Reading;

/** A build with changes carried out, if every one could be made, the draft stands the check, and no set was parted. */
export function changedBy(build: Build, changes: ChangeSet | readonly Change[], check: Check): Reading {
  if (typeof changes !== "object" || (changes as unknown) === null)
    return refused(errorOf("shape", "not-an-object", "", { found: found(changes) }));
  const list = listed(changes);
  const { draft, failed, plain, broken } = drafted(build, list);
  if (failed.length && !broken) return refused(...failed.map(([, why]) => told(why)));
  const result = check(draft, plain);
  if (!result.ok) return result;
  if (broken) return refused(problem("not-data", ""));
  const parted = partedSets(build, result.build, list);
  return parted.length ? refused(...parted.map(({ id, label = id }) => problem("set-in-part", id, { label }))) : result;
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
 * applyChanges(build, { "ring.driver": 13 }).build?.outputs[0]?.stages; // => [{ ...ring, driver: 13 }]
 * applyChanges(build, [{ remove: "ring" }]).build?.outputs[0]?.stages; // => []
 * applyChanges(build, { "ring.driver": 0 }).findings[0]?.code; // => "not-count"
 * build.outputs[0]?.stages; // => [ring]
 */
export const applyChanges = (build: Build, changes: ChangeSet | readonly Change[]): Reading =>
  changedBy(build, changes, checkBuild);
