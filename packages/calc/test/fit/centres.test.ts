import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fits, limitsOf, rangesOf, toothSumsFor, type CentreMount, type FitMount } from "../../src/fit/index.js";
import { toAxes } from "../../src/fit/measured.js";

const error = (code: string, at: string) => expect.objectContaining({ code, at }) as Error;
const ends = (mount: CentreMount, pair = {}) =>
  rangesOf(mount, pair).map(({ from, to }) => [from?.low.toFraction(), to?.low.toFraction()]);

describe("a ring and the gear inside it, in a mount", () => {
  const pair = { driver: 20, driven: 60, module: 1, internal: true };

  it("stands closer than its theoretical centre distance by the opening", () => {
    const fit = fits({ pair, mount: { opening: "0.05 mm" } });
    expect([fit.opening!.low.toFraction(), fit.centre!.low.toFraction()]).toEqual(["1/20", "399/20"]);
    expect(fit.mesh.operatingCentre).toBeCloseTo(19.95, 12);
    expect(fit.mesh.circumferentialBacklash!).toBeGreaterThan(0.03);
    const outside = fits({ pair: { ...pair, internal: false }, mount: { opening: "0.05 mm" } });
    expect(outside.centre!.low.toFraction()).toBe("801/20");
  });

  it("needs a slot that reaches in so far, and no farther out", () => {
    const verdict = (mount: FitMount) => {
      const { reasons } = fits({ pair, mount });
      const [first] = reasons.filter(({ weight }) => weight === "refusal");
      return first ? [first.code, first.needed!.low.toFraction(), first.short!.low.toFraction()] : ["fits"];
    };
    const opened = { opening: "0.05 mm", openingTo: "0.1 mm" };
    expect(verdict({ from: "19 mm", to: "21 mm", ...opened })).toEqual(["fits"]);
    // At its farthest it stands at 19.95, at its closest at 19.9.
    expect(verdict({ from: "19.96 mm", ...opened })).toEqual(["too-close", "399/20", "1/100"]);
    expect(verdict({ to: "19.89 mm", ...opened })).toEqual(["too-far", "199/10", "1/100"]);
    expect(verdict({ from: "19.95 mm", to: "19.95 mm", ...opened })).toEqual(["fits"]);
    // Pushed in by the end of the slot: opened more than wanted at least.
    const pushed = fits({ pair, mount: { to: "19.92 mm", ...opened } });
    expect([pushed.opening!.low.toFraction(), pushed.centre!.low.toFraction()]).toEqual(["2/25", "498/25"]);
  });

  it("has holes and known pairs that count the same way", () => {
    const holes = fits({
      pair,
      mount: { holes: ["19.9 mm", "19.94 mm", "20.1 mm"], opening: "0.05 mm", openingTo: "0.2 mm" },
    });
    expect([holes.verdict, holes.opening!.low.toFraction()]).toEqual(["fits", "3/50"]);
    const none = fits({ pair, mount: { holes: ["20.1 mm", "19.5 mm"], opening: "0.05 mm" } });
    expect(none.reasons[0]).toMatchObject({ code: "no-hole" });
    expect([none.reasons[0]!.needed!.low.toFraction(), none.reasons[0]!.available!.low.toFraction()]).toEqual([
      "399/20",
      "201/10",
    ]);
    // A pair that runs, runs with its opening: the slot that is told by it lies that much closer.
    const known: FitMount = { knownPair: [20, 60], closer: "0 mm", farther: "0 mm", opening: "0.05 mm" };
    expect(limitsOf(known, pair).map(({ at }) => at.low.toFraction())).toEqual(["399/20", "399/20"]);
    expect(fits({ pair, mount: known }).verdict).toBe("fits");
    expect(fits({ pair: { ...pair, driver: 21, driven: 61 }, mount: known }).verdict).toBe("fits");
    expect(fits({ pair: { ...pair, driver: 21, driven: 60 }, mount: known }).verdict).toBe("does not fit");
    expect(toothSumsFor({ toothSum: [40, 42], opening: "0.3 mm" }, pair)).toEqual([[40, 42]]);
  });

  it("is refused where the ring is too small to turn in, with the count that would do", () => {
    const small = fits({ pair: { ...pair, driver: 54 } });
    expect([small.verdict, small.reasons[0]]).toMatchObject(["does not fit", { code: "ring-too-small", of: "driven" }]);
    const { teeth } = small.reasons[0]!;
    expect(fits({ pair: { ...pair, driver: 54, driven: teeth! } }).verdict).toBe("fits");
    expect(fits({ pair: { ...pair, driver: 54, driven: teeth! - 1 } }).verdict).toBe("does not fit");
    for (const driven of [54, 20])
      expect(fits({ pair: { ...pair, driver: 54, driven } }).reasons[0]).toMatchObject({
        code: "ring-too-small",
        weight: "refusal",
        teeth,
      });
    const [bare] = fits({ pair: { driver: 54, driven: 50, internal: true } }).reasons;
    expect(bare).toEqual({ code: "ring-too-small", weight: "refusal", of: "driven" });
  });

  it("parts from its ring where it is opened too far", () => {
    const { reasons } = fits({ pair, mount: { opening: "1.5 mm" } });
    expect(reasons[0]).toMatchObject({ code: "no-line-of-action", weight: "refusal" });
    const wide = fits({ pair: { ...pair, driven: 90 }, mount: { opening: "1.5 mm" } }).reasons[0]!;
    expect([wide.code, wide.weight]).toEqual(["no-contact", "refusal"]);
    const least = wide.needed!.low.toNumber();
    expect(wide.short!.low.toNumber()).toBeCloseTo(1.5 - least, 8);
    const at = (opening: number) =>
      fits({ pair: { ...pair, driven: 90 }, mount: { opening: `${opening.toFixed(6)} mm` } }).verdict;
    expect([at(least - 0.001), at(least + 0.001)]).toEqual(["fits", "does not fit"]);
  });
});

