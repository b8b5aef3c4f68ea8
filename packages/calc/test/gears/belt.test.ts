import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { rational } from "../../src/exact/index.js";
import { beltCentre, beltLength, beltOf, pitchDiameter } from "../../src/gears/index.js";

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

  it("does not know what cannot be, and refuses figures that are none", () => {
    const question = { driver: 20, driven: 60, pitch: "2 mm" };
    const touching = { notKnown: "pulleys-touch", reverses: false, choices: [] };
    expect(beltOf({ ...question, centre: "25 mm" })).toEqual(touching);
    expect(beltOf({ ...question, beltTeeth: 60 })).toEqual(touching);
    expect(beltOf({ ...question, centre: "25.5 mm" }).choices.map((one) => one.teeth)).toEqual([69]);
    expect(beltOf({ ...question, beltTeeth: 69 }).choices[0]!.centre).toBeGreaterThan(80 / Math.PI);
    const error = (code: string, at: string) => expect.objectContaining({ code, at }) as Error;
    const pulleys = { pitch: rational(2), driver: 20, driven: 60 };
    expect(() => beltLength(pulleys, 25)).toThrowError(error("pulleys-touch", "centre"));
    expect(() => beltCentre(pulleys, 100)).toThrowError(error("pulleys-touch", "beltTeeth"));
    expect(() => beltCentre(pulleys, 100)).toThrowError("Too short: the pulleys would touch.");
    expect(() => beltCentre(pulleys, NaN)).toThrowError(error("out-of-range", "length"));
    expect(() => beltLength(pulleys, NaN)).toThrowError(error("out-of-range", "centre"));
    expect(() => beltLength({ ...pulleys, driver: 0 }, 60)).toThrowError(error("not-a-count", "driver"));
    expect(() => beltLength({ ...pulleys, pitch: rational(0) }, 60)).toThrowError(error("out-of-range", "pitch"));
    expect(() => beltOf({ ...question, driver: 0 })).toThrowError(error("not-a-count", "driver"));
    expect(() => beltOf({ ...question, driven: 1.5 })).toThrowError(error("not-a-count", "driven"));
    expect(() => beltOf({ ...question, beltTeeth: -1 })).toThrowError(error("not-a-count", "beltTeeth"));
    expect(() => beltOf({ ...question, centre: "60 mm", available: [0] })).toThrowError(
      error("not-a-count", "available"),
    );
    expect(() => beltOf({ ...question, pitch: "fine", centre: "60 mm" })).toThrowError(error("not-a-length", "pitch"));
    expect(() => beltOf({ ...question, centre: "far" })).toThrowError(error("not-a-length", "centre"));
    expect(() => beltOf({ ...question, pitch: "0 mm", centre: "60 mm" })).toThrowError(error("out-of-range", "pitch"));
    expect(() => beltOf({ ...question, centre: "0 mm" })).toThrowError(error("out-of-range", "centre"));
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

  it("needs more than two pulleys do where a tensioner takes up the rest, and tells how much", () => {
    const question = { driver: 20, driven: 60, pitch: "2 mm", centre: "60 mm", tensioner: true };
    // Two pulleys take 202.712 mm at 60 mm: a string pulled tight around both.
    const tight = tightString(2, 20, 60, 60);
    const { length, choices, reverses } = beltOf(question);
    expect(length).toBeCloseTo(tight, 4);
    expect(choices.map((one) => one.teeth)).toEqual([102]);
    expect(choices[0]!.slack).toBeCloseTo(204 - tight, 4);
    // Without the tensioner it would set its axes farther apart.
    expect(choices[0]!.centre).toBeCloseTo(60.659, 3);
    expect(reverses).toBe(false);
    const many = beltOf({ ...question, available: [120, 90, 110, 101] }).choices;
    expect(many.map(({ teeth, slack }) => [teeth, slack!.toFixed(2)])).toEqual([
      [110, (220 - tight).toFixed(2)],
      [120, (240 - tight).toFixed(2)],
    ]);
    expect(beltOf({ ...question, beltTeeth: 105 }).choices.map(({ slack }) => slack!.toFixed(3))).toEqual([
      (210 - tight).toFixed(3),
    ]);
    expect(beltOf({ ...question, beltTeeth: 101 })).toMatchObject({ notKnown: "belt-too-short", choices: [] });
    expect(beltOf({ ...question, chain: true }).choices.map((one) => one.teeth)).toEqual([102]);
    expect(beltOf({ ...question, chain: true, centre: "61 mm" }).choices.map((one) => one.teeth)).toEqual([104]);
    // Equal pulleys, 30 mm apart, take 50 teeth exactly: nothing would be left to take up.
    expect(
      beltOf({ driver: 20, driven: 20, pitch: "2 mm", centre: "30 mm", tensioner: true }).choices.map(
        (one) => one.teeth,
      ),
    ).toEqual([51]);
    expect(beltOf({ driver: 20, driven: 60, pitch: "2 mm", beltTeeth: 102, tensioner: true }).notKnown).toBe(
      "centre-not-given",
    );
    expect(beltOf({ ...question, centre: "20 mm" }).notKnown).toBe("pulleys-touch");
  });

  it("turns a pulley round that runs on its back, and knows no length without the third wheel", () => {
    const question = { driver: 20, driven: 60, pitch: "2 mm", centre: "60 mm", backDriven: true };
    expect(beltOf(question)).toEqual({ notKnown: "driven-by-back", reverses: true, choices: [] });
    expect(beltOf({ driver: 20, driven: 60, backDriven: true }).reverses).toBe(true);
    expect(beltOf({ driver: 20, driven: 60 }).reverses).toBe(false);
  });

  it("is not known without pitch or centres", () => {
    const none = { reverses: false, choices: [] };
    expect(beltOf({ driver: 20, driven: 60, centre: "60 mm" })).toEqual({ ...none, notKnown: "pitch-not-given" });
    expect(beltOf({ driver: 20, driven: 60, pitch: "2 mm" })).toEqual({ ...none, notKnown: "centre-not-given" });
  });
});

describe("a sprocket", () => {
  it("has a pitch circle on which the links lie as chords", () => {
    // Six links make a hexagon, whose circle is twice as wide as a side; four a square.
    const pitch = rational("6.35");
    expect(pitchDiameter({ pitch, teeth: 6, chain: true })).toBeCloseTo(12.7, 12);
    expect(pitchDiameter({ pitch, teeth: 4, chain: true })).toBeCloseTo(6.35 * Math.SQRT2, 12);
    expect(pitchDiameter({ pitch, teeth: 2, chain: true })).toBeCloseTo(6.35, 12);
    // Closed by its chords: so many turns of the angle that one link takes make the whole round.
    for (const teeth of [9, 17, 41]) {
      const diameter = pitchDiameter({ pitch, teeth, chain: true });
      expect(teeth * 2 * Math.asin(6.35 / diameter)).toBeCloseTo(2 * Math.PI, 12);
    }
    expect(pitchDiameter({ pitch: rational(2), teeth: 60 })).toBeCloseTo(120 / Math.PI, 12);
    expect(() => pitchDiameter({ pitch, teeth: 1, chain: true })).toThrowError(
      expect.objectContaining({ code: "sprocket-too-small", at: "teeth" }),
    );
    expect(beltOf({ driver: 1, driven: 20, pitch: "6.35 mm", centre: "60 mm", chain: true }).notKnown).toBe(
      "sprocket-too-small",
    );
  });
});
