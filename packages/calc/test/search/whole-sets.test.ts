import { describe, expect, it } from "vitest";
import { applyChanges, parseBuild } from "../../src/document/index.js";
import type { Build } from "../../src/drivetrain/index.js";
import { evaluate } from "../../src/evaluate/index.js";
import { needsOf, orderOf } from "../../src/parts/index.js";
import {
  askPairs,
  askTrains,
  countsFor,
  type CountsFound,
  findPairs,
  findTrains,
  type FoundPair,
  nearMisses,
  type PairQuestion,
  takenIn,
  takePair,
  takeTrain,
  type TrainQuestion,
} from "../../src/search/index.js";

// What is sold whole: planetary sets, gears in a box of their own, gears that only come together.

const all = (batches: Iterable<{ readonly found: readonly FoundPair[] }>): FoundPair[] =>
  [...batches].flatMap(({ found }) => found);
const ask = (build: Build, stage: string, before?: Build): PairQuestion => {
  const question = askPairs(evaluate(build), stage, before && { before });
  if (typeof question === "string") throw new Error(question);
  return question;
};
const told = ({ driver, driven, centre, totals }: FoundPair): string =>
  [driver.id, driven.id, centre?.low.toFraction() ?? "-", totals[0]!.low.toFraction()].join(" ");

const price = { amount: "31.00", currency: "EUR" };
const planetary = { kind: "planetary", fixed: "ring", input: "sun", output: "carrier" };

/** Two axles with a planetary set in each hub behind a pair of 20 to 50. */
const hubs = (stage: object = {}, more: object = {}): Build =>
  parseBuild({
    format: "meshwright-build/1",
    stages: [{ id: "primary", kind: "pair", driver: 20, driven: 50 }],
    outputs: ["front", "rear"].map((id) => ({
      id,
      stages: [{ id: `${id}-hub`, ...planetary, sun: 15, ring: 45, planets: 3, planet: 15, per: "wheel", ...stage }],
    })),
    target: { from: 9, to: "12.5" },
    parts: [
      { id: "h45", is: "planetary", driver: 15, driven: 45, owned: 4 },
      { id: "h51", is: "planetary", driver: 15, driven: 51, price, available: true },
      { id: "h57", is: "planetary", driver: 15, driven: 57, teeth: 21, price, available: true },
      { id: "h75", is: "planetary", driver: 15, driven: 75, price, available: true },
      { id: "gone", is: "planetary", driver: 18, driven: 60, available: false },
      { id: "loose", is: "gear", teeth: 15 },
    ],
    ...more,
  });

/** Motor turns for one turn of the carrier with the ring held: 1 + ring / sun, by hand. */
const willis = (sun: number, ring: number): number => 1 + ring / sun;

