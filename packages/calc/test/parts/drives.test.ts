import { describe, expect, it } from "vitest";
import { applyChanges, readBuild } from "../../src/document/index.js";
import type { Build, ChangeSet, Part } from "../../src/drivetrain/index.js";
import { rational } from "../../src/exact/index.js";
import { needsOf, orderOf, partsFromSheet, readParts, type Need } from "../../src/parts/index.js";

// Grebe, a harbour crawler: a belt off the motor, a planetary set behind it, a worm for the winch, a chain to the rear.
const grebe = (): Build => {
  const { build, findings } = readBuild({
    format: "meshwright-build/1",
    stages: [
      { id: "belt", kind: "belt", driver: 18, driven: 54, pitch: "3 mm", beltTeeth: 90 },
      { id: "sets", kind: "planetary", sun: 12, ring: 60, fixed: "ring", input: "sun", output: "carrier", repeat: 2 },
    ],
    outputs: [
      { id: "rear", stages: [{ id: "chain", kind: "belt", chain: true, driver: 9, driven: 21, pitch: "1/4 in" }] },
      { id: "winch", stages: [{ id: "worm", kind: "worm", starts: 2, teeth: 30, module: "0.6" }] },
    ],
  });
  expect(findings).toEqual([]);
  return build!;
};

const price = (amount: string) => ({ amount, currency: "EUR" });
const shelf: readonly Part[] = [
  { id: "drum-18", is: "pulley", teeth: 18, pitch: "3 mm", maker: "Ebb & Kelp" },
  { id: "drum-54", is: "pulley", teeth: 54, pitch: "3 mm", maker: "Ebb & Kelp" },
  { id: "drum-54-fine", is: "pulley", teeth: 54, pitch: "2 mm", maker: "Ebb & Kelp", owned: 4 },
  { id: "band-90", is: "belt", teeth: 90, pitch: "3 mm", maker: "Ebb & Kelp" },
  { id: "band-94", is: "belt", teeth: 94, pitch: "3 mm", maker: "Ebb & Kelp", price: price("4.10") },
  { id: "sun-12", is: "planetary", driver: 12, driven: 60, maker: "Urchin Drives" },
  { id: "sun-15", is: "planetary", driver: 15, driven: 60, maker: "Urchin Drives", pack: 1, price: price("11.50") },
  { id: "sprocket-9", is: "pulley", teeth: 9, pitch: "6.35 mm", maker: "Barnacle Chain" },
  { id: "sprocket-21", is: "pulley", teeth: 21, pitch: "0.25 in", maker: "Barnacle Chain" },
  { id: "links", is: "belt", teeth: 44, pitch: "6.35 mm", stage: "chain", maker: "Barnacle Chain" },
  { id: "worm-2", is: "worm", teeth: 2, module: "0.6", maker: "Urchin Drives" },
  { id: "worm-1", is: "worm", teeth: 1, module: "0.6", maker: "Urchin Drives", price: price("8.00") },
  { id: "wheel-30", is: "gear", teeth: 30, module: "0.6", maker: "Urchin Drives" },
];

const named = (needs: readonly Need[], stage: string) =>
  needs.filter((need) => need.stage === stage).map(({ part, pieces }) => `${pieces} ${part?.id}`);

const order = (changes: ChangeSet, parts = shelf) => {
  const before = grebe();
  const { build, findings } = applyChanges(before, changes);
  expect(findings).toEqual([]);
  const { buy, missing, left } = orderOf(needsOf(before, parts), needsOf(build!, parts));
  return {
    buy: buy.map(({ part, pieces }) => `${pieces} ${part.id}`),
    left: left.map(({ part, pieces }) => `${pieces} ${part.id}`),
    missing,
  };
};

