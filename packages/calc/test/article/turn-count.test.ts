import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { isUnsaid, sayTurnCount, speakerOf, type AskedTurns, type SaidTurns } from "../../src/article/index.js";
import { applyChanges, parseBuild } from "../../src/document/index.js";
import { evaluate } from "../../src/evaluate/index.js";
import { wordsFor } from "../../src/languages/all.js";
import { figures } from "../../src/report/index.js";

const limpet = parseBuild(readFileSync(new URL("../../../../seeds/limpet.json", import.meta.url), "utf8"));
const said = (of: string | undefined, asked: AskedTurns, locale = "en"): SaidTurns => {
  const { figures: words, reports } = wordsFor(locale);
  const speaker = speakerOf({ evaluation: evaluate(limpet), locale, words, reports, figures });
  const answer = sayTurnCount(speaker, { of }, asked);
  if (isUnsaid(answer)) throw new Error(answer.findings[0]!.message);
  return answer;
};

describe("a box counted by turns", () => {
  it("says nothing before enough was typed", () => {
    for (const asked of [{}, { turnsIn: "20" }, { from: "9" }])
      expect(said("front-hub", asked)).toMatchObject({ faults: {}, result: [], request: undefined });
  });

  it("where two marks met again is exact, and narrowed by the teeth that are seen", () => {
    // 22/15 = 44/30 = 1.4667, and nothing else with a driver of 8 to 40.
    const answer = said("front-hub", { turnsIn: "22", from: "15" });
    expect(answer.result).toEqual(["The box: 1.4667 turns in for one turn out."]);
    expect(answer.counts).toEqual(["15 → 22", "30 → 44"]);
    expect(said("front-hub", { turnsIn: "22", from: "15", driver: "10 to 20" }).counts).toEqual(["15 → 22"]);
    expect(answer.request).toEqual({
      "front-hub": {
        id: "front-hub",
        label: "Hub",
        group: "axle",
        per: "wheel",
        kind: "measured",
        turnsIn: "22",
        turnsOut: "15",
      },
    });
  });

  it("divides out what turned along, counts a free wheel half, and becomes a stage that says the same", () => {
    // 2 · 40 / 1.80 to 1.81 = 44.199 to 44.444; over 31/3 · 38/13 = 30.2051: 1.4633 to 1.4715, which holds 22/15 = 1.4667.
    const along = ["primary", "row", "front-ring"];
    const answer = said("front-hub", { turnsIn: "40", from: "1,80", to: "1,81", held: true, along });
    expect(answer.result).toEqual([
      "All that turned: 44.1988 to 44.4445.",
      "The box: 1.4632 to 1.4715 turns in for one turn out.",
    ]);
    expect(answer.counts).toContain("15 → 22");
    expect(answer.around.map(({ id }) => id)).toEqual(along);
    const changed = applyChanges(limpet, answer.request as Record<string, unknown>);
    if (!changed.ok) throw new Error(changed.findings[0]!.message);
    const front = evaluate(changed.build).output("front")!;
    // Behind the same gears the whole is what was counted: 800/18.1 to 800/18.
    expect(front.bounds!.toJSON()).toEqual({ low: "8000/181", high: "400/9" });
  });

  it("is put in last before the split, or last on the axle that is named, under an id of its own", () => {
    expect(said(undefined, { turnsIn: "3", from: "1" }).request).toMatchObject({ insert: { kind: "measured" }, at: 2 });
    expect(said("rear", { turnsIn: "3", from: "1" }).request).toMatchObject({ into: "rear", at: 2 });
  });

  it("says in the field what was found and what is expected, in whatever digits and language", () => {
    expect(said("front-hub", { turnsIn: "many", from: "0", driver: "x" }).faults).toEqual({
      turnsIn: "Found many; expected a number above 0, such as 9.5.",
      from: "Found 0; expected a number above 0, such as 9.5.",
      driver: "Found x; expected a count of teeth, or two: 10 to 40.",
    });
    expect(said("front-hub", { turnsIn: "9", from: "5", to: "4" }).faults.to).toBe(
      "Less than 5; expected the smaller first.",
    );
    expect(said("front-hub", { turnsIn: "٢٢", from: "１５", driver: "10 – 20" }, "ja").counts).toEqual(["15 → 22"]);
  });

  it("of a stage or an axle that there is not, says the nearest", () => {
    expect(() => said("front-hbu", {})).toThrow(/front-hub/);
  });
});
