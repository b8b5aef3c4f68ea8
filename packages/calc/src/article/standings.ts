import type { OutputEvaluation } from "../evaluate/index.js";
import { fill } from "../languages/index.js";
import type { Speaker } from "./speaker.js";

/** What it takes to say where an output stands: less than a whole speaker, for a page that has none yet. */
type Saying = Pick<Speaker, "evaluation" | "words" | "figure">;

/**
 * Where an output stands, in a sentence without its full stop: its reduction, and where a range is meant for it, where that
 * stands there. Both are straight on: that is what is held against a range.
 */
export function standingText({ words, figure }: Saying, { id, label, standing, bounds }: OutputEvaluation): string {
  const reduction = figure({ figure: "reduction", of: id, drive: "straight-on" });
  return standing && bounds
    ? fill(words.standing, label, reduction, figure({ figure: "standing", of: id }))
    : fill(words.told, label, reduction);
}

/** Where every output stands, a sentence each: what a change has come to, for those who listen. */
export const sayStandings = (speaker: Saying): readonly string[] =>
  speaker.evaluation.outputs.map((output) => standingText(speaker, output));
