import type { Measurement } from "../drivetrain/index.js";
import type { Evaluation } from "../evaluate/index.js";
import type { Bounded } from "../exact/index.js";
import { agreement, type Agreement } from "./turn-count.js";

/** A measurement beside what the build says; no agreement where the output is not there or not driven, or where the build as it was is not known. */
export interface Checked {
  readonly measurement: Measurement;
  readonly agreement: Agreement | undefined;
}

/** The counts that a measurement was made with, by address, where it names any: `{ "rear-ring.driver": 12 }`. */
type Kept = Measurement & { readonly with?: Readonly<Record<string, unknown>> };

/**
 * Every measurement of a build against what it comes to. One that names the counts it was made with is compared with those
 * only: a swap since then makes nothing wrong of it.
 *
 * @param asMeasured what an output's reduction was with the counts that a measurement names; without it such a measurement is
 *   compared with nothing
 */
export const measurementsOf = (
  evaluation: Evaluation,
  asMeasured?: (measurement: Measurement) => Bounded | undefined,
): Checked[] =>
  (evaluation.build.measurements ?? []).map((measurement: Kept) => {
    const namesCounts = Object.keys(measurement.with ?? {}).length > 0;
    const bounds = namesCounts ? asMeasured?.(measurement) : evaluation.output(measurement.what)?.bounds;
    return { measurement, agreement: bounds && agreement(bounds, measurement) };
  });
