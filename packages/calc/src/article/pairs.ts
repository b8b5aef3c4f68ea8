import { bounded, type Bounded } from "../exact/index.js";
import { fill } from "../languages/index.js";
import { spotOf } from "../drivetrain/index.js";
import { needsOfStage } from "../parts/index.js";
import { type DriveForm, stageText } from "../report/index.js";
import type { Stage } from "../stages/index.js";
import type { Reporter, Speaker } from "./speaker.js";

/** A total that a pair comes to at an output. */
export interface PairTotal {
  /** The output's id. */
  readonly id: string;
  readonly total: Bounded;
}

/** What a pair comes to at one output. */
export interface SaidTotal {
  readonly label: string;
  /** The total as it is written: an interval is one, its ends outward. */
  readonly text: string;
  /** Where it stands, as a sentence, where that is not inside the range. */
  readonly outside: string | undefined;
}

/** The totals of a pair, one for each output, in the words and the rounding of the summary. */
export function sayTotals(speaker: Reporter, totals: readonly PairTotal[]): readonly SaidTotal[] {
  const { evaluation, writer, words, reports } = speaker;
  const { target } = evaluation.build;
  return totals.map(({ id, total }): SaidTotal => {
    const label = evaluation.output(id)?.label ?? id;
    const text = writer.number(total);
    const [from, to] = [bounded(target?.from ?? 0), bounded(target?.to ?? total.high)];
    const isInside = total.low.compare(from.low) >= 0 && total.high.compare(to.low) <= 0;
    const word =
      total.high.compare(from.low) < 0 ? words.below : total.low.compare(to.low) > 0 ? words.above : words.uncertain;
    return { label, text, outside: isInside ? undefined : fill(reports.outsideRange, label, text, word) };
  });
}

/** The counts of a pair or set that is offered for a stage, as the stage's own are written. */
export function pairText(
  { evaluation, writer }: Speaker,
  id: string,
  [driver, driven]: readonly [driver: number, driven: number],
  form: DriveForm,
): string {
  const stage = spotOf(evaluation.build, id)!.stage!;
  const [first, second] = needsOfStage(stage).together!.fields;
  return stageText({ ...stage, [first!]: driver, [second!]: driven } as Stage, form, writer);
}
