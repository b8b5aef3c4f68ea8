import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { applyChanges, readBuild } from "../../src/document/index.js";
import type { Build } from "../../src/drivetrain/index.js";
import { evaluate } from "../../src/evaluate/index.js";
import { figureFrom, figureOf, gearFigures, toText, working } from "../../src/report/index.js";

const read = (json: unknown): Build => {
  const { build, findings } = readBuild(json);
  if (!build) throw new Error(JSON.stringify(findings));
  return build;
};
const limpet = read(readFileSync(new URL("../../../../seeds/limpet.json", import.meta.url), "utf8"));
const version = (id: string) =>
  evaluate(applyChanges(limpet, limpet.alternatives!.find((one) => one.id === id)!.changes).build!);
const figure = (query: Record<string, string>, evaluation = evaluate(limpet), options = {}) =>
  figureOf(evaluation, query as never, { version: () => evaluate(limpet), ...options });

/** A build with one output and nothing more than it needs. */
const bare = read({
  format: "meshwright-build/1",
  stages: [{ id: "primary", kind: "pair", driver: 15, driven: 60 }],
  outputs: [
    {
      id: "drive",
      stages: [
        {
          id: "box",
          kind: "selectable",
          selected: "in",
          positions: [
            { id: "in", stages: [] },
            { id: "out", released: "free" },
          ],
        },
      ],
    },
  ],
});
const released = evaluate(applyChanges(bare, { "box.selected": "out" }).build!);

describe("figures of Limpet", () => {
  it.each([
    [{ figure: "reduction", of: "front" }, "44.30"],
    [{ figure: "reduction" }, "43.32"],
    [{ figure: "reduction", of: "row" }, "2.50"],
    [{ figure: "reduction", group: "gearbox" }, "10.33"],
    [{ figure: "reduction", of: "front", digits: "4" }, "44.3009"],
    [{ figure: "fraction", of: "front" }, "25916/585"],
    [{ figure: "standing", of: "front" }, "inside"],
    [{ figure: "range" }, "38 to 46"],
    [{ figure: "count", of: "primary.driver" }, "15"],
    [{ figure: "count", of: "front.wheel.diameter" }, "124 mm"],
    [{ figure: "count", of: "wheelbase" }, "310 mm"],
    [{ figure: "count", of: "primary.driverShift" }, "not known"],
    [{ figure: "counts", of: "row" }, "18 driving 31 driving 45"],
    [{ figure: "counts", of: "row", measure: "arrow" }, "18 → 31 → 45"],
    [{ figure: "counts", of: "primary", measure: "heard" }, "15 drives 62"],
    [{ figure: "gap", base: "front" }, "1.05%"],
    [{ figure: "gap", base: "mean" }, "1.05%"],
    [{ figure: "gap", of: "rear" }, "1.05%"],
    [{ figure: "travel", of: "front", unit: "in" }, "0.346\u00a0in"],
    [{ figure: "gap" }, "1.06%"],
    [{ figure: "gap", scope: "gears" }, "2.20%"],
    [{ figure: "gap", of: "rear", with: "front" }, "1.05%"],
    [{ figure: "lead" }, "1.06% ahead"],
    [{ figure: "lead", of: "rear", with: "front" }, "1.05% behind"],
    [{ figure: "farther" }, "1.06% farther"],
    [{ figure: "leader" }, "ahead"],
    [{ figure: "leader", of: "rear", with: "front" }, "behind"],
    [{ figure: "leader", of: "rear", with: "rear" }, "level"],
    [{ figure: "lead", of: "rear", with: "rear" }, "level"],
    [{ figure: "drift", over: "10 m" }, "106\u00a0mm"],
    [{ figure: "drift", of: "rear", with: "front" }, "105\u00a0mm"],
    [{ figure: "mean" }, "43.81"],
    [{ figure: "mean", measure: "arithmetic" }, "43.81"],
    [{ figure: "travel", of: "front" }, "8.79\u00a0mm"],
    [{ figure: "centre" }, "30.8\u00a0mm"],
    [{ figure: "slot" }, "30.3\u00a0mm to 31.3\u00a0mm"],
    [{ figure: "slot", measure: "from" }, "30.3\u00a0mm"],
    [{ figure: "slot", measure: "to", unit: "in", digits: "3" }, "1.232\u00a0in"],
    [{ figure: "fit" }, "fits"],
    [{ figure: "shortfall" }, "fits"],
    [{ figure: "backlash" }, "0.00\u00a0mm"],
    [{ figure: "speed", of: "front" }, "12.3\u00a0km/h"],
    [{ figure: "speed", of: "front", measure: "nominal", unit: "m/s" }, "3.0\u00a0m/s"],
    [{ figure: "motor-rpm" }, "23,310"],
    [{ figure: "wheel-rpm", of: "front" }, "526"],
    [{ figure: "volts" }, "12.60\u00a0V"],
    [{ figure: "volts", measure: "nominal" }, "11.10\u00a0V"],
    [{ figure: "hand-turns", of: "front" }, "0.93"],
    [{ figure: "hand-turns", of: "front", measure: "held" }, "1.87"],
    [{ figure: "hand-turns", of: "rear", measure: "held" }, "not known"],
  ])("%j", (query, text) => {
    expect(figure(query as never)).toBe(text);
  });

  it("of the hub as printed keep the interval, ends outward", () => {
    const printed = version("as-printed");
    expect(figure({ figure: "reduction", of: "front" }, printed)).toBe("43.79 to 46.82");
    expect(figure({ figure: "standing", of: "front" }, printed)).toBe("cannot tell");
    expect(figure({ figure: "lead" }, printed)).toBe("4.38% behind to 2.22% ahead");
    expect(figure({ figure: "gap" }, printed)).toBe("\u22124.38% to 2.22%");
    expect(figure({ figure: "leader" }, printed)).toBe("cannot tell");
    expect(figure({ figure: "fraction", of: "front" }, printed)).toBe("not known");
    expect(figure({ figure: "counts", of: "front-hub" }, printed)).toBe("printed 1.5");
  });

  it("of a change have four names", () => {
    const first = version("first-try");
    const change = (measure: string, sign?: string) =>
      figureOf(
        evaluate(limpet),
        { figure: "change", of: "front", measure, from: "first-try", digits: 1, ...(sign && { sign }) },
        { version: () => first },
      );
    expect([change("reduction"), change("wheel-speed"), change("wheel-torque"), change("midpoint")]).toEqual([
      "+79.4%",
      "\u221244.2%",
      "+79.4%",
      "+56.8%",
    ]);
    expect(change("wheel-speed", "none")).toBe("44.2%");
    expect(() => change("sideways")).toThrow(/no measure "sideways"/);
    // Without another version at hand, alternatives are made from the build itself.
    expect(figureOf(evaluate(limpet), { figure: "change", of: "front", from: "first-try", digits: 1 })).toBe("+79.4%");
    expect(figureOf(evaluate(limpet), { figure: "change", of: "front" })).toBe("0.00%");
    expect(() => figureOf(evaluate(limpet), { figure: "change", from: "nobody" })).toThrow(/no "nobody".*first-try/);
  });

  it("of pairs that do not fit say how", () => {
    expect(figure({ figure: "fit" }, version("tempting"))).toBe("too far apart");
    expect(figure({ figure: "shortfall" }, version("tempting"))).toBe("1.9\u00a0mm");
    const close = evaluate(applyChanges(limpet, { "primary.driver": 10, "primary.driven": 53 }).build!);
    expect(figure({ figure: "fit" }, close)).toBe("too close");
  });

  it("say what is not there", () => {
    for (const query of [
      { figure: "nothing" },
      { figure: "reduction", of: "nobody" },
      { figure: "reduction", group: "nobody" },
      { figure: "standing", of: "nobody" },
      { figure: "gap", of: "nobody" },
      { figure: "speed", unit: "knots" },
      { figure: "centre", of: "row" },
    ])
      expect(() => figure(query as never), JSON.stringify(query)).toThrow(/There is no /);
    expect(() => figureFrom(gearFigures, evaluate(limpet), { figure: "speed" })).toThrow(/No maker of "speed"/);
    expect(() => figureFrom(gearFigures, evaluate(limpet), { figure: "constructor" })).toThrow(
      /no figure "constructor"/,
    );
  });
});

