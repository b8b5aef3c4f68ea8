// What is asked, found and taken where a shelf, a slot or a build is not the usual one.
import { describe, expect, it } from "vitest";
import { parseBuild } from "../../src/document/index.js";
import type { Build, Part } from "../../src/drivetrain/index.js";
import { evaluate } from "../../src/evaluate/index.js";
import { bounded } from "../../src/exact/index.js";
import {
  askPairs,
  askTrains,
  findPairs,
  findTrains,
  type FoundPair,
  nearMisses,
  type PairQuestion,
  takenIn,
  takePair,
  takeTrain,
  type TrainAsking,
  type TrainQuestion,
} from "../../src/search/index.js";

const pitch = { module: "0.8" };
const gear = (is: "pinion" | "spur", teeth: number, more: object = {}): Part => ({
  ...{ id: `${is}-${teeth}`, is, teeth, ...pitch },
  ...more,
});
const shelf = [gear("pinion", 15), gear("pinion", 16), gear("spur", 60), gear("spur", 62)];
const primary = { id: "primary", kind: "pair", driver: 15, driven: 60, ...pitch };
const build = (more: object = {}, stage: object = {}): Build =>
  parseBuild({
    format: "meshwright-build/1",
    stages: [{ ...primary, ...stage }],
    outputs: [{ id: "rear", stages: [] }],
    target: { from: 2, to: 6 },
    parts: shelf,
    ...more,
  });
const ask = (of: Build, asking?: Parameters<typeof askPairs>[2]) =>
  askPairs(evaluate(of), "primary", asking) as PairQuestion;
const pairsOf = (question: PairQuestion) => [...findPairs(question)].flatMap(({ found }) => found);
const named = (pairs: readonly FoundPair[]) => pairs.map(({ parts }) => parts.map(({ id }) => id).join(" ")).sort();
const plain = (settings: ReturnType<typeof takePair>) => Object.fromEntries(settings.map(({ set, to }) => [set, to]));

describe("whether a pair is taken already", () => {
  it("goes by the parts that the stage names, else by those that answer it", () => {
    const taken = (of: Build) => named(pairsOf(ask(of)).filter(takenIn(of, "primary")));
    expect(taken(build())).toEqual(["pinion-15 spur-60"]);
    expect(taken(build({}, { fitted: ["pinion-15", "spur-60"] }))).toEqual(["pinion-15 spur-60"]);
    expect(taken(build({}, { fitted: ["pinion-16", "spur-60"] }))).toEqual([]);
    expect(taken(build({}, { fitted: ["pinion-15"] }))).toEqual([]);
    // Two parts of the same count: the first of them answers.
    const twice = build({ parts: [...shelf, gear("pinion", 15, { id: "z-15" })] });
    expect(taken(twice)).toEqual(["pinion-15 spur-60"]);
  });

  it("goes by the counts alone where they are bare, or no part is there", () => {
    const bare = { drivers: [15, 16], drivens: [60], outputs: [{ id: "rear", from: 3, to: 5 }] };
    const taken = pairsOf(bare).filter(takenIn(build(), "primary"));
    expect(taken.map(({ counts }) => counts)).toEqual([[15, 60]]);
    const empty = build({ parts: [] });
    expect(named(pairsOf(ask(build())).filter(takenIn(empty, "primary")))).toEqual(["pinion-15 spur-60"]);
  });

  it("of a set is whether that set is there", () => {
    const sets: readonly Part[] = ["a", "b"].map((id) => ({ id, is: "set", driver: 15, driven: 60, ...pitch }));
    const of = build({ parts: sets }, { set: true });
    const pairs = pairsOf(ask(of));
    expect(named(pairs)).toEqual(["a", "b"]);
    expect(named(pairs.filter(takenIn(of, "primary")))).toEqual(["a"]);
    // It is a set as before: nothing is said of that.
    expect(plain(takePair(of, "primary", pairs[0]!))).not.toHaveProperty("primary.set");
  });
});

