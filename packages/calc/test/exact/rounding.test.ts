import { Decimal } from "decimal.js";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { rational, ratioOf, type Rounding, type RoundingMode } from "../../src/exact/index.js";
import { pair } from "./arbitrary.js";
import { refuses } from "./errors.js";

const modes = [
  "ceil",
  "floor",
  "expand",
  "trunc",
  "halfCeil",
  "halfFloor",
  "halfExpand",
  "halfTrunc",
  "halfEven",
] as const satisfies readonly RoundingMode[];

/** The same modes as decimal.js numbers them; it has no half-to-zero but ROUND_HALF_DOWN, and no half-up but by sign. */
const decimalModes: Record<RoundingMode, Decimal.Rounding> = {
  ceil: 2,
  floor: 3,
  expand: 0,
  trunc: 1,
  halfCeil: 7,
  halfFloor: 8,
  halfExpand: 4,
  halfTrunc: 5,
  halfEven: 6,
};

const mode = fc.constantFrom(...modes);

/** Decimal text, often with a tie in the last digits. */
const decimal = fc
  .tuple(
    fc.constantFrom("", "-"),
    fc.bigInt({ min: 0n, max: 10n ** 22n }),
    fc.integer({ min: 0, max: 24 }),
    fc.constantFrom("", "5", "50", "500001", "4999", "9995", "00", "25"),
  )
  .map(([sign, digits, places, tail]) => {
    const text = `${digits}${tail}`.padStart(places + 1, "0");
    return `${sign}${text.slice(0, text.length - places) || "0"}${places ? `.${text.slice(-places)}` : ""}`;
  });

/** `Intl` rounds text exactly, and knows negative zero. */
const byIntl = (text: string, rounding: Rounding): string => {
  const options = { ...rounding, useGrouping: false } as Intl.NumberFormatOptions;
  return new Intl.NumberFormat("en", options).format(text as unknown as number);
};

describe("against Intl.NumberFormat over text", () => {
  const same = (text: string, rounding: Rounding): void => {
    const expected = byIntl(text, rounding);
    // Ours has no negative zero in: the sign of "-0" is gone once it is read.
    const zero = rational(text).sign === 0;
    expect(rational(text).toDecimal({ ...rounding, negativeZero: true }), `${text} ${JSON.stringify(rounding)}`).toBe(
      zero ? expected.replace("-", "") : expected,
    );
    expect(rational(text).toDecimal(rounding)).toBe(/[1-9]/.test(expected) ? expected : expected.replace("-", ""));
  };

  it("rounds by fraction digits in all nine modes", () => {
    const digits = fc.integer({ min: 0, max: 20 });
    fc.assert(
      fc.property(decimal, mode, digits, digits, (text, roundingMode, one, two) => {
        const [minimumFractionDigits, maximumFractionDigits] = [Math.min(one, two), Math.max(one, two)];
        same(text, { minimumFractionDigits, maximumFractionDigits, roundingMode });
      }),
      { numRuns: 1000 },
    );
  });

  it("rounds by significant digits in all nine modes", () => {
    const digits = fc.integer({ min: 1, max: 21 });
    fc.assert(
      fc.property(decimal, mode, digits, digits, (text, roundingMode, one, two) => {
        const [minimumSignificantDigits, maximumSignificantDigits] = [Math.min(one, two), Math.max(one, two)];
        same(text, { minimumSignificantDigits, maximumSignificantDigits, roundingMode });
      }),
      { numRuns: 1000 },
    );
  });

  it("rounds to increments, and strips the zeros of whole numbers", () => {
    const increments = [1, 2, 5, 10, 20, 25, 50, 100, 200, 250, 500, 1000, 2000, 2500, 5000] as const;
    fc.assert(
      fc.property(
        decimal,
        mode,
        fc.integer({ min: 0, max: 20 }),
        fc.constantFrom(...increments),
        fc.constantFrom("auto" as const, "stripIfInteger" as const, undefined),
        (text, roundingMode, digits, roundingIncrement, trailingZeroDisplay) => {
          const minimumFractionDigits = digits;
          const maximumFractionDigits = digits;
          same(text, {
            minimumFractionDigits,
            maximumFractionDigits,
            roundingMode,
            roundingIncrement,
            trailingZeroDisplay,
          });
        },
      ),
      { numRuns: 1000 },
    );
  });

  it("has the same defaults", () => {
    for (const text of ["4.13333333", "-0.00004", "1234567.891", "0", "12.5", "99.9996"])
      for (const rounding of [
        {},
        { minimumFractionDigits: 1 },
        { minimumFractionDigits: 5 },
        { maximumFractionDigits: 0 },
        { minimumSignificantDigits: 3 },
        { maximumSignificantDigits: 3 },
        { roundingIncrement: 5 as const },
        { roundingIncrement: 5 as const, maximumFractionDigits: 0 },
        { trailingZeroDisplay: "stripIfInteger" as const, minimumFractionDigits: 2 },
        { maximumSignificantDigits: 2, maximumFractionDigits: 3 },
        { minimumSignificantDigits: 4, trailingZeroDisplay: "stripIfInteger" as const },
      ])
        same(text, rounding);
  });
});

