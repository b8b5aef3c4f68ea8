import { describe, expect, it } from "vitest";
import { parseBuild } from "../../src/document/index.js";
import type { Part } from "../../src/drivetrain/index.js";
import { evaluate } from "../../src/evaluate/index.js";
import { rational } from "../../src/exact/index.js";
import {
  type Asking,
  askPairs,
  askTrains,
  findPairs,
  findTrains,
  nearMisses,
  type PairQuestion,
  type TrainQuestion,
} from "../../src/search/index.js";

const pitch = { module: "0.8" };
const gear = (is: "pinion" | "spur", teeth: number, more: object = {}): Part => ({
  id: `${is}-${teeth}`,
  is,
  teeth,
  ...pitch,
  ...more,
});
const shelf = [gear("pinion", 15), gear("pinion", 16), gear("spur", 60)];
const pair = (id: string, driver: number, driven: number, more: object = {}) => ({
  id,
  kind: "pair",
  driver,
  driven,
  ...more,
});
const price = (amount: string) => ({ amount, currency: "EUR" });
const build = (data: object) =>
  parseBuild({
    format: "meshwright-build/1",
    outputs: [{ id: "rear", stages: [] }],
    target: { from: 3, to: 5 },
    parts: shelf,
    ...data,
  });
const ask = (data: object, stage: string, asking?: Asking) => askPairs(evaluate(build(data)), stage, asking);
const pairsOf = (question: PairQuestion | string) =>
  [...findPairs(question as PairQuestion)].flatMap(({ found }) => found);
const ids = (question: PairQuestion | string) =>
  pairsOf(question).map(({ parts }) => parts.map(({ id }) => id).join(" "));
const both = ["pinion-15 spur-60", "pinion-16 spur-60"];

describe("helical teeth without a list", () => {
  const helix = { form: "helical", module: "0.8", helixAngle: 20 };
  const stages = [pair("it", 15, 62, helix)];
  const one = 0.8 / 2 / Math.cos(Math.PI / 9);

  it.each([
    ["a slot", { from: "30 mm", to: "33.5 mm" }, 30, 33.5],
    ["a known pair", { knownPair: [15, 62], closer: "1 mm", farther: "1 mm" }, 77 * one - 1, 77 * one + 1],
  ])("are found by the distance that their helix gives them: %s", (_, mount, from, to) => {
    const counts = [...Array(55).keys()].flatMap((n) => [...Array(115).keys()].map((m) => [n + 6, m + 6] as const));
    const expected = counts.filter(([driver, driven]) => {
      const centre = (driver + driven) * one;
      return centre >= from && centre <= to && driven / driver >= 4 && driven / driver <= 4.4;
    });
    const mounts = [{ stage: "it", ...mount }];
    const question = ask({ stages, mounts, target: { from: 4, to: "4.4" } }, "it", { among: "counts" });
    const found = pairsOf(question).filter(({ reasons }) => !reasons.some(({ weight }) => weight === "refusal"));
    expect(found.map(({ counts: two }) => two.join(" ")).sort()).toEqual(expected.map((two) => two.join(" ")).sort());
    expect(expected.length).toBeGreaterThan(3);
  });
});

