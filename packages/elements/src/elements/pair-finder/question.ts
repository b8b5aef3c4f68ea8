import { type Build, spotOf } from "@meshwright/calc/drivetrain";
import type { Evaluation } from "@meshwright/calc/evaluate";
import { needsOfStage } from "@meshwright/calc/parts";
import type { Stage } from "@meshwright/calc/stages";
import { type Asking, askPairs, type NotAsked, type PairQuestion } from "@meshwright/calc/search";

export interface Asked {
  readonly question: PairQuestion;
  readonly stage: Stage;
  /** Whether a ratio in the train is an interval: then all of it has to be in the range. */
  readonly unsure: boolean;
  /** Whether two gears are looked for that stand in a mount, and nothing is known of it. */
  readonly isUnmounted: boolean;
}

/** The stage that is looked for: the one named, or the first that has a mount. */
const stageToFind = (build: Build, id: string | null): Stage | undefined => {
  const wanted = id ?? build.mounts?.[0]?.stage;
  return wanted === undefined ? undefined : spotOf(build, wanted)?.stage;
};

/** What is asked of the search, from the build as it stands, or why nothing is. */
export function askFor(evaluation: Evaluation, id: string | null, asking: Asking): Asked | NotAsked {
  const stage = stageToFind(evaluation.build, id);
  if (!stage) return "no-stage";
  const question = askPairs(evaluation, stage.id, asking);
  if (typeof question === "string") return question;
  const unsure = question.outputs.some(({ id: of }) => !evaluation.output(of)!.bounds!.isExact);
  const { together } = needsOfStage(stage);
  return { stage, question, unsure, isUnmounted: !!together?.beside && !together.only && !question.mount };
}
