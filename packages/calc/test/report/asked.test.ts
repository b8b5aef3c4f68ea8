import { readFileSync } from "node:fs";
import fc from "fast-check";
import { expect, it } from "vitest";
import { readBuild } from "../../src/document/index.js";
import { leanVersion } from "../../src/document/lean/index.js";
import { evaluate, totalsOf } from "../../src/evaluate/index.js";
import { figureWords } from "../../src/languages/index.js";
import { isAsked } from "../../src/report/asked.js";
import {
  checkQuery,
  commonFigures,
  figureFrom,
  figureIn,
  figures,
  queryNames,
  vocabulary,
  type QueryText,
} from "../../src/report/index.js";

const build = readBuild(readFileSync(new URL("../../../../seeds/limpet.json", import.meta.url), "utf8")).build!;

const words: Partial<Record<(typeof queryNames)[number], readonly string[]>> = {
  figure: [...Object.keys(vocabulary), "figur", "reduktion", ""],
  of: ["front", "rear", "primary", "primary.driver", "front.wheel.diameter", "front.wheel", "raer", "article", "x.y"],
  with: ["front", "rear", "primary", ""],
  group: ["gearbox", "axle", "gear"],
  base: ["front", "rear", "mean", "tyres"],
  scope: ["gears", "tyres", "both"],
  from: ["article", build.alternatives![0]!.id, "revision-1", "revision-2", "nowhere"],
  measure: ["reduction", "travel", "both", "full", "harmonic", "midpoints", "wheel-speed"],
  over: ["10 m", "3", "0 m", "0", "-1", "far"],
  unit: ["mm", "in", "km/h", "V", "MM"],
  digits: ["0", "3", "100", "101", "-1", "two"],
  sign: ["none", "plus"],
  drive: ["locked", "straight-on", "open"],
};
const query = fc
  .tuple(fc.constantFrom(...words.figure!), fc.subarray(queryNames.slice(1) as string[], { maxLength: 3 }))
  .chain(([figure, names]) =>
    fc
      .tuple(...names.map((name) => fc.constantFrom(...words[name as "of"]!)))
      .map((values): QueryText => ({ figure, ...Object.fromEntries(names.map((name, n) => [name, values[n]])) })),
  );

it("what is asked without sentences is answered as it is with them, or not at all", () => {
  let [answered, refused, missed] = [0, 0, 0];
  const [full, totals] = [evaluate(build), totalsOf(build)];
  const version = (id: string) => {
    const other = leanVersion(build, id);
    return other && totals.again(other);
  };
  fc.assert(
    fc.property(query, (asked) => {
      const isRight = checkQuery(asked, build).length === 0;
      if (!isAsked(asked, build)) {
        if (isRight) missed++;
        else refused++;
        expect(figureIn(commonFigures, full, asked, { words: figureWords, version })).toBeUndefined();
        return;
      }
      answered++;
      expect(isRight).toBe(true);
      const text = figureFrom(figures, full, asked);
      // What totals alone cannot tell, they say: nobody gets another figure.
      let alone: string | undefined;
      try {
        alone = figureIn(commonFigures, totals, asked, { words: figureWords, version });
      } catch (error) {
        expect(error).toMatchObject({ code: "not-worked-out" });
      }
      if (alone !== undefined) expect(alone).toBe(text);
    }),
    { numRuns: 6000 },
  );
  expect(answered).toBeGreaterThan(500);
  expect(refused).toBeGreaterThan(500);
  // Only a value that the build does not give is left to whoever has a word for that.
  expect(missed).toBeLessThan(answered / 10);
});