describe("where a pair is looked for", () => {
  const stage = pair("it", 15, 60, pitch);

  it("is any shaft: before the split, in a branch, on an axle, behind a motor of its own", () => {
    const places: readonly object[] = [
      { stages: [stage] },
      { branches: [{ id: "shaft", stages: [stage] }], outputs: [{ id: "rear", from: "shaft", stages: [] }] },
      { outputs: [{ id: "rear", stages: [stage] }] },
      { outputs: [{ id: "rear", motor: {}, stages: [stage] }] },
      {
        stages: [{ id: "box", kind: "selectable", selected: "low", positions: [{ id: "low", stages: [stage] }] }],
      },
    ];
    for (const place of places) expect(ids(ask(place, "it")).sort(), JSON.stringify(place)).toEqual(both);
  });

  it("goes by the range of the outputs that it drives, and of no other", () => {
    const outputs = [
      { id: "front", stages: [stage] },
      { id: "rear", stages: [pair("other", 10, 90)] },
    ];
    expect((ask({ outputs }, "it") as PairQuestion).outputs.map(({ id }) => id)).toEqual(["front"]);
    const target = { from: 3, to: 5, output: "rear" };
    expect(ask({ outputs, target }, "it")).toBe("no-range");
    expect(ask({ outputs, target: undefined }, "it")).toBe("no-range");
  });

  it("says why there is nothing to look for", () => {
    expect(ask({}, "nowhere")).toBe("no-stage");
    expect(ask({}, "rear")).toBe("no-stage");
    expect(ask({ stages: [{ id: "row", kind: "train", teeth: [18, 31, 45] }] }, "row")).toBe("not-a-pair");
    const positions = [
      { id: "low", stages: [] },
      { id: "high", stages: [stage] },
    ];
    const unused = { id: "box", kind: "selectable", selected: "low", positions };
    expect(ask({ stages: [unused] }, "it")).toBe("not-driven");
  });

  it("takes sets only where two gears of a shelf would not mesh: rings, bevels, worms", () => {
    const sets: readonly Part[] = [
      { id: "ring", is: "set", driver: 13, driven: 52, ...pitch },
      { id: "worm", is: "set", driver: 2, driven: 8 },
    ];
    const parts = [...shelf, ...sets];
    for (const form of ["bevel", "hypoid", "helical"])
      expect(ids(ask({ parts, stages: [{ ...stage, form }] }, "it"))).toEqual(["ring"]);
    expect(ids(ask({ parts, stages: [{ ...stage, internal: true }] }, "it"))).toEqual(["ring"]);
    // A worm's set has no pitch, and the stage says none.
    const worm = { id: "it", kind: "worm", starts: 1, teeth: 4 };
    expect(ids(ask({ parts, stages: [worm] }, "it")).sort()).toEqual(["ring", "worm"]);
  });

  it("takes loose gears where nobody has said that they are spur gears only if they are meant for it", () => {
    const unsaid = pair("it", 15, 60);
    expect(ids(ask({ stages: [unsaid] }, "it"))).toEqual([]);
    const meant = shelf.map((part) => ({ ...part, stage: "it" }));
    expect(ids(ask({ stages: [unsaid], parts: meant }, "it")).sort()).toEqual(both);
    expect(ids(ask({ stages: [{ ...unsaid, form: "spur" }] }, "it")).sort()).toEqual(both);
    const mounts = [{ stage: "it", from: "1 mm" }];
    expect(ids(ask({ stages: [unsaid], mounts }, "it")).sort()).toEqual(both);
  });

  it("takes no loose gear that is known to have other teeth than straight ones outside", () => {
    for (const form of ["helical", "bevel", "internal", "worm"] as const) {
      const parts = shelf.map((part) => (part.teeth === shelf[0]!.teeth ? { ...part, form } : part));
      const found = ids(ask({ parts, stages: [stage] }, "it"));
      expect(
        found.some((id) => id.includes(shelf[0]!.id)),
        form,
      ).toBe(false);
      expect(
        ids(ask({ parts: shelf.map((part) => ({ ...part, form: "spur" })), stages: [stage] }, "it")).sort(),
      ).toEqual(both);
    }
  });

  it("measures a ring's set as a ring", () => {
    const mounts = [{ stage: "it", from: "15.5 mm", to: "15.7 mm" }];
    const parts: readonly Part[] = [{ id: "ring", is: "set", driver: 13, driven: 52, ...pitch }];
    const [found] = pairsOf(ask({ parts, mounts, stages: [{ ...stage, internal: true }] }, "it"));
    expect(found!.centre!.low.toFraction()).toBe("78/5");
  });
});

describe("bare counts", () => {
  it("are looked for without a list, in the stage's own pitch, and fit its mount", () => {
    const mounts = [{ stage: "it", from: "30.7 mm", to: "30.9 mm" }];
    const data = { parts: undefined, mounts, stages: [pair("it", 15, 60, pitch)], target: { from: "4.1", to: "4.2" } };
    const found = pairsOf(ask(data, "it", { among: "counts" }));
    const expected: string[] = [];
    // 30.8 mm is 77 teeth in all; of 30.7 to 30.9 mm nothing else is a whole number.
    for (let driver = 6; driver <= 60; driver++) {
      const driven = 77 - driver;
      if (driven * 10 >= 41 * driver && driven * 10 <= 42 * driver) expected.push(`${driver} ${driven}`);
    }
    expect(found.map(({ counts }) => counts.join(" "))).toEqual(expected);
    expect(expected).toEqual(["15 62"]);
    expect(found[0]!.parts).toEqual([]);
  });

  it("are none where gears only come together", () => {
    const worm = { id: "it", kind: "worm", starts: 1, teeth: 4 };
    expect(pairsOf(ask({ stages: [worm] }, "it", { among: "counts" }))).toEqual([]);
  });
});

