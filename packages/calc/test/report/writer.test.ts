import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bounded, rational } from "../../src/exact/index.js";
import { wordsFor } from "../../src/languages/all.js";
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

describe("Writer", () => {
  const german = new Writer({ locale: "de", words: wordsFor("de").figures });

  it("writes in a language: digits, percent, a true minus", () => {
    expect(german.number(bounded("1.5", "2.5"), { digits: 1 })).toBe("1,5 bis 2,5");
    expect(german.number(rational("-0.0438"), { percent: true }).replace(/\s/g, " ")).toBe("\u22124,38 %");
    expect(german.length(rational("25.4"), { unit: "in" }).replace(/\s/g, " ")).toBe("1,00 in");
  });

  it("keeps to the build's rounding where no digits are asked for", () => {
    const writer = new Writer({ rounding: { maximumFractionDigits: 1, roundingMode: "floor" } });
    expect([writer.number(rational("1.29")), writer.number(rational("1.29"), { digits: 2 })]).toEqual(["1.2", "1.29"]);
  });

  it("rounds limits inward, and what is not known outward", () => {
    const form = { digits: 1 };
    const [low, high] = [bounded("1.25"), bounded("2.75")];
    expect(new Writer().number(bounded("1.25", "2.75"), form)).toBe("1.2 to 2.8");
    expect([new Writer().limit(low, "from", form), new Writer().limit(high, "to", form)]).toEqual(["1.3", "2.7"]);
  });

  it.each([
    ["1.50", "1,50"],
    [38, "38"],
    ["1024.5 mm", "1024,5 mm"],
    ["4.65 in", "4,65 in"],
    ["52/19", "52/19"],
    ["Front hub", "Front hub"],
  ])("leaves %s the digits that it was given", (value, text) => {
    expect(german.given(value)).toBe(text);
    expect(new Writer().given(value)).toBe(String(value));
  });

  it("groups the digits of a number of any length in threes", () => {
    for (const [value, text] of [
      ["999", "999"],
      ["1000", "1,000"],
      ["-123456", "\u2212123,456"],
      ["1234567", "1,234,567"],
    ] as const)
      expect(new Writer().number(rational(value), { digits: 0 })).toBe(text);
    expect(new Writer().number(rational(10n ** 4000n), { digits: 0 })).toBe(`10${",000".repeat(1333)}`);
  });
});
