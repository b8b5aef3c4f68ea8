import type { Measurement } from "../drivetrain/index.js";
import { buildAsMeasured } from "../document/index.js";
import { evaluate, type Evaluation } from "../evaluate/index.js";
import type { Bounded } from "../exact/index.js";
import { agreement, type Agreement } from "./turn-count.js";

/** A measurement beside what the build says; no agreement where the output is not there or not driven, or where the build as it was is not known. */
export interface Checked {
  readonly measurement: Measurement;
  readonly agreement: Agreement | undefined;
  /** What the build comes to with the counts that it was made with. */
  readonly reduction: Bounded | undefined;
}

/** What an output came to when it was measured: with the counts put back that the measurement was made with. */
function boundsThen(evaluation: Evaluation, measurement: Measurement): Bounded | undefined {
  const { build, mode } = evaluation;
  if (!Object.keys(measurement.with ?? {}).length) return evaluation.output(measurement.what)?.bounds;
  const then = buildAsMeasured(build, measurement);
  return then.ok ? evaluate(then.build, mode).output(measurement.what)?.bounds : undefined;
}

/**
 * Every measurement of a build against what it comes to. One that names the counts it was made with is compared with those
 * only: a swap since then makes nothing wrong of it.
 */
export const measurementsOf = (evaluation: Evaluation): Checked[] =>
  (evaluation.build.measurements ?? []).map((measurement) => {
    const bounds = boundsThen(evaluation, measurement);
    return { measurement, agreement: bounds && agreement(bounds, measurement), reduction: bounds };
  });