describe("against decimal.js at high precision", () => {
  const Precise = Decimal.clone({ precision: 600, toExpPos: 9e15, toExpNeg: -9e15 });

  it("rounds fractions by up to 100 fraction digits", () => {
    fc.assert(
      fc.property(pair, mode, fc.integer({ min: 0, max: 100 }), ({ top, bottom, value }, roundingMode, digits) => {
        const exact = new Precise(top.toString()).div(bottom.toString());
        const expected = exact.toFixed(digits, decimalModes[roundingMode]);
        const rounding: Rounding = { minimumFractionDigits: digits, maximumFractionDigits: digits, roundingMode };
        expect(value.toDecimal(rounding)).toBe(/[1-9]/.test(expected) ? expected : expected.replace("-", ""));
      }),
      { numRuns: 1000 },
    );
  });

  it("rounds fractions by up to 100 significant digits", () => {
    fc.assert(
      fc.property(pair, mode, fc.integer({ min: 1, max: 100 }), ({ top, bottom, value }, roundingMode, digits) => {
        fc.pre(top !== 0n);
        const exact = new Precise(top.toString()).div(bottom.toString());
        const expected = exact.toSignificantDigits(digits, decimalModes[roundingMode]);
        const rounding: Rounding = { maximumSignificantDigits: digits, roundingMode };
        expect(value.toDecimal(rounding)).toBe(expected.toFixed());
        const least = value.toDecimal({ ...rounding, minimumSignificantDigits: digits });
        expect(least.replace(/^-?[0.]*|[.]/g, "").length).toBeGreaterThanOrEqual(digits);
        expect(rational(least).equals(expected.toFixed())).toBe(true);
      }),
      { numRuns: 1000 },
    );
  });

  it("puts ties where the mode says, on plain numbers and on wide ones", () => {
    const table: Record<RoundingMode, string> = {
      ceil: "3 4 -2 -3",
      floor: "2 3 -3 -4",
      expand: "3 4 -3 -4",
      trunc: "2 3 -2 -3",
      halfCeil: "3 4 -2 -3",
      halfFloor: "2 3 -3 -4",
      halfExpand: "3 4 -3 -4",
      halfTrunc: "2 3 -2 -3",
      halfEven: "2 4 -2 -4",
    };
    for (const roundingMode of modes) {
      const rounding: Rounding = { maximumFractionDigits: 0, roundingMode };
      const ties = ["2.5", "3.5", "-2.5", "-3.5"];
      expect(ties.map((text) => rational(text).toDecimal(rounding)).join(" ")).toBe(table[roundingMode]);
      const wide = ties.map((text) =>
        rational(text).toDecimal({ ...rounding, maximumFractionDigits: undefined, maximumSignificantDigits: 1 }),
      );
      expect(wide.join(" ")).toBe(table[roundingMode]);
      const unreduced = ties.map((text) =>
        rational(text)
          .times(ratioOf(7 ** 9, 7 ** 9))
          .toDecimal(rounding),
      );
      expect(unreduced.join(" ")).toBe(table[roundingMode]);
    }
  });
});

