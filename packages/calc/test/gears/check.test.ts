import { describe, expect, it } from "vitest";
import { bounded, rational } from "../../src/exact/index.js";
import {
  angleOf,
  checkAbove,
  checkFinite,
  checkNumber,
  checkTeeth,
  depthOf,
  finiteOf,
  refuse,
  sizeOf,
} from "../../src/gears/check.js";
import { beltLength, beltOf, jawShare, pitchDiameter, spanLength, tipDiameter } from "../../src/gears/index.js";

/** What a call is refused with: where, and in which words. */
function refusal(call: () => unknown): readonly [code: string, at: string, message: string] | undefined {
  try {
    call();
  } catch (error) {
    const { code, at, message } = error as { code: string; at: string; message: string };
    return [code, at, message];
  }
  return undefined;
}

describe("figures that are none", () => {
  it("are refused with what was found, where, and what is expected", () => {
    expect(refusal(() => checkTeeth(15.5, "driver"))).toEqual([
      "not-a-count",
      "driver",
      "Found 15.5 teeth; expected a whole number from 1 to 1000000.",
    ]);
    const out = (at: string, message: string) => ["out-of-range", at, message];
    expect(refusal(() => checkAbove(rational(0), "module"))).toEqual(
      out("module", "Found 0; expected a number above 0."),
    );
    expect(refusal(() => checkFinite(rational("1e17"), "shift"))).toEqual(
      out("shift", "Found 100000000000000000; expected a number that can be made."),
    );
    expect(refusal(() => sizeOf("0 mm", "bore"))).toEqual(out("bore", "Found 0; expected a length above 0."));
    expect(refusal(() => finiteOf("1e17 mm", "opening"))).toEqual(
      out("opening", "Found 100000000000000000; expected a length that can be made."),
    );
    expect(refusal(() => depthOf("-1 mm", "gap"))).toEqual(out("gap", "Found -1 mm; expected a length from 0."));
    expect(refusal(() => angleOf(91, 0, 90, "helixAngle"))).toEqual(
      out("helixAngle", "Found 91; expected 0 to 90 degrees."),
    );
    expect(refusal(() => checkNumber(-1, "x"))).toEqual(out("x", "Found -1; expected a number above 0."));
    expect(refusal(() => checkNumber(NaN, "x", "either side"))).toEqual(
      out("x", "Found NaN; expected a finite number."),
    );
    // Of what is long, its beginning.
    expect(refusal(() => refuse("not-id", "id", "z".repeat(50), "less"))?.[2]).toBe(
      `Found ${"z".repeat(40)}; expected less.`,
    );
  });

  it("begin beyond the least and the most that can be worked with", () => {
    for (const size of ["1e-16", "1e16"]) {
      expect(checkAbove(rational(size), "x").equals(rational(size))).toBe(true);
      expect(checkNumber(Number(size), "x")).toBe(Number(size));
    }
    for (const size of ["0.99e-16", "1.01e16", "-1"]) {
      expect(refusal(() => checkAbove(rational(size), "x"))?.[0]).toBe("out-of-range");
      expect(refusal(() => checkNumber(Number(size), "x"))?.[0]).toBe("out-of-range");
    }
    for (const size of ["1e16", "-1e16", "0", "1e-17"]) {
      expect(checkFinite(rational(size), "x").equals(rational(size))).toBe(true);
      expect(checkNumber(Number(size), "x", "either side")).toBe(Number(size));
    }
    for (const size of ["1.01e16", "-1.01e16"]) {
      expect(refusal(() => checkFinite(rational(size), "x"))?.[0]).toBe("out-of-range");
      expect(refusal(() => checkNumber(Number(size), "x", "either side"))?.[0]).toBe("out-of-range");
    }
    expect(depthOf("0 mm", "gap").sign).toBe(0);
    expect([angleOf(0, 0, 45, "a"), angleOf(45, 0, 45, "a")].map((angle) => angle.toNumber())).toEqual([0, 45]);
  });

  it("are told of a single gear, of a pulley and of a sprocket in their own words", () => {
    const gear = { teeth: 15, module: rational(1) };
    expect(refusal(() => spanLength({ ...gear, pressureAngle: rational(0) }, 2))).toEqual([
      "out-of-range",
      "pressureAngle",
      "Found 0; expected more than 0 and up to 45 degrees.",
    ]);
    expect(refusal(() => jawShare({ ...gear, module: rational(0) }))?.[1]).toBe("module");
    expect(refusal(() => tipDiameter({ ...gear, shift: bounded(-9) }))).toEqual([
      "tooth-missing",
      "shift",
      "Found tips across -1 mm; expected teeth.",
    ]);
    // Nothing over the tips is no gear either.
    expect(refusal(() => tipDiameter({ ...gear, shift: bounded("-8.5") }))?.[0]).toBe("tooth-missing");
    expect(refusal(() => pitchDiameter({ pitch: rational(2), teeth: 1, chain: true }))).toEqual([
      "sprocket-too-small",
      "teeth",
      "Found 1 tooth; expected a sprocket of 2 or more.",
    ]);
    expect(refusal(() => pitchDiameter({ pitch: rational(0), teeth: 9 }))?.slice(1)).toEqual([
      "pitch",
      "Found 0; expected a length above 0.",
    ]);
    expect(refusal(() => beltLength({ driver: 20, driven: 60, pitch: rational(0) }, 60))?.slice(1)).toEqual([
      "pitch",
      "Found 0; expected a length above 0.",
    ]);
    expect(beltOf({ driver: 2, driven: 9, chain: true, pitch: "6 mm", centre: "60 mm" }).notKnown).toBeUndefined();
    expect(beltOf({ driver: 1, driven: 9, chain: true, pitch: "6 mm", centre: "60 mm" }).notKnown).toBe(
      "sprocket-too-small",
    );
  });
});
