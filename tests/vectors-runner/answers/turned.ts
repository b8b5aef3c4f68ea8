import { type BoxCount, countedBox, type CountRanges } from "@meshwright/calc/counted";
import type { VectorFile } from "../cases.js";
import { ends, interval } from "../ends.js";
import { listOf, same } from "../fields.js";

export const file: VectorFile<BoxCount & CountRanges> = {
  given: ["motorTurns", "wheelTurns", "oneWheelHeld", "knownPairs", "driver", "driven"],
  form: { expect: { total: interval, box: interval, counts: listOf(listOf(same)) } },
  answer({ driver, driven, ...count }) {
    const { total, box, counts } = countedBox(count, { driver, driven });
    return { expect: { total: ends(total), box: ends(box), counts } };
  },
};