describe("a pair behind an open differential", () => {
  const wheel = { diameter: "100 mm" };
  const outputs = [
    { id: "front", stages: [pair("it", 10, 40, pitch)], wheel },
    { id: "rear", stages: [pair("other", 10, 30)], wheel: { diameter: "50 mm" } },
  ];
  const parts = [gear("pinion", 10), ...[40, 44, 50].map((teeth) => gear("spur", teeth))];
  const centre = { kind: "differential", share: { front: 1, rear: 3 } };

  it("is in a sum: what it changes reaches the other axle too, and what that asks for stays", () => {
    const data = { outputs, parts, centre, target: { from: 1, to: 20 }, mounts: [{ stage: "it", from: "1 mm" }] };
    const found = pairsOf(ask(data, "it"));
    // Turns a millimetre of rolling: a quarter of r / 100 and three quarters of 3 / 50, times the wheel: r / 4 + 4.5, and half of that.
    const totals = (driven: number) =>
      [`${driven + 180}/40`, `${driven + 180}/80`].map((text) => rational(text).toFraction());
    expect(found.map(({ counts, totals: both }) => [counts[1], ...both.map(({ low }) => low.toFraction())])).toEqual(
      expect.arrayContaining([40, 44, 50].map((driven) => [driven, ...totals(driven)])),
    );
    expect(found).toHaveLength(3);
    // 5.5 and 2.75 to 5.75 and 2.875: of two ranges only the one that was asked about counts.
    const narrow = { ...data, target: { from: "2.78", to: "2.85", output: "rear" } };
    expect(pairsOf(ask(narrow, "it")).map(({ counts }) => counts[1])).toEqual([44]);
    const near = [...nearMisses(ask(narrow, "it") as PairQuestion)].flatMap(({ found: some }) => some);
    expect(near.map(({ counts, outside }) => [counts[1], outside[0]!.toFraction()])).toEqual([
      [50, "1/40"],
      [40, "-3/100"],
    ]);
  });

  it("is not looked for with others at once: the totals are no products", () => {
    const data = { outputs, parts, centre, target: { from: 1, to: 20 } };
    expect(askTrains(evaluate(build(data)), ["it", "other"])).toBe("open-differential");
  });

  it("before it, is a product as ever", () => {
    const stages = [pair("first", 10, 20, pitch)];
    const question = ask({ stages, outputs, parts, centre }, "first") as PairQuestion;
    expect(question.outputs.every((output) => !("beside" in output))).toBe(true);
  });
});

describe("a printed ratio behind the pair", () => {
  // A box printed 1.1 is 1.05 to 1.15.
  const stages = [pair("it", 15, 60, pitch), { id: "box", kind: "published", value: "1.1" }];

  it("makes one interval of each output, and counts only where all of it is in the range", () => {
    const question = ask({ stages, target: { from: "4.2", to: "4.6" } }, "it") as PairQuestion;
    expect(question.outputs.map(({ id }) => id)).toEqual(["rear"]);
    const [found, ...more] = pairsOf(question);
    expect(more).toEqual([]);
    expect(found!.totals.map((total) => total.toJSON())).toEqual([{ low: "21/5", high: "23/5" }]);
    expect([found!.reaches, found!.outside.map(String)]).toEqual([["yes"], ["0/1"]]);
  });

  it("cannot tell where the interval straddles an end, as the build's own standing says", () => {
    const target = { from: "4.3", to: "5" };
    const [missed] = [...nearMisses(ask({ stages, target }, "it") as PairQuestion)].flatMap(({ found }) => found);
    expect(missed!.counts).toEqual([15, 60]);
    expect(missed!.reaches).toEqual(["cannot tell"]);
    expect(missed!.outside.map(String)).toEqual(["-1/10"]);
    expect(evaluate(build({ stages, target })).outputs[0]!.standing).toBe("uncertain");
  });
});

