import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { PrintedReading } from "../../src/stages/index.js";
import { beltOf, meshOf, type ToothPair } from "../../src/gears/index.js";
import { toothPairsFor } from "../../src/counted/index.js";

function vectors<T>(name: string): readonly T[] {
  const file = new URL(`../../../../tests/vectors/${name}.json`, import.meta.url);
  return JSON.parse(readFileSync(file, "utf8")) as readonly T[];
}

const near = (value: number | undefined, wanted: number, relative: number): void => {
  expect(Math.abs(value! / wanted - 1), `${value} for ${wanted}`).toBeLessThan(relative);
};

describe("answers worked out elsewhere", () => {
  it("meets every pair of mesh.json", () => {
    interface Case {
      pair: ToothPair;
      openedBy_mm: string;
      expect: {
        centreDistance_mm: string;
        tipDiameter_mm: { driver: string; driven: string };
        rootToothUndercut: { driver: boolean; driven: boolean };
        contactRatio: number;
        commonFactor: number;
        hunting: boolean;
        driverTurnsUntilSameTeethMeet: number;
      };
      expectOpened: {
        operatingPressureAngle_deg: number;
        contactRatio: number;
        normalBacklash_mm: number;
        circumferentialBacklash_mm: number;
      };
    }
    for (const { pair, openedBy_mm, expect: wanted, expectOpened } of vectors<Case>("mesh")) {
      const mesh = meshOf(pair);
      expect(mesh.centreDistance!.isExact).toBe(true);
      expect(mesh.centreDistance!.low.toFraction()).toBe(wanted.centreDistance_mm);
      for (const of of ["driver", "driven"] as const) {
        expect(mesh[of]!.tip.toJSON()).toEqual({ low: wanted.tipDiameter_mm[of], high: wanted.tipDiameter_mm[of] });
        expect(mesh[of]!.undercut, JSON.stringify(pair)).toBe(wanted.rootToothUndercut[of]);
      }
      near(mesh.contactRatio, wanted.contactRatio, 1e-9);
      expect([mesh.commonFactor, mesh.hunting, mesh.driverTurns]).toEqual([
        wanted.commonFactor,
        wanted.hunting,
        wanted.driverTurnsUntilSameTeethMeet,
      ]);
      expect(mesh.normalBacklash).toBeCloseTo(0, 12);
      const opened = meshOf(pair, `${openedBy_mm} mm`);
      near(opened.operatingPressureAngle, expectOpened.operatingPressureAngle_deg, 1e-12);
      near(opened.contactRatio, expectOpened.contactRatio, 1e-9);
      near(opened.normalBacklash, expectOpened.normalBacklash_mm, 1e-9);
      near(opened.circumferentialBacklash, expectOpened.circumferentialBacklash_mm, 1e-9);
    }
  });

  it("meets every belt of belt.json", () => {
    interface Case {
      pitch_mm: number;
      driver: number;
      driven: number;
      centre_mm: number;
      expect: { length_mm: number };
      beltTeeth: number;
      expectCentre_mm: number;
    }
    for (const { pitch_mm, driver, driven, centre_mm, beltTeeth, ...wanted } of vectors<Case>("belt")) {
      const pulleys = { driver, driven, pitch: `${pitch_mm} mm` };
      near(beltOf({ ...pulleys, centre: `${centre_mm} mm` }).length, wanted.expect.length_mm, 1e-12);
      near(beltOf({ ...pulleys, beltTeeth }).choices[0]!.centre, wanted.expectCentre_mm, 1e-9);
    }
  });

  it("finds every pair of identify.json", () => {
    type Range = [number, number];
    type Case = { value: string; read: PrintedReading; driver: Range; driven: Range; expect: number[][] };
    for (const { value, read, driver, driven, expect: pairs } of vectors<Case>("identify"))
      expect(toothPairsFor(value, { driver, driven }, read), `${value} ${read}`).toEqual(pairs);
  });
});
