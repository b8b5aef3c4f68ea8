import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type MeshwrightError, rational } from "../../src/exact/index.js";
import {
  beltOf,
  centreDistance,
  checkPair,
  checkTeeth,
  comparePitch,
  gearOutline,
  jawShare,
  meshingPhase,
  meshOf,
  moduleOf,
  outlinePoints,
  pitchDiameter,
  pressureAngleOf,
  radiiOf,
  recurrenceOf,
  rootOf,
  spanLength,
  tipDiameter,
  wormOf,
  type BeltQuestion,
  type GearShape,
  type ToothPair,
} from "../../src/gears/index.js";
import { bounded } from "../../src/exact/index.js";
import { anyCount, anyLength, anyNumber, faultOf, partly } from "../wild.js";

const error = (code: string, at: string) => expect.objectContaining({ code, at }) as MeshwrightError;
const pair = { driver: 15, driven: 62, module: "0.8" } as const;

const anyPair: fc.Arbitrary<ToothPair> = fc
  .tuple(
    fc.record({ driver: anyCount, driven: anyCount }),
    partly({
      module: anyNumber,
      diametralPitch: anyNumber,
      pressureAngle: anyNumber,
      helixAngle: anyNumber,
      internal: fc.boolean(),
      form: fc.constantFrom("spur" as const, "helical" as const, "helical" as const, "bevel" as const),
      driverShift: anyNumber,
      drivenShift: anyNumber,
      driverTip: anyLength,
      drivenTip: anyLength,
      thinning: anyLength,
    }),
  )
  .map(([counts, rest]): ToothPair => ({ ...rest, ...counts }));

/** Counts and a pitch that are sound: what remains is geometry that may not be. */
const soundPair: fc.Arbitrary<ToothPair> = fc
  .record({
    driver: fc.integer({ min: 1, max: 90 }),
    driven: fc.integer({ min: 1, max: 200 }),
    module: fc.constantFrom("0.8", "1", "1/3", "0.000001", "40000"),
    pressureAngle: fc.constantFrom("0.001", "14.5", "20", "25", "35", "45"),
    internal: fc.boolean(),
    helix: fc.option(fc.constantFrom("-89", "0", "30", "89")),
    driverShift: fc.integer({ min: -400, max: 400 }).map((n) => n / 100),
    drivenShift: fc.integer({ min: -400, max: 400 }).map((n) => n / 100),
    thinning: fc.constantFrom("0 mm", "0.1 mm", "90 mm"),
  })
  .map(({ helix, ...rest }): ToothPair => (helix === null ? rest : { ...rest, form: "helical", helixAngle: helix }));

