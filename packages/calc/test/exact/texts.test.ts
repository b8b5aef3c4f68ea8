import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  format,
  lengthOf,
  type Rational,
  rational,
  ratioOf,
  simplestIn,
  toRepeating,
  bounded,
} from "../../src/exact/index.js";
import { pair } from "./arbitrary.js";
import { refuses } from "./errors.js";

describe("repeating decimals", () => {
  it.each([
    ["62/15", "4.1(3)"],
    ["1/7", "0.(142857)"],
    ["-1/6", "-0.1(6)"],
    ["1/8", "0.125"],
    ["-4", "-4"],
    ["0", "0"],
    ["1/90", "0.0(1)"],
    ["7/12", "0.58(3)"],
    ["1/1024", "0.0009765625"],
    ["12/99", "0.(12)"],
    ["101/99", "1.(02)"],
    ["-7/3", "-2.(3)"],
    ["1/28", "0.03(571428)"],
  ])("%s is %s", (value, text) => expect(toRepeating(value)).toBe(text));

  it("come back to the fraction", () => {
    fc.assert(
      fc.property(fc.integer({ min: -5000, max: 5000 }), fc.integer({ min: 1, max: 999 }), (top, bottom) => {
        const text = toRepeating(ratioOf(top, bottom));
        const [, sign, whole, before = "", period = ""] = /^(-?)(\d+)(?:\.(\d*)(?:\((\d+)\))?)?$/.exec(text)!;
        let sum = rational(`${whole}.${before}`);
        if (period)
          sum = sum.plus(ratioOf(BigInt(period), BigInt("9".repeat(period.length)) * 10n ** BigInt(before.length)));
        expect((sign ? sum.negate() : sum).equals(ratioOf(top, bottom))).toBe(true);
        expect(before.endsWith(period) && period !== "").toBe(false);
      }),
      { numRuns: 1000 },
    );
  });

  it("have a bound on what repeats, not on what precedes it", () => {
    expect(toRepeating("1/983").length).toBe(2 + 982 + 2);
    expect(toRepeating("1/7", 6)).toBe("0.(142857)");
    refuses(() => toRepeating("1/7", 5), "period-too-long", "value", 'Found "1/7"; expected up to 5 digits.');
    refuses(() => toRepeating("1/1019"), "period-too-long", "value");
    expect(toRepeating("1/1024", 0)).toBe("0.0009765625");
    expect(toRepeating("1/12", 1)).toBe("0.08(3)");
    expect(toRepeating("1e-1500").length).toBe(1502);
  });
});

describe("the simplest fraction in an interval", () => {
  it("has the smallest denominator, then the smallest numerator", () => {
    fc.assert(
      fc.property(
        fc.tuple(fc.integer({ min: -3000, max: 3000 }), fc.integer({ min: 1, max: 900 })),
        fc.tuple(fc.integer({ min: 0, max: 90 }), fc.integer({ min: 1, max: 900 })),
        ([n, d], [width, part]) => {
          const low = ratioOf(n, d);
          const interval = bounded(low, low.plus(ratioOf(width, part * 20)));
          // Of each denominator, the fraction inside that is nearest to zero.
          let expected: Rational | undefined;
          for (let bottom = 1n; !expected; bottom++) {
            const scaled = interval.times(bottom);
            const down = (end: Rational): bigint =>
              BigInt(end.toDecimal({ maximumFractionDigits: 0, roundingMode: "floor" }));
            const nearest = scaled.contains(0) ? 0n : low.sign > 0 ? -down(scaled.low.negate()) : down(scaled.high);
            if (scaled.contains(nearest)) expected = ratioOf(nearest, bottom);
          }
          expect(simplestIn(interval).toFraction()).toBe(expected.toFraction());
        },
      ),
      { numRuns: 1000 },
    );
  });

  it("is found at any depth", () => {
    expect(simplestIn(bounded("2.735", "2.745")).toFraction()).toBe("52/19");
    expect(simplestIn(bounded("-1/3", "5")).toFraction()).toBe("0/1");
    expect(simplestIn(bounded(0, 5)).toFraction()).toBe("0/1");
    expect(simplestIn(bounded(-5, 0)).toFraction()).toBe("0/1");
    expect(simplestIn(bounded("2.2", "9")).toFraction()).toBe("3/1");
    expect(simplestIn(bounded("-9", "-2.2")).toFraction()).toBe("-3/1");
    const long = rational(`${"12".repeat(490)}7/${"12".repeat(489)}17`);
    expect(simplestIn(bounded(long)).equals(long)).toBe(true);
    const narrow = bounded("3.14159265358979", "3.14159265358980");
    expect(narrow.contains(simplestIn(narrow))).toBe(true);
    expect(simplestIn(narrow).denominator).toBeLessThan(24909967n);
  });

  it("is the value itself where there is one only", () => {
    fc.assert(
      fc.property(pair, ({ value }) => void expect(simplestIn(bounded(value)).toFraction()).toBe(value.toFraction())),
    );
  });
});

