import { applyChanges } from "../document/index.js";
import type { Build } from "../drivetrain/index.js";

/** The names of the versions that a build has besides itself. */
export const versionsOf = (build: Build): readonly string[] => [
  "article",
  ...(build.alternatives ?? []).map(({ id }) => id),
];

/** The versions that there are, where a name is none of them. */
export function versionFault(build: Build, at: string): readonly string[] | undefined {
  const known = versionsOf(build);
  return known.includes(at) ? undefined : known;
}

/**
 * A version of a build by its name: `article` for the build as published, or an alternative's id. Undefined for a name that the
 * build does not have, or where the version cannot be made.
 *
 * @example
 * const ring = { id: "ring", kind: "pair", driver: 12, driven: 35 };
 * const alternatives = [{ id: "deeper", changes: { "ring.driver": 11 } }];
 * const build = parseBuild({ format: "meshwright-build/1", outputs: [{ id: "rear", stages: [ring] }], alternatives });
 * valueAt(versionOf(build, "deeper")!, "ring.driver"); // => 11
 * versionOf(build, "depper"); // => undefined
 */
export function versionOf(build: Build, at: string): Build | undefined {
  if (at === "article") return build;
  const changes = build.alternatives?.find((one) => one.id === at)?.changes;
  return changes && applyChanges(build, changes).build;
}
