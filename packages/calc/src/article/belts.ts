import { beltOf, enclose } from "../gears/index.js";
import { fill } from "../languages/index.js";
import { drawings, type Stage } from "../stages/index.js";
import { drawnLength } from "./drawing.js";
import type { Reporter } from "./speaker.js";

/**
 * The belts or chains that there are for a stage, each with what it does: the centre distance that it sets, or what a tensioner
 * takes up of it. None where the stage has none, or too little is known.
 */
export function beltTexts(speaker: Reporter, stage: Stage): readonly string[] {
  const { reports, words, writer } = speaker;
  const { belt } = drawings[stage.kind](stage) ?? {};
  if (!belt) return [];
  try {
    return beltOf(belt).choices.map(({ teeth, centre, slack }) =>
      fill(
        words.told,
        fill(belt.chain ? reports.links : reports.beltTeeth, writer.given(teeth)),
        slack === undefined
          ? fill(reports.setsCentre, drawnLength(speaker, enclose(centre)))
          : fill(reports.takenUp, drawnLength(speaker, enclose(slack))),
      ),
    );
  } catch {
    // A pitch or a centre distance of nothing has no belt.
    return [];
  }
}
