import { readFileSync } from "node:fs";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { unmarkedGear, usualPitches, type UnmarkedGear } from "../../src/counted/index.js";
import { rational } from "../../src/exact/index.js";
import { jawShare, meshOf, outlinePoints, spanTeeth, type Toothed } from "../../src/gears/index.js";
import { anyCount, anyLength, anyNumber, faultOf, partly } from "../wild.js";

const error = (code: string, at: string) => expect.objectContaining({ code, at }) as Error;
const about = (length: number, within: number) => ({
  from: `${(length - within).toFixed(6)} mm`,
  to: `${(length + within).toFixed(6)} mm`,
});
const names = (pitches: readonly Toothed[]) =>
  pitches.map(({ module, diametralPitch, pressureAngle }) =>
    [module ?? `${diametralPitch} DP`, pressureAngle].filter(Boolean).join(" at "),
  );
const two: Toothed[] = [{ module: "0.8" }, { diametralPitch: 32 }];
const inv = (angle: number) => Math.tan(angle) - angle;
const radians = (degrees: number) => (degrees * Math.PI) / 180;

/** What a calliper reads over k teeth, by its definition. */
const spanOf = (module: number, teeth: number, k: number, degrees: number, shift = 0) =>
  module * Math.cos(radians(degrees)) * (Math.PI * (k - 0.5) + teeth * inv(radians(degrees))) +
  2 * shift * module * Math.sin(radians(degrees));

describe("answers worked out elsewhere", () => {
  it("meets every gear of unmarked.json", () => {
    interface Case {
      teeth: number;
      series: Toothed[];
      outsideDiameter_mm?: { from: string; to: string };
      addendum?: number;
      span?: { teeth: number; from_mm: string; to_mm: string };
      pressureAngles?: string[];
      expect: Toothed[];
    }
    const file = new URL("../../../../tests/vectors/unmarked.json", import.meta.url);
    const cases = JSON.parse(readFileSync(file, "utf8")) as Case[];
    expect(cases.length).toBeGreaterThan(30);
    for (const {
      teeth,
      series,
      outsideDiameter_mm: outside,
      addendum,
      span,
      pressureAngles,
      expect: wanted,
    } of cases) {
      const question: UnmarkedGear = outside
        ? { teeth, outside: { from: `${outside.from} mm`, to: `${outside.to} mm` }, addendum: addendum! }
        : {
            teeth,
            span: { teeth: span!.teeth, over: { from: `${span!.from_mm} mm`, to: `${span!.to_mm} mm` } },
            pressureAngles: pressureAngles!,
          };
      const { canBe, cannotBe } = unmarkedGear(question, series);
      expect(canBe, JSON.stringify(question)).toEqual(wanted);
      expect(canBe.length + cannotBe.length).toBe(series.length * (pressureAngles?.length ?? 1));
    }
  });
});