describe("planetary sets from the shelf", () => {
  it("reach by Willis' equation, not by ring over sun, and have no centre distance", () => {
    // 2.5 · (1 + 45/15) = 10, 2.5 · (1 + 51/15) = 11, 2.5 · (1 + 57/15) = 12, 2.5 · (1 + 75/15) = 15.
    expect(all(findPairs(ask(hubs(), "front-hub"))).map(told)).toEqual([
      "h51 h51 - 11/1",
      "h45 h45 - 10/1",
      "h57 h57 - 12/1",
    ]);
    const [miss] = all(nearMisses(ask(hubs(), "front-hub")));
    expect([told(miss!), miss!.reasons]).toEqual(["h75 h75 - 15/1", []]);
  });

  it.each([
    ["sun held, ring drives the carrier", { fixed: "sun", input: "ring", output: "carrier" }, 1 + 15 / 45],
    ["carrier held, sun drives the ring", { fixed: "carrier", input: "sun", output: "ring" }, 45 / 15],
    ["two in a row", { repeat: 2 }, willis(15, 45) ** 2],
  ])("do what their members do: %s", (_, stage, times) => {
    const build = hubs(stage, { target: { from: "0.1", to: 1000 } });
    const [pair] = all(findPairs(ask(build, "rear-hub"))).filter(({ driver }) => driver.id === "h45");
    expect(pair!.totals[0]!.low.toNumber()).toBeCloseTo(2.5 * times, 12);
  });

  it("are taken as one edit, after which build and order say what was found", () => {
    const build = hubs();
    const found = all(findPairs(ask(build, "front-hub")));
    for (const pair of found) {
      const { build: after, findings } = applyChanges(build, takePair(build, "front-hub", pair));
      expect(findings).toEqual([]);
      expect(evaluate(after!).output("front")!.bounds!.low.equals(pair.totals[0]!.low)).toBe(true);
      expect(takenIn(after!, "front-hub")(pair)).toBe(true);
      expect(found.filter((one) => takenIn(after!, "front-hub")(one))).toEqual([pair]);
      const { sums, missing } = orderOf(needsOf(build), needsOf(after!));
      expect([sums.map(String), missing]).toEqual([pair.pay.sums.map(String), []]);
    }
    // One for each wheel: two of 31.00. Its planets are told where it tells them.
    const settings = (id: string) =>
      Object.fromEntries(
        takePair(
          build,
          "front-hub",
          found.find(({ driver }) => driver.id === id)!,
        ).map(({ set, to }) => [set, to]),
      );
    expect(found[0]!.pay.sums.map(({ amount }) => amount.toFraction())).toEqual(["62/1"]);
    expect(settings("h57")).toEqual({
      "front-hub.sun": 15,
      "front-hub.ring": 57,
      "front-hub.planet": 21,
      "front-hub.planets": null,
      "front-hub.fitted": ["h57"],
    });
    // What is there keeps what its author knows of it.
    expect(settings("h45")).toEqual({ "front-hub.sun": 15, "front-hub.ring": 45, "front-hub.fitted": ["h45"] });
  });

  it("near misses come by what one tooth on the sun changes", () => {
    // Range 9 to 12.5. 75 in place: 15 is 2.5 outside; one tooth on the sun makes 2.5 · 75 · (1/15 − 1/16) = 0.78125 of it: 3.2 teeth.
    // 18 in 120: 2.5 · (1 + 120/18) = 19.17 is 6.67 outside; 2.5 · 120 · (1/18 − 1/19) = 0.877: 7.6 teeth.
    // 30 in 60: 7.5 is 1.5 outside; 2.5 · 60 · (1/30 − 1/31) = 0.161: 9.3 teeth.
    const parts = [
      { id: "a", is: "planetary", driver: 30, driven: 60 },
      { id: "b", is: "planetary", driver: 18, driven: 120 },
      { id: "c", is: "planetary", driver: 15, driven: 75 },
    ];
    expect(all(nearMisses(ask(hubs({}, { parts }), "front-hub"))).map(({ driver }) => driver.id)).toEqual([
      "c",
      "b",
      "a",
    ]);
  });

  it("behind an open differential the rest of the sum stays", () => {
    const build = hubs({}, { centre: { kind: "differential" }, target: { from: 1, to: 1000 } });
    for (const pair of all(findPairs(ask(build, "front-hub")))) {
      const after = applyChanges(build, takePair(build, "front-hub", pair)).build!;
      const totals = evaluate(after).outputs.map(({ bounds }) => bounds!.low.toFraction());
      expect(pair.totals.map(({ low }) => low.toFraction())).toEqual(totals);
    }
  });

  it("are chosen together with the pair before them", () => {
    const parts = [15, 20].flatMap((teeth): object[] => [
      { id: `p${teeth}`, is: "pinion", teeth, module: "1" },
      { id: `s${teeth}`, is: "spur", teeth: 50 + teeth, module: "1" },
      { id: `h${teeth}`, is: "planetary", driver: 15, driven: 3 * teeth },
    ]);
    const build = hubs({}, { parts, stages: [{ id: "primary", kind: "pair", driver: 20, driven: 50, module: "1" }] });
    const question = askTrains(evaluate(build), ["primary", "front-hub"]) as TrainQuestion;
    const found = [...findTrains(question)].flatMap((batch) => batch.found);
    // Both axles within 9 to 12.5: the rear's hub stays 15 in 45, four to one.
    const ratio = (driver: number, driven: number) => driven / driver;
    const expected = [15, 20].flatMap((driver) =>
      [65, 70].flatMap((driven) =>
        [45, 60].filter((ring) => {
          const first = ratio(driver, driven);
          return [first * willis(15, ring), first * 4].every((total) => total >= 9 && total <= 12.5);
        }),
      ),
    );
    expect(found).toHaveLength(expected.length);
    for (const train of found) {
      const after = applyChanges(build, takeTrain(build, ["primary", "front-hub"], [], train)).build!;
      const { bounds } = evaluate(after).output("front")!;
      expect(train.totals[0]!.low.equals(bounds!.low)).toBe(true);
    }
  });
});

