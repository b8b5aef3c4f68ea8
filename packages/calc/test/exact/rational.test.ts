import { Decimal } from "decimal.js";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Rational, rational, type RationalInput, ratioOf } from "../../src/exact/index.js";
import { fraction, pair, value } from "./arbitrary.js";
import { refuses } from "./errors.js";

describe("arithmetic of fractions", () => {
  it("agrees with whole-number arithmetic of any width, in lowest terms", () => {
    fc.assert(
      fc.property(pair, pair, (a, b) => {
        expect(a.value.toFraction()).toBe(fraction(a.top, a.bottom));
        expect(a.value.plus(b.value).toFraction()).toBe(
          fraction(a.top * b.bottom + b.top * a.bottom, a.bottom * b.bottom),
        );
        expect(a.value.minus(b.value).toFraction()).toBe(
          fraction(a.top * b.bottom - b.top * a.bottom, a.bottom * b.bottom),
        );
        expect(a.value.times(b.value).toFraction()).toBe(fraction(a.top * b.top, a.bottom * b.bottom));
        if (b.top !== 0n) {
          expect(a.value.over(b.value).toFraction()).toBe(fraction(a.top * b.bottom, a.bottom * b.top));
          expect(b.value.inverse().toFraction()).toBe(fraction(b.bottom, b.top));
        }
        expect(a.value.negate().toFraction()).toBe(fraction(-a.top, a.bottom));
        expect(a.value.abs().toFraction()).toBe(fraction(a.top < 0n ? -a.top : a.top, a.bottom));
        const cross = a.top * b.bottom - b.top * a.bottom;
        expect(a.value.compare(b.value)).toBe(cross > 0n ? 1 : cross < 0n ? -1 : 0);
        expect(a.value.equals(b.value)).toBe(cross === 0n);
        expect(a.value.sign).toBe(a.top > 0n ? 1 : a.top < 0n ? -1 : 0);
        expect(a.value.isInteger).toBe(a.top % a.bottom === 0n);
      }),
      { numRuns: 1000 },
    );
  });

  it("is a field, and in order", () => {
    fc.assert(
      fc.property(value, value, value, (a, b, c) => {
        expect(
          a
            .plus(b)
            .plus(c)
            .equals(a.plus(b.plus(c))),
        ).toBe(true);
        expect(
          a
            .times(b)
            .times(c)
            .equals(a.times(b.times(c))),
        ).toBe(true);
        expect(a.plus(b).equals(b.plus(a))).toBe(true);
        expect(a.times(b.plus(c)).equals(a.times(b).plus(a.times(c)))).toBe(true);
        expect(a.minus(a).sign).toBe(0);
        if (b.sign) expect(a.over(b).times(b).equals(a)).toBe(true);
        expect(a.compare(b)).toBe(0 - b.compare(a) + 0);
        if (a.compare(b) <= 0 && b.compare(c) <= 0) expect(a.compare(c)).toBeLessThanOrEqual(0);
        if (a.compare(b) < 0) expect(a.plus(c).compare(b.plus(c))).toBe(-1);
      }),
      { numRuns: 1000 },
    );
  });

  it("gives the same answers whatever was read before: reducing late cannot be seen", () => {
    fc.assert(
      fc.property(value, value, (a, b) => {
        const late = a.times(b).plus(a);
        const early = a.times(b);
        expect(early.numerator * 0n).toBe(0n);
        const read = rational(early.toFraction()).plus(rational(a.toFraction()));
        expect([late.numerator, late.denominator]).toEqual([read.numerator, read.denominator]);
        expect(late.toFraction()).toBe(`${late.numerator}/${late.denominator}`);
        expect(late.numerator).toBe(late.numerator);
      }),
    );
  });

  it("comes back from wide values to plain ones with nothing lost", () => {
    const wide = ratioOf(10n ** 40n + 1n, 3n);
    for (const back of [wide.minus(wide).plus(7), wide.over(wide).times(7), rational(7).times(wide).over(wide)])
      expect(back.toFraction()).toBe("7/1");
    expect(wide.inverse().negate().inverse().negate().equals(wide)).toBe(true);
    expect(rational(5).compare(wide)).toBe(-1);
    expect(wide.compare(5)).toBe(1);
    expect(rational(5).equals(wide)).toBe(false);
    expect(wide.abs()).toBe(wide);
    expect(wide.negate().sign).toBe(-1);
    expect(
      wide
        .minus("1/3")
        .over(10n ** 40n)
        .toFraction(),
    ).toBe("1/3");
    expect(wide.isInteger).toBe(false);
    expect(rational(10n ** 30n).isInteger).toBe(true);
  });

  it("stays exact on both sides of 2 ** 53", () => {
    const edge = Number.MAX_SAFE_INTEGER;
    expect(rational(edge).plus(1).minus(edge).toFraction()).toBe("1/1");
    expect(rational(edge).plus(2).toFraction()).toBe("9007199254740993/1");
    expect(
      ratioOf(edge, edge - 1)
        .times(ratioOf(edge - 2, edge))
        .toFraction(),
    ).toBe(fraction(2n ** 53n - 3n, 2n ** 53n - 2n));
    expect(ratioOf(94906267, 1).times(94906267).toFraction()).toBe("9007199515875289/1");
    expect(ratioOf(1, 94906267).times(ratioOf(1, 94906267)).toFraction()).toBe("1/9007199515875289");
    expect(ratioOf(1, 94906267).plus(ratioOf(1, 94906269)).numerator).toBe(189812536n);
    expect(ratioOf(edge, 2).compare(ratioOf(edge - 1, 2))).toBe(1);
    expect(ratioOf(1, edge).compare(ratioOf(1, edge - 1))).toBe(-1);
    // Cross products that differ by one, where floats are two apart and more.
    expect(ratioOf(edge, edge - 1).compare(ratioOf(edge - 1, edge - 2))).toBe(-1);
    expect(ratioOf(edge - 1, edge - 2).compare(ratioOf(edge, edge - 1))).toBe(1);
    // A part that floats do not hold, in a sum that they do.
    expect(
      ratioOf(2 ** 52 + 1, 2)
        .minus(ratioOf(3 * 2 ** 51 + 1, 3))
        .toFraction(),
    ).toBe("1/6");
    expect(ratioOf(-edge, edge - 1).compare(ratioOf(edge - 1, edge))).toBe(-1);
    expect(rational(-edge).minus(2).toFraction()).toBe("-9007199254740993/1");
    expect(
      ratioOf(2 ** 40, 3 ** 20)
        .times(ratioOf(3 ** 20, 2 ** 40))
        .toFraction(),
    ).toBe("1/1");
    expect(
      ratioOf(2 ** 40, 3 ** 20)
        .plus(ratioOf(-(2 ** 40), 3 ** 20))
        .toFraction(),
    ).toBe("0/1");
    expect(rational(0).times(ratioOf(edge, 1)).times(ratioOf(edge, 7)).toFraction()).toBe("0/1");
    expect(ratioOf(0, edge).times(ratioOf(7, edge)).plus(1).toFraction()).toBe("1/1");
    expect(ratioOf(7, edge).times(ratioOf(0, edge)).toFraction()).toBe("0/1");
  });

  it("refuses to divide by zero", () => {
    const sentence = "Found 0; expected another number.";
    refuses(() => rational(1).over(0), "division-by-zero", "divisor", sentence);
    refuses(() => rational("1/94906267").over("0.0"), "division-by-zero", "divisor");
    refuses(() => rational(0).inverse(), "division-by-zero", "divisor");
    refuses(() => rational(10n ** 40n).over(rational(0)), "division-by-zero", "divisor");
    refuses(() => ratioOf(1, 0), "division-by-zero", "divisor");
    refuses(() => ratioOf(1n, 0n), "division-by-zero", "divisor");
  });

  it("takes numbers, bigints and text as operands, by the rules of reading", () => {
    const half = rational("1/2");
    expect(half.plus(1).toFraction()).toBe("3/2");
    expect(half.minus("2.6").toFraction()).toBe("-21/10");
    expect(half.times(3n).toFraction()).toBe("3/2");
    expect(half.over(0.25).toFraction()).toBe("2/1");
    expect(half.compare("0.5")).toBe(0);
    expect(half.compare(1)).toBe(-1);
    expect(half.compare("0.49")).toBe(1);
    expect(half.equals(0.5)).toBe(true);
    refuses(() => half.plus(0.1 + 0.2), "long-number", "input");
    refuses(() => half.times("two"), "not-a-number", "input");
    refuses(() => half.over({} as RationalInput), "not-a-number", "input");
  });

  it("leaves its operands alone", () => {
    const a = ratioOf(6, 4);
    const b = ratioOf(10, 4);
    const [before, after] = [JSON.stringify([a, b]), () => JSON.stringify([a, b])];
    for (const other of [b, ratioOf(1n, 10n ** 30n)]) {
      for (const operation of ["plus", "minus", "times", "over", "compare", "equals"] as const) a[operation](other);
      expect(after()).toBe(before);
    }
  });

  it("has no setter", () => {
    const a = ratioOf(3, 2) as { numerator: bigint; denominator: bigint; sign: number };
    expect(() => (a.numerator = 5n)).toThrow(TypeError);
    expect(() => (a.denominator = 5n)).toThrow(TypeError);
    expect(() => (a.sign = -1)).toThrow(TypeError);
  });
});

