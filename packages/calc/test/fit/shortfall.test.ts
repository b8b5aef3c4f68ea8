import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fits, shortfall, type FitMount, type FitQuestion, type Shortfall } from "../../src/fit/index.js";
import type { ToothPair } from "../../src/gears/index.js";
import { reasonText } from "../../src/languages/index.js";
import { anyCount, anyLength, anyNumber, faultOf, partly } from "../wild.js";

const pair = { driver: 15, driven: 62, module: "0.8" };
const of = (question: Partial<FitQuestion>): Shortfall | undefined => shortfall(fits({ pair, ...question }));
const long = (found: Shortfall | undefined) =>
  found?.by && "length" in found.by ? found.by.length.low.toDecimal({ maximumFractionDigits: 4 }) : undefined;
const told = (question: Partial<FitQuestion>) => {
  const found = of(question);
  return [found?.reason.code, found?.certain, long(found)];
};

describe("what has to change first", () => {
  it("is named for every refusal, with how much", () => {
    const slot: FitMount = { from: "30.9 mm", to: "31.3 mm" };
    expect(told({ mount: slot })).toEqual(["too-close", true, "0.1"]);
    expect(told({ mount: { to: "30 mm" } })).toEqual(["too-far", true, "0.8"]);
    expect(told({ mount: { holes: ["31 mm", "30.5 mm"] } })).toEqual(["no-hole", true, "0.2"]);
    expect(told({ mount: { walls: [{ label: "skid", distance: "25 mm", gap: "0.5 mm" }] } })).toEqual([
      "wall",
      true,
      "1.1",
    ]);
    expect(told({ mount: { shaft: "5 mm" }, driver: { bore: "4 mm" } })).toEqual(["bore-too-small", true, "1"]);
    expect(told({ mount: { shaft: "1/8 in" }, driver: { bore: "5 mm" } })).toEqual(["bore-too-large", true, "0.9125"]);
    const circles = [{ count: 3, diameter: "20 mm" }];
    const hubHoles = [{ count: 3, diameter: "21 mm" }];
    expect(told({ mount: { hubHoles }, driven: { circles } })).toEqual(["hub-holes", true, "0.95"]);
    expect(told({ mount: { hubHoles: [{ count: 4, diameter: "20 mm" }] }, driven: { circles } })).toEqual([
      "hub-holes",
      true,
      undefined,
    ]);
    expect(told({ mount: { reach: "6 mm" }, driver: { width: "8 mm" } })).toEqual(["reach", true, "2"]);
    expect(told({ mount: { opening: "1.5 mm" } })[0]).toBe("no-contact");
    expect(Number(told({ mount: { opening: "1.5 mm" } })[2])).toBeGreaterThan(0.5);
    expect(of({ driven: { diametralPitch: 32 } })).toMatchObject({ certain: true, reason: { code: "pitch-near" } });
    expect(of({ driven: { diametralPitch: 32 } })!.by).toHaveProperty("share");
    const angles = of({ driven: { module: "0.8", pressureAngle: "14.5" } })!;
    expect(angles.reason.code).toBe("angle-different");
    expect("degrees" in angles.by! && angles.by.degrees.toFraction()).toBe("11/2");
    expect(of({ pair: { ...pair, internal: true, driver: 60 } })).toMatchObject({
      certain: true,
      reason: { code: "ring-too-small" },
    });
  });

  it("is what is not known, where nothing refuses; a refusal comes before it", () => {
    expect(told({ pair: { driver: 15, driven: 62 } })).toEqual(["pitch-not-given", false, undefined]);
    expect(told({ pair: { ...pair, form: "bevel" } })).toEqual(["angle-gears", false, undefined]);
    expect(told({ pair: { ...pair, driverShift: "-0.6", drivenShift: "-9" } })[1]).toBe(false);
    expect(told({ pair: { driver: 15, driven: 62 }, mount: { shaft: "5 mm" }, driver: { bore: "4 mm" } })).toEqual([
      "bore-too-small",
      true,
      "1",
    ]);
    expect(of({})).toBeUndefined();
    expect(of({ pair: { driver: 12, driven: 24, module: 1 } })).toBeUndefined();
  });

  it("is the tightest of all limits at an end", () => {
    const mount: FitMount = { to: "30.7 mm", knownPair: [20, 50], farther: "0.5 mm", toothSum: [50, 76] };
    expect([of({ mount })!.reason.label, long(of({ mount }))]).toEqual(["known-pair", "2.3"]);
  });
});

describe("whatever is asked", () => {
  const anyMount = partly<FitMount>({
    from: anyLength,
    to: anyLength,
    measured: fc.constantFrom("between axes", "over shafts", "between shafts"),
    knownPair: fc.tuple(anyCount, anyCount),
    closer: anyLength,
    farther: anyLength,
    toothSum: fc.tuple(anyCount, anyCount),
    pivot: fc.record({ distance: anyLength, arm: anyLength, from: anyNumber, to: anyNumber }),
    holes: fc.array(anyLength, { maxLength: 3 }),
    opening: anyLength,
    openingTo: anyLength,
    walls: fc.array(fc.record({ distance: anyLength, gap: anyLength }), { maxLength: 2 }),
    shaft: anyLength,
    drivenShaft: anyLength,
    steps: fc.array(anyLength, { maxLength: 2 }),
    reach: anyLength,
    line: fc.record({ from: anyLength, to: anyLength }),
    hubHoles: fc.array(
      fc
        .tuple(anyCount, partly({ diameter: anyLength, neighbours: anyLength, hole: anyLength, screw: anyLength }))
        .map(([count, rest]) => ({ ...rest, count })),
      { maxLength: 2 },
    ),
  });
  const gear = partly({
    module: anyNumber,
    pressureAngle: anyNumber,
    bore: anyLength,
    width: anyLength,
    hub: anyLength,
  });
  const circles = fc.array(fc.record({ count: anyCount, diameter: anyLength }), { maxLength: 2 });
  const asked: fc.Arbitrary<ToothPair> = fc
    .tuple(
      fc.record({ driver: anyCount, driven: anyCount }),
      partly({ module: anyNumber, internal: fc.boolean(), driverShift: anyNumber, thinning: anyLength }),
    )
    .map(([counts, rest]): ToothPair => ({ ...rest, ...counts }));

  it("answers with finite figures, or throws an error of ours; and names what has to change exactly where it does not fit", () => {
    const sound = fc.record({
      driver: fc.integer({ min: 5, max: 40 }),
      driven: fc.integer({ min: 9, max: 90 }),
      module: fc.constantFrom("0.8", "1"),
      internal: fc.boolean(),
    });
    const few = <T>(one: fc.Arbitrary<T>) => fc.oneof(fc.constant({} as T), one);
    fc.assert(
      fc.property(
        fc.oneof(asked, sound),
        few(anyMount),
        few(gear),
        few(gear),
        circles,
        (one, mount, driver, driven, holes) => {
          const question: FitQuestion = { pair: one, mount, driver, driven: { ...driven, circles: holes } };
          const faults = faultOf(() => {
            const fit = fits(question);
            const first = shortfall(fit);
            if ((first === undefined) !== (fit.verdict === "fits"))
              throw new Error(`${fit.verdict}, ${first?.reason.code}`);
            return [fit, first, fit.reasons.map((reason) => reasonText(reason))];
          });
          expect(faults).toEqual([]);
        },
      ),
      { numRuns: 1500 },
    );
  });
});
