import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bounded } from "../../src/exact/index.js";
import { centreDistance, comparePitch, meshOf, moduleOf, recurrenceOf, type ToothPair } from "../../src/gears/index.js";
import { inverseInvolute, involute } from "../../src/gears/involute.js";
import { pressureAngleOf } from "../../src/gears/pitch.js";

const exact = (fraction: string) => ({ low: fraction, high: fraction });

interface Teeth {
  readonly m: number;
  readonly z1: number;
  readonly z2: number;
  readonly ring: boolean;
  readonly alpha: number;
  readonly x1: number;
  readonly x2: number;
  readonly thinning: number;
}

/**
 * Backlash as one would feel it: a tooth of the driver in the middle of a gap of the driven gear, turned until some point
 * of its flank meets the gap's flank. Transverse, knowing no formula but the involute's own.
 */
function feltBacklash({ m, z1, z2, ring, alpha, x1, x2, thinning }: Teeth, centre: number, tips: number[]): number {
  const inv = (angle: number): number => Math.tan(angle) - angle;
  const base = [z1, z2].map((z) => ((m * z) / 2) * Math.cos(alpha));
  const half1 = (Math.PI / 2 + 2 * x1 * Math.tan(alpha) - thinning / m) / z1;
  // Half the angles of a tooth of one and of a gap of the other, at the reference circle.
  const tooth2 = (Math.PI / 2 + 2 * x2 * Math.tan(alpha)) / z2;
  const gap2 = Math.PI / z2 - tooth2;
  const limit = (radius: number): number => {
    // Half the gap's angle at a radius of the driven gear: a gap between teeth that narrow outwards, or of a ring whose
    // gap is shaped like a tooth.
    const lean = inv(alpha) - inv(Math.acos(Math.min(1, base[1]! / radius)));
    return ring ? gap2 + lean : gap2 - lean;
  };
  let least = Infinity;
  const steps = 4000;
  for (let n = 0; n <= steps; n++) {
    // Evenly along the line of action.
    const radius = Math.hypot(base[0]!, (Math.sqrt((tips[0]! / 2) ** 2 - base[0]! ** 2) * n) / steps);
    const own = half1 + inv(alpha) - inv(Math.acos(base[0]! / radius));
    // A point of the flank, turned by `turn` towards the driven gear's flank.
    const gapLeft = (turn: number): number => {
      const angle = own + turn;
      const [x, y] = [radius * Math.cos(angle), radius * Math.sin(angle)];
      const [along, across] = ring ? [centre + x, y] : [centre - x, y];
      const distance = Math.hypot(along, across);
      const inside = ring ? distance < tips[1]! / 2 : distance > tips[1]! / 2;
      if (inside || distance < base[1]!) return 1;
      return limit(distance) - Math.atan2(across, along);
    };
    // A quarter of a pitch either way: further on, the point would be past the driven gear's tips.
    let [low, high] = [-Math.PI / 2 / z1, Math.PI / 2 / z1];
    if (gapLeft(low) < 0 || gapLeft(high) > 0) continue;
    for (let k = 0; k < 50; k++) {
      const middle = (low + high) / 2;
      if (gapLeft(middle) > 0) low = middle;
      else high = middle;
    }
    least = Math.min(least, low);
  }
  const pitchRadius = ring ? (centre * z1) / (z2 - z1) : (centre * z1) / (z1 + z2);
  return 2 * least * pitchRadius;
}

/** Pairs of teeth in contact, on average over one pitch, counted along the line of action. */
function countedContact({ m, z1, z2, alpha }: Teeth, centre: number, tips: number[]): number {
  const base = [z1, z2].map((z) => ((m * z) / 2) * Math.cos(alpha)) as [number, number];
  const line = Math.sqrt(centre ** 2 - (base[0] + base[1]) ** 2);
  const pitch = (2 * Math.PI * base[0]) / z1;
  let touching = 0;
  const steps = 20_000;
  for (let n = 0; n < steps; n++)
    for (let tooth = -6; tooth <= 12; tooth++) {
      const place = (n / steps + tooth) * pitch;
      const inDriver = Math.hypot(base[0], place) <= tips[0]! / 2;
      const inDriven = Math.hypot(base[1], line - place) <= tips[1]! / 2;
      // Full involutes: where one ends at its base circle, its mirror image goes on.
      if (inDriver && inDriven) touching++;
    }
  return touching / steps;
}

