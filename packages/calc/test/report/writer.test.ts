import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { rational } from "../../src/exact/index.js";
import { Writer } from "../../src/report/index.js";
import { pair } from "../exact/arbitrary.js";

describe("a number as it is written", () => {
  it("is what Intl makes of the rounded text, with a true minus, in English as elsewhere", () => {
    fc.assert(
      fc.property(
        pair,
        fc.integer({ min: 0, max: 12 }),
        fc.constantFrom("en", "en-GB", "en-US", "en-IN", "de", "fr", "ja", "ar-EG"),
        fc.boolean(),
        ({ value }, digits, locale, percent) => {
          const fixed = { minimumFractionDigits: digits, maximumFractionDigits: digits };
          const text = value.times(percent ? 100 : 1).toDecimal(fixed) + (percent ? "e-2" : "");
          const oracle = new Intl.NumberFormat(locale, { ...fixed, style: percent ? "percent" : "decimal" });
          const expected = oracle.format(text as unknown as number).replace("-", "\u2212");
          expect(new Writer({ locale }).number(value, { digits, percent })).toBe(expected);
        },
      ),
      { numRuns: 2000 },
    );
  });

  it("follows the rounding of the build where no digits are asked for", () => {
    const percent = { percent: true };
    const written = (rounding: object) => new Writer({ rounding }).number(rational("1/94"), percent);
    expect(written({ minimumFractionDigits: 1, maximumFractionDigits: 1 })).toBe("1.1%");
    expect(written({ roundingMode: "ceil" })).toBe("2%");
    expect(written({ maximumSignificantDigits: 3 })).toBe("1.06%");
  });
});
