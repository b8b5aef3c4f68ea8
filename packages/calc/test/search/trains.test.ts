import { describe, expect, it } from "vitest";
import type { Part } from "../../src/drivetrain/index.js";
import { lengthOf, rational, type Rational, type RationalInput } from "../../src/exact/index.js";
import { type FoundTrain, findTrains, type TrainQuestion, type WantedOutput } from "../../src/search/index.js";
import { counts, inside, product, randomFrom, some, worst } from "./brute.js";

interface Pick {
  readonly driver: number;
  readonly driven: number;
  readonly id?: string;
}

/** A question as the tests write it, and as the search is asked it. */
type Asked = Omit<TrainQuestion, "stages" | "outputs"> & {
  readonly stages: readonly ({ readonly id: string; readonly on?: readonly string[] } & (
    { readonly choose: readonly Pick[] } | { readonly drivers: readonly number[]; readonly drivens: readonly number[] }
  ))[];
  readonly outputs: readonly (Omit<WantedOutput, "wheels"> & {
    readonly wheels?: readonly { readonly diameter: string }[];
  })[];
};
const setOf = ({ driver, driven, id = "" }: Pick): Part => ({ id, is: "set", driver, driven });
const wheelOf = ({ diameter }: { readonly diameter: string }): Part => ({ id: `w${diameter}`, is: "wheel", diameter });
const asked = ({ stages, outputs, ...rest }: Asked): TrainQuestion => ({
  ...rest,
  stages: stages.map((stage) => ("choose" in stage ? { ...stage, sets: stage.choose.map(setOf) } : stage)),
  outputs: outputs.map(({ wheels, ...output }) => ({ ...output, ...(wheels && { wheels: wheels.map(wheelOf) }) })),
});

/** Every combination looked at with exact fractions, one after the other. */
function bruteForce({ stages, outputs, compare }: Asked) {
  const choices = stages.map((stage): readonly Pick[] =>
    "choose" in stage
      ? stage.choose
      : stage.drivers.flatMap((driver) => stage.drivens.map((driven) => ({ driver, driven }))),
  );
  const wheelLists = outputs.map((output) => output.wheels ?? [undefined]);
  const found: { picks: Pick[]; wheels: number[]; distance: Rational; reductions: Rational[]; ahead?: Rational }[] = [];
  const wheelNumbers = product(wheelLists.map((list) => list.map((_, n) => n)));
  for (const picks of product(choices)) {
    const reductions = outputs.map((output) =>
      picks.reduce(
        (value, { driver, driven }, n) => {
          const { on } = stages[n]!;
          return !on || on.includes(output.id) ? value.times(driven).over(driver) : value;
        },
        rational((output.rest ?? 1) as RationalInput),
      ),
    );
    if (!reductions.every((value, n) => inside(value, outputs[n]!))) continue;
    const distance = worst(reductions, outputs);
    for (const wheels of wheelNumbers) {
      if (!compare) {
        found.push({ picks, wheels, distance, reductions });
        continue;
      }
      const [of, against] = [compare.of, compare.with].map((id) => outputs.findIndex((one) => one.id === id));
      const size = (n: number) => wheelLists[n]![wheels[n]!];
      let ahead = reductions[against!]!.over(reductions[of!]!);
      if (size(of!) && size(against!))
        ahead = ahead.times(lengthOf(size(of!)!.diameter)).over(lengthOf(size(against!)!.diameter));
      ahead = ahead.minus(1);
      if (inside(ahead, compare)) found.push({ picks, wheels, distance, reductions, ahead });
    }
  }
  const text = (one: Pick) => one.id ?? "";
  return found.sort((a, b) => {
    const nearer = a.distance.compare(b.distance);
    if (nearer) return nearer;
    for (const [n, one] of a.picks.entries()) {
      const other = b.picks[n]!;
      const first = one.driver - other.driver || one.driven - other.driven;
      if (first) return first;
      if (text(one) !== text(other)) return text(one) < text(other) ? -1 : 1;
    }
    const differs = a.wheels.findIndex((wheel, n) => wheel !== b.wheels[n]);
    return differs < 0 ? 0 : a.wheels[differs]! - b.wheels[differs]!;
  });
}

const show = (one: { picks: readonly Pick[]; distance: Rational; reductions: readonly Rational[]; ahead?: Rational }) =>
  [
    one.picks.map(({ driver, driven, id }) => `${driver}:${driven}${id ?? ""}`),
    one.reductions,
    one.distance,
    one.ahead ?? "",
  ].join(" ");
const shown = ({ picks, distance, totals, ahead }: FoundTrain) =>
  show({
    picks: picks.map(({ counts: [driver, driven], set }) => ({ driver, driven, ...(set && { id: set.id }) })),
    distance,
    reductions: totals.map(({ low }) => low),
    ...(ahead && { ahead: ahead.low }),
  });