describe("what is owned", () => {
  const stages = [pair("it", 15, 60, pitch), pair("other", 16, 16, { module: 1 })];
  const idsOf = (parts: readonly Part[], asking?: Asking) =>
    ids(ask({ stages, parts, target: { from: 3, to: 5 } }, "it", asking));
  const spur = gear("spur", 60, { owned: 1 });

  it("is what a count or a status says, whatever the status is", () => {
    for (const said of [
      { owned: 1 },
      { status: "owned" },
      { status: "spare" },
      { status: "ordered" },
      { status: "fitted" },
    ]) {
      const parts = [gear("pinion", 15, said), spur];
      expect(idsOf(parts, { among: "owned" }), JSON.stringify(said)).toEqual(["pinion-15 spur-60"]);
      expect(pairsOf(ask({ stages, parts }, "it"))[0]!.pay.buy).toEqual([]);
    }
    expect(idsOf([gear("pinion", 15, { status: "owned", owned: 0 }), spur], { among: "owned" })).toEqual([]);
    expect(idsOf([gear("pinion", 15, { available: true }), spur], { among: "owned" })).toEqual([]);
  });

  it("is not what another stage holds", () => {
    const held = { stage: "other", status: "fitted", owned: 1 };
    const parts = (more: object) => [
      gear("pinion", 16, { module: 1, ...held, ...more }),
      gear("spur", 64, { module: 1, owned: 1 }),
    ];
    expect(idsOf(parts({}))).toEqual([]);
    // One more than is held is free; and so is what is on sale, at its price.
    expect(idsOf(parts({ owned: 2 }))).toEqual(["pinion-16 spur-64"]);
    const bought = pairsOf(ask({ stages, parts: parts({ available: true, price: price("4.20") }) }, "it"));
    expect(bought[0]!.pay.sums.map(({ amount }) => amount.toFraction())).toEqual(["21/5"]);
    // The other stage has been changed since: it lies on the bench.
    const swapped = [stages[0]!, pair("other", 17, 16, { module: 1 })];
    expect(ids(ask({ stages: swapped, parts: parts({}) }, "it"))).toEqual(["pinion-16 spur-64"]);
    // Its angle, which the stage does not say, does not make it another part.
    expect(idsOf(parts({ pressureAngle: "14.5" }))).toEqual([]);
  });

  it("counts as many as the stage takes", () => {
    const perWheel = [pair("it", 15, 60, { ...pitch, per: "wheel" })];
    const parts = [
      gear("pinion", 15, { owned: 2, price: price("1") }),
      gear("spur", 60, { pack: 2, price: price("3") }),
    ];
    const data = { stages: perWheel, parts, outputs: [{ id: "rear", wheels: 4, stages: [] }] };
    const [found] = pairsOf(ask(data, "it"));
    // Two of four pinions are there; four spurs are two packs.
    expect(found!.pay.buy.map(({ part, pieces, packs }) => [part.id, pieces, packs])).toEqual([
      ["pinion-15", 2, 2],
      ["spur-60", 4, 2],
    ]);
    expect(found!.pay.sums.map(({ amount }) => String(amount))).toEqual(["8/1"]);
    expect(ids(ask(data, "it", { among: "owned" }))).toEqual([]);
  });

  it("is not bought twice over where one piece would have to be in both places", () => {
    const twenty = (more: object): readonly Part[] => [{ id: "g20", is: "gear", teeth: 20, ...pitch, ...more }];
    const target = { from: "0.9", to: "1.1" };
    expect(ids(ask({ stages, target, parts: twenty({ owned: 1, available: false }) }, "it"))).toEqual([]);
    const [found] = pairsOf(
      ask({ stages, target, parts: twenty({ owned: 1, available: true, price: price("2") }) }, "it"),
    );
    expect(found!.pay.buy.map(({ part, pieces }) => [part.id, pieces])).toEqual([["g20", 1]]);
    expect(found!.parts.map(({ id }) => id)).toEqual(["g20"]);
  });

  it("leaves out what is meant for another place and is not known to be the same", () => {
    const sets: readonly Part[] = [
      { id: "meant", is: "set", driver: 15, driven: 60, stage: "other" },
      { id: "known", is: "set", driver: 15, driven: 60, stage: "other", ...pitch },
      { id: "here", is: "set", driver: 15, driven: 60, stage: "it" },
      { id: "open", is: "set", driver: 15, driven: 60 },
    ];
    expect(ids(ask({ stages, parts: sets }, "it"))).toEqual(["here", "known"]);
    expect(ids(ask({ stages: [{ ...stages[0]!, set: true }, stages[1]!], parts: sets }, "it"))).toEqual([
      "here",
      "known",
      "open",
    ]);
  });
});

