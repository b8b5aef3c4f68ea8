// Long chains of arithmetic, small and large numbers mixed, against fractions of this test's own.
import fc from "fast-check";
import { expect, it } from "vitest";
import { rational } from "@meshwright/calc/exact";

interface Fraction {
  readonly over: bigint;
  readonly under: bigint;
}

const gcd = (a: bigint, b: bigint): bigint => (b === 0n ? (a < 0n ? -a : a) : gcd(b, a % b));

function written({ over, under }: Fraction): string {
  const divisor = gcd(over, under) * (under < 0n ? -1n : 1n);
  return `${over / divisor}/${under / divisor}`;
}

const operations = {
  plus: (a: Fraction, b: Fraction) => ({ over: a.over * b.under + b.over * a.under, under: a.under * b.under }),
  minus: (a: Fraction, b: Fraction) => ({ over: a.over * b.under - b.over * a.under, under: a.under * b.under }),
  times: (a: Fraction, b: Fraction) => ({ over: a.over * b.over, under: a.under * b.under }),
  over: (a: Fraction, b: Fraction) => ({ over: a.over * b.under, under: a.under * b.over }),
};

const count = fc.oneof(fc.bigInt({ min: 1n, max: 200n }), fc.bigInt({ min: 1n, max: 2n ** 60n }));
const step = fc.record({
  name: fc.constantFrom(...(Object.keys(operations) as (keyof typeof operations)[])),
  over: count,
  under: count,
});

it("fractions stay exact over long chains", () => {
  fc.assert(
    fc.property(fc.array(step, { minLength: 1, maxLength: 40 }), (steps) => {
      let ours = rational(1);
      let theirs: Fraction = { over: 1n, under: 1n };
      for (const { name, over, under } of steps) {
        ours = ours[name](rational(`${over}/${under}`));
        theirs = operations[name](theirs, { over, under });
      }
      expect(ours.toFraction()).toBe(written(theirs));
    }),
    { numRuns: 50_000 },
  );
});