describe("figures that cannot be those of gears", () => {
  it("are refused with a code and a place, whoever gives them", () => {
    for (const driver of [0, -5, 15.5, NaN, Infinity, 1_000_001]) {
      expect(() => meshOf({ ...pair, driver })).toThrowError(error("not-a-count", "driver"));
      expect(() => meshOf({ ...pair, driven: driver })).toThrowError(error("not-a-count", "driven"));
      expect(() => checkPair({ ...pair, driver })).toThrowError(error("not-a-count", "driver"));
      expect(() => centreDistance({ ...pair, driver })).toThrowError(error("not-a-count", "driver"));
      expect(() => recurrenceOf(driver, 10)).toThrowError(error("not-a-count", "driver"));
      expect(() => recurrenceOf(10, driver)).toThrowError(error("not-a-count", "driven"));
      expect(() => checkTeeth(driver, "here")).toThrowError(error("not-a-count", "here"));
      expect(() => radiiOf({ teeth: driver, module: 1 })).toThrowError(error("not-a-count", "teeth"));
      expect(() => pitchDiameter({ pitch: rational(2), teeth: driver })).toThrowError(error("not-a-count", "teeth"));
    }
    expect(() => checkTeeth(15.5, "drivers")).toThrowError(
      "Found 15.5 teeth; expected a whole number from 1 to 1000000.",
    );
    for (const module of [0, "0", -1, "-0.8", "1e300", "1e-300"]) {
      expect(() => meshOf({ ...pair, module })).toThrowError(error("out-of-range", "module"));
      expect(() => moduleOf({ module })).toThrowError(error("out-of-range", "module"));
      expect(() => comparePitch({ module: 1 }, { module })).toThrowError(error("out-of-range", "module"));
      const counts = { driver: 15, driven: 62, diametralPitch: module };
      expect(() => meshOf(counts)).toThrowError(error("out-of-range", "diametralPitch"));
      // Also where nothing else would be known.
      expect(() => meshOf({ ...pair, form: "bevel", module })).toThrowError(error("out-of-range", "module"));
    }
    for (const pressureAngle of [0, -20, 46, 90, 180]) {
      expect(() => meshOf({ ...pair, pressureAngle })).toThrowError(error("out-of-range", "pressureAngle"));
      expect(() => pressureAngleOf({ pressureAngle })).toThrowError(error("out-of-range", "pressureAngle"));
    }
    for (const helixAngle of [180, 90, -90, 89.5, "1e9"])
      expect(() => meshOf({ ...pair, form: "helical", helixAngle })).toThrowError(error("out-of-range", "helixAngle"));
    for (const tip of ["0 mm", "-1 mm"]) {
      expect(() => meshOf({ ...pair, driverTip: tip })).toThrowError(error("out-of-range", "driverTip"));
      expect(() => meshOf({ ...pair, drivenTip: tip })).toThrowError(error("out-of-range", "drivenTip"));
    }
    expect(() => meshOf({ ...pair, thinning: "-0.1 mm" })).toThrowError(error("out-of-range", "thinning"));
    expect(() => meshOf({ ...pair, driverShift: "1e300" })).toThrowError(error("out-of-range", "driverShift"));
    expect(() => meshOf(pair, "1e300 m")).toThrowError(error("out-of-range", "opening"));
    expect(() => rootOf(bounded(-2, -1))).toThrowError(error("out-of-range", "square"));
    expect(rootOf(bounded(-1, 4)).high.toFraction()).toBe("2/1");
  });

  it("are refused for a picture as well", () => {
    const shape = { teeth: 20, module: 1 };
    const refused = (more: Partial<GearShape>, at: string, code = "out-of-range") => {
      expect(() => radiiOf({ ...shape, ...more })).toThrowError(error(code, at));
      expect(() => gearOutline({ ...shape, ...more })).toThrowError(error(code, at));
    };
    for (const module of [0, -1, NaN, Infinity]) refused({ module }, "module");
    for (const pressureAngle of [0, 90, -20, NaN]) refused({ pressureAngle }, "pressureAngle");
    for (const shift of [NaN, Infinity]) refused({ shift }, "shift");
    for (const tip of [0, -1, NaN]) refused({ tip }, "tip");
    for (const root of [0, -1, NaN]) refused({ root }, "root");
    refused({ tip: 5 }, "teeth", "tooth-missing");
    refused({ internal: true, tip: 13 }, "teeth", "tooth-missing");
    for (const teeth of [1, 2]) refused({ teeth }, "teeth", "tooth-missing");
    refused({ shift: -12 }, "teeth", "tooth-missing");
    for (const phase of [NaN, Infinity]) {
      expect(() => outlinePoints(shape, { phase })).toThrowError(error("out-of-range", "phase"));
      expect(() => meshingPhase(shape, phase, shape, 0)).toThrowError(error("out-of-range", "phase"));
      expect(() => meshingPhase(shape, 0, shape, phase)).toThrowError(error("out-of-range", "towards"));
    }
    for (const scale of [0, NaN])
      expect(() => outlinePoints(shape, { scale })).toThrowError(error("out-of-range", "scale"));
    for (const pieces of [0, 1.5, NaN])
      expect(() => outlinePoints(shape, { pieces })).toThrowError(error("not-a-count", "pieces"));
  });
});

