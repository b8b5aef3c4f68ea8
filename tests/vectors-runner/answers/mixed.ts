import { parseBuild } from "@meshwright/calc/document";
import { evaluate } from "@meshwright/calc/evaluate";
import { askPairs, findPairs } from "@meshwright/calc/search";
import type { VectorFile } from "../cases.js";
import { exact } from "../ends.js";
import { fraction, listOf, same } from "../fields.js";

export const file: VectorFile<{ build: unknown; stage: string }> = {
  given: ["build", "stage"],
  form: {
    expect: listOf({
      driver: same,
      driven: same,
      centre_mm: fraction,
      ratio: fraction,
      needsSleeve: same,
      needsPlate: same,
      toPay_EUR: fraction,
    }),
  },
  answer({ build, stage }) {
    const question = askPairs(evaluate(parseBuild(build)), stage);
    if (typeof question === "string") throw new Error(question);
    const pairs = [...findPairs(question)].flatMap(({ found }) => found);
    const ids = (pair: (typeof pairs)[number]) => `${pair.driver.id} ${pair.driven.id}`;
    return {
      // By ids: which is nearest is another question.
      expect: pairs
        .sort((a, b) => (ids(a) < ids(b) ? -1 : 1))
        .map((pair) => ({
          driver: pair.driver.id,
          driven: pair.driven.id,
          centre_mm: pair.centre && exact(pair.centre),
          ratio: pair.totals[0] && exact(pair.totals[0]),
          needsSleeve: pair.sleeve !== undefined,
          needsPlate: pair.plate !== undefined,
          toPay_EUR: pair.pay.sums.find(({ currency }) => currency === "EUR")?.amount.toFraction() ?? "0/1",
        })),
    };
  },
};
