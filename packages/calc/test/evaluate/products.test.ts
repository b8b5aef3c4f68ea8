import fc from "fast-check";
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { applyChanges, readBuild } from "../../src/document/index.js";
import { difference, evaluate, type Quantity } from "../../src/evaluate/index.js";
import { document, evaluated, pair, read, told } from "../make.js";
import { Fraction } from "./solve.js";

type Data = Record<string, unknown>;

const found = (json: unknown) => told(readBuild(json).findings.filter(({ severity }) => severity === "error"));
const ends = (value: Quantity | undefined) => {
  const { low, high } = value!.bounds;
  return low.equals(high) ? low.toFraction() : `${low} to ${high}`;
};
const printed = (id: string, more: Data = {}): Data => ({ id, kind: "published", value: "1.5", ...more });
const measured = (id: string, turnsIn: unknown, turnsOut: unknown, more: Data = {}): Data => ({
  id,
  kind: "measured",
  turnsIn,
  turnsOut,
  ...more,
});
const span = (from: unknown, to: unknown) => ({ from, to });

describe("one printed hub on both axles", () => {
  const limpet = read(readFileSync(new URL("../../../../seeds/limpet.json", import.meta.url), "utf8"));
  const hubs = (more: Data) =>
    evaluate(applyChanges(limpet, { "front-hub": printed("front-hub"), "rear-hub": printed("rear-hub", more) }).build!);

  it("is one unknown: the front is 3.11 % ahead, exactly", () => {
    const { low, high } = hubs({ sameAs: "front-hub" }).compare()!.difference("tyres")!;
    // 35/12 / (38/13) · 124/120 − 1
    expect([low.toFraction(), high.toFraction()]).toEqual(["85/2736", "85/2736"]);
    expect(low.times(100).toDecimal({ maximumFractionDigits: 2 })).toBe("3.11");
  });

  it("is two unknowns where nobody says that they are the same", () => {
    const { low, high } = hubs({}).compare()!.difference("tyres")!;
    const percent = [low, high].map((end) => end.times(100).toNumber().toFixed(2));
    expect(percent).toEqual(["-3.55", "10.22"]);
  });

  it("stays an interval in each total, squared where it stands twice on one way", () => {
    const one = evaluated([printed("a"), printed("b", { sameAs: "a" })], { rear: [] }).output("rear")!;
    expect(one.reduction!.unknowns).toMatchObject([{ key: "a 1.5 rounded", power: 2 }]);
    expect(ends(one.reduction)).toBe("841/400 to 961/400");
  });
});

describe("the same thing", () => {
  const build = (...stages: Data[]) => document(stages as never, { rear: [] });

  it("is named through whatever stands between", () => {
    const evaluation = evaluated([], {
      front: [printed("a", { sameAs: "b" })],
      middle: [printed("b", { sameAs: "c" })],
      rear: [printed("c")],
    });
    for (const [of, other] of [
      ["front", "rear"],
      ["front", "middle"],
      ["middle", "rear"],
    ] as const)
      expect(evaluation.compare(of, other)!.difference("gears")!.toJSON()).toEqual({ low: "0/1", high: "0/1" });
  });

  it("may stand inside a position, and in another mode", () => {
    const lever = {
      id: "lever",
      kind: "selectable",
      selected: "on",
      positions: [{ id: "on", stages: [printed("in", { sameAs: "out" })] }],
    };
    const evaluation = evaluated([], { front: [lever], rear: [printed("out")] });
    expect(evaluation.compare()!.difference("gears")!.isExact).toBe(true);
  });

  it.each<[string, Data[], string[]]>([
    ["there", [printed("a", { sameAs: "none" })], ["missing-reference at /stages/0/sameAs"]],
    ["a box", [pair("a", 1, 2), printed("b", { sameAs: "a" })], ["same-as-differs at /stages/1/sameAs"]],
    [
      "of one value",
      [printed("a", { value: "1.6" }), printed("b", { sameAs: "a" })],
      ["same-as-differs at /stages/1/sameAs"],
    ],
    [
      "read alike",
      [printed("a", { read: "truncated" }), printed("b", { sameAs: "a" })],
      ["same-as-differs at /stages/1/sameAs"],
    ],
    ["another stage", [printed("a", { sameAs: "a" })], ["reference-loop at /stages/0/sameAs"]],
    [
      "in the end one stage",
      [printed("a", { sameAs: "b" }), printed("b", { sameAs: "c" }), printed("c", { sameAs: "a" })],
      [
        "reference-loop at /stages/0/sameAs",
        "reference-loop at /stages/1/sameAs",
        "reference-loop at /stages/2/sameAs",
      ],
    ],
    ["known in one way", [printed("a"), measured("b", 3, 2, { sameAs: "a" })], ["same-as-differs at /stages/1/sameAs"]],
    [
      "counted once",
      [measured("a", 3, 2), measured("b", 3, "2.1", { sameAs: "a" })],
      ["same-as-differs at /stages/1/sameAs"],
    ],
    [
      "held alike",
      [measured("a", 3, 2, { held: true }), measured("b", 3, 2, { sameAs: "a" })],
      ["same-as-differs at /stages/1/sameAs"],
    ],
  ])("has to be %s", (_, stages, expected) => expect(found(build(...stages))).toEqual(expected));

  it("says the same in other digits, and may be read as it is read anyway", () => {
    expect(found(build(printed("a", { read: "rounded" }), printed("b", { sameAs: "a" })))).toEqual([]);
    expect(found(build(printed("a", { value: "19:1" }), printed("b", { value: "19 : 1", sameAs: "a" })))).toEqual([]);
    expect(
      found(build(measured("a", "3.0", span("2", "2.5")), measured("b", 3, span(2, "5/2"), { sameAs: "a" }))),
    ).toEqual([]);
  });

  it("is known of a stage with a pair's counts by these: there is nothing to be the same about", () => {
    expect(found(build(pair("a", 1, 2), pair("b", 1, 2, { sameAs: "a" })))).toEqual([
      "unknown-key at /stages/1/sameAs",
    ]);
  });
});

