import { beltOf, enclose } from "../gears/index.js";
import { fill } from "../languages/index.js";
import { drawings, type Stage } from "../stages/index.js";
import { drawnLength } from "./drawing.js";
import type { Reporter } from "./speaker.js";

/**
 * The belts or chains that there are for a stage, each with what it does: the centre distance that it sets, or what a tensioner
 * takes up of it. None where the stage has none, or too little is known.
 */
export function beltsOf(speaker: Reporter, stage: Stage): readonly (readonly [belt: string, does: string])[] {
  const { reports, writer } = speaker;
  const { belt } = drawings[stage.kind](stage) ?? {};
  if (!belt) return [];
  try {
    return beltOf(belt).choices.map(({ teeth, centre, slack }) => [
      fill(belt.chain ? reports.links : reports.beltTeeth, writer.given(teeth)),
      slack === undefined
        ? fill(reports.setsCentre, drawnLength(speaker, enclose(centre)))
        : fill(reports.takenUp, drawnLength(speaker, enclose(slack))),
    ]);
  } catch {
    // A pitch or a centre distance of nothing has no belt.
    return [];
  }
}

/** The same, each in one text. */
export const beltTexts = (speaker: Reporter, stage: Stage): readonly string[] =>
  beltsOf(speaker, stage).map(([belt, does]) => fill(speaker.words.told, belt, does));