describe("geometry that is not defined", () => {
  const known = (more: Partial<ToothPair>) => meshOf({ driver: 20, driven: 40, module: 1, ...more }).notKnown;

  it("is not known, and says why", () => {
    // Accepted by any reader, and once an error about NaN: shifts so far below zero that no centre distance will do.
    expect(known({ driverShift: "-0.6", drivenShift: "-0.9" })).toBe("no-centre");
    expect(known({ driverShift: "-0.5", drivenShift: "-0.5" })).toBeUndefined();
    // 10 teeth shifted by a whole module come to a point; a wide rack does not.
    expect(known({ driver: 10, driverShift: 1 })).toBe("tooth-pointed");
    expect(known({ driver: 10, driverShift: "0.5" })).toBeUndefined();
    // At 45 degrees a rack's tooth is π/4 high before it comes to a point: less than an addendum.
    expect(known({ pressureAngle: 45 })).toBe("tooth-pointed");
    // A tip below the base circle has no involute; one below the root is none.
    expect(known({ driverTip: "18.7 mm", driverShift: 0 })).toBe("tooth-missing");
    expect(known({ driverTip: "17.4 mm", driverShift: 0 })).toBe("tooth-missing");
    expect(known({ driverTip: "19 mm", driverShift: 0 })).toBeUndefined();
    expect(known({ driverTip: "26 mm", driverShift: 0 })).toBe("tooth-pointed");
    // Two teeth leave a root circle of less than nothing.
    for (const driver of [1, 2]) expect(known({ driver })).toBe("tooth-missing");
    expect(known({ driver: 3 })).toBeUndefined();
    // Thinned by more than there is at the tips.
    expect(known({ thinning: "1.5 mm" })).toBe("tooth-pointed");
    expect(known({ thinning: "0.2 mm" })).toBeUndefined();
    // The spaces of a ring narrow outwards: of five they close before its root circle.
    expect(known({ internal: true, driver: 4, driven: 5 })).toBe("tooth-missing");
  });

  it("leaves every figure out that hangs on it", () => {
    const mesh = meshOf({ driver: 10, driven: 30, module: 1, driverShift: 1 });
    expect(mesh).toEqual({ commonFactor: 10, hunting: false, driverTurns: 3, notKnown: "tooth-pointed" });
    expect(centreDistance({ driver: 10, driven: 30, module: 1, driverShift: 1 })).toBeUndefined();
  });

  it("knows a tooth's thickness at the tips as its involute runs out", () => {
    // Where a tooth of z teeth comes to a point: the angle of the involute there, worked out by halving.
    for (const [teeth, degrees] of [
      [12, 20],
      [25, 20],
      [40, 25],
    ] as const) {
      const angle = (degrees * Math.PI) / 180;
      const half = Math.PI / 2 / teeth + Math.tan(angle) - angle;
      let [low, high] = [angle, 1.4];
      for (let n = 0; n < 60; n++) {
        const middle = (low + high) / 2;
        if (Math.tan(middle) - middle < half) low = middle;
        else high = middle;
      }
      const pointed = (teeth * Math.cos(angle)) / Math.cos(low);
      const at = (diameter: number) =>
        known({ driver: teeth, pressureAngle: degrees, driverTip: `${diameter.toFixed(6)} mm`, driverShift: 0 });
      expect([at(pointed - 0.001), at(pointed + 0.001)]).toEqual([undefined, "tooth-pointed"]);
    }
  });
});

