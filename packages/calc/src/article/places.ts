import type { Evaluation } from "../evaluate/index.js";
import { fill } from "../languages/index.js";
import type { Reporter } from "./speaker.js";

/** What a stage or an output is called. */
export function placeName({ outputs }: Evaluation, id: string): string {
  for (const { steps } of outputs) for (const { stage } of steps) if (stage.id === id) return stage.label ?? id;
  return outputs.find((one) => one.id === id)?.label ?? id;
}

/** Pairs that do not fit, or nobody can tell, and what falls short: one sentence each. */
export function misfits({ evaluation, words, reports, figure }: Reporter): readonly string[] {
  return (evaluation.build.mounts ?? []).flatMap(({ stage }) => {
    const fit = figure({ figure: "fit", of: stage });
    if (fit === words.fits) return [];
    const lacks = figure({ figure: "shortfall", of: stage });
    // Too far and too close say themselves what it is that falls short.
    const text = lacks.startsWith(fit) ? lacks : fit === words.misfit ? fill(words.aside, fit, lacks) : fit;
    return `${fill(words.told, fill(reports.fit, placeName(evaluation, stage)), text)}.`;
  });
}
