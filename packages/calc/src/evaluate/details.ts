import type { Build } from "../drivetrain/index.js";
import { Evaluation, type Further } from "./evaluation.js";
import { Splitting } from "./splitting.js";
import { groupsOf, stepsOf } from "./steps.js";

/** All that figures need, and no findings, whose sentences are long. */
export const details: Further = {
  steps: stepsOf,
  groups: groupsOf,
  findings: () => [],
  split: (situation, outputs) => new Splitting(situation, outputs),
};

/**
 * Works a build out as `evaluate` does, for whoever shows figures and tells nobody what is odd about the drive.
 *
 * @throws MeshwrightError `not-read`, `mode-missing`
 *
 * @example
 * import { detailsOf } from "@meshwright/calc/evaluate";
 * const rear = { id: "rear", stages: [{ id: "ring", kind: "pair", driver: 12, driven: 35 }] };
 * const build = parseBuild({ format: "meshwright-build/1", outputs: [rear] });
 * detailsOf(build).output("rear")!.steps.length; // => 1
 */
export const detailsOf = (build: Build, mode?: string): Evaluation => new Evaluation(build, mode, details);
