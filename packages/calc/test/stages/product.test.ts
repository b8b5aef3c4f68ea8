import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { productOf } from "../../src/stages/index.js";
import { fraction } from "../exact/arbitrary.js";
import { refuses } from "../exact/errors.js";

const product = (factors: readonly number[]): bigint => factors.reduce((all, factor) => all * BigInt(factor), 1n);

describe("the product of a whole train", () => {
  it("is the product, in lowest terms, however long", () => {
    const count = fc.oneof(
      fc.integer({ min: 1, max: 120 }),
      fc.integer({ min: -3, max: 3 }).filter((factor) => factor !== 0),
      fc.integer({ min: 1, max: 1_000_000 }),
      fc.constantFrom(
        997,
        1009,
        1009 * 997,
        1009 * 1009,
        1009 * 1013,
        1013 * 1013,
        999983,
        2 ** 20,
        3 ** 12,
        Number.MAX_SAFE_INTEGER,
        -1009 * 1013,
      ),
    );
    const list = fc.array(count, { maxLength: 60 });
    fc.assert(
      fc.property(list, list, fc.boolean(), (above, below, zero) => {
        const numerators = zero ? [...above, 0, 7] : above;
        expect(productOf(numerators, below).toFraction()).toBe(fraction(product(numerators), product(below)));
      }),
      { numRuns: 1000 },
    );
  });

  it("is 1 without factors, and where all cancel", () => {
    expect(productOf([], []).toFraction()).toBe("1/1");
    const teeth = Array.from({ length: 500 }, (_, index) => 8 + index);
    expect(productOf(teeth, [...teeth].reverse()).toFraction()).toBe("1/1");
    expect(productOf([...teeth, 62], [...teeth, 15]).toFraction()).toBe("62/15");
    expect(productOf([62, 45], [15, 18]).toFraction()).toBe("31/3");
    expect(productOf([...teeth, 0], teeth).toFraction()).toBe("0/1");
    expect(productOf([-1e9, 1e9, 1e9], [1e9]).toFraction()).toBe("-1000000000000000000/1");
  });

  it("names the factor that is none", () => {
    refuses(() => productOf([62, 1.5], [15]), "not-an-integer", "numerators.1", "Found 1.5; expected a whole number.");
    refuses(
      () => productOf([62], [15, 18, 0]),
      "not-an-integer",
      "denominators.2",
      "Found 0; expected a whole number but 0.",
    );
    refuses(() => productOf([2 ** 53], []), "not-an-integer", "numerators.0");
    refuses(() => productOf([], [NaN]), "not-an-integer", "denominators.0");
    refuses(() => productOf(["5" as never], []), "not-an-integer", "numerators.0");
  });
});
