import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Bounded, bounded, type Rational, rational, ratioOf, type RoundingMode } from "../../src/exact/index.js";
import { value } from "./arbitrary.js";
import { refuses } from "./errors.js";

const ordered = (a: Rational, b: Rational): Bounded => (a.compare(b) <= 0 ? bounded(a, b) : bounded(b, a));

/** Intervals, most of them of everyday numbers, some around zero, some of one value. */
const small = fc
  .tuple(fc.integer({ min: -60, max: 60 }), fc.integer({ min: 1, max: 30 }))
  .map(([n, d]) => ratioOf(n, d));
const interval = fc.oneof(
  { weight: 4, arbitrary: fc.tuple(small, small).map(([a, b]) => ordered(a, b)) },
  { weight: 1, arbitrary: fc.tuple(value, value).map(([a, b]) => ordered(a, b)) },
  { weight: 1, arbitrary: value.map((a) => bounded(a)) },
);

/** A value inside, at a share of the way up. */
const inside = ({ low, high }: Bounded, share: Rational): Rational => low.plus(high.minus(low).times(share));
const share = fc.integer({ min: 0, max: 16 }).map((part) => ratioOf(part, 16));

/** The least and the most of what the operation gives at the corners: the truth for operations that rise or fall throughout. */
function corners(a: Bounded, b: Bounded, operation: (x: Rational, y: Rational) => Rational): [string, string] {
  const all = [a.low, a.high].flatMap((x) => [b.low, b.high].map((y) => operation(x, y)));
  const sorted = all.sort((x, y) => x.compare(y));
  return [sorted[0]!.toFraction(), sorted[3]!.toFraction()];
}

const ends = ({ low, high }: Bounded): [string, string] => [low.toFraction(), high.toFraction()];

