import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { parseBuild } from "../../src/document/index.js";
import { evaluate } from "../../src/evaluate/index.js";
import { askPairs, findPairs, type PairQuestion } from "../../src/search/index.js";

// Parts of different origin on one shelf, worked out apart from this project.
interface Case {
  readonly build: object;
  readonly stage: string;
  readonly expect: readonly {
    readonly driver: string;
    readonly driven: string;
    readonly centre_mm: string;
    readonly ratio: string;
    readonly needsSleeve: boolean;
    readonly needsPlate: boolean;
    readonly toPay_EUR: string;
  }[];
}

const file = new URL("../../../../tests/vectors/mixed.json", import.meta.url);
const cases = JSON.parse(readFileSync(file, "utf8")) as readonly Case[];

describe("pairs of parts of different origin", () => {
  it.each(cases.map((one, n) => [n, one] as const))("case %i", (_, { build, stage, expect: expected }) => {
    const question = askPairs(evaluate(parseBuild(build)), stage) as PairQuestion;
    const found = [...findPairs(question)].flatMap((batch) => batch.found);
    const shown = found.map((pair) => ({
      driver: pair.driver.id,
      driven: pair.driven.id,
      centre_mm: pair.centre!.low.toFraction(),
      ratio: pair.totals[0]!.low.toFraction(),
      needsSleeve: pair.sleeve !== undefined,
      needsPlate: pair.plate !== undefined,
      toPay_EUR: pair.pay.sums.find(({ currency }) => currency === "EUR")?.amount.toFraction() ?? "0/1",
    }));
    const byIds = (a: { driver: string; driven: string }, b: { driver: string; driven: string }) =>
      `${a.driver} ${a.driven}` < `${b.driver} ${b.driven}` ? -1 : 1;
    expect(shown.sort(byIds)).toEqual(expected);
    expect(found.every(({ verdict, pay }) => verdict === "fits" && !pay.unpriced)).toBe(true);
    const distances = found.map(({ distance }) => distance);
    expect(distances.every((one, n) => !n || one.compare(distances[n - 1]!) >= 0)).toBe(true);
  });
});
