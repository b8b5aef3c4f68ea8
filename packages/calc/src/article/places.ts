import type { Evaluation } from "../evaluate/index.js";
import { fill } from "../languages/index.js";
import type { Reporter } from "./speaker.js";

/** What a stage or an output is called. */
export function placeName({ outputs }: Evaluation, id: string): string {
  for (const { steps } of outputs) for (const { stage } of steps) if (stage.id === id) return stage.label ?? id;
  return outputs.find((one) => one.id === id)?.label ?? id;
}

/** Pairs that their mount has no place for, or nobody can tell: one sentence each. */
export function misfits({ evaluation, words, reports, figure }: Reporter): readonly string[] {
  return (evaluation.build.mounts ?? []).flatMap(({ stage }) => {
    const fit = figure({ figure: "fit", of: stage });
    return fit === words.fits ? [] : `${fill(words.told, fill(reports.fit, placeName(evaluation, stage)), fit)}.`;
  });
}
