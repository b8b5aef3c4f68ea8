import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { parseBuild } from "../../src/document/index.js";
import { evaluate } from "../../src/evaluate/index.js";
import { countsFor, type CountsFound, type WantedFigure } from "../../src/search/index.js";

const pair = (id: string, driver: number, driven: number, more: object = {}) => ({
  id,
  kind: "pair",
  driver,
  driven,
  ...more,
});
const build = (data: object) =>
  evaluate(parseBuild({ format: "meshwright-build/1", outputs: [{ id: "rear", stages: [] }], ...data }));
const found = (data: object, address: string, wanted: WantedFigure) =>
  countsFor(build(data), address, wanted) as CountsFound;
const told = ({ neighbours }: CountsFound) =>
  neighbours.map(({ choice, gives, off }) => [
    typeof choice === "number" ? choice : choice.id,
    gives.low.toFraction(),
    off.low.toFraction(),
  ]);

interface Solve {
  readonly driven: number;
  readonly restOfTrain: string;
  readonly wantedRatio: string;
  readonly expect: {
    readonly driverTeeth: string;
    readonly neighbours: readonly { readonly teeth: number; readonly ratio: string; readonly off: string }[];
  };
}

describe("a count from what is wanted", () => {
  it("is the same as what was worked out elsewhere, driver by driver", () => {
    const file = new URL("../../../../tests/vectors/solve.json", import.meta.url);
    const cases = JSON.parse(readFileSync(file, "utf8")) as readonly Solve[];
    expect(cases.length).toBeGreaterThan(9);
    for (const [n, { driven, restOfTrain, wantedRatio, expect: expected }] of cases.entries()) {
      const rest = { id: "rest", kind: "published", value: restOfTrain, exact: true };
      const wanted = { figure: "reduction", of: "rear", value: wantedRatio } as const;
      const one = found({ stages: [pair("spur", 1 + ((n * 7) % 40), driven), rest] }, "spur.driver", wanted);
      expect(one.exact!.low.toFraction()).toBe(expected.driverTeeth);
      const rising = [...expected.neighbours].sort((a, b) => b.teeth - a.teeth);
      expect(told(one)).toEqual(rising.map(({ teeth, ratio, off }) => [teeth, ratio, off]));
    }
  });

  it("meets a total exactly, and says so by one count alone", () => {
    const wanted = { figure: "reduction", of: "rear", value: 4 } as const;
    expect(told(found({ stages: [pair("spur", 13, 60)] }, "spur.driver", wanted))).toEqual([[15, "4/1", "0/1"]]);
    expect(told(found({ stages: [pair("spur", 15, 13)] }, "spur.driven", wanted))).toEqual([[60, "4/1", "0/1"]]);
  });

  it("tells both neighbours of a rollout and of a speed, whichever side the build stands on", () => {
    const rear = { id: "rear", stages: [], wheel: { travel: { turns: 1, length: "1000 mm" } } };
    for (const driver of [1, 9, 14, 15, 40, 300]) {
      // 1000 · driver / 60: 250 mm at 15, 233.33 at 14.
      const travel = { figure: "travel", of: "rear", value: 240 } as const;
      expect(told(found({ stages: [pair("spur", driver, 60)], outputs: [rear] }, "spur.driver", travel))).toEqual([
        [14, "700/3", "-1/36"],
        [15, "250/1", "1/24"],
      ]);
      // 1000 turns a volt, 4.2 V: 4200 · 60 m / h · driver / 60 = 4.2 km/h a tooth.
      const motor = { motor: { kv: 1000 }, battery: { cells: 1, chemistry: "lipo" } };
      const speed = { figure: "speed", of: "rear", value: 50, unit: "kilometresPerHour" } as const;
      const data = { ...motor, stages: [pair("spur", driver, 60)], outputs: [rear] };
      expect(told(found(data, "spur.driver", speed)).map(([count, gives]) => [count, gives])).toEqual([
        [11, "231/5"],
        [12, "252/5"],
      ]);
    }
  });

  it("finds the count of an axle for a lead, in any kind of stage", () => {
    const outputs = [
      { id: "front", stages: [{ id: "worm", kind: "worm", starts: 2, teeth: 30 }] },
      { id: "rear", stages: [pair("ring", 2, 30)] },
    ];
    const lead = { figure: "lead", of: "front", with: "rear", value: "0.02" } as const;
    // Rear over front: 15 / (n / 2) − 1 = 0.02 at n = 29.41.
    expect(told(found({ outputs }, "worm.teeth", lead))).toEqual([
      [30, "0/1", "-1/50"],
      [29, "1/29", "21/1450"],
    ]);
    const planetary = {
      id: "hub",
      kind: "planetary",
      sun: 12,
      ring: 48,
      fixed: "ring",
      input: "sun",
      output: "carrier",
    };
    // 1 + ring / 12 = 5.2 at ring = 50.4.
    const total = { figure: "reduction", of: "rear", value: "5.2" } as const;
    expect(told(found({ stages: [planetary] }, "hub.ring", total)).map(([count]) => count)).toEqual([50, 51]);
  });

  it("chooses among sets and tyres of the list", () => {
    const sets = [
      [11, 36],
      [12, 35],
      [13, 38],
    ].map(([driver, driven]) => ({ id: `set-${driver}`, is: "set", driver, driven, stage: "ring" }));
    const stages = [pair("ring", 13, 38, { set: true })];
    const total = { figure: "reduction", of: "rear", value: 3 } as const;
    const { neighbours } = found({ stages, parts: sets }, "ring", total);
    expect(neighbours.map(({ choice }) => (choice as { id: string }).id)).toEqual(["set-13", "set-11"]);
    expect(neighbours[1]!.settings).toEqual([
      { set: "ring.driver", to: 11 },
      { set: "ring.driven", to: 36 },
      { set: "ring.fitted", to: ["set-11"] },
    ]);
    const tyres = ["120 mm", "124 mm", "5 in"].map((diameter, n) => ({ id: `tyre-${n}`, is: "wheel", diameter }));
    const outputs = [
      { id: "front", stages: [], wheel: { diameter: "120 mm" } },
      { id: "rear", stages: [], wheel: { diameter: "120 mm" } },
    ];
    const lead = { figure: "lead", of: "front", with: "rear", value: "0.05" } as const;
    const tyre = found({ outputs, parts: tyres }, "front.wheel", lead);
    expect(told(tyre).map(([id, gives]) => [id, gives])).toEqual([
      ["tyre-1", "1/30"],
      ["tyre-2", "7/120"],
    ]);
    expect(tyre.exact!.low.toFraction()).toBe("126/1");
  });

  it("puts a set there with its pitch, as whoever takes it from a search does", () => {
    const stages = [pair("ring", 13, 38, { set: true, module: "0.8", driverShift: "0.3", fitted: ["old"] })];
    const set = { id: "fine", is: "set", driver: 11, driven: 36, module: "0.5", pressureAngle: "14.5" };
    const parts = [set, { id: "old", is: "set", driver: 13, driven: 38, module: "0.8" }];
    const { neighbours } = found({ stages, parts }, "ring", { figure: "reduction", of: "rear", value: "3.2" });
    expect(Object.fromEntries(neighbours.at(-1)!.settings.map(({ set: at, to }) => [at, to]))).toEqual({
      "ring.driver": 11,
      "ring.driven": 36,
      "ring.module": "0.5",
      "ring.pressureAngle": "14.5",
      "ring.driverShift": null,
      "ring.fitted": ["fine"],
    });
  });

  it("leaves out sets and tyres that cannot be had, but not the one that is there", () => {
    const stages = [pair("ring", 13, 38, { set: true, fitted: ["there"] })];
    const gone = { is: "set", available: false };
    const parts = [
      { ...gone, id: "gone", driver: 12, driven: 37 },
      { ...gone, id: "there", driver: 13, driven: 38 },
      { ...gone, id: "owned", driver: 11, driven: 36, owned: 1 },
    ];
    const total = { figure: "reduction", of: "rear", value: "3.1" } as const;
    const names = ({ neighbours }: CountsFound) => neighbours.map(({ choice }) => (choice as { id: string }).id);
    expect(names(found({ stages, parts }, "ring", total))).toEqual(["there", "owned"]);
    const tyres = ["116 mm", "124 mm"].map((diameter, n) => ({
      id: `tyre-${n}`,
      is: "wheel",
      diameter,
      available: !n,
    }));
    const outputs = [{ id: "rear", stages: [], wheel: { diameter: "120 mm" } }];
    const way = { figure: "travel", of: "rear", value: "130" } as const;
    expect(names(found({ stages: [pair("ring", 13, 38)], outputs, parts: tyres }, "rear.wheel", way))).toEqual([
      "tyre-0",
    ]);
  });

  it("says why there is none", () => {
    const total = { figure: "reduction", of: "rear", value: 4 } as const;
    const row = { id: "row", kind: "train", teeth: [18, 31, 45] };
    const data = { stages: [row, pair("ring", 13, 38, { set: true })] };
    expect(countsFor(build(data), "row.teeth.1", total)).toBe("no-effect");
    expect(countsFor(build(data), "nowhere.driver", total)).toBe("no-address");
    expect(countsFor(build(data), "ring", total)).toBe("no-choices");
    expect(countsFor(build(data), "row.teeth.0", { ...total, figure: "travel" })).toBe("not-known");
  });

  it("is an interval where the train is one: both neighbours lie beyond all that it can be", () => {
    const stages = [pair("spur", 15, 60), { id: "box", kind: "published", value: "2.6" }];
    const { exact, neighbours } = found({ stages }, "spur.driver", { figure: "reduction", of: "rear", value: 10 });
    // 60 · 2.55 / 10 to 60 · 2.65 / 10.
    expect([exact!.low.toFraction(), exact!.high.toFraction()]).toEqual(["153/10", "159/10"]);
    expect(neighbours.map(({ choice }) => choice)).toEqual([16, 15]);
  });
});
