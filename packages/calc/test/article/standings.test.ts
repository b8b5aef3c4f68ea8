import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { saySummary, sayStandings, speakerOf } from "../../src/article/index.js";
import { parseBuild } from "../../src/document/index.js";
import { evaluate } from "../../src/evaluate/index.js";
import { wordsFor } from "../../src/languages/all.js";
import { figures } from "../../src/report/index.js";

type Data = Record<string, unknown>;
const limpet = (): Data =>
  JSON.parse(readFileSync(new URL("../../../../seeds/limpet.json", import.meta.url), "utf8")) as Data;
const speaker = (data: Data, locale = "en") => {
  const { figures: words, reports } = wordsFor(locale);
  return speakerOf({ evaluation: evaluate(parseBuild(data)), locale, words, reports, figures });
};

describe("where every output stands", () => {
  // 62/15 × 45/18 × 38/13 × 22/15 = 44.30; × 35/12 × 23/16 = 43.32: both between 38 and 46.
  test("is its total and its place in the range", () => {
    expect(sayStandings(speaker(limpet()))).toEqual(["Front: 44.30, inside", "Rear: 43.32, inside"]);
    expect(sayStandings(speaker(limpet(), "de"))).toEqual(["Front: 44,30, im Bereich", "Rear: 43,32, im Bereich"]);
  });

  test("is the total alone where no range is meant for it", () => {
    const { target: _, ...without } = limpet();
    expect(sayStandings(speaker(without))).toEqual(["Front: 44.30", "Rear: 43.32"]);
    const rear = { ...limpet(), target: { from: 38, to: 46, output: "rear" } };
    expect(sayStandings(speaker(rear))).toEqual(["Front: 44.30", "Rear: 43.32, inside"]);
  });

  // M = (44.30/124 + 43.32/120) / 2, in turns a millimetre: 44.53 and 43.10 on tyres of 124 and 120 mm.
  test("is straight on behind an open differential, as the range is held against, and as the summary has it", () => {
    const open = speaker({ ...limpet(), centre: { kind: "differential" } });
    expect(sayStandings(open)).toEqual(["Front: 44.53, inside", "Rear: 43.10, inside"]);
    const summary = saySummary(open, {}) as { standings: ReadonlyMap<string, string> };
    expect([...summary.standings.values()]).toEqual(sayStandings(open));
  });
});