describe("powers", () => {
  it("are repeated products", () => {
    fc.assert(
      fc.property(value, fc.integer({ min: 0, max: 9 }), (base, exponent) => {
        let product = rational(1);
        for (let count = 0; count < exponent; count++) product = product.times(base);
        expect(base.power(exponent).toFraction()).toBe(product.toFraction());
        if (base.sign) expect(base.power(-exponent).times(product).toFraction()).toBe("1/1");
      }),
      { numRuns: 300 },
    );
  });

  it("have a bound", () => {
    expect(rational(2).power(10000).numerator).toBe(2n ** 10000n);
    expect(rational(2).power(30000).isInteger).toBe(true);
    refuses(() => rational(2).power(30001), "option-out-of-range", "exponent");
    refuses(
      () => rational("1/12").power(1e9),
      "option-out-of-range",
      "exponent",
      "Found 1000000000; expected a whole number, up to 30000 digits.",
    );
    refuses(() => rational("7/12").power(20000), "option-out-of-range", "exponent");
    refuses(() => rational(2).power(0.5), "option-out-of-range", "exponent");
    refuses(() => rational(2).power(NaN), "option-out-of-range", "exponent");
    refuses(() => rational(0).power(-1), "division-by-zero", "divisor");
  });
});

describe("as a number and as text", () => {
  it("gives the nearest double", () => {
    const nearest = (top: bigint, bottom: bigint): number =>
      Decimal.clone({ precision: 400 }).div(top.toString(), bottom.toString()).toNumber();
    fc.assert(
      fc.property(pair, ({ top, bottom, value: made }) => {
        expect(made.toNumber()).toBe(nearest(top, bottom) + 0);
      }),
      { numRuns: 400 },
    );
    const big = fc.bigInt({ min: 1n, max: 10n ** 120n });
    fc.assert(
      fc.property(big, big, (top, bottom) => {
        expect(ratioOf(top, bottom).toNumber()).toBe(nearest(top, bottom));
        expect(ratioOf(-top, bottom).toNumber()).toBe(-nearest(top, bottom));
      }),
      { numRuns: 400 },
    );
  });

  it("decides ties by what lies far behind", () => {
    const tie = rational(2n ** 53n + 1n);
    const little = rational("1e-300");
    expect(tie.toNumber()).toBe(2 ** 53);
    expect(tie.plus(little).toNumber()).toBe(2 ** 53 + 2);
    expect(tie.minus(little).toNumber()).toBe(2 ** 53);
    expect(tie.plus(2).minus(little).toNumber()).toBe(2 ** 53 + 2);
    expect(tie.plus(little).negate().toNumber()).toBe(-(2 ** 53 + 2));
  });

  it("goes to the ends of the doubles", () => {
    expect(rational("1e308").toNumber()).toBe(1e308);
    expect(rational("1.7976931348623157e308").toNumber()).toBe(Number.MAX_VALUE);
    expect(rational("2e308").toNumber()).toBe(Infinity);
    expect(rational("-1e400").toNumber()).toBe(-Infinity);
    expect(rational("1e-300").toNumber()).toBe(1e-300);
    expect(rational("2.2250738585072014e-308").toNumber()).toBe(2.2250738585072014e-308);
    expect(rational("1e-400").toNumber()).toBe(0);
  });

  it("has no negative zero", () => {
    for (const zero of [
      rational("-0"),
      rational(-0),
      rational("-0.00"),
      rational(0).negate(),
      rational(-5).times(0),
      rational("-0/7"),
    ]) {
      expect(Object.is(zero.toNumber(), 0)).toBe(true);
      expect(zero.toFraction()).toBe("0/1");
      expect(zero.sign).toBe(0);
      expect(zero.toDecimal({ negativeZero: true })).toBe("0");
    }
  });

  it("writes a fraction, with a denominator always", () => {
    expect(rational("8/2").toFraction()).toBe("4/1");
    expect(String(rational("-6/4"))).toBe("-3/2");
    expect(`${rational(10n ** 20n)}`).toBe("100000000000000000000/1");
  });
});