describe("a centre distance that was measured over or between shafts", () => {
  const shafts = { shaft: "1/8 in", drivenShaft: "5 mm" };

  it("is less half of both shafts, or more, exactly", () => {
    expect(toAxes({ measured: "over shafts", ...shafts }).toFraction()).toBe("-327/80");
    expect(toAxes({ measured: "between shafts", ...shafts }).toFraction()).toBe("327/80");
    expect(toAxes({ measured: "between axes" }).sign).toBe(0);
    expect(toAxes(shafts).sign).toBe(0);
    // 30.3 to 31.3 mm between axes, told in three ways.
    const half = 327 / 80;
    const told = (by: number, measured: FitMount["measured"]): FitMount => ({
      measured,
      ...shafts,
      from: `${(30.3 + by).toFixed(4)} mm`,
      to: `${(31.3 + by).toFixed(4)} mm`,
    });
    for (const mount of [told(0, "between axes"), told(half, "over shafts"), told(-half, "between shafts")]) {
      expect(ends(mount)).toEqual([["303/10", "313/10"]]);
      const { verdict, reasons } = fits({ pair: { driver: 15, driven: 68, module: "0.8" }, mount });
      expect([verdict, reasons[0]!.available!.low.toFraction()]).toEqual(["does not fit", "313/10"]);
      expect(toothSumsFor(mount, { module: "0.8" })).toEqual([[76, 78]]);
    }
  });

  it("is so for a row of holes too, and for nothing else", () => {
    const mount: FitMount = {
      measured: "over shafts",
      shaft: "4 mm",
      drivenShaft: "6 mm",
      holes: ["36 mm", "35 mm"],
      knownPair: [20, 40],
      closer: "1 mm",
      farther: "1 mm",
    };
    expect(ends(mount, { module: 1 })).toEqual([
      ["30/1", "30/1"],
      ["31/1", "31/1"],
    ]);
    expect(fits({ pair: { driver: 20, driven: 40, module: 1 }, mount }).centre!.low.toFraction()).toBe("30/1");
  });

  it("is not known without both shafts; the rest is", () => {
    const mount: FitMount = { measured: "over shafts", shaft: "4 mm", from: "30 mm", to: "31 mm" };
    const pair = { driver: 15, driven: 62, module: "0.8" };
    const { verdict, reasons } = fits({ pair, mount });
    expect([verdict, reasons[0]]).toEqual(["cannot tell", { code: "shafts-not-given", weight: "unknown" }]);
    const refused = fits({ pair, mount: { ...mount, walls: [{ distance: "20 mm" }] } });
    expect(refused.verdict).toBe("does not fit");
    expect(() => limitsOf(mount, pair)).toThrowError(error("shafts-not-given", "drivenShaft"));
    expect(() => rangesOf({ ...mount, shaft: undefined } as FitMount, pair)).toThrowError(
      error("shafts-not-given", "shaft"),
    );
    expect(() =>
      toothSumsFor({ ...mount, from: undefined, to: undefined, holes: ["30 mm"] } as FitMount, pair),
    ).toThrowError(error("shafts-not-given", "drivenShaft"));
    // Where nothing is measured so, no shaft is asked for.
    expect(fits({ pair, mount: { measured: "over shafts", opening: "0.05 mm" } }).verdict).toBe("fits");
    expect(fits({ pair, mount: { measured: "between shafts", drivenShaft: "3 mm", to: "30 mm" } }).verdict).toBe(
      "cannot tell",
    );
  });
});

