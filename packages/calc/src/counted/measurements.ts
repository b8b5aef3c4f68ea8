import { pathTo, type Build, type ChangeSet, type Measurement } from "../drivetrain/index.js";
import { buildAsMeasured } from "../document/index.js";
import { evaluate, type Evaluation } from "../evaluate/index.js";
import type { Bounded } from "../exact/index.js";
import { displays } from "../stages/index.js";
import { agreement, type Agreement } from "./turn-count.js";

/** All counts that drive an output now, by address: what a measurement of it is made with. */
export function countsBehind(build: Build, of: string): ChangeSet {
  const output = build.outputs.find(({ id }) => id === of);
  const stages = output ? pathTo(build, output).flat() : [];
  return Object.fromEntries(
    stages.flatMap((stage) =>
      displays[stage.kind](stage).flatMap((piece) =>
        "field" in piece && (piece.value as unknown) !== undefined ? [[`${stage.id}.${piece.field}`, piece.value]] : [],
      ),
    ),
  );
}

/** A measurement beside what the build says; no agreement where the output is not there or not driven, or where the build as it was is not known. */
export interface Checked {
  readonly measurement: Measurement;
  /** The build as it was measured; undefined where that is not known. */
  readonly build: Build | undefined;
  readonly agreement: Agreement | undefined;
  /** What that build comes to. */
  readonly reduction: Bounded | undefined;
}

/** What a build that was measured comes to; the evaluation that is there already where it is no other build. */
const evaluated = (build: Build, evaluation: Evaluation): Evaluation =>
  build === evaluation.build ? evaluation : evaluate(build, evaluation.mode);

/**
 * Every measurement of a build against what it comes to, as it was when that was measured: with the counts that the measurement
 * names, else as the revisions tell of its day, else as it is published. A swap since then makes nothing wrong of it.
 *
 * @param published the author's build, where what was evaluated is a reader's version of it: nobody has measured that one
 */
export const measurementsOf = (evaluation: Evaluation, published: Build = evaluation.build): Checked[] =>
  (published.measurements ?? []).map((measurement) => {
    const { build } = buildAsMeasured(published, measurement);
    const reduction = build && evaluated(build, evaluation).output(measurement.what)?.bounds;
    return { measurement, build, reduction, agreement: reduction && agreement(reduction, measurement) };
  });