describe("lengths", () => {
  it.each([
    ["118 mm", "118/1"],
    ["4.65 in", "11811/100"],
    ["1/8 in", "127/40"],
    ["3.72 m", "3720/1"],
    ["2 cm", "20/1"],
    ["1 ft", "1524/5"],
    ["118mm", "118/1"],
    ["-0.1\u00a0mm", "-1/10"],
    ["118\u202fmm", "118/1"],
    ["118 \u2009 mm", "118/1"],
    ["\u00a0118 mm\t", "118/1"],
    ["1e3 mm", "1000/1"],
    [118, "118/1"],
    [0.8, "4/5"],
  ])("%s is %s mm", (text, expected) => expect(lengthOf(text).toFraction()).toBe(expected));

  it.each(["118", "118 km", "1 1/8 in", "118 MM", "1 inch", "118 mmm mm"])("refuse %j", (text) =>
    refuses(
      () => lengthOf(text),
      "not-a-length",
      "length",
      `Found ${JSON.stringify(text)}; expected a length in mm, cm, m, in or ft.`,
    ),
  );

  it("name the place of what is wrong", () => {
    refuses(() => lengthOf("118", "front.wheel"), "not-a-length", "front.wheel");
    refuses(() => lengthOf("two mm", "front.wheel"), "not-a-number", "front.wheel");
    refuses(() => lengthOf("1/0 in", "front.wheel"), "zero-denominator", "front.wheel");
    refuses(() => lengthOf(1 / 3, "front.wheel"), "long-number", "front.wheel");
    refuses(() => lengthOf(`${"1".repeat(100)} mm`), "not-a-length", "length");
    refuses(() => lengthOf(null as never), "not-a-length", "length");
  });
});