describe("a slot that is counted in teeth of another pitch", () => {
  // 23 and 53 teeth of module 0.8 stand 30.4 mm apart.
  const fine = [gear("pinion", 20, { module: "0.5" }), gear("spur", 100, { module: "0.5" })];
  const ends = (mount: object) => {
    const of = build({ parts: fine, mounts: [{ stage: "primary", ...mount }] });
    const [pair] = [...pairsOf(ask(of)), ...[...nearMisses(ask(of))].flatMap(({ found }) => found)];
    const changes = plain(takePair(of, "primary", pair!));
    return Object.fromEntries(Object.entries(changes).filter(([address]) => address.startsWith("mounts.")));
  };
  const known = { knownPair: [23, 53], closer: "0.1 mm", farther: "0.9 mm" };
  const gone = { "mounts.0.knownPair": null, "mounts.0.closer": null, "mounts.0.farther": null };

  it("is written out by the tightest of what limits either end", () => {
    expect(ends(known)).toEqual({ "mounts.0.from": "30.3 mm", "mounts.0.to": "31.3 mm", ...gone });
    expect(ends({ ...known, from: "30.5 mm", to: "33 mm" })).toEqual({
      ...{ "mounts.0.from": "30.5 mm", "mounts.0.to": "31.3 mm" },
      ...gone,
    });
    expect(ends({ ...known, from: "29 mm", to: "31 mm" })).toEqual({
      ...{ "mounts.0.from": "30.3 mm", "mounts.0.to": "31 mm" },
      ...gone,
    });
  });

  it("is written between the axes where nobody has measured the shafts that it is measured over", () => {
    expect(ends({ ...known, measured: "over shafts" })).toEqual({
      ...{ "mounts.0.from": "30.3 mm", "mounts.0.to": "31.3 mm", "mounts.0.measured": null },
      ...gone,
    });
  });

  it("is left alone where lengths are measured over such shafts besides, and where it is in lengths already", () => {
    expect(ends({ ...known, measured: "over shafts", from: "30 mm" })).toEqual({});
    expect(ends({ from: "30 mm", to: "31 mm" })).toEqual({});
  });
});

describe("what is looked at", () => {
  const rare = [...shelf, gear("pinion", 17, { available: false })];
  const sleeve: Part = { id: "sleeve", is: "sleeve", bore: "3 mm", outside: "5 mm" };

  it("is what can be had, what is owned, or all; of other parts where those are given", () => {
    const of = build({ parts: [...rare, gear("spur", 64, { owned: 1 })] });
    const drivers = (asking: Parameters<typeof askPairs>[2]) =>
      (ask(of, asking).drivers as readonly Part[]).map(({ id }) => id);
    expect(drivers({})).toEqual(["pinion-15", "pinion-16"]);
    expect(drivers({ among: "all" })).toEqual(["pinion-15", "pinion-16", "pinion-17"]);
    expect(drivers({ among: "owned" })).toEqual([]);
    expect(drivers({ parts: [gear("pinion", 18)] })).toEqual(["pinion-18"]);
  });

  it("takes sleeves only where that is allowed, and can be stopped where that is asked", () => {
    const of = build({ parts: [...shelf, sleeve] });
    expect(ask(of).adapters!.map(({ id }) => id)).toEqual(["sleeve"]);
    expect(ask(of, { adapters: false }).adapters).toEqual([]);
    const signal = { aborted: true };
    expect(pairsOf(ask(of, { signal }))).toEqual([]);
    expect(pairsOf(ask(of, { signal: { aborted: false } }))).toHaveLength(4);
  });

  it("is nothing in a build that lists no parts", () => {
    const { drivers, drivens } = ask(build({ parts: undefined }));
    expect([drivers, drivens]).toEqual([[], []]);
  });
});

