import { describe, expect, it } from "vitest";
import { heldBuild } from "../../src/article/index.js";
import { fittedFindings } from "../../src/parts/index.js";
import { document, pair, read } from "../make.js";

type Data = Record<string, unknown>;

/** What is told of parts that are fitted to one pair of 15 and 62 teeth of module 0.8: the field, what they have, what the pair has. */
function told(parts: readonly Data[], stage: Data = {}) {
  const spur = pair("primary", 15, 62, {
    form: "spur",
    module: "0.8",
    label: "Primary",
    fitted: parts.map(({ id }) => id),
    ...stage,
  });
  const findings = fittedFindings(read(document([spur], { rear: [] }, { parts })));
  return findings.map(({ at, values: { field, found, expected } }) => [at.split("/").at(-1), field, found, expected]);
}

const pinion = (more: Data = {}): Data => ({ id: "p", is: "pinion", teeth: 15, module: "0.8", ...more });
const spur = (more: Data = {}): Data => ({ id: "s", is: "spur", teeth: 62, module: "0.80", ...more });

describe("parts that a stage names as fitted", () => {
  it("are told of where their count, pitch, angle or shift is another than that of the stage", () => {
    expect(told([pinion({ teeth: 14 }), spur()])).toEqual([["0", "teeth", 14, 15]]);
    expect(told([pinion(), spur({ teeth: 63 })])).toEqual([["1", "teeth", 63, 62]]);
    expect(told([pinion({ module: "0.5" }), spur({ module: "0.5" })])).toEqual([
      ["0", "pitch", "0.5", "0.8"],
      ["1", "pitch", "0.5", "0.8"],
    ]);
    expect(told([pinion({ module: undefined, diametralPitch: 32 }), spur()])).toEqual([["0", "pitch", "32 DP", "0.8"]]);
    expect(told([pinion({ pressureAngle: "14.5" }), spur()], { pressureAngle: 20 })).toEqual([
      ["0", "pressureAngle", "14.5", 20],
    ]);
    expect(told([pinion({ shift: "0.5" }), spur({ shift: "0.3" })], { drivenShift: "0.30" })).toEqual([
      ["0", "shift", "0.5", "0"],
    ]);
    expect(told([pinion({ shift: "0.5" }), spur()], { driverShift: "0.25" })).toEqual([["0", "shift", "0.5", "0.25"]]);
    // Teeth of another form do not mesh, whatever else agrees.
    expect(told([pinion({ form: "helical" }), spur()])).toEqual([["0", "form", "helical", "spur"]]);
    expect(told([pinion(), spur({ form: "internal" })], { form: undefined })).toEqual([
      ["1", "form", "internal", "spur"],
    ]);
    expect(told([pinion({ form: "spur" }), spur()], { form: "helical", helixAngle: 20 })).toEqual([
      ["0", "form", "spur", "helical"],
    ]);
    // What a wall has to keep clear of.
    expect(told([pinion(), spur({ tipDiameter: "53 mm" })])).toEqual([["1", "tipDiameter", "53 mm", "51.2 mm"]]);
    expect(told([pinion({ tipDiameter: "13.7 mm" }), spur()], { driverTip: "13.6 mm", driverShift: 0 })).toEqual([
      ["0", "tipDiameter", "13.7 mm", "13.6 mm"],
    ]);
    expect(told([{ id: "x", is: "set", driver: 15, driven: 61 }])).toEqual([["0", "driven", 61, 62]]);
    expect(told([pinion({ teeth: undefined }), spur()])).toEqual([["0", "teeth", { term: "nothing" }, 15]]);
  });

  it("are not told of where they are what stands there, or what nobody asks about", () => {
    expect(told([pinion(), spur()])).toEqual([]);
    expect(told([{ id: "p", is: "pinion", teeth: 15 }, spur({ diametralPitch: undefined })])).toEqual([]);
    expect(told([pinion(), spur()], { module: undefined, form: undefined })).toEqual([]);
    expect(
      told([pinion({ shift: "0.5" }), spur({ shift: "-0.5" })], { driverShift: 0.5, drivenShift: "-1/2" }),
    ).toEqual([]);
    expect(
      told([pinion(), spur(), { id: "tube", is: "sleeve", bore: "3 mm", outside: "5 mm" }, { id: "o", is: "other" }]),
    ).toEqual([]);
    expect(told([pinion({ tipDiameter: "13.6 mm", form: "spur" }), spur({ tipDiameter: "51.204 mm" })])).toEqual([]);
    expect(told([pinion({ tipDiameter: "1 mm" }), spur()], { module: undefined, form: undefined })).toEqual([]);
    // Of two like gears, either may be the one that is shifted.
    const like = { driver: 15, driven: 15, drivenShift: "0.4" };
    expect(told([{ id: "g", is: "gear", teeth: 15, module: "0.8", shift: "0.4" }], like)).toEqual([]);
  });

  it("are told of by what differs, whatever else is written in another way", () => {
    const set = (more: Data): Data => ({ id: "x", is: "set", driver: 15, driven: 62, ...more });
    expect(told([pinion({ module: "4/5", teeth: 15, pressureAngle: "14.5" }), spur()], { pressureAngle: 20 })).toEqual([
      ["0", "pressureAngle", "14.5", 20],
    ]);
    const inch = { module: undefined, diametralPitch: 32, pressureAngle: "14.5" };
    const metric = { module: "127/160", pressureAngle: 20 };
    expect(told([pinion(inch), spur({ module: "127/160" })], metric)).toEqual([["0", "pressureAngle", "14.5", 20]]);
    const bare = pinion({ module: undefined, pressureAngle: "14.5" });
    expect(told([bare, spur()], { pressureAngle: 20 })).toEqual([["0", "pressureAngle", "14.5", 20]]);
    // What a part does not say does not speak against it.
    expect(told([set({ form: "helical" })])).toEqual([["0", "form", "helical", "spur"]]);
    const box = (value: string, fitted: string) => {
      const part = { id: "b", is: "gearbox", value: fitted };
      const stage = { id: "box", kind: "published", value, label: "Box", fitted: ["b"] };
      return fittedFindings(read(document([stage], { rear: [] }, { parts: [part] }))).map(({ values }) => values.found);
    };
    expect([box("1.5", "1.5:1"), box("27 : 1", "27"), box("52/19", "104/38")]).toEqual([[], [], []]);
    // Printed to another digit, it is known otherwise.
    expect([box("1.5", "1.50"), box("1.5", "1.6")]).toEqual([["1.50"], ["1.6"]]);
  });

  it("are told of with the build that they belong to, by their names", () => {
    const parts = [pinion({ teeth: 14, name: "Steel pinion" })];
    const stage = pair("primary", 15, 62, { label: "Primary", fitted: ["p"] });
    const build = read(document([stage], { rear: [] }, { parts }));
    expect(heldBuild({ build, findings: [] }, { names: [], hasScript: true, mode: null }).findings).toMatchObject([
      {
        severity: "warning",
        at: "/stages/0/fitted/0",
        message: "Steel pinion, fitted to Primary: teeth 14, where Primary says 15.",
      },
    ]);
  });
});