describe("a tooth pair", () => {
  it("practice 18: 50/14 at 20 DP stand 1.600 in apart in theory", () => {
    expect(centreDistance({ driver: 14, driven: 50, diametralPitch: 20 })!.toJSON()).toEqual(exact("1016/25"));
    expect(meshOf({ driver: 14, driven: 50, diametralPitch: 20 }, "0.003 in").operatingCentre).toBeCloseTo(40.7162, 9);
  });

  it("practice 17: 93/56 at 64 DP stand 149/128 in apart", () => {
    expect(centreDistance({ driver: 56, driven: 93, diametralPitch: "64" })!.toJSON()).toEqual(exact("18923/640"));
  });

  it("practice 19: 100/20 meets again every 5 pinion turns; 21/22 and 41/10 hunt", () => {
    expect(recurrenceOf(20, 100)).toEqual({ commonFactor: 20, hunting: false, driverTurns: 5 });
    expect(recurrenceOf(22, 21)).toEqual({ commonFactor: 1, hunting: true, driverTurns: 21 });
    expect(recurrenceOf(10, 41)).toEqual({ commonFactor: 1, hunting: true, driverTurns: 41 });
  });

  it("counts the turns until two teeth meet again as a marker on each would", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 1, max: 60 }), (driver, driven) => {
        let teeth = driver;
        while (teeth % driven) teeth += driver;
        expect(recurrenceOf(driver, driven).driverTurns).toBe(teeth / driver);
      }),
    );
  });

  it("has reference, base, root and tip diameters", () => {
    const { driver, driven, module } = meshOf({ driver: 15, driven: 62, module: "0.8" });
    expect(module!.toFraction()).toBe("4/5");
    expect(driver!.reference.toJSON()).toEqual(exact("12/1"));
    expect(driver!.root.toJSON()).toEqual(exact("10/1"));
    expect(driver!.tip.toJSON()).toEqual(exact("68/5"));
    expect(driven!.root.toJSON()).toEqual(exact("238/5"));
    expect(driver!.base.low.toNumber()).toBeCloseTo(12 * Math.cos(Math.PI / 9), 9);
    expect(driver!.base.contains(driver!.base.low)).toBe(true);
    expect(driver!.base.isExact).toBe(false);
  });

  it("says why geometry is not known, and still how the teeth come round", () => {
    const counts = { driver: 12, driven: 36 };
    for (const form of ["bevel", "hypoid", "crown"] as const) {
      expect(meshOf({ ...counts, module: 1, form })).toEqual({
        commonFactor: 12,
        hunting: false,
        driverTurns: 3,
        notKnown: "angle-gears",
      });
      expect(centreDistance({ ...counts, module: 1, form })).toBeUndefined();
    }
    expect(meshOf(counts).notKnown).toBe("pitch-not-given");
    expect(meshOf({ ...counts, module: 1, form: "helical" }).notKnown).toBe("helix-not-given");
    expect(meshOf({ ...counts, module: 1, driverTip: "14.6 mm" }).notKnown).toBe("shift-not-given");
    expect(meshOf({ ...counts, module: 1, drivenTip: "37.5 mm" }).notKnown).toBe("shift-not-given");
    expect(meshOf({ ...counts, module: 1, driverTip: "14 mm", drivenTip: "38 mm" }).notKnown).toBeUndefined();
    expect(meshOf({ driver: 36, driven: 36, module: 1, internal: true }).notKnown).toBe("ring-too-small");
    expect(meshOf({ driver: 35, driven: 36, module: 1, internal: true }).centreDistance!.toJSON()).toEqual(
      exact("1/2"),
    );
  });

  it("takes a tip diameter with its shift, zero included", () => {
    const cut = meshOf({ driver: 20, driven: 40, module: 1, driverTip: "21.6 mm", driverShift: 0 });
    expect(cut.driver!.tip.toJSON()).toEqual(exact("108/5"));
    expect(cut.contactRatio!).toBeLessThan(meshOf({ driver: 20, driven: 40, module: 1 }).contactRatio!);
  });

  it("knows undercut as fewer teeth than 2 / sin² of the pressure angle, less with shift, more room with helix", () => {
    const undercut = (pair: Partial<ToothPair>) =>
      meshOf({ driver: 20, driven: 60, module: 1, ...pair }).driver!.undercut;
    expect([undercut({ driver: 17 }), undercut({ driver: 18 })]).toEqual([true, false]);
    expect([undercut({ driver: 31, pressureAngle: "14.5" }), undercut({ driver: 32, pressureAngle: "14.5" })]).toEqual([
      true,
      false,
    ]);
    // 2 / sin² 30° is 8, which floating point may miss.
    expect([undercut({ driver: 7, pressureAngle: 30 }), undercut({ driver: 8, pressureAngle: 30 })]).toEqual([
      true,
      false,
    ]);
    expect([undercut({ driver: 11, driverShift: "0.4" }), undercut({ driver: 10, driverShift: "0.4" })]).toEqual([
      false,
      true,
    ]);
    // cos 30° × 2 / sin² αt with αt = atan(tan 20° / cos 30°): 11.6 teeth.
    const helical = { form: "helical", helixAngle: 30 } as const;
    expect([undercut({ driver: 11, ...helical }), undercut({ driver: 12, ...helical })]).toEqual([true, false]);
    expect(meshOf({ driver: 10, driven: 16, module: 1, internal: true }).driven!.undercut).toBe(false);
  });

  it("practice 20 and the finest of DESIGN's messages: near is not equal", () => {
    const near = comparePitch({ module: "0.8" }, { diametralPitch: 32 })!;
    expect([near.pitch, near.coarser.toDecimal({ maximumFractionDigits: 4 })]).toEqual(["near", "0.0079"]);
    expect(moduleOf({ diametralPitch: 48 })!.toDecimal({ maximumFractionDigits: 3 })).toBe("0.529");
    expect(comparePitch({ diametralPitch: 48 }, { module: "0.5" })!.pitch).toBe("different");
    expect(comparePitch({ module: "0.500" }, { module: "1/2" })!.pitch).toBe("same");
    expect(comparePitch({ diametralPitch: "25.4" }, { module: 1 })!.pitch).toBe("same");
    expect(comparePitch({ module: 1, pressureAngle: "14.5" }, { module: 1 })).toMatchObject({
      pitch: "different",
      sameAngle: false,
    });
    expect(comparePitch({ module: 1, pressureAngle: "20.0" }, { module: 1 })!.sameAngle).toBe(true);
    expect(comparePitch({ module: "1.025" }, { module: 1 })!.pitch).toBe("different");
    expect(comparePitch({ module: "1.0249" }, { module: 1 })!.pitch).toBe("near");
    expect(comparePitch({ module: "0.9751" }, { module: 1 })!.pitch).toBe("near");
    expect(comparePitch({}, { module: 1 })).toBeUndefined();
    expect(comparePitch({ module: 1 }, {})).toBeUndefined();
    expect(pressureAngleOf({}).toFraction()).toBe("20/1");
  });

  it("inverts the involute function", () => {
    for (let degrees = 0; degrees <= 80; degrees += 0.5) {
      const angle = (degrees * Math.PI) / 180;
      expect(inverseInvolute(involute(angle))).toBeCloseTo(angle, 11);
    }
    for (const steep of [88, 89.9, 89.999]) {
      const angle = (steep * Math.PI) / 180;
      expect(Math.tan(inverseInvolute(involute(angle))!) / Math.tan(angle)).toBeCloseTo(1, 9);
    }
    expect(inverseInvolute(0)).toBe(0);
    for (const none of [-0.001, NaN]) expect(inverseInvolute(none)).toBeUndefined();
  });

  it("finds the centre distance of shifted gears where their teeth touch without backlash", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 24, max: 40 }),
        fc.integer({ min: 24, max: 80 }),
        fc.integer({ min: -30, max: 60 }),
        fc.integer({ min: -30, max: 60 }),
        (z1, z2, hundredths1, hundredths2) => {
          const [x1, x2] = [hundredths1 / 100, hundredths2 / 100];
          const pair = { driver: z1, driven: z2, module: 1, driverShift: x1, drivenShift: x2 };
          const centre = centreDistance(pair)!;
          expect(centre.isExact).toBe(x1 + x2 === 0);
          const teeth = { m: 1, z1, z2, ring: false, alpha: Math.PI / 9, x1, x2, thinning: 0 };
          const tips = [z1 + 2 + 2 * x1, z2 + 2 + 2 * x2];
          expect(feltBacklash(teeth, centre.low.toNumber(), tips)).toBeCloseTo(0, 5);
        },
      ),
      { numRuns: 15 },
    );
    expect(
      centreDistance({ driver: 15, driven: 30, module: 1, driverShift: "0.3", drivenShift: "-0.3" })!.toJSON(),
    ).toEqual(exact("45/2"));
  });

  it("feels the backlash that it computes: opened, thinned, shifted", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 32, max: 40 }),
        fc.integer({ min: 32, max: 80 }),
        fc.constantFrom(14.5, 20, 25),
        fc.integer({ min: 0, max: 40 }),
        fc.integer({ min: -20, max: 30 }),
        fc.integer({ min: 0, max: 10 }),
        (z1, z2, degrees, opened, shifted, thinned) => {
          const [opening, x1, thinning] = [opened / 100, shifted / 100, thinned / 100];
          const pair = {
            driver: z1,
            driven: z2,
            module: "1.25",
            pressureAngle: degrees,
            driverShift: x1,
            thinning: `${thinning} mm`,
          };
          const mesh = meshOf(pair, `${opening} mm`);
          const alpha = (degrees * Math.PI) / 180;
          const teeth = { m: 1.25, z1, z2, ring: false, alpha, x1, x2: 0, thinning };
          const tips = [1.25 * (z1 + 2 + 2 * x1), 1.25 * (z2 + 2)];
          const felt = feltBacklash(teeth, mesh.operatingCentre!, tips);
          expect(mesh.circumferentialBacklash).toBeCloseTo(felt, 4);
          const angle = (mesh.operatingPressureAngle! * Math.PI) / 180;
          expect(mesh.normalBacklash).toBeCloseTo(felt * Math.cos(angle), 4);
          expect(mesh.contactRatio).toBeCloseTo(countedContact(teeth, mesh.operatingCentre!, tips), 2);
        },
      ),
      { numRuns: 20 },
    );
  });

  it("feels the backlash of a gear inside a ring, which an opening gives by bringing them closer", () => {
    for (const [z1, z2, opening, x1] of [
      [20, 60, 0.1, 0],
      [17, 45, 0.05, 0.2],
      [14, 50, 0.05, 0],
      [16, 72, -0.05, -0.3],
    ] as const) {
      const pair = { driver: z1, driven: z2, module: 1, internal: true, driverShift: x1 };
      const mesh = meshOf(pair, `${opening} mm`);
      const theoretical = mesh.centreDistance!.low.toNumber();
      expect(mesh.operatingCentre).toBeCloseTo(theoretical - opening, 12);
      const teeth = { m: 1, z1, z2, ring: true, alpha: Math.PI / 9, x1, x2: 0, thinning: 0 };
      const felt = feltBacklash(teeth, mesh.operatingCentre!, [z1 + 2 + 2 * x1, z2 - 2]);
      expect(mesh.circumferentialBacklash).toBeCloseTo(felt, 4);
      expect(Math.sign(mesh.circumferentialBacklash!)).toBe(Math.sign(opening));
    }
    const { driven } = meshOf({ driver: 20, driven: 60, module: 1, internal: true });
    expect([driven!.tip, driven!.root, driven!.reference].map((one) => one.low.toFraction())).toEqual([
      "58/1",
      "125/2",
      "60/1",
    ]);
  });

  it("gives by an opening about 2 × opening × tan α of play, of outside teeth and of a ring alike", () => {
    for (const internal of [false, true])
      for (const [driver, driven, degrees] of [
        [14, 50, 20],
        [15, 62, 20],
        [31, 90, 14.5],
      ] as const) {
        const pair = { driver, driven, module: 1, pressureAngle: degrees, internal };
        const mesh = meshOf(pair, "0.05 mm");
        const alpha = (degrees * Math.PI) / 180;
        const about = 2 * 0.05 * Math.tan(alpha);
        expect(mesh.circumferentialBacklash! / about).toBeGreaterThan(0.96);
        expect(mesh.circumferentialBacklash! / about).toBeLessThan(1.04);
        const working = (mesh.operatingPressureAngle! * Math.PI) / 180;
        expect(mesh.normalBacklash).toBeCloseTo(mesh.circumferentialBacklash! * Math.cos(working), 12);
      }
    // 14 in 50, opened by 0.05 mm: the play lies between what the angles before and after the opening give.
    const { circumferentialBacklash: play, operatingPressureAngle } = meshOf(
      { driver: 14, driven: 50, module: 1, internal: true },
      "0.05 mm",
    );
    expect(play!).toBeGreaterThan(0.1 * Math.tan((operatingPressureAngle! * Math.PI) / 180));
    expect(play!).toBeLessThan(0.1 * Math.tan(Math.PI / 9));
  });

  it("works helical gears out by their transverse section", () => {
    const pair = { driver: 18, driven: 40, module: 1, form: "helical", helixAngle: 30 } as const;
    const mesh = meshOf(pair, "0.1 mm");
    const cos = Math.cos(Math.PI / 6);
    const transverse = Math.atan(Math.tan(Math.PI / 9) / cos);
    expect(mesh.centreDistance!.isExact).toBe(false);
    expect(mesh.centreDistance!.low.toNumber()).toBeCloseTo(29 / cos, 8);
    expect(mesh.driver!.tip.high.toNumber()).toBeCloseTo(18 / cos + 2, 8);
    expect(mesh.driver!.root.high.toNumber()).toBeCloseTo(18 / cos - 2.5, 8);
    expect(mesh.driver!.base.high.toNumber()).toBeCloseTo((18 / cos) * Math.cos(transverse), 8);
    const teeth = { m: 1 / cos, z1: 18, z2: 40, ring: false, alpha: transverse, x1: 0, x2: 0, thinning: 0 };
    const tips = [18 / cos + 2, 40 / cos + 2];
    const felt = feltBacklash(teeth, mesh.operatingCentre!, tips);
    expect(mesh.circumferentialBacklash).toBeCloseTo(felt, 4);
    expect(mesh.contactRatio).toBeCloseTo(countedContact(teeth, mesh.operatingCentre!, tips), 2);
    // Across the flank: by the angle there and by the lean of the tooth on the base cylinder, tan βb = tan β cos αt.
    const baseHelix = Math.atan(Math.tan(Math.PI / 6) * Math.cos(transverse));
    const angle = (mesh.operatingPressureAngle! * Math.PI) / 180;
    expect(mesh.normalBacklash! / mesh.circumferentialBacklash!).toBeCloseTo(Math.cos(angle) * Math.cos(baseHelix), 10);
  });

  it("shifts helical gears by the normal pressure angle", () => {
    const pair = { driver: 18, driven: 40, module: 1, form: "helical", helixAngle: 20, driverShift: "0.4" } as const;
    const cos = Math.cos(Math.PI / 9);
    const alpha = Math.atan(Math.tan(Math.PI / 9) / cos);
    const mesh = meshOf(pair);
    // A normal shift of 0.4 modules is 0.4 cos β transverse ones.
    const teeth = { m: 1 / cos, z1: 18, z2: 40, ring: false, alpha, x1: 0.4 * cos, x2: 0, thinning: 0 };
    const felt = feltBacklash(teeth, mesh.centreDistance!.low.toNumber(), [18 / cos + 2.8, 40 / cos + 2]);
    expect(felt).toBeCloseTo(0, 5);
  });

  it("tells where tips reach past the other's base circle", () => {
    const interference = (driver: number, driven: number) => meshOf({ driver, driven, module: 1 }).interference;
    // The classic least pinions for full depth at 20°: 13 with 16 at most, 17 with 1309, 18 with a rack.
    expect([interference(13, 16), interference(13, 17)]).toEqual([false, true]);
    expect([interference(17, 13)]).toEqual([interference(13, 17)]);
    expect([interference(17, 1309), interference(17, 1310), interference(18, 100_000)]).toEqual([false, true, false]);
  });

  it("says where the base circles leave flanks nowhere to meet", () => {
    const mesh = meshOf({ driver: 15, driven: 30, module: 1 }, "-2 mm");
    expect(mesh).not.toHaveProperty("operatingPressureAngle");
    expect([mesh.notKnown, mesh.centreDistance!.toJSON()]).toEqual(["no-line-of-action", exact("45/2")]);
    expect(meshOf({ driver: 15, driven: 30, module: 1 }, "-30 mm")).not.toHaveProperty("contactRatio");
    const ring = { driver: 15, driven: 50, module: 1, internal: true };
    expect(meshOf(ring, "2 mm")).toMatchObject({ notKnown: "no-line-of-action" });
    expect(meshOf(ring, "40 mm")).not.toHaveProperty("normalBacklash");
    const tight = meshOf({ driver: 15, driven: 30, module: 1 }, "-0.1 mm");
    expect(tight.circumferentialBacklash!).toBeLessThan(0);
    expect(tight.notKnown).toBeUndefined();
  });

  it("refuses figures that are none", () => {
    expect(() => meshOf({ driver: 15, driven: 30, module: "one" })).toThrowError(
      expect.objectContaining({ at: "module" }),
    );
    expect(() => meshOf({ driver: 15, driven: 30, diametralPitch: "x" })).toThrowError(
      expect.objectContaining({ at: "diametralPitch" }),
    );
    expect(() => meshOf({ driver: 15, driven: 30, module: 1, pressureAngle: "x" })).toThrowError(
      expect.objectContaining({ at: "pressureAngle" }),
    );
    expect(() => meshOf({ driver: 15, driven: 30, module: 1 }, "wide")).toThrowError(
      expect.objectContaining({ at: "opening" }),
    );
    expect(() => meshOf({ driver: 15, driven: 30, module: 1, thinning: "a bit" })).toThrowError(
      expect.objectContaining({ at: "thinning" }),
    );
    expect(() => meshOf({ driver: 15, driven: 30, module: 1, driverTip: "big" })).toThrowError(
      expect.objectContaining({ at: "driverTip" }),
    );
  });
});

describe("what is floating point", () => {
  it("is enclosed by an interval that holds the true value", () => {
    const centre = centreDistance({ driver: 20, driven: 40, module: 1, form: "helical", helixAngle: 60 })!;
    // cos 60° is one half: the true distance is 60 mm.
    expect(centre.contains(60)).toBe(true);
    expect(centre.high.minus(centre.low).compare("1e-8")).toBe(-1);
    expect(bounded(60).contains(centre)).toBe(false);
  });
});