describe("decimal text", () => {
  it("needs no option", () => {
    expect(ratioOf(62, 15).toDecimal()).toBe("4.133");
    expect(rational("2.5").toDecimal()).toBe("2.5");
    expect(rational(-7).toDecimal({})).toBe("-7");
    expect(rational("0.0005").toDecimal()).toBe("0.001");
    expect(rational("-0.0004").toDecimal()).toBe("0");
    expect(rational("12345678901234567890.5").toDecimal()).toBe("12345678901234567890.5");
  });

  it("carries into the next place", () => {
    expect(rational("9.9996").toDecimal()).toBe("10");
    expect(rational("-99.95").toDecimal({ minimumFractionDigits: 1, maximumFractionDigits: 1 })).toBe("-100.0");
    expect(rational("99.96").toDecimal({ maximumSignificantDigits: 3 })).toBe("100");
    expect(rational("99.96").toDecimal({ minimumSignificantDigits: 3, maximumSignificantDigits: 3 })).toBe("100");
    expect(rational("9.996").toDecimal({ minimumSignificantDigits: 3, maximumSignificantDigits: 3 })).toBe("10.0");
    expect(rational("0.0009996").toDecimal({ minimumSignificantDigits: 3, maximumSignificantDigits: 3 })).toBe(
      "0.00100",
    );
    expect(rational("99999").toDecimal({ maximumSignificantDigits: 2 })).toBe("100000");
    expect(rational("123456").toDecimal({ maximumSignificantDigits: 2 })).toBe("120000");
    expect(rational("0").toDecimal({ minimumSignificantDigits: 3 })).toBe("0.00");
  });

  it("keeps or drops the sign of zero", () => {
    expect(rational("-0.4").toDecimal({ maximumFractionDigits: 0 })).toBe("0");
    expect(rational("-0.4").toDecimal({ maximumFractionDigits: 0, negativeZero: true })).toBe("-0");
    expect(rational("-0.4").toDecimal({ maximumFractionDigits: 0, negativeZero: false })).toBe("0");
    expect(rational("-1/1000000000000000000007").toDecimal({ minimumFractionDigits: 2, negativeZero: true })).toBe(
      "-0.00",
    );
    expect(rational("-1/1000000000000000000007").toDecimal({ minimumFractionDigits: 2 })).toBe("0.00");
    expect(rational("0.4").toDecimal({ maximumFractionDigits: 0, negativeZero: true })).toBe("0");
  });

  it("takes halves of digits down, as ECMA-402 does", () => {
    expect(rational("1/3").toDecimal({ maximumFractionDigits: 2.9 })).toBe("0.33");
    expect(rational("1/3").toDecimal({ maximumSignificantDigits: 1.5 })).toBe("0.3");
  });

  it("goes to 100 digits of either kind", () => {
    expect(rational("1/3").toDecimal({ maximumFractionDigits: 100 })).toBe(`0.${"3".repeat(100)}`);
    expect(rational("200/3").toDecimal({ maximumSignificantDigits: 100 })).toBe(`66.${"6".repeat(97)}7`);
    expect(rational(1).toDecimal({ minimumSignificantDigits: 100 })).toBe(`1.${"0".repeat(99)}`);
    expect(rational("1/3").toDecimal({ minimumSignificantDigits: 1 })).toBe(`0.${"3".repeat(21)}`);
    expect(rational("1/3").toDecimal({ minimumSignificantDigits: 30 })).toBe(`0.${"3".repeat(30)}`);
  });

  it("is what a fraction needs, near the edge of plain numbers", () => {
    const digits = { minimumFractionDigits: 15, maximumFractionDigits: 15 };
    expect(ratioOf(1, 3).toDecimal(digits)).toBe("0.333333333333333");
    expect(rational("3.9999999999999995").toDecimal(digits)).toBe("4.000000000000000");
    expect(ratioOf(3, 4e15).toDecimal({ maximumFractionDigits: 16 })).toBe("0.0000000000000008");
    expect(ratioOf(4e15 - 1, 2).toDecimal()).toBe("1999999999999999.5");
    expect(ratioOf(4e15 + 1, 2).toDecimal()).toBe("2000000000000000.5");
    expect(ratioOf(Number.MAX_SAFE_INTEGER, 2).toDecimal({ maximumFractionDigits: 0, roundingMode: "halfEven" })).toBe(
      "4503599627370496",
    );
    expect(ratioOf(2, Number.MAX_SAFE_INTEGER).toDecimal({ maximumFractionDigits: 0, roundingMode: "ceil" })).toBe("1");
    expect(
      ratioOf(Number.MAX_SAFE_INTEGER - 2, Number.MAX_SAFE_INTEGER - 1).toDecimal({ maximumFractionDigits: 0 }),
    ).toBe("1");
  });
});

