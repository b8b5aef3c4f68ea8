import { labelAt, type Build } from "../drivetrain/index.js";
import { fill } from "../languages/index.js";
import type { Reporter, Speaker } from "./speaker.js";

/** Who says what a place of a build is called. */
type Naming = Pick<Speaker, "words"> & { readonly evaluation: { readonly build: Build } };

/** What a stage, a gear or an output is called: with its axle where several stages bear one label. */
export const placeName = ({ evaluation: { build }, words }: Naming, address: string): string =>
  labelAt(build, address, undefined, (owner, name) => fill(words.told, owner, name));

/** Pairs that do not fit, or nobody can tell, and what falls short: one sentence each. */
export function misfits(speaker: Reporter): readonly string[] {
  const { evaluation, words, reports, figure } = speaker;
  return (evaluation.build.mounts ?? []).flatMap(({ stage }) => {
    const fit = figure({ figure: "fit", of: stage });
    if (fit === words.fits) return [];
    const lacks = figure({ figure: "shortfall", of: stage });
    // Too far and too close say themselves what it is that falls short.
    const text = lacks.startsWith(fit) ? lacks : fit === words.misfit ? fill(words.aside, fit, lacks) : fit;
    return `${fill(words.told, fill(reports.fit, placeName(speaker, stage)), text)}.`;
  });
}
