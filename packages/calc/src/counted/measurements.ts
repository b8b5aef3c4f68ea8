import type { Measurement } from "../drivetrain/index.js";
import type { Evaluation } from "../evaluate/index.js";
import { agreement, type Agreement } from "./turn-count.js";

/** A measurement beside what the build says; no agreement where the output is not there or not driven. */
export interface Checked {
  readonly measurement: Measurement;
  readonly agreement: Agreement | undefined;
}

/** Every measurement of a build against what it comes to. */
export const measurementsOf = (evaluation: Evaluation): Checked[] =>
  (evaluation.build.measurements ?? []).map((measurement) => {
    const bounds = evaluation.output(measurement.what)?.bounds;
    return { measurement, agreement: bounds && agreement(bounds, measurement) };
  });