describe("intervals", () => {
  it("hold every value that the operation can give, and their ends are among those", () => {
    fc.assert(
      fc.property(interval, interval, share, share, (a, b, s, t) => {
        const [x, y] = [inside(a, s), inside(b, t)];
        expect(a.plus(b).contains(x.plus(y))).toBe(true);
        expect(a.minus(b).contains(x.minus(y))).toBe(true);
        expect(a.times(b).contains(x.times(y))).toBe(true);
        expect(ends(a.plus(b))).toEqual(corners(a, b, (p, q) => p.plus(q)));
        expect(ends(a.minus(b))).toEqual(corners(a, b, (p, q) => p.minus(q)));
        expect(ends(a.times(b))).toEqual(corners(a, b, (p, q) => p.times(q)));
        if (!b.contains(0)) {
          expect(a.over(b).contains(x.over(y))).toBe(true);
          expect(ends(a.over(b))).toEqual(corners(a, b, (p, q) => p.over(q)));
          expect(b.inverse().contains(y.inverse())).toBe(true);
        }
        expect(ends(a.negate())).toEqual([a.high.negate().toFraction(), a.low.negate().toFraction()]);
        expect(a.abs().contains(x.abs())).toBe(true);
        expect([a.low.abs(), a.high.abs()].some((end) => end.equals(a.abs().high))).toBe(true);
        expect(a.abs().low.sign === 0).toBe(a.contains(0));
      }),
      { numRuns: 500 },
    );
  });

  it("are as tight in a power as one unknown allows", () => {
    fc.assert(
      fc.property(interval, share, fc.integer({ min: 0, max: 5 }), (a, s, exponent) => {
        const power = a.power(exponent);
        expect(power.contains(inside(a, s).power(exponent))).toBe(true);
        const [low, high] = [a.low.power(exponent), a.high.power(exponent)];
        expect(power.high.equals(low.compare(high) > 0 ? low : high)).toBe(true);
        expect(power.low.sign === 0).toBe(exponent > 0 && (exponent % 2 ? a.low.sign === 0 : a.contains(0)));
        if (!a.contains(0)) expect(ends(a.power(-exponent))).toEqual(ends(power.inverse()));
      }),
      { numRuns: 500 },
    );
    expect(ends(bounded(-2, 3).power(2))).toEqual(["0/1", "9/1"]);
    expect(ends(bounded(-2, 3).power(3))).toEqual(["-8/1", "27/1"]);
    expect(ends(bounded(-3, -2).power(2))).toEqual(["4/1", "9/1"]);
    expect(ends(bounded(-3, -2).power(-3))).toEqual(["-1/8", "-1/27"]);
    refuses(() => bounded(-2, 3).power(-1), "division-by-zero", "divisor");
  });

  it("refuse a divisor that may be zero", () => {
    for (const divisor of [bounded(-1, 1), bounded(0, 1), bounded(-1, 0), bounded(0)])
      refuses(() => bounded(1).over(divisor), "division-by-zero", "divisor", "Found 0; expected another number.");
    refuses(() => bounded(1, 2).over(0), "division-by-zero", "divisor");
  });

  it("take numbers, text and what JSON or a clone makes of them", () => {
    fc.assert(
      fc.property(interval, (a) => {
        expect(ends(bounded(JSON.parse(JSON.stringify(a))))).toEqual(ends(a));
        expect(ends(bounded(structuredClone(a)))).toEqual(ends(a));
      }),
    );
    expect(JSON.stringify(bounded("2.735", "2.745"))).toBe('{"low":"547/200","high":"549/200"}');
    expect(bounded("2.735", "2.745").toJSON()).toEqual({ low: "547/200", high: "549/200" });
    expect(ends(bounded(1, 2).plus("1/2"))).toEqual(["3/2", "5/2"]);
    expect(ends(bounded(1, 2).minus(1))).toEqual(["0/1", "1/1"]);
    expect(ends(bounded(1, 2).times(-3n))).toEqual(["-6/1", "-3/1"]);
    expect(ends(bounded(1, 2).over(0.5))).toEqual(["2/1", "4/1"]);
    const one = bounded(1, 2);
    expect(bounded(one)).toBe(one);
  });

  it("refuse ends in the wrong order, and ends that are no numbers", () => {
    refuses(() => bounded(2, 1), "ends-reversed", "high", 'Found "1/1"; expected at least 2/1.');
    refuses(() => bounded({ low: 2, high: 1 }), "ends-reversed", "high");
    refuses(() => bounded("x", 1), "not-a-number", "input");
    refuses(() => bounded(1, "x"), "not-a-number", "input");
    refuses(() => bounded({} as never), "not-a-number", "input");
    refuses(() => bounded(null as never), "not-a-number", "input");
    expect(ends(bounded(1, 1))).toEqual(["1/1", "1/1"]);
  });

  it("cannot be changed", () => {
    const one = bounded(1, 2) as { low: Rational; high: Rational };
    expect(() => (one.low = rational(5))).toThrow(TypeError);
    expect(() => (one.high = rational(5))).toThrow(TypeError);
  });

  it("are exact where there is one value only", () => {
    expect(bounded("2.5").isExact).toBe(true);
    expect(bounded("2.5", "5/2").isExact).toBe(true);
    expect(bounded("2.5", "2.50000001").isExact).toBe(false);
  });

  it("contain what lies in them, ends included", () => {
    const range = bounded(38, 46);
    for (const yes of [38, 46, "41.5", bounded(38, 46), bounded(40, 41)]) expect(range.contains(yes)).toBe(true);
    for (const no of ["37.999", "46.001", bounded(37, 40), bounded(40, 47), bounded(1, 100)])
      expect(range.contains(no)).toBe(false);
  });

  it("compare only where it can be told", () => {
    expect(bounded(1, 2).compare(bounded(3, 4))).toBe(-1);
    expect(bounded(3, 4).compare(bounded(1, 2))).toBe(1);
    expect(bounded(3, 4).compare(2)).toBe(1);
    expect(bounded(1, 2).compare(bounded(2, 3))).toBeUndefined();
    expect(bounded(2, 3).compare(bounded(1, 2))).toBeUndefined();
    expect(bounded(1, 4).compare(bounded(2, 3))).toBeUndefined();
    expect(bounded(1, 2).compare(bounded(1, 2))).toBeUndefined();
    expect(bounded("0.5").compare("1/2")).toBe(0);
    expect(bounded(1).compare(bounded(1, 2))).toBeUndefined();
    expect(bounded(2).compare(bounded(1, 2))).toBeUndefined();
    expect(bounded(1, 2).compare(1)).toBeUndefined();
    expect(bounded(1, 2).compare(2)).toBeUndefined();
  });
});

