import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { Part } from "../../src/drivetrain/index.js";
import { type Rational, rational, type RationalInput } from "../../src/exact/index.js";
import { type Toothed, moduleOf } from "../../src/gears/index.js";
import { findPairs, type FoundPair, nearMisses, type PairQuestion, tradeOffs } from "../../src/search/index.js";
import { inside, randomFrom, some, worst } from "./brute.js";

const all = <T>(batches: Iterable<{ readonly found: readonly T[] }>): T[] =>
  [...batches].flatMap((batch) => batch.found);
const teethOf = (pairs: Iterable<{ readonly found: readonly FoundPair[] }>) => all(pairs).map(({ counts }) => counts);
type Loose = Part & { readonly teeth: number };
const pinion = (id: string, teeth: number, more: object = {}): Loose => ({ id, is: "pinion", teeth, ...more });
const spur = (id: string, teeth: number, more: object = {}): Loose => ({ id, is: "spur", teeth, ...more });
const lows = (one: FoundPair) => one.totals.map(({ low }) => String(low));

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
function bruteForce({
  drivers,
  drivens,
  outputs,
  mount,
}: { drivers: readonly Loose[]; drivens: readonly Loose[] } & Pick<PairQuestion, "outputs" | "mount">) {
  const found: { driver: Loose; driven: Loose; distance: Rational }[] = [];
  for (const driver of drivers)
    for (const driven of drivens) {
      const modules = [moduleOf(driver), moduleOf(driven)];
      if (!modules[0]!.equals(modules[1]!)) continue;
      const centre = modules[0]!.times(driver.teeth + driven.teeth).over(2);
      if (mount && !inside(centre, { from: mount.from!.slice(0, -3), to: mount.to!.slice(0, -3) })) continue;
      const totals = outputs.map(({ rest = 1 }) =>
        rational(rest as RationalInput)
          .times(driven.teeth)
          .over(driver.teeth),
      );
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
          is: "gear",
          teeth: from + random(20),
          ...pitches[random(pitches.length)],
        }) as Loose;
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
      const show = (one: { driver: Part; driven: Part; distance: Rational }) =>
        `${one.driver.id} ${one.driven.id} ${one.distance}`;
      expect(found.map(show)).toEqual(expected.map(show));
      hits += found.length;
    }
    expect(hits).toBeGreaterThan(10_000);
  });

  it("finds for Limpet the one pair that reaches and fits, and tells why the tempting ones do not", () => {
    const pitch = { module: "0.8" };
    const gears = (counts: readonly number[], of: object = pitch) =>
      counts.map((teeth) => pinion(`p${teeth}`, teeth, of));
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
    expect(only!.counts).toEqual([15, 62]);
    expect([String(only!.centre!.low), only!.verdict]).toEqual(["154/5", "fits"]);
    expect(lows(only!)).toEqual(["25916/585", "24955/576"]);
    expect(only!.outside.map(String)).toEqual(["0/1", "0/1"]);

    const missed = all(nearMisses(question));
    const missOf = (driver: number, driven: number) =>
      missed.find(({ counts }) => counts.join() === `${driver},${driven}`);
    const [far] = missOf(17, 66)!.reasons.filter((reason) => reason.weight === "refusal");
    expect([far!.code, String(far!.short!.low)]).toEqual(["too-far", "19/10"]);
    const known = missOf(23, 53)!;
    expect(known.reasons.filter((reason) => reason.weight !== "information")).toEqual([]);
    expect(known.outside.map((by) => by.sign)).toEqual([-1, -1]);
    // 32 DP and module 0.8 are easily mistaken for each other: never near.
    expect(missed.filter(({ driver }) => driver.diametralPitch)).toEqual([]);
    // 2 to 3 teeth out of the slot, and nothing else, before 6 teeth out of the range.
    expect(missed.indexOf(missOf(15, 66)!)).toBeLessThan(missed.indexOf(known));
    expect(missed).toHaveLength(5 * 5 - 1);
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
        .find(({ counts }) => counts.join() === `${driver},${driven}`)!
        .reasons.find((reason) => reason.weight === "refusal")!.code;
    expect(reasonOf(13, 53)).toBe("too-close");
    expect(reasonOf(22, 68)).toBe("wall");
    expect(reasonOf(23, 67)).toBe("wall");
    expect(reasonOf(22, 69)).toBe("too-far");
  });

  const outputs = [{ id: "pair", from: 3, to: 5 }];
  const pitch = { module: "0.8" };
  const price = (amount: string) => ({ amount, currency: "EUR" });

  it("uses the cheapest sleeve and plate where allowed, counts them, and refuses without", () => {
    const drivers = [pinion("pinion", 15, { ...pitch, bore: "5 mm", price: price("0.10") })];
    const drivens = [spur("spur", 60, { ...pitch, circles: [{ count: 3, diameter: "20 mm" }], price: price("0.10") })];
    const mount = { shaft: "1/8 in", hubHoles: [{ count: 4, diameter: "24 mm" }] };
    const circles = [
      { count: 3, diameter: "20 mm" },
      { count: 4, diameter: "24 mm" },
    ];
    const sleeve = { is: "sleeve", bore: "3.175 mm", outside: "5 mm" } as const;
    const adapters: Part[] = [
      { ...sleeve, id: "dear", price: price("1.50") },
      { ...sleeve, id: "sleeve", price: price("0.90") },
      { ...sleeve, id: "sold-out", price: price("0.10"), available: false },
      { id: "plate", is: "plate", circles, price: price("0.10") },
      { id: "unused", is: "sleeve", bore: "2 mm", outside: "5 mm" },
    ];
    const question = { drivers, drivens, outputs, mount };
    const [found] = all(findPairs({ ...question, adapters }));
    expect([found!.sleeve!.id, found!.plate!.id]).toEqual(["sleeve", "plate"]);
    expect(found!.cost).toEqual({ fresh: 4, amount: 1200, unpriced: 0 });
    expect(found!.pay.sums.map(({ amount }) => String(amount))).toEqual(["6/5"]);
    expect(all(findPairs(question))).toEqual([]);
    const [missed] = all(nearMisses(question));
    expect(missed!.reasons.filter((one) => one.weight === "refusal").map((one) => one.code)).toEqual([
      "bore-too-large",
      "hub-holes",
    ]);
  });

  it("looks along the shaft where its reach is given", () => {
    const drivers = [
      pinion("short", 15, { ...pitch, width: "8 mm" }),
      pinion("long", 15, { ...pitch, width: "12 mm" }),
    ];
    const question = { drivers, drivens: [spur("spur", 60, pitch)], outputs, mount: { reach: "10 mm" } };
    expect(all(findPairs(question)).map((one) => one.driver.id)).toEqual(["short"]);
    expect(all(nearMisses(question)).map((one) => one.driver.id)).toEqual(["long"]);
  });

  it("counts a shift where it stands: 14 with 0.5 more sits where 15 would", () => {
    const drivers = [pinion("plain", 14, pitch), pinion("shifted", 14, { ...pitch, shift: "0.5" })];
    const drivens = [spur("spur", 61, pitch)];
    // Half a module of shift moves the gears a little less than 0.4 mm apart: 30 mm and 30.39 mm.
    const idsIn = (from: string, to: string) =>
      all(findPairs({ drivers, drivens, outputs, mount: { from, to } })).map((one) => one.driver.id);
    expect(idsIn("29.9 mm", "30.1 mm")).toEqual(["plain"]);
    expect(idsIn("30.3 mm", "30.4 mm")).toEqual(["shifted"]);
  });

  const shelf = [
    pinion("a", 15, { ...pitch, price: price("0.5") }),
    pinion("b", 16, { ...pitch, price: price("0.2") }),
    pinion("c", 14, pitch),
    pinion("d", 17, { ...pitch, owned: 1 }),
    pinion("e", 18, { ...pitch, price: price("0.9") }),
  ];
  const priced = { drivers: shelf, drivens: [spur("spur", 60, { ...pitch, owned: 1 })], outputs };
  const idsBy = (order: "nearest" | "cheapest" | "fewest-new") =>
    all(findPairs({ ...priced, order })).map((one) => one.driver.id);

  it("puts the cheapest first, or the fewest new parts, with what has no price last; ties by nearest", () => {
    expect(idsBy("nearest")).toEqual(["a", "b", "c", "d", "e"]);
    expect(idsBy("cheapest")).toEqual(["d", "b", "a", "e", "c"]);
    expect(idsBy("fewest-new")).toEqual(["d", "b", "a", "e", "c"]);
    const counts = [...findPairs({ ...priced, order: "cheapest" })]
      .map((batch) => batch.count)
      .filter((count) => count !== undefined);
    expect(new Set(counts)).toEqual(new Set([5]));
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

  it("refuses what is no count, no range, no pitch or no number above zero", () => {
    const ask = (change: object) => () => all(findPairs({ drivers: [15], drivens: [60], outputs, ...change }));
    const refused = (code: string, at?: string) => expect.objectContaining({ code, ...(at && { at }) }) as Error;
    expect(ask({ drivers: [15.5] })).toThrow(refused("not-a-count", "drivers"));
    expect(ask({ drivens: [0] })).toThrow(refused("not-a-count", "drivens"));
    expect(ask({ drivens: [-5] })).toThrow(refused("not-a-count", "drivens"));
    expect(ask({ drivens: [NaN] })).toThrow(refused("not-a-count", "drivens"));
    expect(ask({ drivers: [{ id: "p", is: "pinion" }] })).toThrow(refused("not-a-count", "drivers"));
    expect(ask({ sets: [{ id: "s", is: "set", driver: 12 }] })).toThrow(refused("not-a-count", "sets"));
    expect(ask({ outputs: [{ id: "x", from: 3 }] })).toThrow(refused("no-target"));
    expect(ask({ outputs: [{ id: "x", from: 4, to: 3 }] })).toThrow(refused("range-backwards", "x"));
    expect(ask({ outputs: [{ id: "x", rest: 0, from: 3, to: 4 }] })).toThrow(refused("not-above-zero", "x.rest"));
    expect(ask({ pitch: { module: 0 } })).toThrow(refused("out-of-range", "pitch.module"));
    expect(ask({ pitch: { module: 1, diametralPitch: 32 } })).toThrow(refused("pitch-twice", "pitch"));
    expect(ask({ drivers: [pinion("p", 15, { module: -1 })] })).toThrow(refused("out-of-range", "drivers.p.module"));
    for (const pressureAngle of [0, 90, 180, -20])
      expect(ask({ drivers: [pinion("p", 15, { module: 1, pressureAngle })] })).toThrow(
        refused("out-of-range", "drivers.p.pressureAngle"),
      );
  });

  it("pairs bare counts without any pitch, and a gear of unknown pitch with none of known pitch", () => {
    expect(teethOf(findPairs({ drivers: [15], drivens: [60], outputs }))).toEqual([[15, 60]]);
    expect(teethOf(findPairs({ drivers: [15], drivens: [spur("s", 60, { module: 1 })], outputs }))).toEqual([]);
    expect(teethOf(nearMisses({ drivers: [15], drivens: [60], outputs: [{ id: "x", from: 1, to: 2 }] }))).toEqual([
      [15, 60],
    ]);
    // Two parts of which nobody knows the pitch may mesh or not.
    const unknown = { drivers: [pinion("p", 15)], drivens: [spur("s", 60)], outputs };
    expect(all(findPairs(unknown))).toEqual([]);
    expect(all(nearMisses(unknown)).map(({ verdict }) => verdict)).toEqual(["cannot tell"]);
  });

  it("looks at outputs without a range too, and counts a known pair in the pitch of the question", () => {
    const both = [...outputs, { id: "other", rest: 2 }];
    const [found] = all(findPairs({ drivers: [15], drivens: [60], outputs: both }));
    expect(lows(found!)).toEqual(["4/1", "8/1"]);
    expect(found!.outside.map(String)).toEqual(["0/1", "0/1"]);
    const drivers = [pinion("fine", 15, { module: "0.5" }), pinion("right", 15, pitch)];
    const drivens = [spur("fine-61", 61, { module: "0.5" }), spur("right-61", 61, pitch)];
    const mount = { knownPair: [23, 53] as const, closer: "0.1 mm", farther: "0.9 mm" };
    expect(all(findPairs({ drivers, drivens, outputs, mount, pitch })).map((one) => one.driver.id)).toEqual(["right"]);
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
