import { type CountRanges, toothPairsFor } from "@meshwright/calc/counted";
import type { PrintedReading } from "@meshwright/calc/stages";
import type { VectorFile } from "../cases.js";
import { listOf, same } from "../fields.js";

export const file: VectorFile<CountRanges & { value: string; read: PrintedReading }> = {
  given: ["value", "read", "driver", "driven"],
  form: { expect: listOf(listOf(same)) },
  answer: ({ value, read, driver, driven }) => ({ expect: toothPairsFor(value, { driver, driven }, read) }),
};
