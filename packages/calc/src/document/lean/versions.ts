import type { Build } from "../../drivetrain/index.js";
import { bareOf, plainChanges, stepsBackTo } from "../steps-back.js";
import { leanApply } from "./check.js";

/**
 * A version of a build by its name, as `buildAt` gives it; nothing where it has none, or none that can plainly be made.
 *
 * @example
 * import { leanRead, leanVersion } from "@meshwright/calc/document/lean";
 * const rear = { id: "rear", stages: [{ id: "ring", kind: "pair", driver: 12, driven: 35 }] };
 * const alternatives = [{ id: "deep", changes: { "ring.driver": 11 } }];
 * const build = leanRead({ format: "meshwright-build/1", outputs: [rear], alternatives })!;
 * leanVersion(build, "deep")?.outputs[0]?.stages; // => [{ id: "ring", kind: "pair", driver: 11, driven: 35 }]
 * leanVersion(build, "deeep"); // => undefined
 */
export function leanVersion(build: Build, id: string): Build | undefined {
  if (id === "article") return build;
  const alternative = build.alternatives?.find((one) => one.id === id);
  if (alternative) return leanApply(bareOf(build), alternative.changes);
  const reference = build.references?.find((one) => one.id === id)?.build;
  const number = Number(/^revision-(\d{1,7})$/.exec(id)?.[1]);
  if (reference || number === build.revision?.number) return reference ?? build;
  const steps = stepsBackTo(build, number);
  if (steps.at(-1)?.number !== number) return undefined;
  let made: Build | undefined = bareOf(build);
  for (const { back, ...revision } of steps)
    made &&= leanApply(made, [...plainChanges(made, back), { set: "revision", to: revision }]);
  return made;
}
