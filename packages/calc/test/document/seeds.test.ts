import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { applyChanges, readBuild } from "../../src/document/index.js";
import { evaluate } from "../../src/evaluate/index.js";
import { read } from "../make.js";

const seeds = new URL("../../../../seeds/", import.meta.url);
const text = (name: string) => readFileSync(new URL(name, seeds), "utf8");
const names = readdirSync(seeds).filter((name) => name.endsWith(".json"));

describe("starter builds", () => {
  it("are the three", () => {
    expect(names).toEqual(expect.arrayContaining(["dunlin.json", "limpet.json", "turnstone.json"]));
  });

  it.each(names)("%s reads without a finding, in every mode and with every alternative", (name) => {
    const { build, findings } = readBuild(text(name));
    expect(findings).toEqual([]);
    for (const mode of [undefined, ...(build!.modes ?? []).map((one) => one.id)])
      expect(evaluate(build!, mode).findings).toEqual([]);
    for (const { changes } of build!.alternatives ?? []) {
      const changed = applyChanges(build!, changes);
      expect(changed.findings.filter((one) => one.severity === "error")).toEqual([]);
      expect(changed.build).not.toEqual(build);
    }
  });

  it("Dunlin: three axles with motors of their own", () => {
    const dunlin = read(text("dunlin.json"));
    const evaluation = evaluate(dunlin);
    expect(evaluation.outputs.map((one) => one.reduction!.factor.toFraction())).toEqual(["72/1", "72/1", "1728/25"]);
    expect(evaluation.compare("front", "middle")!.difference("tyres")!.toJSON()).toEqual({ low: "0/1", high: "0/1" });
    expect(evaluation.compare()!.difference("tyres")!.toJSON()).toEqual({ low: "-1/25", high: "-1/25" });
    const even = applyChanges(dunlin, dunlin.alternatives!.find((one) => one.id === "even")!.changes).build!;
    expect(evaluate(even).compare()!.difference("tyres")!.toJSON()).toEqual({ low: "0/1", high: "0/1" });
    expect(evaluation.outputs.map((one) => one.turns)).toEqual(["same way", "same way", "same way"]);
  });

  it("Turnstone: two speeds and neutral, with a final drive known only as printed", () => {
    const turnstone = read(text("turnstone.json"));
    const total = (mode: string) => {
      const rear = evaluate(turnstone, mode).output("rear")!;
      return [rear.state, rear.bounds?.toDecimals({ maximumFractionDigits: 2 }), rear.standing];
    };
    expect(total("pull")).toEqual(["driven", { low: "14.79", high: "14.86" }, "inside"]);
    expect(total("run")).toEqual(["driven", { low: "9.59", high: "9.63" }, "inside"]);
    expect(total("coast")).toEqual(["free", undefined, undefined]);
  });
});
