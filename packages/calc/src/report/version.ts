import { buildAt, nearestTo } from "../document/index.js";
import type { Build } from "../drivetrain/index.js";
import { errorOf, type Finding } from "../stages/index.js";
import { noOthers, type Others } from "./query-faults.js";

/**
 * A version of a build by its name: `article` for the build as published, an alternative's or a reference's id, `revision-1`.
 * Undefined for a name that the build does not have, or where the version cannot be made.
 *
 * @example
 * const ring = { id: "ring", kind: "pair", driver: 12, driven: 35 };
 * const alternatives = [{ id: "deeper", changes: { "ring.driver": 11 } }];
 * const build = parseBuild({ format: "meshwright-build/1", outputs: [{ id: "rear", stages: [ring] }], alternatives });
 * valueAt(versionOf(build, "deeper")!, "ring.driver"); // => 11
 * versionOf(build, "depper"); // => undefined
 */
export const versionOf = (build: Build, at: string): Build | undefined => buildAt(build, at).build;

/**
 * What is wrong with the name of a version: that the build has none of it, with the nearest that it has.
 *
 * @param others the ids of other builds that it can be held against
 */
export function versionFault(build: Build, at: string, others: Others = noOthers): Finding | undefined {
  // Nearly every name is the article's, or of something that the build lists: only others are looked into.
  const { alternatives = [] } = build;
  if (at === "article" || alternatives.some(({ id }) => id === at)) return undefined;
  const reading = buildAt(build, at);
  const missing = reading.ok ? undefined : reading.findings.find(({ code }) => code === "missing-reference");
  if (!missing) return undefined;
  const more = others();
  if (more.includes(at)) return undefined;
  const known = [...((missing.values.known ?? []) as readonly string[]), ...more];
  return errorOf("meaning", "missing-reference", missing.at, { id: at, known, nearest: nearestTo(at, known) });
}

/** What is wrong with the name of a mode: that the build has none of it, with the nearest that it has. */
export function modeFault(build: Build, mode: string): Finding | undefined {
  const known = build.modes?.map(({ id }) => id) ?? [];
  if (known.includes(mode)) return undefined;
  return errorOf("meaning", "missing-reference", "/mode", { id: mode, known, nearest: nearestTo(mode, known) });
}
