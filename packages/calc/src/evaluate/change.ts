import type { Bounded } from "../exact/index.js";
import type { Build } from "../drivetrain/index.js";
import { differenceOf } from "./comparison.js";
import { evaluate } from "./evaluate.js";
import type { Evaluation } from "./evaluation.js";

/** What a change does at one output: four numbers, four names. 1/4 is 25 % more. */
export interface OutputChange {
  readonly id: string;
  /** Motor turns per wheel turn: after / before − 1. */
  readonly reduction: Bounded;
  /** Wheel turns for the same motor turns: before / after − 1. */
  readonly wheelSpeed: Bounded;
  /** Wheel torque for the same motor torque, without losses: after / before − 1. */
  readonly wheelTorque: Bounded;
  /** Twice the difference over the sum. */
  readonly midpoint: Bounded;
}

const evaluated = (one: Build | Evaluation): Evaluation => ("build" in one ? one : evaluate(one));

/** The four numbers of a change from one reduction to another, given as after / before. */
export function changeOf(quotient: Bounded): Omit<OutputChange, "id"> {
  const reduction = differenceOf(quotient, "with");
  return {
    reduction,
    wheelSpeed: differenceOf(quotient, "of").times(-1),
    wheelTorque: reduction,
    midpoint: differenceOf(quotient, "mean"),
  };
}

/**
 * What changes between two builds, for every output that both drive. What the stages have in common cancels first.
 *
 * @throws MeshwrightError `not-read` where one of them was not read
 *
 * @example
 * import { difference } from "@meshwright/calc/evaluate";
 * const build = (driver: number) => parseBuild({ format: "meshwright-build/1", stages: [], outputs: [{ id: "rear", stages: [{ id: "spur", kind: "pair", driver, driven: 80 }] }] });
 * const change = difference(build(20), build(25))[0]!;
 * change.reduction.low.toFraction(); // => "-1/5"
 * change.wheelSpeed.low.toFraction(); // => "1/4"
 * change.midpoint.low.toFraction(); // => "-2/9"
 */
export function difference(before: Build | Evaluation, after: Build | Evaluation): readonly OutputChange[] {
  const [from, to] = [evaluated(before), evaluated(after)];
  return from.outputs.flatMap(({ id, reduction }) => {
    const changed = to.output(id)?.reduction;
    return reduction && changed ? { id, ...changeOf(changed.over(reduction).bounds) } : [];
  });
}