describe("belts, worms and planetary sets", () => {
  const needs = needsOf(grebe(), shelf);

  it("are asked for with what they run on, each of its own pitch", () => {
    expect(named(needs, "belt")).toEqual(["1 drum-18", "1 drum-54", "1 band-90"]);
    expect(named(needs, "sets")).toEqual(["2 sun-12"]);
    expect(named(needs, "chain")).toEqual(["1 sprocket-9", "1 sprocket-21", "1 links"]);
    expect(named(needs, "worm")).toEqual(["1 worm-2", "1 wheel-30"]);
  });

  it("stand in the order of a change that alters them", () => {
    expect(order({ "belt.beltTeeth": 94 })).toEqual({ buy: ["1 band-94"], left: ["1 band-90"], missing: [] });
    expect(order({ "sets.sun": 15 })).toEqual({ buy: ["2 sun-15"], left: ["2 sun-12"], missing: [] });
    expect(order({ "sets.repeat": 3 })).toEqual({ buy: ["1 sun-12"], left: [], missing: [] });
    expect(order({ "worm.starts": 1 })).toEqual({ buy: ["1 worm-1"], left: ["1 worm-2"], missing: [] });
  });

  it("are told as what is needed, where no part answers", () => {
    expect(order({ "belt.beltTeeth": 97 }).missing).toEqual([
      { stage: "belt", is: ["belt"], pieces: 1, teeth: 97, beltPitch: "3 mm", length: rational(291) },
    ]);
    expect(order({ "sets.sun": 18 }).missing).toMatchObject([{ is: ["planetary"], pieces: 2, driver: 18, driven: 60 }]);
    expect(order({ "worm.teeth": 40, "worm.module": "0.5" }).missing).toMatchObject([
      { is: ["worm"], teeth: 2, pitch: { module: "0.5" } },
      { is: ["gear"], teeth: 40, pitch: { module: "0.5" } },
    ]);
  });

  it("take a worm and its wheel as one where they are sold as one", () => {
    const set: Part = { id: "worm-set", is: "set", driver: 2, driven: 30, maker: "Urchin Drives" };
    expect(named(needsOf(grebe(), [...shelf, set]), "worm")).toEqual(["1 worm-set"]);
  });

  it("know which belts come near the wanted centre distance, and take either", () => {
    const changes = { "belt.driver": 20, "belt.driven": 60, "belt.pitch": "2 mm", "belt.centre": "60 mm" };
    const { build } = applyChanges(grebe(), { ...changes, "belt.beltTeeth": null });
    const band = (parts: readonly Part[]) => needsOf(build!, parts).find(({ is }) => is.includes("belt"))!;
    expect(band([])).toMatchObject({ either: [101, 102], beltPitch: "2 mm" });
    const bands = [100, 102].map((teeth): Part => ({ id: `band-${teeth}`, is: "belt", teeth, pitch: "2 mm" }));
    expect(band(bands).part?.id).toBe("band-102");
    expect(band(bands.slice(0, 1)).part).toBeUndefined();
  });

  it("ask for a belt of unknown length only by the place that it is meant for", () => {
    const loose = shelf.map(({ stage: _, ...part }) => part);
    expect(named(needsOf(grebe(), loose), "chain")[2]).toBe("1 undefined");
    // Pulleys that touch have no belt, and that is for the geometry to say.
    expect(order({ "belt.beltTeeth": null, "belt.centre": "5 mm" }).missing).toMatchObject([{ is: ["belt"] }]);
  });

  it("count a part once for each place that takes it, whichever place it was meant for", () => {
    const both: Part = { id: "drum-both", is: "pulley", teeth: 18, pitch: "3 mm", stage: "belt", owned: 1 };
    const two = applyChanges(grebe(), { "chain.driver": 18, "chain.pitch": "3 mm" }).build!;
    const taken = needsOf(two, [both]);
    expect([named(taken, "belt")[0], named(taken, "chain")[0]]).toEqual(["1 drum-both", "1 drum-both"]);
    const { buy, owned } = orderOf([], taken);
    expect([owned[0]!.pieces, buy[0]!.pieces]).toEqual([1, 1]);
  });
});

describe("a part that is meant for another place", () => {
  it("answers only where it is known to be the same, not by its teeth alone", () => {
    const ring = (id: string) => ({ id, kind: "pair", driver: 13, driven: 38, set: true });
    const { build } = readBuild({
      format: "meshwright-build/1",
      stages: [{ id: "primary", kind: "pair", driver: 15, driven: 62, module: "0.8" }],
      outputs: [
        { id: "front", stages: [ring("front-ring")], wheel: { diameter: "110 mm" } },
        {
          id: "rear",
          stages: [ring("rear-ring"), { id: "hub", kind: "pair", driver: 15, driven: 23 }],
          wheel: { diameter: "11 cm" },
        },
      ],
    });
    const parts: readonly Part[] = [
      { id: "pinion-15", is: "pinion", teeth: 15, module: "0.8", stage: "primary" },
      { id: "set-front", is: "set", driver: 13, driven: 38, stage: "front-ring" },
      { id: "tyre", is: "wheel", diameter: "110 mm", stage: "front" },
    ];
    const needs = needsOf(build!, parts);
    expect(named(needs, "primary")[0]).toBe("1 pinion-15");
    expect(named(needs, "hub")).toEqual(["1 undefined", "1 undefined"]);
    expect(named(needs, "rear-ring")).toEqual(["1 undefined"]);
    expect([named(needs, "front"), named(needs, "rear")]).toEqual([["2 tyre"], ["2 tyre"]]);
  });
});

describe("their parts in a list", () => {
  it("need their counts", () => {
    const codes = readParts([
      { id: "a", is: "worm" },
      { id: "b", is: "planetary", driver: 12 },
    ]).findings.map(({ code, at }) => `${code} ${at}`);
    expect(codes).toEqual(["part-incomplete /0/teeth", "part-incomplete /1/driven"]);
  });

  it("are known by ordinary words", () => {
    const { parts, questions } = partsFromSheet([
      ["Name", "What", "Starts", "Sun", "Ring"],
      ["Worm 2", "worm", "2", "", ""],
      ["Worm wheel 30", "worm wheel", "30", "", ""],
      ["Worm 1 in 20", "worm and wheel", "", "1", "20"],
      ["Urchin 12", "planetary set", "", "12", "60"],
      ["Band", "timing belt", "90", "", ""],
    ]);
    expect(questions).toEqual([]);
    expect(parts.map(({ is }) => is)).toEqual(["worm", "gear", "set", "planetary", "belt"]);
    expect(parts[3]).toMatchObject({ driver: 12, driven: 60 });
  });
});
