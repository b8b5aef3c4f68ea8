import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import {
  askedFindings,
  isUnsaid,
  sayQuantity,
  speakerOf,
  steppedQuantity,
  typedQuantity,
} from "../../src/article/index.js";
import { applyChanges, parseBuild } from "../../src/document/index.js";
import { evaluate } from "../../src/evaluate/index.js";
import { wordsFor } from "../../src/languages/all.js";
import { figures } from "../../src/report/index.js";

const seed = JSON.parse(readFileSync(new URL("../../../../seeds/limpet.json", import.meta.url), "utf8")) as {
  outputs: { stages: object[] }[];
};
const printed = { id: "front-hub", label: "Hub", kind: "published", value: "1.50" };
const limpet = parseBuild({
  ...seed,
  ...{ alternatives: [], measurements: [], revisions: [], parts: [] },
  outputs: seed.outputs.map((output, n) => (n ? output : { ...output, stages: [output.stages[0], printed] })),
  mounts: [{ stage: "primary", from: "30.3 mm", to: "1.232 in" }],
});
const reports = wordsFor("en").reports;
const said = (of: string | undefined, locale = "en"): string => {
  const { figures: words, reports: own } = wordsFor(locale);
  const speaker = speakerOf({ evaluation: evaluate(limpet), locale, words, reports: own, figures });
  const answer = sayQuantity(speaker, { of });
  return isUnsaid(answer) ? answer.findings[0]!.code : answer.replace(/\u00a0/g, " ");
};
const typed = (of: string, text: string, build = limpet) => typedQuantity({ build, reports }, of, text);

describe("a value in a sentence", () => {
  it("stands as it was typed: its digits, its unit", () => {
    expect(
      [
        "front.wheel.diameter",
        "front-hub.value",
        "battery.cells",
        "motor.kv",
        "target",
        "target.from",
        "wheelbase",
      ].map((of) => said(of)),
    ).toEqual(["124 mm", "1.50", "3", "1850", "38 to 46", "38", "310 mm"]);
    expect(said("front-hub.value", "de")).toBe("1,50");
    expect(said("controller.maxVolts")).toBe("12.6");
  });

  it("is the end of a slot, a count of a row, or ground rolled", () => {
    expect(["mounts.0.from", "mounts.0.to", "row.teeth.1"].map((of) => said(of))).toEqual([
      "30.3 mm",
      "1.232 in",
      "31",
    ]);
    expect(typed("mounts.0.to", "1.24")).toEqual({ changes: { "mounts.0.to": "1.24 in" } });
    const travel = { turns: 3, length: "1.17 m" };
    const changed = applyChanges(limpet, { "front.wheel": { travel } });
    if (!changed.ok) throw new Error();
    expect(typed("front.wheel.travel", "1.2", changed.build)).toEqual({
      changes: { "front.wheel.travel": { turns: 3, length: "1.2 m" } },
    });
    expect(steppedQuantity(travel, 1)).toBe("1.18 m");
  });

  it("is told to the author where it is none", () => {
    expect(said("front.wheel.diametr")).toBe("missing-address");
    expect(said(undefined)).toBe("word-needed");
    expect(said("title")).toBe("missing-address");
    expect(said("front.wheel.loadedDiameter")).toBe("missing-address");
    expect(askedFindings("mw-quantity", limpet, { of: "front.wheel.diametr" })[0]!.values.nearest).toEqual([
      "front.wheel.diameter",
    ]);
    expect(askedFindings("mw-quantity", limpet, { of: "front.wheel" })[0]!.values.nearest).toEqual([
      "front.wheel.diameter",
    ]);
  });

  it("is taken in the unit that it names, else in the one that stands there, digits and all", () => {
    expect(typed("front.wheel.diameter", "4.65 in")).toEqual({ changes: { "front.wheel.diameter": "4.65 in" } });
    expect(typed("front.wheel.diameter", "4.65″")).toEqual({ changes: { "front.wheel.diameter": "4.65 in" } });
    expect(typed("front.wheel.diameter", "118,0")).toEqual({ changes: { "front.wheel.diameter": "118.0 mm" } });
    expect(typed("front-hub.value", "1.50")).toEqual({ changes: { "front-hub.value": "1.50" } });
    expect(typed("front-hub.value", "22/15")).toEqual({ changes: { "front-hub.value": "22/15" } });
    expect(typed("front-hub.value", "19 : 1")).toEqual({ changes: { "front-hub.value": "19:1" } });
    expect(typed("battery.cells", "４")).toEqual({ changes: { "battery.cells": 4 } });
    expect(typed("motor.kv", "2100")).toEqual({ changes: { "motor.kv": 2100 } });
    expect(typed("motor.kv", "2100.0")).toEqual({ changes: { "motor.kv": "2100.0" } });
    expect(typed("target", "40 – 44,5")).toEqual({ changes: { "target.from": 40, "target.to": 44.5 } });
  });

  it("is exact in what follows: 4.65 in roll 118.11 mm a radian of π", () => {
    const request = typed("front.wheel.diameter", "4.65 in") as { changes: Record<string, unknown> };
    const changed = applyChanges(limpet, request.changes);
    if (!changed.ok) throw new Error();
    const travel = evaluate(changed.build).output("front")!.travel!;
    // 4.65 · 25.4 = 118.11 over 31/3 · 38/13 · 1.45 to 1.55, times π.
    const ratio = ((31 / 3) * 38) / 13;
    expect(travel.bounds.high.toNumber()).toBeCloseTo((118.11 * Math.PI) / (ratio * 1.495), 9);
  });

  it("says what was found and what is expected, and changes nothing", () => {
    const faults = [
      ["front.wheel.diameter", "big"],
      ["front.wheel.diameter", "0"],
      ["front-hub.value", "1.5x"],
      ["battery.cells", "2.5"],
      ["motor.kv", "-3"],
      ["target", "46 to 38"],
      ["target", "46"],
    ] as const;
    expect(faults.map(([of, text]) => (typed(of, text) as { fault: string }).fault)).toEqual([
      "Found big; expected a length such as 17.6 mm or 0.69 in.",
      "Found 0; expected a length such as 17.6 mm or 0.69 in.",
      "Found 1.5x; expected a ratio as printed, such as 2.74 or 52/19.",
      "Found 2.5; expected a whole number from 1.",
      "Found -3; expected a number above 0, such as 9.5.",
      "Found 46 to 38; expected two numbers, the smaller first: 38 to 46.",
      "Found 46; expected two numbers, the smaller first: 38 to 46.",
    ]);
  });

  it("steps by its last digit, and keeps its unit", () => {
    expect(steppedQuantity("124 mm", 1)).toBe("125 mm");
    expect(steppedQuantity("4.65 in", -10)).toBe("4.55 in");
    expect(steppedQuantity("1.50", 1)).toBe("1.51");
    expect(steppedQuantity(3, -3)).toBeUndefined();
    expect(steppedQuantity("52/19", 1)).toBeUndefined();
  });
});
