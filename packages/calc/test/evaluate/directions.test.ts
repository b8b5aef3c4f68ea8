import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { buildFromAttributes } from "../../src/document/index.js";
import { evaluate } from "../../src/evaluate/index.js";
import { directions, stageShapes, type Stage, type StageKind } from "../../src/stages/index.js";
import { evaluated, pair, read } from "../make.js";

type Data = Record<string, unknown>;

const spur = { form: "spur" };
const sided = { form: "bevel", ringSide: "left", pinionSide: "behind" };

describe("a direction", () => {
  const of = (...stages: Data[]) => evaluated(stages as never, { rear: [] }).output("rear")!;

  it.each<[string, Data, "same way" | "opposite way" | "not known"]>([
    ["two gears of which nobody said what they are", pair("a", 1, 2), "not known"],
    ["bevel gears", pair("a", 1, 2, { form: "bevel" }), "not known"],
    ["one side of two", pair("a", 1, 2, { form: "bevel", ringSide: "left" }), "not known"],
    ["a worm", { id: "a", kind: "worm", starts: 1, teeth: 30 }, "not known"],
    ["a printed ratio", { id: "a", kind: "published", value: "2.5" }, "not known"],
    ["a box counted by turning", { id: "a", kind: "measured", turnsIn: 5, turnsOut: 2 }, "not known"],
    ["spur gears", pair("a", 1, 2, spur), "opposite way"],
    ["a ring with teeth inside", pair("a", 1, 2, { internal: true }), "same way"],
    ["ring and pinion by their sides", pair("a", 1, 2, sided), "same way"],
    ["a row of gears", { id: "a", kind: "train", teeth: [1, 2] }, "opposite way"],
    ["a belt", { id: "a", kind: "belt", driver: 1, driven: 2 }, "same way"],
    [
      "planets",
      { id: "a", kind: "planetary", sun: 1, ring: 3, fixed: "carrier", input: "sun", output: "ring" },
      "opposite way",
    ],
  ])("of %s is established only where they say it", (_, stage, expected) => {
    expect(of(stage).establishedTurns).toBe(expected);
    // Whoever says it himself has established it.
    expect(of({ ...stage, reverses: true }).establishedTurns).toBe("opposite way");
    expect(of({ ...stage, reverses: false }).establishedTurns).toBe("same way");
    const lever = (more: Data) => ({
      id: "b",
      kind: "selectable",
      selected: "on",
      positions: [{ id: "on", stages: [stage] }],
      ...more,
    });
    expect(of(lever({})).establishedTurns).toBe(expected);
    expect(of(lever({ reverses: true })).establishedTurns).toBe("opposite way");
    // One that has not is enough.
    expect(of(stage, pair("z", 1, 2)).establishedTurns).toBe("not known");
  });

  it("goes on being told as it follows, established or not", () => {
    expect([of(pair("a", 1, 2)).turns, of(pair("a", 1, 2)).turn]).toEqual(["opposite way", -1]);
    expect(evaluated([], { front: [pair("f", 1, 2)], rear: [] }).compare()!.sameWay).toBe(false);
  });

  it("is said of every kind", () => {
    for (const kind of Object.keys(stageShapes) as StageKind[])
      expect(typeof directions[kind].isSaid({ kind, teeth: [] } as unknown as Stage)).toBe("boolean");
  });
});

describe("two axles", () => {
  const codes = (front: Data[], rear: Data[], shared: Data[] = []) => {
    const evaluation = evaluated(shared as never, { front: front as never, rear: rear as never });
    return [evaluation.compare()!.establishedSameWay, evaluation.findings.map(({ code }) => code)];
  };

  it("oppose each other only where every stage after the split has said what decides it", () => {
    expect(codes([pair("f", 1, 2)], [])).toEqual([null, []]);
    expect(codes([pair("f", 1, 2, spur)], [])).toEqual([false, ["outputs-oppose"]]);
    expect(codes([pair("f", 1, 2, spur)], [pair("r", 1, 2)])).toEqual([null, []]);
    expect(codes([pair("f", 1, 2, spur)], [pair("r", 1, 2, spur)])).toEqual([true, []]);
    expect(codes([pair("f", 1, 2, { reverses: true })], [pair("r", 1, 2, { reverses: false })])).toEqual([
      false,
      ["outputs-oppose"],
    ]);
    // What stands before the split is common to both.
    expect(
      codes([pair("f", 1, 2, spur)], [], [pair("s", 1, 2), { id: "w", kind: "worm", starts: 1, teeth: 9 }]),
    ).toEqual([false, ["outputs-oppose"]]);
  });

  it("of a short article, of which nobody said which side the rings are on, are not told to oppose", () => {
    const reading = buildFromAttributes({
      stages: "",
      front: "Ring: 13 to 38; Portal: 15 to 22",
      rear: "Ring: 12 to 35",
    });
    const evaluation = evaluate(reading.build!);
    expect(evaluation.findings).toEqual([]);
    expect([evaluation.compare()!.sameWay, evaluation.compare()!.establishedSameWay]).toEqual([false, null]);
  });

  it("with motors of their own are not set against each other", () => {
    const own = evaluated([], {
      front: { motor: { kv: 1 }, stages: [pair("f", 1, 2, spur)] },
      rear: { motor: { kv: 1 }, stages: [] },
    });
    expect([own.compare()!.establishedSameWay, own.findings]).toEqual([null, []]);
  });

  it("of Limpet hang on what its hubs are", () => {
    const limpet = read(readFileSync(new URL("../../../../seeds/limpet.json", import.meta.url), "utf8"));
    const comparison = evaluate(limpet).compare()!;
    expect([comparison.sameWay, comparison.establishedSameWay]).toEqual([true, null]);
  });
});