function compareWithBruteForce(question: Asked) {
  const expected = bruteForce(question);
  const batches = [...findTrains(asked(question))];
  const found = batches.flatMap((batch) => batch.found);
  expect(found.map(shown)).toEqual(expected.map(show));
  const wheelAt = (n: number, output: number) => question.outputs[output]!.wheels?.[expected[n]!.wheels[output]!];
  found.forEach((one, n) =>
    one.wheels.forEach((wheel, output) => expect(wheel?.diameter).toBe(wheelAt(n, output)?.diameter)),
  );
  expect(batches.filter((batch) => batch.count !== undefined).every((batch) => batch.count === expected.length)).toBe(
    true,
  );
  for (const batch of batches) {
    const distances = batch.found.map((one) => one.distance.toFraction());
    expect(new Set(distances).size).toBeLessThanOrEqual(1);
  }
  return found.length;
}

function randomQuestion(seed: number, scale = 1): Asked {
  const random = randomFrom(seed);
  const outputs = ["front", "rear", "middle"].slice(0, 1 + random(3)).map((id, n) => {
    const from = rational(1 + random(400)).over(10 + random(90));
    return {
      id,
      ...(random(2) && { rest: rational(1 + random(50)).over(1 + random(20)) }),
      ...((n === 0 || random(3) > 0) && { from, to: from.times(rational(10 + random(40)).over(10)) }),
      ...(random(2) && { wheels: some(random, 3, () => ({ diameter: `${60 + random(9)} mm` })) }),
    };
  });
  const ids = outputs.map((output) => output.id);
  const teeth = () => (6 + random(40)) * scale;
  const stages = some(random, 3, () => 0).map((_, n) => {
    const on = random(2) ? ids.filter(() => random(2) > 0) : undefined;
    const where = { id: `stage-${n}`, ...(on?.length && { on }) };
    return random(2)
      ? { ...where, drivers: [...new Set(some(random, 4, teeth))], drivens: [...new Set(some(random, 4, teeth))] }
      : {
          ...where,
          choose: some(random, 6, teeth).map((driver, m) => ({ driver, driven: teeth(), id: "dbafce"[m]! })),
        };
  });
  const from = rational(random(21) - 10).over(10);
  const compare = ids.length > 1 &&
    random(2) && { of: ids[0]!, with: ids[1]!, from, to: from.plus(rational(random(10)).over(10)) };
  return { stages, outputs, ...(compare && { compare }) };
}