describe("gears that only come together", () => {
  const slot = { mounts: [{ stage: "primary", from: "29 mm", to: "31 mm" }] };
  const build = (stage: object, more: object = slot): Build =>
    parseBuild({
      format: "meshwright-build/1",
      stages: [{ id: "primary", kind: "pair", driver: 15, driven: 60, module: "0.8", ...stage }],
      outputs: [{ id: "rear", stages: [] }],
      target: { from: 3, to: 6 },
      parts: [
        { id: "near", is: "set", driver: 15, driven: 60, module: "0.8" },
        { id: "far", is: "set", driver: 20, driven: 80, module: "0.8" },
        { id: "p15", is: "pinion", teeth: 15, module: "0.8" },
        { id: "s61", is: "spur", teeth: 61, module: "0.8" },
      ],
      ...more,
    });

  it("stand in a slot as any gears do", () => {
    // 0.8 · 75 / 2 = 30; 0.8 · 100 / 2 = 40 is nine millimetres beyond the slot.
    expect(all(findPairs(ask(build({ set: true }), "primary"))).map(told)).toEqual(["near near 30/1 4/1"]);
    const [miss] = all(nearMisses(ask(build({ set: true }), "primary")));
    expect(miss!.reasons.map(({ code }) => code)).toContain("too-far");
  });

  it("have no distance where their axes cross", () => {
    const crossed = all(findPairs(ask(build({ set: true, form: "bevel" }, {}), "primary")));
    expect(crossed.map(told)).toEqual(["near near - 4/1", "far far - 4/1"]);
  });

  it("a helix puts them farther apart, also on a slot", () => {
    // 0.8 · 75 / (2 · cos 20°) = 31.93.
    const helical = { set: true, form: "helical", helixAngle: 20 };
    expect(all(findPairs(ask(build(helical), "primary")))).toEqual([]);
    const wide = { mounts: [{ stage: "primary", from: "29 mm", to: "32 mm" }] };
    const [pair] = all(findPairs(ask(build(helical, wide), "primary")));
    expect(pair!.centre!.low.toNumber()).toBeCloseTo(30 / Math.cos(Math.PI / 9), 9);
  });

  it("a ring stands closer, with a mount and without", () => {
    const parts = [
      { id: "p14", is: "pinion", teeth: 14, module: "1" },
      { id: "r50", is: "gear", teeth: 50, module: "1" },
      { id: "set", is: "set", driver: 14, driven: 50, module: "1" },
    ];
    const ring = (set: boolean) => build({ module: "1", internal: true, set }, { parts });
    for (const set of [false, true])
      expect(new Set(all(findPairs(ask(ring(set), "primary"))).map(({ centre }) => centre!.low.toFraction()))).toEqual(
        new Set(["18/1"]),
      );
  });

  it("who took a set in the place of two gears finds the way back to two gears", () => {
    const loose = build({});
    const pairs = all(findPairs(ask(loose, "primary", loose)));
    expect(pairs.map(({ driver }) => driver.id)).toEqual(["p15", "near"]);
    const after = applyChanges(loose, takePair(loose, "primary", pairs[1]!)).build!;
    expect(after.stages[0]).toMatchObject({ set: true });
    const then = all(findPairs(ask(after, "primary", loose)));
    expect(then.map(told)).toEqual(pairs.map(told));
    const back = applyChanges(after, takePair(after, "primary", then[0]!)).build!;
    expect(back.stages[0]).toMatchObject({ driver: 15, driven: 61 });
    expect(back.stages[0]).not.toHaveProperty("set");
    // An author who says that they are sold together means it.
    expect(all(findPairs(ask(after, "primary", after))).map(({ driver }) => driver.id)).toEqual(["near"]);
  });
});

describe("sets whose teeth are of another form", () => {
  const sets = ["spur", "bevel", "worm", undefined].map((form, n) => ({
    id: `${form ?? "unsaid"}-${n}`,
    is: "set",
    driver: 13,
    driven: 38 + n,
    module: "0.8",
    ...(form && { form }),
  }));
  const offered = (stage: object) => {
    const stages = [{ id: "ring", kind: "pair", driver: 13, driven: 37, set: true, ...stage }];
    const outputs = [{ id: "rear", stages: [] }];
    const build = parseBuild({
      format: "meshwright-build/1",
      stages,
      outputs,
      target: { from: 1, to: 9 },
      parts: sets,
    });
    const found = all(findPairs(ask(build, "ring"))).map(({ set }) => set!.id);
    const wanted = { figure: "reduction", of: "rear", value: "3.2" } as const;
    const near = (countsFor(evaluate(build), "ring", wanted) as CountsFound).neighbours;
    expect(near.every(({ choice }) => found.includes((choice as { id: string }).id))).toBe(true);
    return found.sort();
  };

  it("are not offered where the stage says what its own are", () => {
    expect(offered({ form: "bevel" })).toEqual(["bevel-1", "unsaid-3"]);
    // What has a pitch is drawn and measured as spur gears.
    expect(offered({ module: "0.8" })).toEqual(["spur-0", "unsaid-3"]);
    expect(offered({})).toEqual(["bevel-1", "spur-0", "unsaid-3", "worm-2"]);
  });

  it("do not answer for it in what is to be bought", () => {
    const stages = [{ id: "ring", kind: "pair", driver: 13, driven: 39, set: true, form: "spur" }];
    const build = parseBuild({
      format: "meshwright-build/1",
      stages,
      outputs: [{ id: "rear", stages: [] }],
      parts: sets,
    });
    expect(needsOf(build).map(({ part }) => part?.id)).toEqual([undefined]);
  });
});