describe("shown ends", () => {
  const digits = fc.integer({ min: 0, max: 12 });

  it("are rounded outward, by less than one unit, whatever mode is stated", () => {
    fc.assert(
      fc.property(
        interval,
        digits,
        fc.constantFrom<RoundingMode>("ceil", "trunc", "halfEven", "floor"),
        (a, count, roundingMode) => {
          fc.pre(!a.isExact);
          const { low, high } = a.toDecimals({
            minimumFractionDigits: count,
            maximumFractionDigits: count,
            roundingMode,
          });
          const unit = ratioOf(1, 10 ** count);
          expect(bounded(low, high).contains(a)).toBe(true);
          expect(a.low.minus(low).compare(unit)).toBe(-1);
          expect(rational(high).minus(a.high).compare(unit)).toBe(-1);
        },
      ),
      { numRuns: 500 },
    );
  });

  it("say what they hold", () => {
    expect(bounded("1321777/33880", "1326851/33880").toDecimals({ maximumFractionDigits: 2 })).toEqual({
      low: "39.01",
      high: "39.17",
    });
    expect(bounded("-0.5", "0.5").toDecimals({ maximumFractionDigits: 0 })).toEqual({ low: "-1", high: "1" });
    expect(bounded("1/3", "2/3").toDecimals()).toEqual({ low: "0.333", high: "0.667" });
  });

  it("are the one value, rounded as stated, where there is one only", () => {
    expect(bounded("62/15").toDecimals({ maximumFractionDigits: 1 })).toEqual({ low: "4.1", high: "4.1" });
    expect(bounded("62/15").toDecimals({ maximumFractionDigits: 1, roundingMode: "ceil" })).toEqual({
      low: "4.2",
      high: "4.2",
    });
  });
});

describe("supported digits", () => {
  /** As defined: the most of all, one by one. */
  function brute(a: Bounded, maximum: number, roundingMode?: RoundingMode): number | undefined {
    const at = (end: Rational, count: number): string =>
      end.toDecimal({ minimumFractionDigits: count, maximumFractionDigits: count, roundingMode });
    for (let count = maximum; count >= 0; count--) if (at(a.low, count) === at(a.high, count)) return count;
    return undefined;
  }

  const near = fc
    .tuple(value, fc.integer({ min: 0, max: 30 }), fc.integer({ min: 0, max: 2000 }))
    .map(([a, places, width]) => bounded(a, a.plus(ratioOf(BigInt(width), 10n ** BigInt(places)))));

  it("are the most at which both ends round to the same text", () => {
    const mode = fc.constantFrom<RoundingMode | undefined>(
      undefined,
      "floor",
      "ceil",
      "trunc",
      "expand",
      "halfEven",
      "halfTrunc",
    );
    fc.assert(
      fc.property(fc.oneof(near, interval), fc.integer({ min: 0, max: 40 }), mode, (a, maximum, roundingMode) => {
        expect(a.supportedDigits(maximum, roundingMode)).toBe(brute(a, maximum, roundingMode));
      }),
      { numRuns: 500 },
    );
  });

  it("are as defined in the odd cases", () => {
    expect(bounded("43.7", "46.9").supportedDigits()).toBeUndefined();
    expect(bounded("2.735", "2.745").supportedDigits()).toBe(1);
    expect(bounded("0.4999", "0.5001").supportedDigits()).toBe(3);
    expect(bounded("-0.001", "0.001").supportedDigits()).toBe(2);
    expect(bounded("1/3").supportedDigits()).toBe(100);
    expect(bounded("1/3").supportedDigits(7)).toBe(7);
    expect(bounded("0.5", "1.4999").supportedDigits()).toBe(0);
    expect(bounded("1.05", "1.15").supportedDigits()).toBe(0);
    expect(bounded("1.05", "1.1499").supportedDigits()).toBe(1);
    expect(bounded("1.1", "1.9").supportedDigits(5, "floor")).toBe(0);
  });
});
