import { describe, expect, it } from "vitest";
import { circleDiameter, fits, hubReasons, type HoleCircle } from "../../src/fit/index.js";

const matches = (gear: HoleCircle, hub: HoleCircle) => hubReasons([gear], [hub], [], "driven").length === 0;
const error = (code: string, at: string) => expect.objectContaining({ code, at }) as Error;

describe("circles of holes", () => {
  it("have the diameter on which neighbours stand so far apart", () => {
    // By coordinates: n points on a circle, the first two so far apart.
    for (const count of [2, 3, 4, 5, 6, 8, 12]) {
      const diameter = 20;
      const [x, y] = [10 * Math.cos((2 * Math.PI) / count), 10 * Math.sin((2 * Math.PI) / count)];
      const apart = Math.hypot(10 - x, y);
      const found = circleDiameter({ count, neighbours: `${apart.toFixed(9)} mm` })!;
      expect(found.low.toNumber()).toBeCloseTo(diameter, 6);
    }
    expect(circleDiameter({ count: 2, neighbours: "14.7 mm" })!.toJSON()).toEqual({ low: "147/10", high: "147/10" });
    expect(circleDiameter({ count: 6, neighbours: "7/16 in" })!.toJSON()).toEqual({ low: "889/40", high: "889/40" });
    const three = circleDiameter({ count: 3, neighbours: "15 mm" })!;
    // 15 / sin 60° = 10 √3.
    expect(three.power(2).contains(300)).toBe(true);
    expect(circleDiameter({ count: 3, diameter: "17 mm", neighbours: "99 mm" })!.low.toFraction()).toBe("17/1");
    expect(circleDiameter({ count: 3 })).toBeUndefined();
    expect(circleDiameter({ count: 1, neighbours: "3 mm" })).toBeUndefined();
  });

  it("match where drawing and calliper round to the same tenth: 17.013 mm on 17", () => {
    expect(matches({ count: 3, diameter: "17.013 mm" }, { count: 3, diameter: "17 mm" })).toBe(true);
    expect(matches({ count: 3, neighbours: "14.734 mm" }, { count: 3, diameter: "17 mm" })).toBe(true);
    expect(matches({ count: 6, diameter: "17.05 mm" }, { count: 3, diameter: "17 mm" })).toBe(true);
    expect(matches({ count: 3, diameter: "17.06 mm" }, { count: 3, diameter: "17 mm" })).toBe(false);
    expect(matches({ count: 3, diameter: "0.67 in" }, { count: 3, diameter: "17 mm" })).toBe(true);
    expect(matches({ count: 4, diameter: "17 mm" }, { count: 3, diameter: "17 mm" })).toBe(false);
  });

  it("match within hole minus screw, where both are said", () => {
    const hub = { count: 3, diameter: "17 mm", screw: "3 mm" };
    const gear = (diameter: string, hole = "3.2 mm") => ({ count: 3, diameter, hole });
    expect(matches(gear("17.2 mm"), hub)).toBe(true);
    expect(matches(gear("16.8 mm"), hub)).toBe(true);
    expect(matches(gear("17.21 mm"), hub)).toBe(false);
    // A tight hole takes less than the usual rounding allows.
    expect(matches(gear("17.013 mm", "3.01 mm"), hub)).toBe(false);
    expect(matches(gear("17.01 mm", "3.01 mm"), hub)).toBe(true);
    // Through holes on both sides add up; a thread has no play.
    expect(matches(gear("17.5 mm"), { ...hub, hole: "3.3 mm" })).toBe(true);
    expect(matches(gear("17.51 mm"), { ...hub, hole: "3.3 mm" })).toBe(false);
    expect(matches(gear("17.2 mm"), { ...hub, hole: "2.5 mm" })).toBe(true);
    expect(matches(gear("17.21 mm"), { ...hub, hole: "2.5 mm" })).toBe(false);
    // The screw does not go through.
    expect(matches(gear("17 mm", "2.9 mm"), hub)).toBe(false);
    // Half of what is needed is not said: the usual rounding.
    expect(matches({ count: 3, diameter: "17.04 mm", hole: "4 mm" }, { count: 3, diameter: "17 mm" })).toBe(true);
    expect(matches({ count: 3, diameter: "17.1 mm", hole: "4 mm" }, { count: 3, diameter: "17 mm" })).toBe(false);
  });

  it("are held by the widest screw of both, and by the least narrow hole where none lets it through", () => {
    const short = (gear: HoleCircle, hub: HoleCircle) =>
      hubReasons([gear], [hub], [], "driven")[0]?.short?.low.toDecimal();
    const circle = { count: 3, diameter: "20 mm" };
    const [thin, thick] = [
      { ...circle, screw: "2.5 mm", hole: "3.2 mm" },
      { count: 3, diameter: "20.4 mm", screw: "3 mm" },
    ];
    // 0.4 mm apart, and the hole is 0.2 mm wider than the thick screw.
    expect([short(thin, thick), short(thick, thin)]).toEqual(["0.2", "0.2"]);
    const [narrow, narrower] = [
      { ...circle, screw: "3 mm", hole: "2.9 mm" },
      { ...circle, hole: "2.5 mm" },
    ];
    expect([short(narrow, narrower), short(narrower, narrow)]).toEqual(["0.1", "0.1"]);
  });

  it("match themselves, though their diameter is known within digits and their holes leave nothing", () => {
    const circle = { count: 3, neighbours: "14.734 mm", hole: "3 mm", screw: "3 mm" };
    expect(hubReasons([circle], [{ ...circle }], [], "driven")).toEqual([]);
  });

  it("leave it open where one of several may do and is not known", () => {
    const hub = [{ count: 3, diameter: "20 mm" }];
    const [found] = hubReasons([{ count: 3, diameter: "25 mm" }, { count: 3 }], hub, [], "driven");
    expect(found).toEqual({ code: "hub-holes", weight: "unknown", of: "driven" });
  });

  it("tell by how much they miss, or that it is not known", () => {
    const hub = [{ count: 3, diameter: "17 mm" }];
    const [miss] = hubReasons(
      [
        { count: 3, diameter: "25 mm" },
        { count: 6, diameter: "18 mm" },
      ],
      hub,
      [],
      "driven",
    );
    expect(miss).toMatchObject({ code: "hub-holes", weight: "refusal" });
    expect([miss!.needed, miss!.available, miss!.short].map((one) => one!.low.toDecimal())).toEqual([
      "17",
      "18",
      "0.95",
    ]);
    expect(hubReasons([{ count: 3 }], hub, [], "driven")).toEqual([
      { code: "hub-holes", weight: "unknown", of: "driven" },
    ]);
    expect(hubReasons([{ count: 3 }, { count: 3, diameter: "17 mm" }], hub, [], "driven")).toEqual([]);
    const fit = fits({
      pair: { driver: 20, driven: 60, module: 1 },
      mount: { hubHoles: hub },
      driven: { circles: [{ count: 3, neighbours: "14.734 mm" }] },
    });
    expect(fit.verdict).toBe("fits");
    const plates = [
      {
        label: "plate",
        circles: [
          { count: 3, neighbours: "14.734 mm" },
          { count: 4, diameter: "25 mm" },
        ],
      },
    ];
    expect(hubReasons([{ count: 4, diameter: "25.04 mm" }], hub, plates, "driven")[0]!.code).toBe("plate");
  });

  it("refuse figures that are none", () => {
    expect(() => circleDiameter({ count: 0, diameter: "17 mm" })).toThrowError(error("not-a-count", "circles"));
    for (const field of ["diameter", "neighbours"])
      expect(() => circleDiameter({ count: 3, [field]: "0 mm" })).toThrowError(error("out-of-range", "circles"));
    const circle = { count: 3, diameter: "17 mm" };
    for (const more of [
      { hole: "0 mm", screw: "1 mm" },
      { hole: "1 mm", screw: "0 mm" },
    ])
      expect(() => hubReasons([{ ...circle, ...more }], [circle], [], "driven")).toThrowError(
        error("out-of-range", "circles"),
      );
  });
});