describe("the centre distances that a mount can set", () => {
  it("are what all its limits leave, and of that each hole by itself", () => {
    const slot = { from: "30 mm", to: "32 mm" };
    expect(ends({})).toEqual([[undefined, undefined]]);
    expect(ends(slot)).toEqual([["30/1", "32/1"]]);
    expect(ends({ ...slot, knownPair: [20, 40], closer: "5 mm", farther: "1 mm" }, { module: 1 })).toEqual([
      ["30/1", "31/1"],
    ]);
    expect(ends({ ...slot, toothSum: [61, 100] }, { module: 1 })).toEqual([["61/2", "32/1"]]);
    expect(ends({ to: "32 mm", holes: ["33 mm", "31 mm", "20 mm"] })).toEqual([
      ["20/1", "20/1"],
      ["31/1", "31/1"],
    ]);
    expect(ends({ from: "32 mm", to: "30 mm" })).toEqual([]);
    expect(ends({ ...slot, holes: ["33 mm"] })).toEqual([]);
    expect(ends({ holes: [] })).toEqual([[undefined, undefined]]);
    // A swing has two ends, whichever is named first.
    const pivot = { distance: "30 mm", arm: "20 mm" };
    const [swing] = rangesOf({ pivot: { ...pivot, from: 90, to: 60 } }, {});
    expect([swing!.from!.power(2).contains(700), swing!.to!.power(2).contains(1300)]).toEqual([true, true]);
    const [inside] = rangesOf({ pivot: { ...pivot, from: 60, to: 90 }, to: "30 mm" }, {});
    expect([inside!.from!.power(2).contains(700), inside!.to!.low.toFraction()]).toEqual([true, "30/1"]);
  });

  it("have the tightest of all limits at each end, first among the reasons", () => {
    const pair = { driver: 15, driven: 72, module: "0.8" };
    // 34.8 mm against a slot to 33, a known pair to 31.3 and a maker's range to 32.
    const mount: FitMount = { to: "33 mm", knownPair: [23, 53], farther: "0.9 mm", toothSum: [60, 80] };
    const { reasons } = fits({ pair, mount });
    expect(reasons.map(({ code, label, short }) => [code, label, short?.low.toDecimal()]).slice(0, 3)).toEqual([
      ["too-far", "known-pair", "3.5"],
      ["too-far", "tooth-sum", "2.8"],
      ["too-far", "slot", "1.8"],
    ]);
  });

  it("refuse a hole that other limits leave out, and name what is nearest", () => {
    const pair = { driver: 20, driven: 40, module: 1 };
    const outside = fits({ pair, mount: { holes: ["30.1 mm"], to: "30.05 mm", openingTo: "0.2 mm" } });
    expect(outside.verdict).toBe("does not fit");
    expect(outside.reasons[0]).toMatchObject({ code: "no-hole", weight: "refusal" });
    expect(outside.reasons[0]!.short!.low.toDecimal()).toBe("0.05");
    const within = fits({ pair, mount: { holes: ["30.1 mm", "30.02 mm"], from: "30.05 mm", openingTo: "0.2 mm" } });
    expect([within.verdict, within.opening!.low.toFraction()]).toEqual(["fits", "1/10"]);
    // Between two limits it lies outside of one, by what that one says.
    const off = (mount: FitMount) =>
      fits({ pair, mount: { openingTo: "0.2 mm", ...mount } }).reasons[0]!.short!.low.toDecimal();
    expect(off({ holes: ["30.1 mm"], from: "29 mm", to: "30.05 mm" })).toBe("0.05");
    expect(off({ holes: ["30.02 mm"], from: "30.05 mm", to: "31 mm" })).toBe("0.03");
  });

  it("push a pair out as far as it may be opened, and are asked for what it needs there", () => {
    const pair = { driver: 20, driven: 40, module: 1 };
    const told = (mount: FitMount) =>
      fits({ pair, mount: { openingTo: "0.2 mm", ...mount } }).reasons.map(({ code, needed, short }) =>
        [code, needed, short].map((one) => (typeof one === "object" ? one.low.toDecimal() : one)),
      );
    // It stands at 30 at its closest and at 30.2 at its farthest.
    expect(told({ from: "30.1 mm", to: "30.15 mm" })).toEqual([["same-teeth-meet", undefined, undefined]]);
    expect(told({ from: "30.1 mm", to: "30.05 mm" })[0]).toEqual(["too-far", "30.1", "0.05"]);
    expect(told({ from: "30.3 mm", to: "30.05 mm" }).slice(0, 2)).toEqual([
      ["too-close", "30.2", "0.1"],
      ["same-teeth-meet", undefined, undefined],
    ]);
  });

  it("refuse figures that are none", () => {
    const pair = { driver: 20, driven: 40, module: 1 };
    for (const count of [0, -5, 15.5, NaN]) {
      expect(() => fits({ pair: { ...pair, driver: count } })).toThrowError(error("not-a-count", "driver"));
      expect(() => fits({ pair: { ...pair, driven: count } })).toThrowError(error("not-a-count", "driven"));
    }
    expect(() => fits({ pair: { ...pair, module: 0 } })).toThrowError(error("out-of-range", "module"));
    expect(() => fits({ pair: { ...pair, pressureAngle: 90 } })).toThrowError(error("out-of-range", "pressureAngle"));
    expect(() => fits({ pair, driven: { diametralPitch: -32 } })).toThrowError(error("out-of-range", "diametralPitch"));
    const helical = { ...pair, form: "helical", helixAngle: 180 } as const;
    expect(() => fits({ pair: helical })).toThrowError(error("out-of-range", "helixAngle"));
    expect(() => fits({ pair, mount: { shaft: "0 mm" }, driver: { bore: "3 mm" } })).toThrowError(
      error("out-of-range", "shaft"),
    );
    expect(() => fits({ pair, mount: { shaft: "3 mm" }, driver: { bore: "0 mm" } })).toThrowError(
      error("out-of-range", "bore"),
    );
    for (const at of ["width", "hub"])
      expect(() => fits({ pair, mount: { reach: "9 mm" }, driver: { [at]: "-1 mm" } })).toThrowError(
        error("out-of-range", at),
      );
    // What a reader accepts, and what was once an error about NaN: not known, with the reason.
    const low = fits({ pair: { ...pair, driverShift: "-0.6", drivenShift: "-0.9" } });
    expect([low.verdict, low.reasons[0]]).toEqual(["cannot tell", { code: "no-centre", weight: "unknown" }]);
    const pointed = fits({ pair: { ...pair, driver: 10, driverShift: 1 } });
    expect([pointed.verdict, pointed.reasons[0]!.code]).toEqual(["cannot tell", "tooth-pointed"]);
    const refused = (mount: FitMount, code: string, at: string) =>
      expect(() => fits({ pair, mount })).toThrowError(error(code, at));
    refused({ opening: "0.2 mm", openingTo: "0.1 mm" }, "ends-reversed", "openingTo");
    refused({ opening: "1e300 mm" }, "out-of-range", "opening");
    refused({ knownPair: [0, 40], closer: "0 mm" }, "not-a-count", "knownPair");
    refused({ toothSum: [60.5, 70] }, "not-a-count", "toothSum");
    refused({ knownPair: [20, 40], closer: "-1 mm" }, "out-of-range", "closer");
    refused({ pivot: { distance: "0 mm", arm: "20 mm", from: 60, to: 90 } }, "out-of-range", "pivot.distance");
    refused({ pivot: { distance: "30 mm", arm: "-2 mm", from: 60, to: 90 } }, "out-of-range", "pivot.arm");
    refused({ walls: [{ distance: "0 mm" }] }, "out-of-range", "distance");
    refused({ walls: [{ distance: "9 mm", gap: "-1 mm" }] }, "out-of-range", "gap");
    refused({ measured: "over shafts", shaft: "0 mm", drivenShaft: "1 mm", to: "9 mm" }, "out-of-range", "shaft");
    expect(toothSumsFor({ toothSum: [140, 137] }, { diametralPitch: 64 })).toEqual([[137, 140]]);
  });

  it("hold exactly the sums of teeth whose centres lie in one of them", () => {
    const tenths = fc.integer({ min: 50, max: 600 });
    fc.assert(
      fc.property(
        fc.option(tenths),
        fc.option(tenths),
        fc.option(fc.array(tenths, { minLength: 1, maxLength: 4 })),
        fc.boolean(),
        (from, to, holes, internal) => {
          const mount: CentreMount = {
            ...(from !== null && { from: `${from / 10} mm` }),
            ...(to !== null && { to: `${to / 10} mm` }),
            ...(holes && { holes: holes.map((hole) => `${hole / 10} mm`) }),
          };
          const ranges = rangesOf(mount, { module: 1, internal });
          const inside = (centre: number) =>
            ranges.some(
              ({ from: low, to: high }) =>
                !((low && low.low.compare(centre) > 0) || (high && high.low.compare(centre) < 0)),
            );
          for (let sum = 1; sum <= 130; sum++) {
            const wanted = toothSumsFor(mount, { module: 1, internal }).some(([a, b]) => sum >= a && sum <= b);
            expect(inside(sum / 2)).toBe(wanted);
          }
        },
      ),
      { numRuns: 60 },
    );
  });
});