describe("figures of a bare build", () => {
  it.each([
    ["range", "not known"],
    ["standing", "not known"],
    ["travel", "not known"],
    ["direction", "opposite way"],
    ["speed", "not known"],
    ["volts", "not known"],
  ])("%s: %s", (name, text) => {
    expect(figure({ figure: name }, evaluate(bare))).toBe(text);
  });

  it("nothing drives what is let go of", () => {
    expect(figure({ figure: "reduction" }, released)).toBe("not driven");
    expect(figure({ figure: "standing" }, released)).toBe("not driven");
    expect(figure({ figure: "change" }, released, { version: () => evaluate(bare) })).toBe("not known");
    expect(figure({ figure: "hand-turns" }, released)).toBe("not known");
    expect(toText(working(released))).toContain("drive");
  });

  it("two outputs without wheels are compared by gears alone, and not at all where one is let go of", () => {
    const outputs = ["front", "rear"].map((id) => ({
      id,
      stages: [{ id: `${id}-ring`, kind: "pair", driver: 10, driven: 40 }],
    }));
    const two = read({ format: "meshwright-build/1", outputs });
    expect(figure({ figure: "gap", scope: "gears" }, evaluate(two))).toBe("0.00%");
    expect(["gap", "lead", "farther", "leader"].map((name) => figure({ figure: name }, evaluate(two)))).toEqual([
      "0.00%, gears alone",
      "level, gears alone",
      "as far, gears alone",
      "level, gears alone",
    ]);
    expect(figure({ figure: "gap", scope: "tyres" }, evaluate(two))).toBe("not known");
    expect(figure({ figure: "circle" }, evaluate(two))).toBe("not known");
    expect(figure({ figure: "mean" }, evaluate(two))).toBe("4.00");
    expect(figure({ figure: "direction" }, evaluate(two))).toBe("opposite way");
  });

  it("a worm's direction is not known, and a belt's is the same", () => {
    const one = (stage: object) =>
      evaluate(read({ format: "meshwright-build/1", outputs: [{ id: "drive", stages: [stage] }] }));
    expect(figure({ figure: "direction" }, one({ id: "w", kind: "worm", starts: 1, teeth: 30 }))).toBe("not known");
    expect(figure({ figure: "direction" }, one({ id: "b", kind: "belt", driver: 20, driven: 60 }))).toBe("same way");
  });
});

describe("Avocet's turning circle", () => {
  it("is matched at 720 mm by gears alone", () => {
    const axle = (id: string, driven: number, diameter: string) => ({
      id,
      stages: [{ id: `${id}-ring`, kind: "pair", driver: 12, driven }],
      wheel: { diameter },
    });
    const avocet = read({
      format: "meshwright-build/1",
      wheelbase: "300 mm",
      outputs: [axle("front", 36, "108 mm"), axle("rear", 39, "110 mm")],
    });
    expect(figure({ figure: "circle", scope: "gears", unit: "mm", digits: "1" }, evaluate(avocet))).toBe(
      "720.0\u00a0mm",
    );
    expect(figure({ figure: "circle", digits: "3" }, evaluate(avocet))).toBe("0.828\u00a0m");
  });
});
