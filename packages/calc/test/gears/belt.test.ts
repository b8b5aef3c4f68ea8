import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { rational } from "../../src/exact/index.js";
import { beltCentre, beltLength, beltOf } from "../../src/gears/index.js";

/** A string pulled tight around two discs: the hull of many points on their rims, measured along. */
function tightString(pitch: number, driver: number, driven: number, centre: number): number {
  const points: [number, number][] = [];
  const count = 20_000;
  for (const [teeth, x] of [
    [driver, 0],
    [driven, centre],
  ] as const)
    for (let n = 0; n < count; n++) {
      const angle = (2 * Math.PI * n) / count;
      const radius = (pitch * teeth) / (2 * Math.PI);
      points.push([x + radius * Math.cos(angle), radius * Math.sin(angle)]);
    }
  points.sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const chain = (list: [number, number][]) => {
    const hull: [number, number][] = [];
    for (const point of list) {
      for (;;) {
        const [a, b] = hull.slice(-2) as [[number, number], [number, number]];
        if (hull.length < 2) break;
        if ((b[0] - a[0]) * (point[1] - a[1]) - (b[1] - a[1]) * (point[0] - a[0]) > 0) break;
        hull.pop();
      }
      hull.push(point);
    }
    return hull;
  };
  const length = (hull: [number, number][]) =>
    hull.slice(1).reduce((sum, [x, y], n) => sum + Math.hypot(x - hull[n]![0], y - hull[n]![1]), 0);
  return length(chain(points)) + length(chain([...points].reverse()));
}

describe("a belt on two pulleys", () => {
  it("is as long as a string pulled tight", () => {
    for (const [driver, driven, centre] of [
      [20, 60, 60],
      [60, 20, 60],
      [31, 31, 80],
      [10, 90, 33],
    ] as const)
      expect(beltLength({ pitch: rational(2), driver, driven }, centre)).toBeCloseTo(
        tightString(2, driver, driven, centre),
        4,
      );
  });

  it("practice 21: 20 to 60 at 2 mm, about 60 mm apart: 202 mm sets 59.636, 204 mm sets 60.659", () => {
    const { length, choices } = beltOf({ driver: 20, driven: 60, pitch: "2 mm", centre: "60 mm" });
    expect(choices.map((one) => [one.teeth, one.length.toFraction(), one.centre.toFixed(3), one.offsetLink])).toEqual([
      [101, "202/1", "59.636", false],
      [102, "204/1", "60.659", false],
    ]);
    expect(length).toBeCloseTo(202.71, 2);
  });

  it("comes back from length to centres", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 8, max: 120 }),
        fc.integer({ min: 8, max: 120 }),
        fc.double({ min: 0.001, max: 20, noNaN: true }),
        (driver, driven, apart) => {
          const pulleys = { pitch: rational("2.032"), driver, driven };
          const centre = ((driver + driven) * 2.032 * (1 + apart)) / (2 * Math.PI);
          const back = beltCentre(pulleys, beltLength(pulleys, centre));
          expect(Math.abs(back / centre - 1)).toBeLessThan(1e-12);
        },
      ),
    );
  });

  it("offers belts that there are, and chains of an even count unless offset links will do", () => {
    const question = { driver: 20, driven: 60, pitch: "2 mm", centre: "60 mm" };
    const teeth = (more: object) => beltOf({ ...question, ...more }).choices.map((one) => one.teeth);
    expect(teeth({ available: [80, 90, 100, 110, 120] })).toEqual([100, 110]);
    expect(teeth({ available: [100, 90] })).toEqual([100]);
    expect(teeth({ available: [130, 120] })).toEqual([120]);
    expect(teeth({ available: [] })).toEqual([]);
    // A belt that sets the wanted centres exactly needs no other beside it.
    const equal = { driver: 20, driven: 20, centre: "30 mm" };
    expect(teeth({ ...equal, available: [40, 50, 60] })).toEqual([50]);
    expect(teeth({ chain: true })).toEqual([100, 102]);
    expect(teeth({ chain: true, offsetLink: true })).toEqual([101, 102]);
    expect(beltOf({ ...question, chain: true, offsetLink: true }).choices.map((one) => one.offsetLink)).toEqual([
      true,
      false,
    ]);
    expect(beltOf({ ...question, chain: true, beltTeeth: 101 }).choices).toMatchObject([
      { teeth: 101, offsetLink: true },
    ]);
    // Equal pulleys, 30 mm apart: 30 + 30 mm of runs and 20 teeth of arcs are 50 teeth exactly.
    expect(beltOf({ driver: 20, driven: 20, pitch: "2 mm", centre: "30 mm" }).choices).toMatchObject([
      { teeth: 50, centre: 30 },
    ]);
  });

  it("refuses what cannot be", () => {
    const touching = (at: string) =>
      expect.objectContaining({ code: "pulleys-touch", at, message: "Too short: the pulleys would touch." }) as Error;
    expect(() => beltOf({ driver: 20, driven: 60, pitch: "2 mm", centre: "25 mm" })).toThrowError(touching("centre"));
    expect(() => beltOf({ driver: 20, driven: 60, pitch: "2 mm", beltTeeth: 60 })).toThrowError(touching("beltTeeth"));
    expect(
      beltOf({ driver: 20, driven: 60, pitch: "2 mm", centre: "25.5 mm" }).choices.map((one) => one.teeth),
    ).toEqual([69]);
    expect(beltOf({ driver: 20, driven: 60, pitch: "2 mm", beltTeeth: 69 }).choices[0]!.centre).toBeGreaterThan(
      80 / Math.PI,
    );
    expect(() => beltCentre({ pitch: rational(2), driver: 20, driven: 60 }, NaN)).toThrowError(touching("beltTeeth"));
    const named = (at: string) => expect.objectContaining({ code: "not-a-length", at }) as Error;
    expect(() => beltOf({ driver: 20, driven: 60, pitch: "fine", centre: "60 mm" })).toThrowError(named("pitch"));
    expect(() => beltOf({ driver: 20, driven: 60, pitch: "2 mm", centre: "far" })).toThrowError(named("centre"));
  });

  it("takes pulleys that just touch", () => {
    const pulleys = { pitch: rational(2), driver: 20, driven: 60 };
    const sum = (2 / (2 * Math.PI)) * 80;
    const difference = (2 / (2 * Math.PI)) * 40;
    const shortest = beltLength(pulleys, sum);
    expect(shortest).toBeCloseTo(
      2 * Math.sqrt(sum ** 2 - difference ** 2) + Math.PI * sum + 2 * difference * Math.asin(difference / sum),
      9,
    );
    expect(beltCentre(pulleys, shortest)).toBeCloseTo(sum, 9);
  });

  it("does not know two-pulley figures for a tensioner, nor any without pitch or centres", () => {
    const none = { choices: [] };
    const question = { driver: 20, driven: 60, pitch: "2 mm", centre: "60 mm" };
    expect(beltOf({ ...question, tensioner: true })).toEqual({ ...none, notKnown: "tensioner" });
    expect(beltOf({ driver: 20, driven: 60, centre: "60 mm" })).toEqual({ ...none, notKnown: "pitch-not-given" });
    expect(beltOf({ driver: 20, driven: 60, pitch: "2 mm" })).toEqual({ ...none, notKnown: "centre-not-given" });
  });
});
