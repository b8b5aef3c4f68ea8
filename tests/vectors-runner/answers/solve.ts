import { solveCount } from "@meshwright/calc/motion";
import type { VectorFile } from "../cases.js";
import { exact } from "../ends.js";
import { fraction, listOf, same } from "../fields.js";

export const file: VectorFile<{ driven: number; restOfTrain: string; wantedRatio: string }> = {
  given: ["driven", "restOfTrain", "wantedRatio"],
  form: { expect: { driverTeeth: fraction, neighbours: listOf({ teeth: same, ratio: fraction, off: fraction }) } },
  answer({ driven, restOfTrain: rest, wantedRatio: reduction }) {
    const { teeth, neighbours } = solveCount({ driven, rest, wanted: { reduction } });
    return {
      expect: {
        driverTeeth: exact(teeth),
        neighbours: neighbours.map((one) => ({
          teeth: one.choice,
          ratio: exact(one.reduction),
          off: exact(one.off),
        })),
      },
    };
  },
};