describe("a gear without a mark", () => {
  it("is what its outside diameter leaves, ends included", () => {
    // 38 teeth of 0.8: 32 mm; of 32 DP: 31.75.
    const canBe = (from: string, to: string) =>
      names(unmarkedGear({ teeth: 38, outside: { from, to }, addendum: 1 }, two).canBe);
    expect(canBe("31.9 mm", "32.1 mm")).toEqual(["0.8"]);
    expect(canBe("31.75 mm", "32 mm")).toEqual(["0.8", "32 DP"]);
    expect(canBe("31.7500001 mm", "31.9999999 mm")).toEqual([]);
    expect(canBe("1.25 in", "1.25 in")).toEqual(["32 DP"]);
    expect(names(unmarkedGear({ teeth: 38, outside: "32 mm", addendum: 1 }, two).canBe)).toEqual(["0.8"]);
  });

  it("may have stub teeth, where nobody says that it has not", () => {
    // 32 DP with full teeth over 49: 40.48; module 0.8 with stub teeth: 40.48 as well.
    const both = unmarkedGear({ teeth: 49, outside: about(40.48, 0.02) }, two).canBe;
    expect(both).toEqual([
      { module: "0.8", addendum: "0.8" },
      { diametralPitch: 32, addendum: "1" },
    ]);
    expect(unmarkedGear({ teeth: 49, outside: about(40.48, 0.02), addendum: "0.8" }, two).canBe).toEqual([
      { module: "0.8" },
    ]);
    const left = unmarkedGear({ teeth: 49, outside: about(40.48, 0.02) }, two);
    // 0.31 mm of flank between one pitch and the other over six teeth tells them apart.
    expect(left.settledBy.find(({ gauge }) => gauge === "donor centre")).toMatchObject({ settles: true });
  });

  it("reads less between jaws where its count is odd, by the corners of its tips", () => {
    for (const teeth of [15, 21, 37]) {
      const points = outlinePoints({ teeth, module: 1 }, { pieces: 60 });
      // One jaw on a tip, the other on the two tips beside the space opposite: the extent along that tooth's middle.
      const along = points.map(([x]) => x);
      const read = (teeth + 2) / 2 - Math.min(...along);
      const share = jawShare({ teeth, module: rational(1) });
      expect(share.high.times(teeth + 2).toNumber()).toBeCloseTo(read, 6);
      expect(share.low.times(teeth + 2).toNumber()).toBeCloseTo(((teeth + 2) * (1 + Math.cos(Math.PI / teeth))) / 2, 9);
      const question = { teeth, outside: about(read, 0.001), addendum: 1, pressureAngles: [20] } as const;
      expect(names(unmarkedGear({ ...question, jaws: true }, [{ module: 1 }]).canBe)).toEqual(["1 at 20"]);
      expect(unmarkedGear(question, [{ module: 1 }]).canBe).toEqual([]);
    }
    expect(jawShare({ teeth: 16, module: rational(1) }).toJSON()).toEqual({ low: "1/1", high: "1/1" });
    // Even counts read the diameter whatever holds them.
    expect(names(unmarkedGear({ teeth: 38, outside: "32 mm", addendum: 1, jaws: true }, two).canBe)).toEqual(["0.8"]);
  });

  it("is told by spans of its flanks, whatever the shift, by their difference", () => {
    const teeth = 31;
    const k = spanTeeth(teeth, 20);
    expect(k).toBe(4);
    for (const shift of [0, 0.4, -0.3]) {
      const [one, next] = [k, k + 1].map((many) => spanOf(0.8, teeth, many, 20, shift)) as [number, number];
      const question: UnmarkedGear = {
        teeth,
        span: { teeth: k, over: about(one, 0.005) },
        spanNext: about(next, 0.005),
        shift: { from: "-0.5", to: "0.6" },
        pressureAngles: ["14.5", "20"],
      };
      const { canBe, untold } = unmarkedGear(question, two);
      expect(names(canBe)).toEqual(["0.8 at 20"]);
      expect(untold).toEqual(["addendum"]);
      // One span alone does not tell a shift from a pitch.
      const { spanNext: _, ...alone } = question;
      expect(unmarkedGear(alone, two).canBe.length).toBeGreaterThan(1);
      // Teeth that are thinner by as much read as if they were shifted inwards.
      const thin = { ...question, shift: 0, thinning: "0.3 mm" };
      expect(names(unmarkedGear(thin, two).canBe)).toEqual(shift <= 0 ? ["0.8 at 20"] : []);
    }
  });

  it("takes one shift for all readings at once", () => {
    const teeth = 24;
    const x = 0.3;
    const outside = about(0.8 * (teeth + 2 + 2 * x), 0.002);
    const span = { teeth: 3, over: about(spanOf(0.8, teeth, 3, 20, x), 0.001) };
    const question: UnmarkedGear = {
      teeth,
      outside,
      span,
      addendum: 1,
      shift: { from: "-0.5", to: "0.5" },
      pressureAngles: [20],
    };
    expect(names(unmarkedGear(question, two).canBe)).toEqual(["0.8 at 20"]);
    // Either reading alone would leave 32 DP, each with another shift.
    const { span: _, ...byTips } = question;
    const { outside: __, ...byFlanks } = question;
    expect(names(unmarkedGear(byTips, two).canBe)).toEqual(["0.8", "32 DP"]);
    expect(names(unmarkedGear(byFlanks, two).canBe)).toEqual(["0.8 at 20", "32 DP at 20"]);
    const [excluded] = unmarkedGear(question, two).cannotBe;
    expect(excluded).toEqual({ candidate: { diametralPitch: 32, pressureAngle: 20 }, against: [] });
  });

  it("is told best by how far apart it ran in its donor", () => {
    const centre = (module: number, opening: number) => about((module * (15 + 62)) / 2 + opening, 0.02);
    const canBe = (more: Partial<UnmarkedGear["donorCentre"]> & object, series = two) =>
      names(unmarkedGear({ teeth: 15, donorCentre: { centre: "1 mm", otherTeeth: 62, ...more } }, series).canBe);
    expect(canBe({ centre: centre(0.8, 0) })).toEqual(["0.8"]);
    expect(canBe({ centre: centre(25.4 / 32, 0.05) })).toEqual(["32 DP"]);
    expect(canBe({ centre: centre(0.8, 0.1), opening: "0.1 mm" })).toEqual(["0.8"]);
    expect(canBe({ centre: centre(0.8, 0.1), opening: "0 mm" })).toEqual([]);
    expect(canBe({ centre: about(0.8 * 23.5 - 0.05, 0.02), internal: true })).toEqual(["0.8"]);
    expect(canBe({ centre: about(0.8 * 23.5 + 0.05, 0.02), internal: true })).toEqual([]);
    // Shifted, both by a tenth at most: the centre that meshes without play, by another function.
    const far = meshOf({
      driver: 15,
      driven: 62,
      module: "0.8",
      driverShift: "0.1",
      drivenShift: "0.1",
    }).centreDistance!;
    const shifted = {
      teeth: 15,
      donorCentre: { centre: about(far.low.toNumber(), 0.001), otherTeeth: 62, opening: "0 mm" },
    };
    expect(unmarkedGear({ ...shifted, pressureAngles: [20] }, two).canBe).toEqual([]);
    expect(names(unmarkedGear({ ...shifted, pressureAngles: [20], shift: { from: 0, to: "0.1" } }, two).canBe)).toEqual(
      ["0.8 at 20"],
    );
  });

  it("may be worn at its tips", () => {
    const question: UnmarkedGear = { teeth: 20, outside: about(17.5, 0.01), addendum: 1 };
    expect(unmarkedGear(question, two).canBe).toEqual([]);
    expect(names(unmarkedGear({ ...question, tipWear: "0.1 mm" }, two).canBe)).toEqual(["0.8"]);
    expect(names(unmarkedGear({ ...question, tipWear: "0.1 mm" }, [{ module: "0.79" }, ...two]).canBe)).toEqual([
      "0.8",
    ]);
  });

  it("says what this measurement cannot tell apart, and what would", () => {
    // Two teeth of 0.8 and 32 DP differ by 0.029 mm over the flanks at 17 teeth, three by 0.048 at 23.
    const over = (teeth: number, k: number) => {
      // In the middle between what both would read.
      const [one, other] = [0.8, 25.4 / 32].map((module) => spanOf(module, teeth, k, 20)) as [number, number];
      const span = { teeth: k, over: about((one + other) / 2, 0.02) };
      return unmarkedGear({ teeth, span, pressureAngles: [20] }, two);
    };
    const few = over(17, 2);
    expect(few.blurs.map(({ gauge, pitches, apart }) => [gauge, names(pitches), apart.toNumber().toFixed(3)])).toEqual([
      ["span", ["0.8 at 20", "32 DP at 20"], (spanOf(0.8, 17, 2, 20) - spanOf(25.4 / 32, 17, 2, 20)).toFixed(3)],
    ]);
    expect(names(few.canBe)).toEqual(["0.8 at 20", "32 DP at 20"]);
    expect([over(23, 3).canBe, over(23, 3).blurs]).toEqual([[], []]);
    expect(few.untold).toEqual(["addendum"]);
    // With a partner like itself the axes would stand 0.106 mm apart from each other's: the best there is.
    const [best, ...others] = few.settledBy;
    expect([best!.gauge, best!.teeth, best!.settles, best!.apart.toFraction()]).toEqual([
      "donor centre",
      17,
      true,
      "17/160",
    ]);
    expect(best!.expected.map((one) => one.low.toFraction())).toEqual(["68/5", "2159/160"]);
    for (const other of others) expect(other.apart.compare(best!.apart)).toBeLessThanOrEqual(0);
    expect(few.settledBy.map(({ gauge }) => gauge)).not.toContain("span");
    expect(over(23, 3).settledBy).toEqual([]);
    // A diameter says nothing of the angle, however well it is read.
    const round = unmarkedGear({ teeth: 20, outside: "17.6 mm", addendum: 1 }, two);
    expect([round.untold, names(round.canBe)]).toEqual([["pressureAngle"], ["0.8"]]);
    // Two angles of one pitch: the axes do not tell them, the flanks do.
    const angles = unmarkedGear(
      { teeth: 32, span: { teeth: 3, over: about(6.22, 0.1) }, pressureAngles: ["14.5", "20"] },
      [{ module: "0.8" }],
    );
    expect(angles.canBe.length).toBe(2);
    expect(angles.settledBy.map(({ gauge, settles }) => [gauge, settles])).toEqual([["base pitch", true]]);
  });

  it("tells two pitches apart by a reading exactly where their figures differ by more than it is wide", () => {
    fc.assert(
      fc.property(fc.integer({ min: 6, max: 90 }), fc.integer({ min: 1, max: 200 }), (teeth, width) => {
        const read = { from: `${0.8 * (teeth + 2) - width / 2000}`, to: `${0.8 * (teeth + 2) + width / 2000}` };
        const outside = { from: `${Number(read.from).toFixed(6)} mm`, to: `${Number(read.to).toFixed(6)} mm` };
        const { blurs } = unmarkedGear({ teeth, outside, addendum: 1 }, two);
        // In thousandths: 0.8 − 25.4 / 32 = 6.25 for each of z + 2 teeth.
        expect(blurs.length > 0).toBe(6.25 * (teeth + 2) <= width);
      }),
    );
  });

  it("looks among the usual pitches where none are given, each once", () => {
    const texts = usualPitches().map((pitch) => JSON.stringify(pitch));
    expect(new Set(texts).size).toBe(texts.length);
    for (const pitch of [{ module: "0.5" }, { module: "1.25" }, { diametralPitch: "64" }])
      expect(usualPitches()).toContainEqual(pitch);
    expect(names(unmarkedGear({ teeth: 20, outside: about(17.6, 0.02), addendum: 1 }).canBe)).toEqual(["0.8"]);
    const angled = unmarkedGear({ teeth: 22, span: { teeth: 3, over: about(3.844, 0.005) } }, [
      { module: "0.5", pressureAngle: 20 },
    ]);
    expect(angled.canBe).toEqual([{ module: "0.5", pressureAngle: 20 }]);
  });

  it("refuses figures that are none", () => {
    const gear: UnmarkedGear = { teeth: 20, outside: "17.6 mm" };
    const refused = (question: UnmarkedGear, code: string, at: string, series = two) =>
      expect(() => unmarkedGear(question, series)).toThrowError(error(code, at));
    refused({ teeth: 20 }, "nothing-measured", "outside");
    refused({ ...gear, teeth: 0 }, "not-a-count", "teeth");
    refused({ ...gear, outside: "0 mm" }, "out-of-range", "outside");
    refused({ ...gear, outside: { from: "18 mm", to: "17 mm" } }, "ends-reversed", "outside");
    refused({ ...gear, addendum: 0 }, "out-of-range", "addendum");
    refused({ ...gear, shift: { from: 1, to: 0 } }, "out-of-range", "shift");
    refused({ ...gear, tipWear: "-1 mm" }, "out-of-range", "tipWear");
    refused({ teeth: 20, spanNext: "3 mm" }, "span-missing", "spanNext");
    refused({ teeth: 20, span: { teeth: 0, over: "3 mm" } }, "not-a-count", "span");
    refused({ teeth: 20, span: { teeth: 2, over: "3 mm" }, thinning: "-1 mm" }, "out-of-range", "thinning");
    refused({ teeth: 20, span: { teeth: 2, over: "3 mm" }, pressureAngles: [50] }, "out-of-range", "pressureAngle");
    refused({ teeth: 20, donorCentre: { centre: "9 mm", otherTeeth: 1.5 } }, "not-a-count", "otherTeeth");
    refused(
      { teeth: 20, donorCentre: { centre: "9 mm", otherTeeth: 9, opening: { from: "1 mm", to: "0 mm" } } },
      "ends-reversed",
      "opening",
    );
    refused(gear, "pitch-not-given", "series", [{}]);
    refused(gear, "out-of-range", "module", [{ module: 0 }]);
  });

  it("takes an empty list of angles as one that is not given", () => {
    for (const given of [
      { teeth: 17, outside: "15.2 mm", tipWear: "0.4 mm" },
      { teeth: 17, span: { teeth: 2, over: { from: "3.6 mm", to: "3.9 mm" } } },
    ])
      expect(unmarkedGear({ ...given, pressureAngles: [] }, two)).toEqual(unmarkedGear(given, two));
  });

  it("answers whatever is asked with finite figures, or throws an error of ours", () => {
    const length = fc.oneof(anyLength, fc.record({ from: anyLength, to: anyLength }));
    const few = fc.integer({ min: 1, max: 60 });
    const question: fc.Arbitrary<UnmarkedGear> = fc
      .tuple(
        fc.oneof(few, anyCount),
        partly<Omit<UnmarkedGear, "teeth">>({
          outside: length,
          jaws: fc.boolean(),
          span: fc.record({ teeth: fc.oneof(few, anyCount), over: length }),
          spanNext: length,
          donorCentre: fc.record({
            centre: length,
            otherTeeth: fc.oneof(few, anyCount),
            internal: fc.boolean(),
            opening: length,
          }),
          addendum: anyNumber,
          shift: fc.oneof(anyNumber, fc.record({ from: anyNumber, to: anyNumber })),
          pressureAngles: fc.array(fc.oneof(anyNumber, fc.constant("20")), { maxLength: 2 }),
          tipWear: anyLength,
          thinning: anyLength,
        }),
      )
      .map(([teeth, rest]) => ({ ...rest, teeth }));
    fc.assert(
      fc.property(
        question,
        fc.array(partly<Toothed>({ module: anyNumber }), { maxLength: 2 }),
        fc.boolean(),
        (one, series, usual) => {
          expect(faultOf(() => unmarkedGear(one, usual ? two : series))).toEqual([]);
        },
      ),
      { numRuns: 1500 },
    );
  });
});