describe("several stages at once", () => {
  const data = {
    stages: [pair("primary", 15, 60, pitch)],
    outputs: [
      {
        id: "front",
        wheel: { diameter: "124 mm" },
        stages: [pair("front-ring", 13, 38), { id: "hub", kind: "published", value: "1.5" }],
      },
      {
        id: "rear",
        wheel: { diameter: "120 mm" },
        stages: [pair("rear-ring", 12, 35), { id: "hub-rear", kind: "pair", driver: 15, driven: 22 }],
      },
    ],
    target: { from: 14, to: 22 },
    parts: [
      ...shelf,
      { id: "ring-a", is: "set", driver: 13, driven: 38, stage: "front-ring" },
      { id: "ring-b", is: "set", driver: 12, driven: 35, stage: "rear-ring" },
      { id: "ring-c", is: "set", driver: 11, driven: 36, stage: "rear-ring", price: price("9.90") },
      { id: "tyre", is: "wheel", diameter: "122 mm", owned: 2 },
    ],
  };
  const question = (asking?: Parameters<typeof askTrains>[2]) =>
    askTrains(evaluate(build(data)), ["primary", "front-ring", "rear-ring"], asking) as TrainQuestion;

  it("are asked for with what each drives, the ranges of both axles, and the lead", () => {
    const asked = question({ compare: { of: "front", with: "rear", from: 0, to: "0.2" } });
    expect(asked.stages.map(({ id, on }) => [id, on])).toEqual([
      ["primary", ["front", "rear"]],
      ["front-ring", ["front"]],
      ["rear-ring", ["rear"]],
    ]);
    const found = [...findTrains(asked)].flatMap((batch) => batch.found);
    expect(found.length).toBeGreaterThan(0);
    for (const train of found) {
      const [primary, front, rear] = train.picks.map(({ counts: [driver, driven] }) => driven / driver);
      const leadAt = (hub: number) => ((primary! * rear! * (22 / 15)) / (primary! * front! * hub)) * (124 / 120) - 1;
      expect(train.ahead!.low.toNumber()).toBeCloseTo(leadAt(1.55), 12);
      expect(train.ahead!.high.toNumber()).toBeCloseTo(leadAt(1.45), 12);
      expect(train.ahead!.low.toNumber()).toBeGreaterThanOrEqual(0);
      expect(train.ahead!.high.toNumber()).toBeLessThanOrEqual(0.2);
      expect(train.totals[0]!.low.toNumber()).toBeCloseTo(primary! * front! * 1.45, 12);
    }
    expect(new Set(found.map(({ picks }) => picks[2]!.set!.id))).toEqual(new Set(["ring-c"]));
  });

  it("choose wheels of axles too, as many as the axle takes", () => {
    const asked = question({ wheels: ["front"], compare: { of: "front", with: "rear", from: "-0.5", to: "0.5" } });
    expect(asked.outputs.map(({ wheels, pieces }) => [wheels?.map(({ id }) => id), pieces])).toEqual([
      [["tyre"], 2],
      [undefined, undefined],
    ]);
    const [train] = [...findTrains(asked)].flatMap((batch) => batch.found);
    expect(train!.wheels.map((wheel) => wheel?.id)).toEqual(["tyre", undefined]);
    expect(train!.pay.buy.map(({ part }) => part.id)).not.toContain("tyre");
  });

  it("cancel what both axles share before an interval is made", () => {
    const shared = {
      ...data,
      stages: [...data.stages, { id: "box", kind: "published", value: "1.1" }],
      outputs: data.outputs.map((output) => ({ ...output, stages: [output.stages[0]!] })),
      target: { from: 8, to: 18 },
    };
    const asked = askTrains(evaluate(build(shared)), ["primary", "front-ring", "rear-ring"], {
      compare: { of: "front", with: "rear", from: "-0.5", to: "0.5" },
    }) as TrainQuestion;
    const found = [...findTrains(asked)].flatMap((batch) => batch.found);
    expect(found.length).toBeGreaterThan(0);
    expect(found.every(({ ahead }) => ahead!.isExact)).toBe(true);
    expect(found.every(({ totals }) => !totals[0]!.isExact)).toBe(true);
  });

  it("say why there is nothing to look for", () => {
    const evaluation = evaluate(build(data));
    expect(askTrains(evaluation, ["primary", "nowhere"])).toBe("no-stage");
    expect(askTrains(evaluation, ["nowhere"])).toBe("not-driven");
    expect(askTrains(evaluation, ["primary", "hub"])).toBe("not-a-pair");
    const compare = { of: "front", with: "winch", from: 0, to: 1 };
    expect(askTrains(evaluation, ["primary"], { compare })).toBe("not-driven");
  });
});