describe("a train of one axle", () => {
  const ring = (id: string, driver: number) => ({ id, kind: "pair", driver, driven: 40, ...pitch });
  const axles = build({
    stages: [],
    outputs: [
      { id: "front", stages: [ring("f", 10)] },
      { id: "rear", stages: [ring("r", 16)] },
    ],
    target: { from: 2, to: 6 },
  });
  const train = (asking: TrainAsking) => askTrains(evaluate(axles), ["f"], asking);

  it("is compared with the other axle as that is", () => {
    const question = train({ compare: { of: "front", with: "rear", from: 0, to: 1 } as never }) as TrainQuestion;
    const [front, rear] = question.outputs;
    expect([front!.id, rear!.id]).toEqual(["front", "rear"]);
    // 40/16 = 5/2 stays; without its only stage the front turns as the motor does.
    expect([front!.rest, rear!.rest].map((rest) => (rest as ReturnType<typeof bounded>).low.toFraction())).toEqual([
      ...["1/1", "5/2"],
    ]);
    expect(train({ compare: { of: "front", with: "nobody", from: 0, to: 1 } as never })).toBe("not-driven");
  });

  it("changes no wheel that was not looked for", () => {
    const question = train({}) as TrainQuestion;
    const [found] = [...findTrains(question)].flatMap(({ found: some }) => some);
    const changes = takeTrain(
      axles,
      ["f"],
      question.outputs.map(({ id }) => id),
      found!,
    );
    expect(changes.map(({ set }) => set.split(".")[0])).not.toContain("front");
    expect(changes.map(({ set }) => set)).toContain("f.driver");
  });
});

describe("a pair that misses", () => {
  const missed = (outputs: PairQuestion["outputs"], more: Partial<PairQuestion> = {}) =>
    [...nearMisses({ drivers: [10], drivens: [20], outputs, ...more })].flatMap(({ found }) => found)[0]!;

  it("says of each output whether it reaches, does not, or nobody can tell, and how far it is outside", () => {
    // 20/10 = 2, times what the rest of the build can be.
    const { reaches, outside } = missed([
      { id: "below", from: 3, to: 5 },
      { id: "above", from: 1, to: "1.5" },
      { id: "inside", from: 1, to: 3 },
      { id: "free" },
      { id: "perhaps", rest: bounded("0.9", "1.1"), from: "1.9", to: "2.1" },
    ]);
    expect(reaches).toEqual(["no", "no", "yes", "yes", "cannot tell"]);
    expect(outside.map((one) => one.toDecimal())).toEqual(["-1", "0.5", "0", "0", "0.1"]);
  });

  it("of an interval is as far outside as its farther end", () => {
    const outside = (low: string, high: string) =>
      missed([{ id: "it", rest: bounded(low, high), from: 3, to: 5 }]).outside[0]!.toDecimal();
    // From 2 to 8 is 1 below and 3 above; from 1 to 6, 2 below and 1 above; equally far: above.
    expect([outside("1", "4"), outside("0.5", "3"), outside("1", "3")]).toEqual(["3", "-2", "1"]);
    expect([outside("3", "4"), outside("1", "1.2")]).toEqual(["3", "-1"]);
  });

  it("fits, does not, or nobody can tell", () => {
    const verdict = (mount: object, more: object = {}) =>
      missed([{ id: "it", from: 3, to: 5 }], {
        ...{ drivers: [gear("pinion", 10, more)], drivens: [gear("spur", 20, more)] },
        mount: mount as never,
      }).verdict;
    // 30 teeth of module 0.8 stand 12 mm apart.
    expect(verdict({ from: "11 mm", to: "13 mm" })).toBe("fits");
    expect(verdict({ from: "13 mm", to: "14 mm" })).toBe("does not fit");
    expect(verdict({ from: "11 mm", to: "13 mm", measured: "over shafts" })).toBe("cannot tell");
  });
});

describe("a search of many gears", () => {
  const counts = (from: number, to: number, is: "pinion" | "spur") =>
    Array.from({ length: to - from + 1 }, (_, n) => gear(is, from + n));
  const question: PairQuestion = {
    drivers: counts(10, 129, "pinion"),
    drivens: counts(10, 129, "spur"),
    outputs: [{ id: "it", from: 3, to: "3.1" }],
    mount: { from: "30 mm", to: "31 mm" },
  };

  it("lets others work, tells all that misses in the end, and stops wherever it is told to", () => {
    const all = [...nearMisses(question)];
    const found = all.flatMap((step) => step.found);
    const hits = pairsOf(question).length;
    expect(found.length + hits).toBe(120 * 120);
    expect(all.filter((step) => !step.found.length).length).toBeGreaterThan(2);
    for (const after of [0, 1, 3, all.length >> 1]) {
      const signal = { aborted: false };
      let [seen, late] = [0, 0];
      for (const step of nearMisses({ ...question, signal })) {
        if (signal.aborted) late += step.found.length;
        signal.aborted = ++seen > after;
      }
      expect([seen <= after + 2, late]).toEqual([true, 0]);
    }
  });
});
