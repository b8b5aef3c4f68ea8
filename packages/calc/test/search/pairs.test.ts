import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { type Rational, rational } from "../../src/exact/index.js";
import { type Toothed, moduleOf } from "../../src/gears/index.js";
import { findPairs, fitBy, type LooseGear, nearMisses, type PairQuestion, tradeOffs } from "../../src/search/index.js";
import { inside, randomFrom, some, worst } from "./brute.js";

const all = <T>(batches: Iterable<{ readonly found: readonly T[] }>): T[] =>
  [...batches].flatMap((batch) => batch.found);
const teethOf = (pairs: Iterable<{ readonly found: readonly { driver: LooseGear; driven: LooseGear }[] }>) =>
  all(pairs).map(({ driver, driven }) => [driver.teeth, driven.teeth]);

describe("the vectors", () => {
  interface Vector extends Toothed {
    readonly drivers: readonly number[];
    readonly drivens: readonly number[];
    readonly restOfTrain: string;
    readonly target: { readonly from: string; readonly to: string };
    readonly slot: { readonly from_mm: string; readonly to_mm: string };
    readonly expect_nearestToMiddleFirst: readonly (readonly [number, number])[];
  }
  const vectors: Vector[] = JSON.parse(
    readFileSync(new URL("../../../../tests/vectors/find.json", import.meta.url), "utf8"),
  );
  it.each(vectors)("find %#", (vector) => {
    const { drivers, drivens, restOfTrain, target, slot } = vector;
    const question = {
      drivers,
      drivens,
      pitch: vector,
      outputs: [{ id: "total", rest: restOfTrain, ...target }],
      mount: { from: `${slot.from_mm} mm`, to: `${slot.to_mm} mm` },
    };
    expect(teethOf(findPairs(question))).toEqual(vector.expect_nearestToMiddleFirst);
  });
});

const sorted = (pitches: readonly string[]) =>
  pitches.map((text) => (/^d/.test(text) ? { diametralPitch: text.slice(1) } : { module: text }));

/** Every pair of gears looked at with exact fractions. */
function bruteForce({ drivers, drivens, outputs, mount }: PairQuestion<LooseGear, LooseGear>) {
  const found: { driver: LooseGear; driven: LooseGear; distance: Rational }[] = [];
  for (const driver of drivers)
    for (const driven of drivens) {
      const modules = [moduleOf(driver), moduleOf(driven)];
      if (!modules[0]!.equals(modules[1]!)) continue;
      const centre = modules[0]!.times(driver.teeth + driven.teeth).over(2);
      if (mount && !inside(centre, { from: mount.from!.slice(0, -3), to: mount.to!.slice(0, -3) })) continue;
      const totals = outputs.map(({ rest = 1 }) => rational(rest).times(driven.teeth).over(driver.teeth));
      if (!totals.every((total, n) => inside(total, outputs[n]!))) continue;
      found.push({ driver, driven, distance: worst(totals, outputs) });
    }
  const text = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);
  return found.sort(
    (a, b) =>
      a.distance.compare(b.distance) ||
      a.driver.teeth - b.driver.teeth ||
      a.driven.teeth - b.driven.teeth ||
      text(a.driver.id!, b.driver.id!) ||
      text(a.driven.id!, b.driven.id!),
  );
}

