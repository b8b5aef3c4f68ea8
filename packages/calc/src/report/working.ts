import { bounded, rational, type Bounded, type Rational, type Rounding } from "../exact/index.js";
import { notations } from "../stages/index.js";
import type { Evaluation, OutputEvaluation, Turns } from "../evaluate/index.js";

/** One stage of the working. */
export interface WorkingStep {
  readonly id: string;
  readonly label: string;
  readonly group: string | undefined;
  /** The counts in the order of drive: "15 to 62". */
  readonly counts: string;
  readonly reduction: Bounded;
  readonly turns: Turns;
  /** The exact product up to here. */
  readonly running: Bounded;
  /** The product up to here had every step been rounded; none once an interval comes in. */
  readonly stepwise: Rational | undefined;
}

/** The working of one output. */
export interface Working {
  readonly id: string;
  readonly label: string;
  readonly steps: readonly WorkingStep[];
  readonly total: Bounded | undefined;
  readonly stepwise: Rational | undefined;
  /** How far rounding at every step would have led astray: stepwise / total − 1. */
  readonly drift: Rational | undefined;
}

const twoDigits: Rounding = { minimumFractionDigits: 2, maximumFractionDigits: 2 };

function workingOf(output: OutputEvaluation, rounding: Rounding): Working {
  const round = (value: Rational): Rational => rational(value.toDecimal(rounding));
  let stepwise: Rational | undefined = rational(1);
  let product = bounded(1);
  const steps = output.steps.map(({ stage, group, reduction, turns }): WorkingStep => {
    const { bounds } = reduction;
    product = product.times(bounds);
    stepwise = stepwise && bounds.isExact ? round(stepwise.times(round(bounds.low))) : undefined;
    const counts = notations[stage.kind]?.write(stage) ?? "";
    return {
      id: stage.id,
      label: stage.label ?? stage.id,
      group,
      counts,
      reduction: bounds,
      turns,
      running: product,
      stepwise,
    };
  });
  const total = output.bounds;
  const drift = stepwise && total?.isExact ? stepwise.over(total.low).minus(1) : undefined;
  return { id: output.id, label: output.label, steps, total, stepwise, drift };
}

/**
 * The arithmetic of every output, line by line, exact and as rounding at every step would have had it.
 *
 * @param rounding how each step would be rounded; two digits where not said
 */
export const working = (evaluation: Evaluation, rounding: Rounding = twoDigits): readonly Working[] =>
  evaluation.outputs.map((output) => workingOf(output, rounding));