describe("whatever is asked", () => {
  it("has finite figures, or none, or an error of ours", () => {
    const opening = fc.oneof(anyLength, fc.constant("0.1 mm"));
    fc.assert(
      fc.property(fc.oneof(anyPair, soundPair), opening, (one, open) => {
        expect(faultOf(() => meshOf(one, open))).toEqual([]);
        expect(faultOf(() => centreDistance(one))).toEqual([]);
        expect(faultOf(() => checkPair(one))).toEqual([]);
        expect(faultOf(() => comparePitch(one, { module: 1 }))).toEqual([]);
      }),
      { numRuns: 2000 },
    );
  });

  it("answers either with all of a pair's figures or with a reason", () => {
    let both = 0;
    fc.assert(
      fc.property(soundPair, fc.integer({ min: 0, max: 100 }), (one, hundredths) => {
        const mesh = meshOf(one, `${hundredths / 100} mm`);
        const figures = [mesh.operatingCentre, mesh.contactRatio, mesh.normalBacklash, mesh.circumferentialBacklash];
        expect(figures.every((figure) => figure === undefined)).toBe(mesh.notKnown !== undefined);
        expect(figures.some((figure) => figure === undefined)).toBe(mesh.notKnown !== undefined);
        both += mesh.notKnown === undefined ? 1 : 0;
        if (mesh.notKnown !== undefined) return;
        // Opened from tight there is play, inside a ring as well; set tight, there is none.
        if (hundredths) expect(mesh.normalBacklash!).toBeGreaterThan(0);
        else if (one.thinning === "0 mm")
          expect(Math.abs(mesh.normalBacklash!)).toBeLessThan(1e-10 * mesh.operatingCentre!);
      }),
      { numRuns: 1000 },
    );
    expect(both).toBeGreaterThan(100);
  });

  it("holds for belts, worms, single gears and outlines", () => {
    const belt: fc.Arbitrary<BeltQuestion> = fc
      .tuple(
        fc.record({ driver: anyCount, driven: anyCount }),
        partly({
          chain: fc.boolean(),
          pitch: anyLength,
          beltTeeth: anyCount,
          centre: anyLength,
          tensioner: fc.boolean(),
          backDriven: fc.boolean(),
          available: fc.array(anyCount, { maxLength: 4 }),
          offsetLink: fc.boolean(),
        }),
      )
      .map(([counts, rest]): BeltQuestion => ({ ...rest, ...counts }));
    fc.assert(
      fc.property(belt, (question) => {
        expect(faultOf(() => beltOf(question))).toEqual([]);
      }),
      { numRuns: 1000 },
    );
    fc.assert(
      fc.property(anyCount, anyCount, anyNumber, anyLength, anyNumber, (starts, teeth, module, diameter, running) => {
        expect(faultOf(() => wormOf({ starts, teeth, module, diameter }, { running, resting: running }))).toEqual([]);
      }),
      { numRuns: 1000 },
    );
    fc.assert(
      fc.property(anyCount, anyNumber, anyNumber, anyCount, (teeth, module, shift, spanned) => {
        const gear = () => ({ teeth, module: rational(module), shift: bounded(shift) });
        expect(faultOf(() => tipDiameter(gear()))).toEqual([]);
        expect(faultOf(() => jawShare(gear()))).toEqual([]);
        expect(faultOf(() => spanLength(gear(), spanned))).toEqual([]);
      }),
      { numRuns: 500 },
    );
    const shape: fc.Arbitrary<GearShape> = fc
      .tuple(
        fc.record({
          teeth: fc.oneof(fc.integer({ min: 1, max: 60 }), fc.constantFrom(0, 1.5, NaN)),
          module: fc.double(),
        }),
        partly({
          pressureAngle: fc.double(),
          shift: fc.double(),
          internal: fc.boolean(),
          tip: fc.double(),
          root: fc.double(),
        }),
      )
      .map(([counts, rest]): GearShape => ({ ...rest, ...counts }));
    const sound: fc.Arbitrary<GearShape> = fc.record({
      teeth: fc.integer({ min: 1, max: 60 }),
      module: fc.constantFrom(0.1, 1, 30),
      pressureAngle: fc.double({ min: 1, max: 89, noNaN: true }),
      shift: fc.double({ min: -2, max: 2, noNaN: true }),
      internal: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.oneof(shape, sound), (one) => {
        expect(faultOf(() => outlinePoints(one))).toEqual([]);
        expect(faultOf(() => radiiOf(one))).toEqual([]);
      }),
      { numRuns: 1000 },
    );
  });
});