describe("a box counted by turning", () => {
  const of = (...parts: Parameters<typeof measured>) => evaluated([measured(...parts)], { rear: [] }).output("rear")!;

  it("is turns in over turns out, from the most to the fewest", () => {
    expect(ends(of("a", 20, span("7.2", "7.3")).reduction)).toBe("200/73 to 25/9");
    expect(of("a", 20, span("7.2", "7.3")).reduction!.isExact).toBe(false);
    expect(of("a", 20, span("7.2", "7.3")).turns).toBe("not known");
    expect(evaluated([measured("a", 2, 1, { reverses: true })], { rear: [] }).output("rear")!.turns).toBe(
      "opposite way",
    );
  });

  it("counts double where one wheel was held", () => {
    expect(ends(of("a", 40, span("1.8", "1.82"), { held: true }).reduction)).toBe("4000/91 to 400/9");
  });

  it("is exact where two marks came together again", () => {
    expect(of("a", 57, 11).reduction!.isExact).toBe(true);
    expect(ends(of("a", 57, 11).reduction)).toBe("57/11");
    expect(ends(of("a", "1/3", "0.125").reduction)).toBe("8/3");
    expect(ends(of("a", 57, span(11, "11.0")).reduction)).toBe("57/11");
    // Past the plain numbers as well, with more stages before and behind.
    const long = evaluated(
      [pair("p", 3, 7), measured("a", "123456789012.123456789012", "0.000000000001"), pair("q", 5, 11)],
      { rear: [] },
    );
    expect(ends(long.output("rear")!.reduction)).toBe(String(Fraction.of(77n * 123456789012123456789012n, 15)));
    expect(long.output("rear")!.steps.map(({ running }) => running.isExact)).toEqual([true, true, true]);
    expect(long.output("rear")!.steps[2]!.running.factor.equals(long.output("rear")!.reduction!.factor)).toBe(true);
  });

  it("is known by name, so that it cancels before and after a change, and between axles where it is the same", () => {
    const box = (driver: number) =>
      read(document([measured("box", 20, span("7.2", "7.3")), pair("p", driver, 60)], { rear: [] }));
    expect(difference(box(15), box(20))[0]!.reduction.toJSON()).toEqual({ low: "-1/4", high: "-1/4" });
    const hubs = evaluated([], {
      front: [measured("front-hub", 20, span("7.2", "7.3")), pair("f", 10, 30)],
      rear: [measured("rear-hub", 20, span("7.2", "7.3"), { sameAs: "front-hub" }), pair("r", 10, 20)],
    });
    expect(hubs.compare()!.difference("gears")!.toJSON()).toEqual({ low: "-1/3", high: "-1/3" });
  });
});