describe("travelling", () => {
  it("through JSON as text", () => {
    fc.assert(
      fc.property(value, (a) => {
        const text = JSON.parse(JSON.stringify({ a })).a as string;
        expect(text).toBe(a.toFraction());
        expect(rational(text).equals(a)).toBe(true);
      }),
    );
  });

  it("through a structured clone, read back", () => {
    fc.assert(
      fc.property(value, (a) => {
        const clone = structuredClone(a);
        expect(clone).not.toBeInstanceOf(Rational);
        expect(rational(clone).toFraction()).toBe(a.toFraction());
      }),
    );
  });

  it("refuses what merely looks like one", () => {
    for (const fake of [
      { top: 0.5, bottom: 2 + 2 ** -30 },
      { top: {}, bottom: 1 },
      { top: "x", bottom: 2 },
    ])
      expect(() => rational(fake as unknown as RationalInput)).toThrow("Found");
    for (const fake of [{}, [], null, undefined, true, Symbol("x"), () => 1, { top: 1 }, { top: 1, bottom: 0 }])
      refuses(() => rational(fake as unknown as RationalInput), "not-a-number", "input");
    refuses(
      () => rational(Object.create(null) as RationalInput),
      "not-a-number",
      "input",
      "Found object; expected a number such as 2.6 or 62/15.",
    );
    refuses(
      () => rational(null as unknown as RationalInput),
      "not-a-number",
      "input",
      "Found null; expected a number such as 2.6 or 62/15.",
    );
  });
});

describe("ratioOf", () => {
  it("takes whole numbers of any kind", () => {
    expect(ratioOf(62, 15).toFraction()).toBe("62/15");
    expect(ratioOf(-45, 18).toFraction()).toBe("-5/2");
    expect(ratioOf(45, -18).toFraction()).toBe("-5/2");
    expect(ratioOf(-45, -18).toFraction()).toBe("5/2");
    expect(ratioOf(2 ** 40, 2 ** 41).toFraction()).toBe("1/2");
    expect(ratioOf(6n, 4).toFraction()).toBe("3/2");
    expect(ratioOf(6, 4n).toFraction()).toBe("3/2");
    expect(ratioOf(10n ** 30n, -(10n ** 29n)).toFraction()).toBe("-10/1");
    expect(ratioOf(2.5, 0.5).toFraction()).toBe("5/1");
    refuses(() => ratioOf(1 / 3, 1), "long-number", "input");
    refuses(() => ratioOf(1, NaN), "not-finite", "input");
  });
});