describe("options out of range", () => {
  const one = rational(1);
  const bad = (rounding: object, at: string, sentence?: string): void =>
    refuses(() => one.toDecimal(rounding), "option-out-of-range", at, sentence);

  it("are refused by name", () => {
    bad({ maximumFractionDigits: 101 }, "maximumFractionDigits", "Found 101; expected 0 to 100.");
    bad({ maximumFractionDigits: -1 }, "maximumFractionDigits");
    bad({ maximumFractionDigits: NaN }, "maximumFractionDigits");
    bad({ minimumFractionDigits: 101 }, "minimumFractionDigits", "Found 101; expected 0 to 100.");
    bad({ minimumFractionDigits: -1 }, "minimumFractionDigits");
    bad({ minimumFractionDigits: 3, maximumFractionDigits: 2 }, "maximumFractionDigits", "Found 2; expected 3 to 100.");
    bad({ minimumSignificantDigits: 0 }, "minimumSignificantDigits", "Found 0; expected 1 to 100.");
    bad({ minimumSignificantDigits: 101 }, "minimumSignificantDigits");
    bad({ maximumSignificantDigits: 0 }, "maximumSignificantDigits", "Found 0; expected 1 to 100.");
    bad({ maximumSignificantDigits: 101 }, "maximumSignificantDigits");
    bad(
      { minimumSignificantDigits: 3, maximumSignificantDigits: 2 },
      "maximumSignificantDigits",
      "Found 2; expected 3 to 100.",
    );
    bad(
      { roundingMode: "up" },
      "roundingMode",
      'Found "up"; expected halfExpand, ceil, floor, expand, trunc, halfCeil, halfFloor, halfTrunc, halfEven.',
    );
    bad({ roundingMode: "constructor" }, "roundingMode");
    bad({ roundingMode: null }, "roundingMode");
    bad({ trailingZeroDisplay: "never" }, "trailingZeroDisplay", 'Found "never"; expected auto, stripIfInteger.');
  });

  it.each([0, 3, 4, 15, 125, 250.5, -5, 10000, 25000, 2, NaN, "x"])(
    "refuse the increment %s without its digits, or at all",
    (roundingIncrement) => {
      if (roundingIncrement !== 2) bad({ roundingIncrement, maximumFractionDigits: 0 }, "roundingIncrement");
      bad({ roundingIncrement, maximumSignificantDigits: 2 }, "roundingIncrement");
      bad(
        { roundingIncrement, maximumFractionDigits: 2 },
        "roundingIncrement",
        `Found ${JSON.stringify(roundingIncrement)?.replace("null", "NaN")}; expected 1 or, with equal fraction digits, 2, 5, 10 to 5000.`,
      );
    },
  );

  it("may be undefined, each of them", () => {
    const undefinedAll: Rounding = {
      minimumFractionDigits: undefined,
      maximumFractionDigits: undefined,
      minimumSignificantDigits: undefined,
      maximumSignificantDigits: undefined,
      roundingMode: undefined,
      roundingIncrement: undefined,
      trailingZeroDisplay: undefined,
      negativeZero: undefined,
    };
    expect(ratioOf(62, 15).toDecimal(undefinedAll)).toBe("4.133");
  });
});