describe("figures in a locale", () => {
  it("have its digits, separators and signs", () => {
    const two = { minimumFractionDigits: 2, maximumFractionDigits: 2 };
    expect(format(rational("62/15"), two)).toBe("4.13");
    expect(format(rational("62/15"), two, "de")).toBe("4,13");
    expect(format(rational("-1234567.891"), two, "de")).toBe("-1.234.567,89");
    expect(format(rational("-12.5"), {}, "sv")).toBe("−12,5");
    expect(format(rational("12345.678"), undefined, "en-IN")).toBe("12,345.678");
    expect(format(rational("1.5"), two, "ar-EG")).toBe("١٫٥٠");
    expect(format(rational("1234567"), {}, "hi-u-nu-deva")).toBe("१२,३४,५६७");
  });

  it("are percentages with the locale's spacing, without fraction digits unless stated", () => {
    expect(format(rational("1/94"), {}, "en", { percent: true })).toBe("1%");
    expect(format(rational("1/94"), { minimumFractionDigits: 2 }, "en", { percent: true })).toBe("1.06%");
    expect(format(rational("0.2"), {}, "de", { percent: true })).toBe("20\u00a0%");
    expect(format(rational("-0.125"), { maximumFractionDigits: 1 }, "sv", { percent: true })).toBe("−12,5\u00a0%");
    expect(format(rational("0.5"), { roundingIncrement: 20 }, "en", { percent: true })).toBe("60%");
  });

  it("have signs and units where asked", () => {
    expect(format(rational("1.06"), {}, "en", { sign: "always" })).toBe("+1.06");
    expect(format(rational(0), {}, "en", { sign: "exceptZero" })).toBe("0");
    expect(format(rational("0.0001"), {}, "en", { sign: "exceptZero" })).toBe("0");
    expect(format(rational(-3), {}, "en", { sign: "never" })).toBe("3");
    expect(format(rational("12.3"), {}, "de", { unit: "kilometer-per-hour" })).toMatch(/^12,3\skm\/h$/);
    expect(format(rational("-0.001"), { maximumFractionDigits: 1 })).toBe("0");
    expect(format(rational("-0.001"), { maximumFractionDigits: 1, negativeZero: true })).toBe("-0");
  });

  it("are what Intl makes of the rounded text, digit by digit", () => {
    fc.assert(
      fc.property(
        pair,
        fc.integer({ min: 0, max: 20 }),
        fc.constantFrom("en", "en-US", "en-GB", "en-IN", "de", "fr", "hi", "ar-EG", "sv"),
        fc.constantFrom("auto", "always", "never", "exceptZero"),
        fc.boolean(),
        fc.boolean(),
        ({ value }, digits, locale, sign, percent, negativeZero) => {
          const rounding = { minimumFractionDigits: digits, maximumFractionDigits: digits };
          const text = value.times(percent ? 100 : 1).toDecimal({ ...rounding, negativeZero });
          const oracle = new Intl.NumberFormat(locale, {
            ...rounding,
            style: percent ? "percent" : "decimal",
            signDisplay: sign,
          });
          expect(format(value, { ...rounding, negativeZero }, locale, { percent, sign })).toBe(
            oracle.format((text + (percent ? "e-2" : "")) as unknown as number),
          );
        },
      ),
      { numRuns: 2000 },
    );
  });

  it("have all the digits that were asked for, beyond what Intl takes", () => {
    const hundred = { minimumFractionDigits: 100, maximumFractionDigits: 100 };
    expect(format(rational("10000/3"), hundred, "de")).toBe(`3.333,${"3".repeat(100)}`);
    expect(format(rational("1/3"), { maximumFractionDigits: 21 }, "ar-EG")).toBe(`٠٫${"٣".repeat(21)}`);
    expect(format(rational("1e-21"), { maximumFractionDigits: 21 })).toBe("0.000000000000000000001");
    expect(format(rational("1/3"), { maximumFractionDigits: 22 }, "en", { percent: true })).toBe(
      `33.${"3".repeat(22)}%`,
    );
    expect(format(rational(10n ** 40n), {}, "en").replaceAll(",", "")).toBe(`1${"0".repeat(40)}`);
  });

  it("refuse a locale that is none", () => {
    refuses(
      () => format(rational(1), {}, "not a tag"),
      "not-a-locale",
      "locale",
      'Found "not a tag"; expected a language tag.',
    );
    refuses(() => format(rational(1), { maximumFractionDigits: 101 }), "option-out-of-range", "maximumFractionDigits");
  });

  it("outlive the number of formatters that are kept", () => {
    for (let round = 0; round < 2; round++)
      for (let digits = 0; digits <= 20; digits++)
        for (const sign of ["auto", "always", "never", "exceptZero"] as const)
          for (const locale of ["en-IN", "de"])
            expect(
              format(rational(1), { minimumFractionDigits: digits }, locale, { sign }).startsWith(
                sign === "always" || sign === "exceptZero" ? "+1" : "1",
              ),
            ).toBe(true);
  });
});