describe("findPairs", () => {
  it("finds what a plain brute force finds, in the same order, over 2,000 random shelves", { timeout: 120_000 }, () => {
    let hits = 0;
    for (let seed = 0; seed < 2000; seed++) {
      const random = randomFrom(seed);
      // 25.4 / 31.75 is 0.8 exactly: two ways to write one pitch.
      const pitches = sorted(["0.8", "d31.75", "d32", "0.5", "d48"].slice(0, 1 + random(5)));
      let made = 0;
      const gear = (from: number) => () =>
        ({
          id: `p${random(900)}-${made++}`,
          teeth: from + random(20),
          ...pitches[random(pitches.length)],
        }) as LooseGear;
      const low = rational(100 + random(300)).over(100);
      const outputs = some(random, 2, () => 0).map((_, n) => ({
        id: `o${n}`,
        rest: rational(1 + random(30)).over(1 + random(30)),
        from: 0,
        to: 0,
      }));
      const wanted = outputs.map((one) => ({ ...one, from: one.rest.times(low), to: one.rest.times(low).times(2) }));
      const mount = random(2) ? { from: `${15 + random(8)} mm`, to: `${25 + random(9)} mm` } : undefined;
      const question = {
        drivers: some(random, 12, gear(10)),
        drivens: some(random, 12, gear(30)),
        outputs: wanted,
        ...(mount && { mount }),
      };
      const expected = bruteForce(question);
      const found = all(findPairs(question));
      const show = (one: { driver: LooseGear; driven: LooseGear; distance: Rational }) =>
        `${one.driver.id} ${one.driven.id} ${one.distance}`;
      expect(found.map(show)).toEqual(expected.map(show));
      hits += found.length;
    }
    expect(hits).toBeGreaterThan(10_000);
  });

  it("finds for Limpet the one pair that reaches and fits, and tells why the tempting ones do not", () => {
    const pitch = { module: "0.8" };
    const gears = (counts: readonly number[], of: object = pitch) => counts.map((teeth) => ({ teeth, ...of }));
    const question = {
      drivers: [...gears([13, 15, 17, 20, 23]), ...gears([16], { diametralPitch: 32 })],
      drivens: gears([53, 56, 62, 66, 70]),
      outputs: [
        { id: "front", rest: rational("45/18").times("38/13").times("22/15"), from: 38, to: 46 },
        { id: "rear", rest: rational("45/18").times("35/12").times("23/16"), from: 38, to: 46 },
      ],
      mount: { knownPair: [23, 53], closer: "0.1 mm", farther: "0.9 mm" } as const,
    };
    const [only, ...others] = all(findPairs(question));
    expect(others).toEqual([]);
    expect([only!.driver.teeth, only!.driven.teeth]).toEqual([15, 62]);
    expect(only!.reductions.map(String)).toEqual(["25916/585", "24955/576"]);
    expect(only!.outside.map(String)).toEqual(["0/1", "0/1"]);

    const missed = all(nearMisses(question));
    const reasonsFor = (driver: number, driven: number) =>
      missed
        .find((one) => one.driver.teeth === driver && one.driven.teeth === driven)!
        .reasons.filter((reason) => reason.weight === "refusal");
    const [far] = reasonsFor(17, 66);
    expect([far!.code, String(far!.short!.low)]).toEqual(["too-far", "19/10"]);
    const [pitchReason] = reasonsFor(16, 62);
    expect([pitchReason!.code, String(pitchReason!.coarser)]).toEqual(["pitch-near", "-1/128"]);
    const known = missed.find((one) => one.driver.teeth === 23 && one.driven.teeth === 53)!;
    expect(known.reasons.filter((reason) => reason.weight !== "information")).toEqual([]);
    expect(known.outside.map((by) => by.sign)).toEqual([-1, -1]);
    const wide = missed.find((one) => one.driver.teeth === 13 && one.driven.teeth === 66);
    expect(wide).toBeUndefined(); // neither reaches nor fits
    expect(missed.every((one, n) => !n || one.distance.compare(missed[n - 1]!.distance) >= 0)).toBe(true);
  });

  it("finds for Scoter what the pivot and the skid allow", () => {
    const question = {
      drivers: [13, 15, 22, 23],
      drivens: [52, 53, 67, 68, 69],
      pitch: { module: "0.8" },
      outputs: [{ id: "pair", from: 2, to: 5 }],
      mount: {
        pivot: { distance: "30 mm", arm: "20 mm", from: 60, to: 90 },
        opening: "0.05 mm",
        walls: [{ label: "skid", of: "driven" as const, distance: "28 mm", gap: "0.5 mm" }],
      },
    };
    const found = teethOf(findPairs(question));
    expect(found).toContainEqual([15, 52]);
    expect(found).not.toContainEqual([13, 53]);
    const reasonOf = (driver: number, driven: number) =>
      all(nearMisses(question))
        .find((one) => one.driver.teeth === driver && one.driven.teeth === driven)!
        .reasons.find((reason) => reason.weight === "refusal")!.code;
    expect(reasonOf(13, 53)).toBe("too-close");
    expect(reasonOf(22, 68)).toBe("wall");
    expect(reasonOf(23, 67)).toBe("wall");
    expect(reasonOf(22, 69)).toBe("too-far");
  });

  const outputs = [{ id: "pair", from: 3, to: 5 }];
  const free = { fresh: 0, amount: 0, unpriced: 0 };

  it("uses a sleeve or a plate where allowed, counts it, and refuses without", () => {
    const pinion = { id: "pinion", teeth: 15, module: "0.8", bore: "5 mm" };
    const spur = { id: "spur", teeth: 60, module: "0.8", circles: [{ count: 3, diameter: "20 mm" }] };
    const mount = { shaft: "1/8 in", hubHoles: [{ count: 4, diameter: "24 mm" }] };
    const adapters = [
      { id: "sleeve", bore: "3.175 mm", outside: "5 mm" },
      {
        id: "plate",
        circles: [
          { count: 3, diameter: "20 mm" },
          { count: 4, diameter: "24 mm" },
        ],
      },
      { id: "unused", bore: "2 mm", outside: "5 mm" },
    ];
    const question = { drivers: [pinion], drivens: [spur], outputs, mount };
    const costOf = ({ id }: { readonly id?: string }) => ({ ...free, amount: id === "sleeve" ? 900 : 100, fresh: 1 });
    const [found] = all(findPairs({ ...question, fit: fitBy(mount, adapters), costOf }));
    expect(found!.adapters.map(({ id }) => id)).toEqual(["sleeve", "plate"]);
    expect(found!.cost).toEqual({ fresh: 4, amount: 1200, unpriced: 0 });
    expect(all(findPairs(question))).toEqual([]);
    const [missed] = all(nearMisses(question));
    expect(missed!.reasons.filter((one) => one.weight === "refusal").map((one) => one.code)).toEqual([
      "bore-too-large",
      "hub-holes",
    ]);
  });

  it("looks along the shaft where its reach is given", () => {
    const mount = { reach: "10 mm" };
    const gear = (id: string, width: string) => ({ id, teeth: 15, module: "0.8", width });
    const question = {
      drivers: [gear("short", "8 mm"), gear("long", "12 mm")],
      drivens: [{ teeth: 60, module: "0.8" }],
      outputs,
      mount,
    };
    expect(all(findPairs(question)).map((one) => one.driver.id)).toEqual(["short"]);
  });

  const shelf = [
    { id: "a", teeth: 15, cost: { fresh: 1, amount: 500, unpriced: 0 } },
    { id: "b", teeth: 16, cost: { fresh: 1, amount: 200, unpriced: 0 } },
    { id: "c", teeth: 14, cost: { fresh: 1, amount: 0, unpriced: 1 } },
    { id: "d", teeth: 17, cost: free },
    { id: "e", teeth: 18, cost: { fresh: 1, amount: 900, unpriced: 0 } },
  ];
  const priced = {
    drivers: shelf,
    drivens: [{ id: "spur", teeth: 60 }],
    outputs,
    costOf: (part: object) => ("cost" in part ? (part.cost as typeof free) : free),
  };
  const idsBy = (order: "nearest" | "cheapest" | "fewest-new") =>
    all(findPairs({ ...priced, order })).map((one) => one.driver.id);

  it("puts the cheapest first, or the fewest new parts, with what has no price last; ties by nearest", () => {
    expect(idsBy("nearest")).toEqual(["a", "b", "c", "d", "e"]);
    expect(idsBy("cheapest")).toEqual(["d", "b", "a", "e", "c"]);
    expect(idsBy("fewest-new")).toEqual(["d", "b", "a", "e", "c"]);
    const counts = [...findPairs({ ...priced, order: "cheapest" })]
      .map((batch) => batch.count)
      .filter((count) => count !== undefined);
    expect(counts).toEqual([5, 5, 5, 5, 5]);
  });

  it("keeps the trade-offs that nothing surely beats", () => {
    expect(tradeOffs(findPairs(priced)).map((one) => one.driver.id)).toEqual(["a", "b", "c", "d"]); // c might cost nothing
    const twins = { ...priced, drivers: [shelf[0]!, { ...shelf[0]!, id: "twin" }] };
    expect(tradeOffs(findPairs(twins))).toHaveLength(2);
    // In any order of the finds the same are left.
    expect(tradeOffs(findPairs({ ...priced, order: "cheapest" })).map((one) => one.driver.id)).toEqual([
      "d",
      "b",
      "a",
      "c",
    ]);
  });

  it("refuses what is no count, no range or no number above zero", () => {
    const ask = (change: object) => () => all(findPairs({ drivers: [15], drivens: [60], outputs, ...change }));
    expect(ask({ drivers: [15.5] })).toThrow(expect.objectContaining({ code: "not-a-count", at: "drivers" }));
    expect(ask({ drivens: [0] })).toThrow(expect.objectContaining({ code: "not-a-count", at: "drivens" }));
    expect(ask({ outputs: [{ id: "x", from: 3 }] })).toThrow(expect.objectContaining({ code: "no-target" }));
    expect(ask({ outputs: [{ id: "x", rest: 0, from: 3, to: 4 }] })).toThrow(
      expect.objectContaining({ code: "not-above-zero", at: "x.rest" }),
    );
  });

  it("pairs bare counts without any pitch, and a gear of unknown pitch with none of known pitch", () => {
    expect(teethOf(findPairs({ drivers: [15], drivens: [60], outputs }))).toEqual([[15, 60]]);
    expect(teethOf(findPairs({ drivers: [15], drivens: [{ teeth: 60, module: 1 }], outputs }))).toEqual([]);
    expect(teethOf(nearMisses({ drivers: [15], drivens: [60], outputs: [{ id: "x", from: 1, to: 2 }] }))).toEqual([
      [15, 60],
    ]);
  });

  it("looks at outputs without a range too, and counts a mount in the pitch of the pair", () => {
    const both = [...outputs, { id: "other", rest: 2 }];
    const [found] = all(findPairs({ drivers: [15], drivens: [60], outputs: both }));
    expect(found!.reductions.map(String)).toEqual(["4/1", "8/1"]);
    expect(found!.outside.map(String)).toEqual(["0/1", "0/1"]);
    const drivers = [
      { id: "fine", teeth: 15, module: "0.5" },
      { id: "right", teeth: 15, module: "0.8" },
    ];
    const drivens = [
      { teeth: 61, module: "0.5" },
      { teeth: 61, module: "0.8" },
    ];
    const mount = { knownPair: [23, 53] as const, closer: "0.1 mm", farther: "0.9 mm" };
    expect(
      all(findPairs({ drivers, drivens, outputs, mount, pitch: { module: "0.8" } })).map((one) => one.driver.id),
    ).toEqual(["right"]);
    expect(
      all(findPairs({ drivers, drivens, outputs, mount: { ...mount, module: "0.5" } })).map((one) => one.driver.id),
    ).toEqual(["fine"]);
  });

  it("can be stopped, and its progress rises to the end", () => {
    const question = { drivers: [11, 12, 13], drivens: [40, 41, 42, 43], outputs };
    const progress = [...findPairs(question)].map((batch) => batch.progress);
    expect(progress).toEqual([...progress].sort((a, b) => a - b));
    expect(progress.at(-1)).toBe(1);
    for (const batch of findPairs(question)) if (batch.found.length) break;
  });

  it("stays exact with counts and ranges beyond the safe integers", () => {
    const outputs = [{ id: "x", from: "3.99999999999999", to: "4.00000000000001" }];
    expect(teethOf(findPairs({ drivers: [250_000, 249_999], drivens: [1_000_000, 999_999], outputs }))).toEqual([
      [250_000, 1_000_000],
    ]);
  });
});
