import { readFileSync } from "node:fs";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { countedBox, measuredReduction, type CountedBox } from "../../src/counted/index.js";

type Pair = readonly [number, number];
const error = (code: string, at: string) => expect.objectContaining({ code, at }) as Error;

describe("answers worked out elsewhere", () => {
  it("meets every box of turned.json", () => {
    interface Case {
      motorTurns: number;
      wheelTurns: { from: string; to: string };
      oneWheelHeld: boolean;
      knownPairs: Pair[];
      driver: Pair;
      driven: Pair;
      expect: { total: unknown; box: unknown; counts: Pair[] };
    }
    const file = new URL("../../../../tests/vectors/turned.json", import.meta.url);
    const cases = JSON.parse(readFileSync(file, "utf8")) as Case[];
    expect(cases.length).toBeGreaterThan(10);
    for (const { driver, driven, expect: wanted, ...count } of cases) {
      const { total, box, counts } = countedBox(count, { driver, driven });
      expect({ total: total.toJSON(), box: box.toJSON(), counts }).toEqual(wanted);
    }
  });
});

describe("a box counted by turns", () => {
  const fractions = ({ total, box }: CountedBox) => [total.toJSON(), box.toJSON()];

  it("is what is left when the known pairs around it are divided out", () => {
    const count = { motorTurns: 50, wheelTurns: { from: "3.1", to: "3.15" }, oneWheelHeld: true };
    // 50 × 2 / 3.15 and / 3.1; less 40/15 × 55/17.
    const around: Pair[] = [
      [15, 40],
      [17, 55],
    ];
    expect(fractions(countedBox({ ...count, knownPairs: around }))).toEqual([
      { low: "2000/63", high: "1000/31" },
      { low: "850/231", high: "1275/341" },
    ]);
    expect(fractions(countedBox(count))).toEqual([
      { low: "2000/63", high: "1000/31" },
      { low: "2000/63", high: "1000/31" },
    ]);
    expect(countedBox(count).counts).toEqual([]);
  });

  it("has every pair of counts in its interval, ends included, as trying every pair finds", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: 1, max: 400 }),
        fc.integer({ min: 0, max: 20 }),
        fc.integer({ min: 5, max: 30 }),
        fc.integer({ min: 5, max: 60 }),
        (motor, wheel, more, known, other) => {
          const count = {
            motorTurns: motor,
            wheelTurns: { from: `${wheel}/20`, to: `${wheel + more}/20` },
            knownPairs: [[known, other] as const],
          };
          const wanted: Pair[] = [];
          for (let driver = 8; driver <= 20; driver++)
            for (let driven = 15; driven <= 60; driven++) {
              // 20 motor × known × driver, against wheel × other × driven, in whole numbers.
              const [turned, boxed] = [20 * motor * known * driver, other * driven];
              if (boxed * wheel <= turned && turned <= boxed * (wheel + more)) wanted.push([driver, driven]);
            }
          expect(countedBox(count, { driver: [8, 20], driven: [15, 60] }).counts).toEqual(wanted);
        },
      ),
    );
  });

  it("is narrowed to one count by teeth that can be seen", () => {
    const count = { motorTurns: 20, wheelTurns: { from: "9.1", to: "9.3" } };
    expect(countedBox(count, { driver: [16, 16], driven: [10, 60] }).counts).toEqual([[16, 35]]);
  });

  it("refuses figures that are none, and more pairs than anybody looks through", () => {
    const count = { motorTurns: 20, wheelTurns: { from: "9.1", to: "9.3" } };
    expect(() => countedBox({ ...count, knownPairs: [[0, 40]] })).toThrowError(error("not-a-count", "knownPairs"));
    expect(() => countedBox(count, { driver: [0, 20], driven: [10, 60] })).toThrowError(error("not-a-count", "driver"));
    expect(() => countedBox(count, { driver: [8, 20], driven: [10.5, 60] })).toThrowError(
      error("not-a-count", "driven"),
    );
    const wide = { motorTurns: 20, wheelTurns: { from: "0.01", to: "99" } };
    expect(() => countedBox(wide, { driver: [1, 1_000_000], driven: [1, 1_000_000] })).toThrowError(
      error("too-many-choices", "ratio"),
    );
  });
});

describe("which wheel and which axle are held", () => {
  it("one held, the other counts half; none held, the mean of both", () => {
    const held = measuredReduction({ motorTurns: 40, wheelTurns: "1.8", oneWheelHeld: true });
    const free = measuredReduction({ motorTurns: 40, wheelTurns: "0.8", otherWheelTurns: "1.0" });
    expect([held.toJSON(), free.toJSON()]).toEqual([
      { low: "400/9", high: "400/9" },
      { low: "400/9", high: "400/9" },
    ]);
    const wide = {
      motorTurns: 40,
      wheelTurns: { from: "0.7", to: "0.8" },
      otherWheelTurns: { from: "0.9", to: "1.0" },
    };
    expect(measuredReduction(wide).toJSON()).toEqual({ low: "400/9", high: "50/1" });
    expect(() =>
      measuredReduction({ motorTurns: 40, wheelTurns: 1, otherWheelTurns: 1, oneWheelHeld: true }),
    ).toThrowError(error("held-and-turning", "otherWheelTurns"));
  });

  it("behind an open centre with the other axle held, an axle turns by its share: half of the reduction, if even", () => {
    // 44 locked: with the other axle held, 40 motor turns give 40 / 22 of this one.
    const count = { motorTurns: 40, wheelTurns: "20/11", otherAxlesHeld: "1/2" };
    expect(measuredReduction(count).low.toFraction()).toBe("44/1");
    // A wheel held as well: twice as far again.
    expect(measuredReduction({ ...count, wheelTurns: "40/11", oneWheelHeld: true }).low.toFraction()).toBe("44/1");
    expect(measuredReduction({ ...count, wheelTurns: "100/33", otherAxlesHeld: "0.3" }).low.toFraction()).toBe("44/1");
    for (const share of [0, -1, "1.1"])
      expect(() => measuredReduction({ ...count, otherAxlesHeld: share })).toThrowError(
        error("out-of-range", "otherAxlesHeld"),
      );
  });

  it("two marks together again after a turns in and b out: exactly a / b", () => {
    const { total, box } = countedBox({ motorTurns: 62, wheelTurns: 15, knownPairs: [[31, 62]] });
    expect([total.toJSON(), box.toJSON()]).toEqual([
      { low: "62/15", high: "62/15" },
      { low: "31/15", high: "31/15" },
    ]);
  });
});
