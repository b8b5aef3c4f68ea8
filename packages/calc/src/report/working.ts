import { rational, ratioOf, type Bounded, type Rational, type Rounding } from "../exact/index.js";
import type { Evaluation, OutputEvaluation, Step, Turns } from "../evaluate/index.js";
import type { Stage } from "../stages/index.js";
import { bitsFor, Near, nearTimes, type NearEnds } from "./near.js";
import type { Writer } from "./writer.js";

/** One stage of the working. */
export interface WorkingStep {
  readonly id: string;
  readonly label: string;
  readonly group: string | undefined;
  readonly stage: Stage;
  readonly reduction: Bounded;
  readonly turns: Turns;
  /** The exact product up to here; worked out when it is read. */
  readonly running: Bounded;
  /** The product up to here had every step been rounded; none once an interval comes in. */
  readonly stepwise: Rational | undefined;
  /** The product up to here as it is written. */
  runningText(writer: Writer): string;
}

/** The working of one output. */
export interface Working {
  readonly id: string;
  readonly label: string;
  readonly steps: readonly WorkingStep[];
  /** Motor turns for one wheel turn, everything before it held together. */
  readonly total: Bounded | undefined;
  /** Whether a differential before it is open; then what it turns straight on, where that is known. */
  readonly open: boolean;
  readonly straightOn: Bounded | undefined;
  readonly stepwise: Rational | undefined;
  /** How far rounding at every step would have led astray: stepwise / total − 1. */
  readonly drift: Rational | undefined;
  /** The rounding at every step, which is the one that figures are written in. */
  readonly rounding: Rounding;
}

const twoDigits: Rounding = { minimumFractionDigits: 2, maximumFractionDigits: 2 };
/** Longer text is no number that is read, but one that came of a product. */
const longest = 1000;

/** Decimal text as the number that it is, however long. */
function decimal(text: string): Rational {
  if (text.length < longest) return rational(text);
  const [whole, fraction = ""] = text.split(".");
  return ratioOf(BigInt(whole + fraction), 10n ** BigInt(fraction.length));
}

class WrittenStep implements WorkingStep {
  readonly #step: Step;
  /** Where something that is not known is divided out, the ends of a product are not the products of ends. */
  readonly #near: NearEnds | undefined;
  readonly reduction: Bounded;
  readonly stepwise: Rational | undefined;
  #running: Bounded | undefined;

  constructor(step: Step, reduction: Bounded, near: NearEnds | undefined, stepwise: Rational | undefined) {
    this.#step = step;
    this.#near = near;
    this.reduction = reduction;
    this.stepwise = stepwise;
  }

  get id(): string {
    return this.#step.stage.id;
  }
  get label(): string {
    return this.#step.stage.label ?? this.id;
  }
  get group(): string | undefined {
    return this.#step.group;
  }
  get stage(): Stage {
    return this.#step.stage;
  }
  get turns(): Turns {
    return this.#step.turns;
  }
  get running(): Bounded {
    return (this.#running ??= this.#step.runningBounds);
  }

  runningText(writer: Writer): string {
    if (!this.#near) return writer.number(this.running);
    const { low, high } = this.#near;
    // Rounded to the same text from below and from above, it is the text.
    const isOne = low === high;
    const one = isOne ? writer.number(low.low) : writer.between(low.low, high.low);
    const other = isOne ? writer.number(low.high) : writer.between(low.high, high.high);
    return one === other ? one : writer.number(this.running);
  }
}

function workingOf(output: OutputEvaluation, rounding: Rounding): Working {
  const round = (value: Rational): Rational => decimal(value.toDecimal(rounding));
  const reductions = output.steps.map(({ reduction }) => reduction.bounds);
  const one = Near.one(bitsFor(reductions));
  let near: NearEnds = { low: one, high: one };
  let stepwise: Rational | undefined = rational(1);
  let cancels = false;
  const steps = output.steps.map((step, n) => {
    const reduction = reductions[n]!;
    near = nearTimes(near, reduction);
    stepwise = stepwise && reduction.isExact ? round(stepwise.times(round(reduction.low))) : undefined;
    cancels ||= step.reduction.unknowns.some(({ power }) => power < 0);
    return new WrittenStep(step, reduction, cancels ? undefined : near, stepwise);
  });
  const total = output.isOpen ? output.locked?.bounds : output.bounds;
  return {
    id: output.id,
    label: output.label,
    steps,
    total,
    open: output.isOpen,
    straightOn: output.isOpen ? output.bounds : undefined,
    stepwise,
    get drift() {
      return stepwise && total?.isExact ? stepwise.over(total.low).minus(1) : undefined;
    },
    rounding,
  };
}

/**
 * The arithmetic of every output, line by line, exact and as rounding at every step would have had it.
 *
 * @param rounding how each step would be rounded: as the build says, or to two digits, where it is not said
 *
 * @example
 * const stages = [{ id: "spur", kind: "pair", driver: 15, driven: 62 }, { id: "ring", kind: "pair", driver: 13, driven: 38 }];
 * const [rear] = working(evaluate(parseBuild({ format: "meshwright-build/1", outputs: [{ id: "rear", stages }] })));
 * [rear!.total!.low.toFraction(), rear!.stepwise!.toDecimal(), rear!.steps[1]!.running.low.toFraction()]; // => ["2356/195", "12.06", "2356/195"]
 */
export function working(
  evaluation: Evaluation,
  rounding: Rounding = (evaluation.build.rounding as Rounding | undefined) ?? twoDigits,
): readonly Working[] {
  return evaluation.outputs.map((output) => workingOf(output, rounding));
}
