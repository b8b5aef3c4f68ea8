import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bounded, rational } from "../../src/exact/index.js";
import type { PrintedReading } from "../../src/stages/index.js";
import { agreement, measuredReduction, toothPairsFor } from "../../src/counted/index.js";
import { ceilOf, floorOf } from "../../src/gears/index.js";

const ranges = { driver: [8, 40], driven: [8, 80] } as const;
const fractions = (pairs: readonly (readonly [number, number])[]) =>
  pairs.map(([driver, driven]) => `${driver}/${driven}`);

describe("which counts can be behind a ratio", () => {
  it("practice 7: 2.74 is 52/19, 63/23 or 74/27; three 52/19 are not three 2.74", () => {
    expect(toothPairsFor("2.74", ranges)).toEqual([
      [19, 52],
      [23, 63],
      [27, 74],
    ]);
    const off = rational("52/19").power(3).over(rational("2.74").power(3)).minus(1);
    expect(off.toDecimal({ maximumFractionDigits: 4 })).toBe("-0.0035");
  });

  it("Cuttle: 2.73 as rounded, as cut off, and unsure", () => {
    const rounded = ["11/30", "15/41", "22/60", "26/71"];
    const truncated = ["15/41", "19/52", "23/63", "26/71"];
    expect(fractions(toothPairsFor("2.73", ranges))).toEqual(rounded);
    expect(fractions(toothPairsFor("2.73", ranges, "truncated"))).toEqual(truncated);
    expect(fractions(toothPairsFor("2.73", ranges, "unsure"))).toEqual(
      [...new Set([...rounded, ...truncated])].sort((a, b) => +a.split("/")[0]! - +b.split("/")[0]!),
    );
  });

  it("agrees with trying every pair in whole numbers", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 999 }),
        fc.integer({ min: 0, max: 3 }),
        fc.constantFrom<PrintedReading>("rounded", "truncated", "unsure"),
        (digits, places, read) => {
          const unit = 10 ** places;
          const text = (digits / unit).toFixed(places);
          const wanted: [number, number][] = [];
          for (let driver = 6; driver <= 30; driver++)
            for (let driven = 5; driven <= 70; driven++) {
              // Twice the printed value in its last digit, against twice the ratio.
              const [ratio, value] = [2 * driven * unit, 2 * digits * driver];
              const above = ratio - value;
              const inside =
                read === "rounded"
                  ? Math.abs(above) <= driver
                  : read === "truncated"
                    ? above >= 0 && above < 2 * driver
                    : above >= -driver && above < 2 * driver;
              if (inside) wanted.push([driver, driven]);
            }
          expect(toothPairsFor(text, { driver: [6, 30], driven: [5, 70] }, read)).toEqual(wanted);
        },
      ),
      { numRuns: 300 },
    );
  });

  it("takes a fraction for what it is, however it was shortened", () => {
    for (const read of ["rounded", "truncated", "unsure"] as const)
      expect(toothPairsFor("52/19", ranges, read)).toEqual([[19, 52]]);
  });

  it("takes an interval, and turns counted by hand", () => {
    expect(toothPairsFor(bounded("2.5", "2.52"), { driver: [8, 12], driven: [20, 30] })).toEqual([
      [8, 20],
      [10, 25],
      [12, 30],
    ]);
    // Four motor turns to 1 ½ of the wheel, more or less.
    const count = { motorTurns: 4, wheelTurns: { from: "1.49", to: "1.51" } };
    expect(fractions(toothPairsFor(count, { driver: [9, 13], driven: [20, 40] }))).toEqual(["9/24", "12/32"]);
    expect(toothPairsFor("2.74", { driver: [40, 8], driven: [8, 80] })).toEqual([]);
  });
});

describe("turns counted by hand", () => {
  it("40 motor turns to 1.7 to 1.8 of one wheel, the other held", () => {
    const seen = measuredReduction({ motorTurns: 40, wheelTurns: { from: "1.7", to: "1.8" }, oneWheelHeld: true });
    expect(seen.toJSON()).toEqual({ low: "400/9", high: "800/17" });
    expect(measuredReduction({ motorTurns: "40", wheelTurns: 2 }).toJSON()).toEqual({ low: "20/1", high: "20/1" });
  });

  it("Limpet: agrees with what was counted at the front", () => {
    const count = { motorTurns: 40, wheelTurns: { from: "0.90", to: "0.91" } };
    expect(agreement(bounded("25916/585"), count)).toMatchObject({ verdict: "agrees" });
    expect(agreement(bounded("25916/585"), count).measured.toJSON()).toEqual({ low: "4000/91", high: "400/9" });
    // As printed, the hub leaves it open; with another ring set it would not agree.
    expect(agreement(bounded("17081/390", "18259/390"), count).verdict).toBe("cannot tell");
    const other = agreement(bounded("50"), count);
    expect([other.verdict, other.off.toJSON()]).toEqual(["disagrees", { low: "-11/91", high: "-1/9" }]);
    expect(agreement(bounded(40), count).verdict).toBe("disagrees");
    expect(agreement(bounded(44, 45), count).verdict).toBe("cannot tell");
    expect(agreement(bounded("400/9"), count).verdict).toBe("agrees");
    expect(agreement(bounded("4000/91"), count).verdict).toBe("agrees");
    expect(agreement(bounded("400/9", 50), count).verdict).toBe("cannot tell");
    expect(agreement(bounded(40, "4000/91"), count).verdict).toBe("cannot tell");
  });

  it("refuses turns that are none", () => {
    const bad = (at: string) =>
      expect.objectContaining({
        code: "out-of-range",
        at,
        message: "Turns are zero or less; expected counts above zero.",
      }) as Error;
    expect(() => measuredReduction({ motorTurns: 0, wheelTurns: 1 })).toThrowError(bad("motorTurns"));
    expect(() => measuredReduction({ motorTurns: -4, wheelTurns: 1 })).toThrowError(bad("motorTurns"));
    expect(() => measuredReduction({ motorTurns: 4, wheelTurns: { from: 0, to: 1 } })).toThrowError(bad("wheelTurns"));
    expect(() => measuredReduction({ motorTurns: 4, wheelTurns: -1 })).toThrowError(bad("wheelTurns"));
    expect(() => measuredReduction({ motorTurns: "many", wheelTurns: 1 })).toThrowError(
      expect.objectContaining({ at: "motorTurns" }),
    );
    expect(() => measuredReduction({ motorTurns: 4, wheelTurns: { from: 2, to: 1 } })).toThrowError(
      expect.objectContaining({ code: "ends-reversed", at: "wheelTurns" }),
    );
  });
});

it("rounds to whole numbers down and up", () => {
  for (const [text, down, up] of [
    ["7/2", 3, 4],
    ["4", 4, 4],
    ["-7/2", -4, -3],
    ["-4", -4, -4],
    ["0", 0, 0],
    ["-1/3", -1, 0],
  ] as const) {
    expect(floorOf(rational(text))).toBe(down);
    expect(ceilOf(rational(text)) + 0).toBe(up);
  }
});
