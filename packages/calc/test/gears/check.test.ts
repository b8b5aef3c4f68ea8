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
import { refuses } from "../exact/errors.js";

describe("figures that are none", () => {
  it("are refused with what was found, where, and what is expected", () => {
    const teeth = "Found 15.5 teeth; expected a whole number from 1 to 1000000.";
    refuses(() => checkTeeth(15.5, "driver"), "not-a-count", "driver", teeth);
    const out = (call: () => unknown, at: string, sentence: string) => refuses(call, "out-of-range", at, sentence);
    const far = "Found 100000000000000000; expected";
    out(() => checkAbove(rational(0), "module"), "module", "Found 0; expected a number above 0.");
    out(() => checkFinite(rational("1e17"), "shift"), "shift", `${far} a number that can be made.`);
    out(() => sizeOf("0 mm", "bore"), "bore", "Found 0; expected a length above 0.");
    out(() => finiteOf("1e17 mm", "opening"), "opening", `${far} a length that can be made.`);
    out(() => depthOf("-1 mm", "gap"), "gap", "Found -1 mm; expected a length from 0.");
    out(() => angleOf(91, 0, 90, "helixAngle"), "helixAngle", "Found 91; expected 0 to 90 degrees.");
    out(() => checkNumber(-1, "x"), "x", "Found -1; expected a number above 0.");
    out(() => checkNumber(NaN, "x", "either side"), "x", "Found NaN; expected a finite number.");
    // Of what is long, its beginning.
    const beginning = `Found ${"z".repeat(40)}; expected less.`;
    refuses(() => refuse("not-id", "id", "z".repeat(50), "less"), "not-id", "id", beginning);
  });

  it("begin beyond the least and the most that can be worked with", () => {
    for (const size of ["1e-16", "1e16"]) {
      expect(checkAbove(rational(size), "x").equals(rational(size))).toBe(true);
      expect(checkNumber(Number(size), "x")).toBe(Number(size));
    }
    for (const size of ["0.99e-16", "1.01e16", "-1"]) {
      refuses(() => checkAbove(rational(size), "x"), "out-of-range", "x");
      refuses(() => checkNumber(Number(size), "x"), "out-of-range", "x");
    }
    for (const size of ["1e16", "-1e16", "0", "1e-17"]) {
      expect(checkFinite(rational(size), "x").equals(rational(size))).toBe(true);
      expect(checkNumber(Number(size), "x", "either side")).toBe(Number(size));
    }
    for (const size of ["1.01e16", "-1.01e16"]) {
      refuses(() => checkFinite(rational(size), "x"), "out-of-range", "x");
      refuses(() => checkNumber(Number(size), "x", "either side"), "out-of-range", "x");
    }
    expect(depthOf("0 mm", "gap").sign).toBe(0);
    expect([angleOf(0, 0, 45, "a"), angleOf(45, 0, 45, "a")].map((angle) => angle.toNumber())).toEqual([0, 45]);
  });

  it("are told of a single gear, of a pulley and of a sprocket in their own words", () => {
    const gear = { teeth: 15, module: rational(1) };
    const angle = "Found 0; expected more than 0 and up to 45 degrees.";
    refuses(() => spanLength({ ...gear, pressureAngle: rational(0) }, 2), "out-of-range", "pressureAngle", angle);
    refuses(() => jawShare({ ...gear, module: rational(0) }), "out-of-range", "module");
    const tips = "Found tips across -1 mm; expected teeth.";
    refuses(() => tipDiameter({ ...gear, shift: bounded(-9) }), "tooth-missing", "shift", tips);
    // Nothing over the tips is no gear either.
    refuses(() => tipDiameter({ ...gear, shift: bounded("-8.5") }), "tooth-missing", "shift");
    const sprocket = "Found 1 tooth; expected a sprocket of 2 or more.";
    refuses(
      () => pitchDiameter({ pitch: rational(2), teeth: 1, chain: true }),
      "sprocket-too-small",
      "teeth",
      sprocket,
    );
    const none = "Found 0; expected a length above 0.";
    refuses(() => pitchDiameter({ pitch: rational(0), teeth: 9 }), "out-of-range", "pitch", none);
    refuses(() => beltLength({ driver: 20, driven: 60, pitch: rational(0) }, 60), "out-of-range", "pitch", none);
    const chain = { driven: 9, chain: true, pitch: "6 mm", centre: "60 mm" };
    expect(beltOf({ driver: 2, ...chain }).notKnown).toBeUndefined();
    expect(beltOf({ driver: 1, ...chain }).notKnown).toBe("sprocket-too-small");
  });
});