describe("findTrains", () => {
  it(
    "finds what a plain brute force finds, in the same order, over 3,000 random questions",
    { timeout: 120_000 },
    () => {
      let hits = 0;
      for (let seed = 0; seed < 3000; seed++) hits += compareWithBruteForce(randomQuestion(seed));
      expect(hits).toBeGreaterThan(10_000);
    },
  );

  it("stays exact where products leave the safe integers", { timeout: 60_000 }, () => {
    let hits = 0;
    for (let seed = 0; seed < 300; seed++) hits += compareWithBruteForce(randomQuestion(seed, 20_011));
    expect(hits).toBeGreaterThan(500);
  });

  const range = (id: string, from: number | string, to: number | string) => ({ id, from, to });

  it("meets whole numbers in the middle", { timeout: 60_000 }, () => {
    const stage = (id: string) => ({ id, drivers: counts(8, 24), drivens: counts(9, 25) });
    expect(
      compareWithBruteForce({ stages: [stage("a"), stage("b")], outputs: [range("total", "2.99", "3.01")] }),
    ).toBeGreaterThan(100);
  });

  it("merges thousands of groups", { timeout: 60_000 }, () => {
    const choose = (most: number) => counts(11, most).map((driver) => ({ driver, driven: 3 * driver + (driver % 7) }));
    const stages = [
      { id: "front-ring", on: ["front"], choose: choose(92) },
      { id: "rear-ring", on: ["rear"], choose: choose(90) },
    ];
    expect(compareWithBruteForce({ stages, outputs: [range("front", 1, 9), range("rear", 1, 9)] })).toBe(82 * 80);
  });

  it.each([1, 7001])("sorts long lists of nearly equal and equal ratios (times %i)", { timeout: 60_000 }, (scale) => {
    const long = counts(1, 4500).map((n) => ({
      driver: (20 + (n % 50)) * scale,
      driven: (60 + (n % 71)) * scale,
      id: `n${n}`,
    }));
    expect(
      compareWithBruteForce({ stages: [{ id: "one", choose: long }], outputs: [range("total", 2, 2)] }),
    ).toBeGreaterThan(30);
    const near = counts(1, 200).map((n) => ({ driver: 100_000 + (n % 7), driven: 300_000 + (n % 11), id: `n${n}` }));
    const stages = [
      { id: "one", choose: near },
      { id: "two", choose: near.slice(0, 30) },
    ];
    expect(compareWithBruteForce({ stages, outputs: [range("total", "8.9999", "9.00001")] })).toBeGreaterThan(30);
  });

  const set = (driver: number, driven: number, amount: string, owned = 0): Part => ({
    id: `${driver}-${driven}`,
    is: "set",
    driver,
    driven,
    owned,
    price: { amount, currency: "EUR" },
  });
  const outputs = [{ id: "axle", rest: "5/2", from: 7, to: 8 }];

  it("orders by price or by new parts where that is asked, ties by nearest", () => {
    const sets = [
      set(13, 38, "0.9"),
      set(12, 35, "0.3"),
      set(11, 33, "0.3"),
      set(12, 36, "0.5", 1),
      set(10, 40, "0.1"),
    ];
    const stages = [{ id: "ring", sets }];
    const idsBy = (order: "nearest" | "cheapest" | "fewest-new") =>
      [...findTrains({ stages, outputs, order })].flatMap((batch) => batch.found).map((one) => one.picks[0]!.set!.id);
    expect(idsBy("nearest")).toEqual(["11-33", "12-36", "13-38", "12-35"]);
    expect(idsBy("cheapest")).toEqual(["12-36", "11-33", "12-35", "13-38"]);
    expect(idsBy("fewest-new")).toEqual(["12-36", "11-33", "12-35", "13-38"]);
    const wheels: Part[] = [{ id: "w", is: "wheel", diameter: "120 mm" }];
    const [found] = [...findTrains({ stages, outputs: [{ ...outputs[0]!, wheels }] })].flatMap((batch) => batch.found);
    expect(found!.cost).toEqual({ fresh: 2, amount: 300, unpriced: 1 });
  });

  it("refuses what it cannot look for", () => {
    const ask = (change: object) => () => [
      ...findTrains({ stages: [{ id: "one", drivers: [10], drivens: [30] }], outputs, ...change }),
    ];
    expect(ask({ stages: [{ id: "one", on: ["rear"], drivers: [10], drivens: [30] }] })).toThrow(
      expect.objectContaining({ code: "missing-reference", at: "rear" }),
    );
    expect(ask({ stages: [{ id: "one", drivers: [10], drivens: [-30] }] })).toThrow(
      expect.objectContaining({ code: "not-a-count", at: "one.drivens" }),
    );
  });

  it("finds nothing where a list is empty, and tells so", () => {
    expect([...findTrains({ stages: [{ id: "one", drivers: [], drivens: [30] }], outputs })]).toEqual([
      { found: [], count: 0, progress: 1 },
    ]);
  });

  it("tells the count first, and its progress rises to the end", () => {
    const sets = counts(10, 80).map((driver) => setOf({ driver, driven: 97 - driver, id: `set-${driver}` }));
    const stage = (id: string) => ({ id, sets });
    const question = {
      stages: [stage("a"), { ...stage("b"), on: ["front"] }, { ...stage("c"), on: ["rear"] }],
      outputs: [
        { id: "front", from: 1, to: "1.1" },
        { id: "rear", from: 1, to: "1.1" },
      ],
    };
    const batches = [...findTrains(question)];
    const progress = batches.map((batch) => batch.progress);
    expect(progress).toEqual([...progress].sort((a, b) => a - b));
    expect(progress.at(-1)).toBe(1);
    const first = batches.findIndex((batch) => batch.found.length);
    const told = batches.findIndex((batch) => batch.count !== undefined);
    expect(told).toBeLessThan(first);
    expect(batches.flatMap((batch) => batch.found)).toHaveLength(batches[told]!.count!);
  });

  it("gives for Limpet, as a whole, the figures of its article", () => {
    const found = [
      ...findTrains({
        stages: [
          { id: "primary", drivers: [13, 15, 17, 20, 23], drivens: [53, 56, 62, 66, 70] },
          { id: "front-ring", on: ["front"], sets: [setOf({ driver: 13, driven: 38 })] },
          {
            id: "rear-ring",
            on: ["rear"],
            sets: [
              { driver: 12, driven: 35 },
              { driver: 11, driven: 36 },
            ].map(setOf),
          },
        ],
        outputs: [
          {
            id: "front",
            rest: rational("5/2").times("22/15"),
            from: 38,
            to: 46,
            wheels: [wheelOf({ diameter: "124 mm" })],
          },
          {
            id: "rear",
            rest: rational("5/2").times("23/16"),
            from: 38,
            to: 46,
            wheels: [wheelOf({ diameter: "120 mm" })],
          },
        ],
        compare: { of: "front", with: "rear", from: 0, to: "0.02" },
      }),
    ].flatMap((batch) => batch.found);
    const limpet = found.find(({ picks }) => picks[0]!.counts.join() === "15,62")!;
    expect(limpet.totals.map(({ low }) => String(low))).toEqual(["25916/585", "24955/576"]);
    expect(limpet.ahead!.low.toDecimal({ maximumFractionDigits: 4 })).toBe("0.0106");
  });
});