describe("a count of turns over several stages", () => {
  const ring = pair("ring", 12, 35);
  const drive = (box: Data, ...more: Data[]) => evaluated([], { rear: [box, ...(more as never[])] }).output("rear")!;
  const count = span("4.4", "4.5");

  it("divides the known ones out: all of it together is what was counted", () => {
    const rear = drive(measured("box", 40, count, { spans: [ring] }), ring);
    expect(ends(rear.reduction)).toBe("80/9 to 100/11");
    expect(ends(rear.steps[0]!.reduction)).toBe("64/21 to 240/77");
    expect(rear.steps.map(({ running }) => ends(running))).toEqual(["64/21 to 240/77", "80/9 to 100/11"]);
    expect(rear.steps.map(({ runningBounds }) => `${runningBounds.low} to ${runningBounds.high}`)).toEqual([
      "64/21 to 240/77",
      "80/9 to 100/11",
    ]);
  });

  it("keeps the counts that it was made with: a swap changes the drive, and nothing about the box", () => {
    const swapped = drive(measured("box", 40, count, { spans: [ring] }), pair("ring", 12, 36));
    expect(ends(swapped.steps[0]!.reduction)).toBe("64/21 to 240/77");
    expect(ends(swapped.reduction)).toBe("64/7 to 720/77");
  });

  it("cancels a printed ratio that was turned along, and a box that was counted", () => {
    const hub = printed("hub");
    const rear = drive(measured("box", 40, count, { spans: [ring, hub] }), ring, hub);
    expect(ends(rear.reduction)).toBe("80/9 to 100/11");
    expect(rear.reduction!.unknowns.map(({ key }) => key.split(" ")[0])).toEqual(["box"]);
    expect(rear.steps.map(({ runningBounds }) => `${runningBounds.low} to ${runningBounds.high}`).at(-1)).toBe(
      "80/9 to 100/11",
    );
    // What was turned along may be the same as something that stands elsewhere.
    const same = printed("same", { sameAs: "hub" });
    const one = evaluated([], { front: [hub], rear: [measured("box", 40, count, { spans: [same] })] }).output("rear")!;
    expect(one.reduction!.unknowns.map(({ key, power }) => [key, power])).toContainEqual(["hub 1.5 rounded", -1]);
    // Without the hub behind it, its unknown stays in the box.
    const alone = drive(measured("box", 40, count, { spans: [ring, hub] }), ring);
    expect(ends(alone.reduction)).toBe("1600/279 to 2000/319");
    const nested = measured("inner", 3, span("1.1", "1.2"), { spans: [ring] });
    const both = drive(measured("box", 40, count, { spans: [nested, ring] }), nested, ring);
    expect(ends(both.reduction)).toBe("80/9 to 100/11");
  });

  it("comes out whole past the plain numbers", () => {
    const steep = (id: string) => ({
      id,
      kind: "planetary",
      sun: 1,
      ring: 999,
      fixed: "ring",
      input: "sun",
      output: "carrier",
      repeat: 7,
    });
    const rear = drive(measured("box", 1, 1, { spans: [steep("s")] }), steep("s"), steep("t"));
    expect(ends(rear.reduction)).toBe(`${10n ** 21n}/1`);
    expect(ends(rear.steps[0]!.reduction)).toBe(`1/${10n ** 21n}`);
    expect(rear.steps.map(({ running }) => ends(running))).toEqual([`1/${10n ** 21n}`, "1/1", `${10n ** 21n}/1`]);
  });

  it("names stages as they stood, none with a lever", () => {
    const lever = { id: "lever", kind: "selectable", selected: "on", positions: [{ id: "on", stages: [] }] };
    const wrong = (...spans: Data[]) => found(document([measured("box", 40, count, { spans })], { rear: [] }));
    expect(wrong(lever)).toEqual(["span-lever at /stages/0/spans/0"]);
    expect(wrong(ring, pair("x", 0, 1))).toEqual(["not-count at /stages/0/spans/1/driver"]);
    expect(wrong(pair("x", 20, 10, { internal: true }))).toEqual(["ring-too-small at /stages/0/spans/0/driven"]);
    expect(wrong(measured("y", 1, 1, { spans: [pair("x", 20, 10, { internal: true })] }))).toEqual([
      "ring-too-small at /stages/0/spans/0/spans/0/driven",
    ]);
    // Names of what was turned along are those of stages as they stood then, which may be gone.
    expect(wrong(pair("rear", 1, 2), pair("box", 1, 2))).toEqual([]);
  });

  it("answers the vectors of boxes among known pairs", () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 5, max: 60 }), fc.integer({ min: 5, max: 60 })), { maxLength: 4 }),
        fc.integer({ min: 1, max: 500 }),
        fc.integer({ min: 1, max: 900 }),
        fc.integer({ min: 0, max: 90 }),
        (pairs, turnsIn, out, more) => {
          const known = pairs.map(([driver, driven], n) => pair(`p${n}`, driver, driven));
          const rear = drive(
            measured("box", turnsIn, span(`${out}/100`, `${out + more}/100`), {
              spans: known.length ? known : undefined,
            }),
            ...known,
          );
          // Total and box by whole numbers: in · 100 / out, and that by the drivers over the drivens.
          const [up, down] = pairs.reduce(
            ([u, d], [driver, driven]) => [u * BigInt(driver), d * BigInt(driven)],
            [1n, 1n],
          );
          const is = (value: Quantity, top: bigint, bottom: bigint, end: "low" | "high") =>
            expect(value.bounds[end].numerator * bottom).toBe(value.bounds[end].denominator * top);
          is(rear.reduction!, BigInt(turnsIn) * 100n, BigInt(out + more), "low");
          is(rear.reduction!, BigInt(turnsIn) * 100n, BigInt(out), "high");
          is(rear.steps[0]!.reduction, BigInt(turnsIn) * 100n * up, BigInt(out + more) * down, "low");
          is(rear.steps[0]!.reduction, BigInt(turnsIn) * 100n * up, BigInt(out) * down, "high");
        },
      ),
    );
  });
});
