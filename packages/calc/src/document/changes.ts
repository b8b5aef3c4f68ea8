import type { Build, Change, ChangeSet } from "../drivetrain/index.js";
import { changedBy } from "./carry.js";
import { checkBuild } from "./check.js";
import type { Reading } from "./reading.js";

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
export const applyChanges = (build: Build, changes: ChangeSet | readonly Change[]): Reading =>
  changedBy(build, changes, checkBuild);
