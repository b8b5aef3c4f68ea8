import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bounded, rational } from "../../src/exact/index.js";
import { wormOf } from "../../src/gears/index.js";

const worm = { starts: 2, teeth: 40, module: 1, diameter: "20 mm" };
const caution = "holding-is-not-a-brake";

describe("a worm", () => {
  it("has the slope of its thread unrolled", () => {
    const { leadAngle } = wormOf(worm);
    // In one turn two teeth of the wheel pass: 2 × π of the 20 × π around.
    expect(Math.tan((leadAngle! * Math.PI) / 180)).toBeCloseTo(0.1, 12);
  });

  it("loses to friction what a wedge loses, worked out by forces", () => {
    const friction = 0.06;
    const { efficiency } = wormOf(worm, { running: "0.06" });
    // Axial over tangential force on a flank inclined by the lead and, in the axial plane, by the pressure angle.
    const lead = Math.atan(0.1);
    const normal = Math.cos(Math.PI / 9);
    const axial = normal * Math.cos(lead) - friction * Math.sin(lead);
    const tangential = normal * Math.sin(lead) + friction * Math.cos(lead);
    expect(efficiency!.low.toNumber()).toBeCloseTo((axial * Math.tan(lead)) / tangential, 9);
    expect(wormOf(worm, { running: 0 }).efficiency!.contains(1)).toBe(true);
    const range = wormOf(worm, { running: bounded("0.05", "0.1") }).efficiency!;
    expect(range.contains(efficiency!)).toBe(true);
    expect(range.low.toNumber()).toBeCloseTo(wormOf(worm, { running: "0.1" }).efficiency!.low.toNumber(), 9);
    // Friction so great that the worm cannot be turned at all.
    expect(wormOf(worm, { running: 50 }).efficiency!.high.toNumber()).toBeLessThan(0.001);
    expect(wormOf({ ...worm, starts: 40 }, { running: 50 }).efficiency!.toJSON()).toEqual({ low: "0/1", high: "0/1" });
  });

  it("can be driven back where its lead is steeper than the angle of friction, at rest and running each by itself", () => {
    // tan γ cos αn = 0.1 × cos 20° = 0.09397.
    const both = wormOf(worm, { resting: bounded("0.1", "0.15"), running: bounded("0.03", "0.06") });
    expect([both.atRest!.verdict, both.running!.verdict]).toEqual(["cannot", "can be driven back"]);
    const edge = (friction: string) => wormOf(worm, { running: friction }).running!.verdict;
    expect([edge("0.0939"), edge("0.0940")]).toEqual(["can be driven back", "cannot"]);
    expect(wormOf(worm, { running: bounded("0.09", "0.1") }).running!.verdict).toBe("cannot tell");
    expect(wormOf(worm, { running: "0.06" })).not.toHaveProperty("atRest");
    expect(wormOf(worm, { resting: "0.06" })).not.toHaveProperty("efficiency");
    // ρ' = atan(0.06 / cos 20°) = 3.653°.
    expect(wormOf(worm, { resting: "0.06" }).atRest!.frictionAngle.low.toDecimal()).toBe("3.653");
  });

  it("judges as a block on a slope would: the wheel pushes the flank along the axis", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 6 }),
        fc.integer({ min: 8, max: 60 }),
        fc.constantFrom(14.5, 20, 25),
        fc.integer({ min: 0, max: 300 }),
        fc.integer({ min: 0, max: 100 }),
        (starts, diameter, degrees, least, more) => {
          const friction = bounded(rational(least).over(1000), rational(least + more).over(1000));
          const asked = { starts, teeth: 40, module: 1, diameter: `${diameter} mm`, pressureAngle: degrees };
          const { verdict } = wormOf(asked, { running: friction }).running!;
          const slope = starts / diameter;
          // Forces on the thread: the flank's normal, pushed down the slope by sin, held by friction on the wider normal.
          const slides = (mu: number): boolean => {
            const lead = Math.atan(slope);
            return Math.sin(lead) * Math.cos((degrees * Math.PI) / 180) > mu * Math.cos(lead);
          };
          const [low, high] = [slides(least / 1000), slides((least + more) / 1000)];
          expect(verdict).toBe(low && high ? "can be driven back" : low || high ? "cannot tell" : "cannot");
        },
      ),
    );
  });

  it("is not known without pitch and diameter, assumes no friction, and never says that it holds", () => {
    expect(wormOf(worm)).toEqual({ leadAngle: expect.any(Number) as number, caution });
    expect(wormOf({ starts: 1, teeth: 30 })).toEqual({ notKnown: "pitch-not-given", caution });
    const running = "0.1";
    expect(wormOf({ starts: 1, teeth: 30, diameter: "12 mm" }, { running })).toEqual({
      notKnown: "pitch-not-given",
      caution,
    });
    expect(wormOf({ starts: 1, teeth: 30, module: 1 }, { running })).toEqual({
      notKnown: "diameter-not-given",
      caution,
    });
    for (const friction of ["0", "0.1", "0.5", "3"])
      for (const { verdict } of [wormOf(worm, { resting: friction }).atRest!])
        expect(["can be driven back", "cannot", "cannot tell"]).toContain(verdict);
  });

  it("refuses figures that are none", () => {
    const refused = (code: string, at: string) => expect.objectContaining({ code, at }) as Error;
    expect(() => wormOf(worm, { running: "-0.1" })).toThrowError(refused("out-of-range", "running"));
    expect(() => wormOf(worm, { resting: bounded(-1, 1) })).toThrowError(refused("out-of-range", "resting"));
    expect(() => wormOf(worm, { running: "little" })).toThrowError(expect.objectContaining({ at: "running" }));
    expect(() => wormOf({ ...worm, diameter: "narrow" })).toThrowError(expect.objectContaining({ at: "diameter" }));
    expect(() => wormOf({ ...worm, diameter: "0 mm" })).toThrowError(refused("out-of-range", "diameter"));
    expect(() => wormOf({ ...worm, starts: 0 })).toThrowError(refused("not-a-count", "starts"));
    expect(() => wormOf({ ...worm, teeth: 1.5 })).toThrowError(refused("not-a-count", "teeth"));
    expect(() => wormOf({ ...worm, pressureAngle: 90 })).toThrowError(refused("out-of-range", "pressureAngle"));
    expect(() => wormOf({ ...worm, module: 0 })).toThrowError(refused("out-of-range", "module"));
  });
});
