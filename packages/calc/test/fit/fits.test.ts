import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bounded, rational } from "../../src/exact/index.js";
import {
  boreReasons,
  fits,
  hubReasons,
  limitsOf,
  reachReasons,
  toothSumsFor,
  type FitMount,
  type FitQuestion,
  type Reason,
} from "../../src/fit/index.js";
import { rootOf } from "../../src/gears/index.js";
import { reasonText } from "../../src/languages/index.js";
import { lacking } from "../../src/fit/reason.js";

const low = (reason: Reason | undefined, field: "needed" | "available" | "short") => reason?.[field]?.low.toFraction();
const codes = (question: FitQuestion, weight?: Reason["weight"]) =>
  fits(question)
    .reasons.filter((reason) => weight === undefined || reason.weight === weight)
    .map((reason) => reason.code);
const textOf = (question: FitQuestion, code: Reason["code"]) =>
  reasonText(fits(question).reasons.find((reason) => reason.code === code)!);

describe("a mount that is counted in helical teeth", () => {
  const helical = { module: "0.8", form: "helical", helixAngle: 20 } as const;
  const question = (driven: number, mount: FitMount): FitQuestion => ({
    pair: { driver: 15, driven, ...helical },
    mount,
  });
  const one = 0.8 / 2 / Math.cos(Math.PI / 9);

  it("takes the pair that is known to run in it", () => {
    const known: FitMount = { knownPair: [15, 62], closer: "0.1 mm", farther: "0.9 mm" };
    expect(limitsOf(known, helical).map(({ at }) => at.low.toNumber())).toEqual([
      expect.closeTo(77 * one - 0.1, 9),
      expect.closeTo(77 * one + 0.9, 9),
    ]);
    expect(fits(question(62, known)).verdict).toBe("fits");
    expect(fits(question(64, known)).verdict).toBe("fits");
    const [far] = fits(question(68, known)).reasons;
    expect([far!.code, far!.teeth, far!.short!.low.toNumber()]).toEqual([
      "too-far",
      79,
      expect.closeTo(6 * one - 0.9, 6),
    ]);
    expect(fits(question(61, known)).reasons[0]).toMatchObject({ code: "too-close", teeth: 77 });
  });

  it("takes sums of teeth at their very ends", () => {
    for (const opening of ["0 mm", "0.05 mm"]) {
      const sums: FitMount = { toothSum: [76, 78], opening };
      expect(toothSumsFor(sums, helical)).toEqual([[76, 78]]);
      expect([60, 61, 62, 63, 64].map((driven) => fits(question(driven, sums)).verdict)).toEqual([
        "does not fit",
        "fits",
        "fits",
        "fits",
        "does not fit",
      ]);
    }
  });

  it("says nothing where the helix angle is not known", () => {
    const { helixAngle: _, ...bare } = helical;
    expect(limitsOf({ knownPair: [15, 62], closer: "0 mm", from: "30 mm" }, bare).map(({ kind }) => kind)).toEqual([
      "slot",
    ]);
    expect(() => toothSumsFor({}, bare)).toThrowError(expect.objectContaining({ at: "pair" }) as Error);
  });
});

describe("the shaft of the driven gear", () => {
  const question = (mount: FitMount, driven: FitQuestion["driven"], more: Partial<FitQuestion> = {}) =>
    codes({ pair: { driver: 15, driven: 62, module: "0.8" }, mount, driven: driven!, ...more }, "refusal");

  it("takes a bore of its size, with a sleeve as well", () => {
    expect(question({ drivenShaft: "5 mm" }, { bore: "5 mm" })).toEqual([]);
    expect(question({ drivenShaft: "5 mm" }, { bore: "4 mm" })).toEqual(["bore-too-small"]);
    expect(question({ drivenShaft: "5 mm" }, { bore: "6 mm" })).toEqual(["bore-too-large"]);
    expect(
      question({ drivenShaft: "5 mm" }, { bore: "6 mm" }, { sleeves: [{ bore: "5 mm", outside: "6 mm" }] }),
    ).toEqual([]);
    // The motor's shaft is another one.
    expect(question({ shaft: "5 mm" }, { bore: "4 mm" })).toEqual([]);
  });

  it("says nothing of a gear that is screwed to a hub", () => {
    const holes = [{ count: 3, diameter: "24 mm" }];
    expect(question({ drivenShaft: "5 mm" }, { bore: "12 mm", circles: holes })).toEqual([]);
    expect(question({ drivenShaft: "5 mm", hubHoles: holes }, { bore: "12 mm" })).toEqual([]);
  });
});

describe("the slot of a motor plate", () => {
  const mount: FitMount = { knownPair: [23, 53], closer: "0.1 mm", farther: "0.9 mm" };
  const pair = (driver: number, driven: number) => ({ driver, driven, module: "0.8" });

  it("Limpet: from a known pair, 15/62 fits and 15/68 is 1.9 mm too far", () => {
    expect(limitsOf(mount, { module: "0.8" }).map(({ kind, end, at }) => [kind, end, at.toJSON()])).toEqual([
      ["known-pair", "from", { low: "303/10", high: "303/10" }],
      ["known-pair", "to", { low: "313/10", high: "313/10" }],
    ]);
    expect(fits({ pair: pair(15, 62), mount })).toMatchObject({ verdict: "fits" });
    const fit = fits({ pair: pair(15, 68), mount });
    expect(fit.verdict).toBe("does not fit");
    const [far] = fit.reasons;
    expect(far).toMatchObject({ code: "too-far", weight: "refusal", label: "known-pair", teeth: 78 });
    expect([low(far, "needed"), low(far, "available"), low(far, "short")]).toEqual(["166/5", "313/10", "19/10"]);
  });

  it("says so in words", () => {
    const slot = { from: "30.3 mm", to: "31.3 mm" };
    expect(textOf({ pair: pair(15, 68), mount: slot }, "too-far")).toBe(
      "Needs 33.2 mm between centres. Your slot ends at 31.3 mm, 1.9 mm short: 78 teeth in all at most.",
    );
    expect(textOf({ pair: pair(15, 60), mount: slot }, "too-close")).toBe(
      "Needs 30 mm between centres. Your slot begins at 30.3 mm, 0.3 mm too far: 76 teeth in all at least.",
    );
    expect(reasonText(fits({ pair: pair(15, 68), mount: slot }).reasons[0]!, (one) => one.low.toFraction())).toContain(
      "Needs 166/5 between",
    );
  });

  it("practice 17: 149 teeth at 64 DP lie in the slot, yet beyond the maker's tooth sums", () => {
    const teeth = { driver: 56, driven: 93, diametralPitch: 64 };
    const slot = { from: "1.000 in", to: "1.250 in" };
    expect(fits({ pair: teeth, mount: slot }).verdict).toBe("fits");
    const narrow: FitMount = { ...slot, toothSum: [137, 140] };
    expect(
      limitsOf({ toothSum: [137, 140] }, teeth).map(({ at }) =>
        at.low.over("25.4").toDecimal({ maximumFractionDigits: 3 }),
      ),
    ).toEqual(["1.07", "1.094"]);
    const { verdict, reasons } = fits({ pair: teeth, mount: narrow });
    expect([verdict, reasons[0]]).toMatchObject(["does not fit", { code: "too-far", label: "tooth-sum", teeth: 140 }]);
    expect(reasonText(reasons[0]!)).toContain("Your maker's range ends at");
  });

  it("takes the pairs that the maker names, whatever the opening", () => {
    for (const opening of ["0 mm", "0.05 mm", "0.3 mm"])
      for (const [driver, driven] of [
        [20, 50],
        [20, 52],
      ] as const)
        expect(fits({ pair: pair(driver, driven), mount: { toothSum: [70, 72], opening } }).verdict).toBe("fits");
    expect(fits({ pair: pair(20, 53), mount: { toothSum: [70, 72], opening: "0.3 mm" } }).verdict).toBe("does not fit");
  });

  it("counts the known pair in the mount's own pitch, where it says one", () => {
    const own: FitMount = { ...mount, module: "0.8" };
    expect(toothSumsFor(own, { module: 1 })).toEqual([[61, 62]]);
    expect(toothSumsFor(mount, { module: 1 })).toEqual([[76, 77]]);
    expect(toothSumsFor({ ...own, toothSum: [76, 77] }, { module: "0.8" })).toEqual([[76, 77]]);
  });

  it("takes differences of teeth for a ring", () => {
    const ring: FitMount = { knownPair: [20, 60], closer: "0 mm", farther: "1 mm" };
    const inside = { module: 1, internal: true } as const;
    expect(toothSumsFor(ring, inside)).toEqual([[40, 42]]);
    expect(fits({ pair: { driver: 22, driven: 64, ...inside }, mount: ring }).verdict).toBe("fits");
    expect(fits({ pair: { driver: 22, driven: 65, ...inside }, mount: ring }).verdict).toBe("does not fit");
  });

  it("knows half a slot, and none", () => {
    expect(toothSumsFor({ from: "20 mm" }, { module: 1 })).toEqual([[40, Infinity]]);
    expect(toothSumsFor({ to: "20 mm" }, { module: 1 })).toEqual([[1, 40]]);
    expect(toothSumsFor({}, { module: 1 })).toEqual([[1, Infinity]]);
    expect(toothSumsFor({ knownPair: [20, 30], farther: "1 mm" }, { module: 1 })).toEqual([[1, 52]]);
    expect(toothSumsFor({ knownPair: [20, 30], closer: "1 mm" }, { module: 1 })).toEqual([[48, Infinity]]);
    expect(toothSumsFor({ from: "20 mm", to: "19 mm" }, { module: 1 })).toEqual([]);
    expect(toothSumsFor({ from: "0.1 mm", opening: "0.5 mm" }, { module: 1 })).toEqual([[1, Infinity]]);
    expect(() => toothSumsFor({}, {})).toThrowError(
      expect.objectContaining({
        code: "pitch-not-given",
        message: "No module or diametral pitch; expected one.",
      }),
    );
    expect(limitsOf({ knownPair: [20, 30], closer: "1 mm", farther: "1 mm", toothSum: [50, 60] }, {})).toEqual([]);
  });

  it("sets the least opening that the mount allows, and the backlash that goes with it", () => {
    const loose = fits({ pair: pair(15, 62), mount: { from: "30.85 mm", to: "31 mm", openingTo: "0.1 mm" } });
    expect([loose.verdict, loose.opening!.low.toFraction()]).toEqual(["fits", "1/20"]);
    expect(loose.mesh.operatingCentre).toBeCloseTo(30.85, 12);
    expect(loose.mesh.normalBacklash).toBeCloseTo(0.0344, 4);
    const given = fits({ pair: pair(15, 62), mount: { from: "30 mm", opening: "0.03 mm", openingTo: "0.1 mm" } });
    expect(given.opening!.low.toFraction()).toBe("3/100");
    const strict = fits({ pair: pair(15, 62), mount: { from: "30.85 mm", opening: "0.03 mm" } });
    expect([strict.verdict, low(strict.reasons[0], "short")]).toEqual(["does not fit", "1/50"]);
    // The end of the slot takes the least opening, its beginning the most.
    expect(fits({ pair: pair(15, 62), mount: { to: "30.85 mm", opening: "0.05 mm", openingTo: "9 mm" } }).verdict).toBe(
      "fits",
    );
    expect(fits({ pair: pair(15, 62), mount: { to: "30.84 mm", opening: "0.05 mm" } }).verdict).toBe("does not fit");
    expect(fits({ pair: pair(15, 62) }).opening!.low.sign).toBe(0);
  });

  it("finds by one look what trying every sum finds", () => {
    const tenths = fc.integer({ min: 0, max: 600 });
    fc.assert(
      fc.property(
        fc.record({
          from: fc.option(tenths),
          to: fc.option(tenths),
          known: fc.option(fc.integer({ min: 20, max: 150 })),
          closer: fc.option(fc.integer({ min: 0, max: 40 })),
          farther: fc.option(fc.integer({ min: 0, max: 40 })),
          holes: fc.option(
            fc.uniqueArray(
              tenths.filter((n) => n > 10),
              { minLength: 1, maxLength: 4 },
            ),
          ),
          opening: fc.integer({ min: 0, max: 20 }),
          wider: fc.integer({ min: 0, max: 60 }),
          dp: fc.boolean(),
          internal: fc.boolean(),
        }),
        ({ from, to, known, closer, farther, holes, opening, wider, dp, internal }) => {
          const mount: FitMount = {
            ...(from !== null && { from: `${from / 10} mm` }),
            ...(to !== null && { to: `${to / 10} mm` }),
            ...(known !== null && { knownPair: internal ? ([10, known + 10] as const) : ([10, known - 10] as const) }),
            ...(closer !== null && { closer: `${closer / 10} mm` }),
            ...(farther !== null && { farther: `${farther / 10} mm` }),
            ...(holes && { holes: holes.map((hole) => `${hole / 10} mm`) }),
            opening: `${opening / 100} mm`,
            openingTo: `${(opening + wider) / 100} mm`,
          };
          const pitch = { ...(dp ? { diametralPitch: 32 } : { module: "0.8" }), internal };
          // In units of 1/32,000 mm, in which every length here is whole: half a module, tenths, hundredths. A ring's teeth
          // count by their difference, and its openings bring it closer.
          const half = dp ? 12_700 : 12_800;
          const side = internal ? -1 : 1;
          const openings = [side * opening * 320, side * (opening + wider) * 320].sort((a, b) => a - b);
          const wanted: number[] = [];
          for (let sum = 1; sum <= 160; sum++) {
            const [first, last] = [sum * half + openings[0]!, sum * half + openings[1]!];
            const knownCentre = (known ?? 0) * half + side * opening * 320;
            const begin = Math.max(
              first,
              from === null ? 0 : from * 3200,
              known === null || closer === null ? 0 : knownCentre - closer * 3200,
            );
            const end = Math.min(
              last,
              to === null ? Infinity : to * 3200,
              known === null || farther === null ? Infinity : knownCentre + farther * 3200,
            );
            const reached = holes?.map((hole) => hole * 3200) ?? [begin];
            if (reached.some((centre) => centre >= begin && centre <= end)) wanted.push(sum);
          }
          const found = new Set<number>();
          for (const [first, last] of toothSumsFor(mount, pitch))
            for (let sum = first; sum <= Math.min(last, 160); sum++) found.add(sum);
          expect([...found].sort((a, b) => a - b)).toEqual(wanted);
          for (const sum of [40, 77, 100].filter((one) => one <= 160)) {
            const driven = internal ? sum + 20 : sum - 20;
            const { reasons } = fits({ pair: { driver: 20, driven, ...pitch }, mount });
            const refused = reasons.some(({ code }) => ["too-far", "too-close", "no-hole"].includes(code));
            expect(refused).toBe(!wanted.includes(sum));
          }
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe("a pivot", () => {
  const mount: FitMount = {
    pivot: { distance: "30 mm", arm: "20 mm", from: 60, to: 90 },
    opening: "0.05 mm",
    walls: [{ label: "skid", of: "driven", distance: "28 mm", gap: "0.5 mm" }],
  };
  const pair = (driver: number, driven: number) => ({ driver, driven, module: "0.8" });

  it("Scoter: reaches from √700 to √1300 mm", () => {
    const [near, far] = limitsOf(mount, { module: "0.8" });
    expect([near!.at.power(2).contains(700), far!.at.power(2).contains(1300)]).toEqual([true, true]);
    expect(near!.at.high.minus(near!.at.low).compare("1e-19")).toBe(-1);
    expect([near!.kind, near!.end, far!.end]).toEqual(["pivot", "from", "to"]);
    expect(toothSumsFor(mount, { module: "0.8" })).toEqual([[67, 90]]);
  });

  it("Scoter: 13/53 too close, 15/52 fits, 22/68 leaves no gap, 23/67 leaves 0.4, 22/69 too far", () => {
    const tight = fits({ pair: pair(13, 53), mount });
    expect([tight.verdict, tight.reasons[0]!.code, low(tight.reasons[0], "needed")]).toEqual([
      "does not fit",
      "too-close",
      "529/20",
    ]);
    expect(tight.reasons[0]!.short!.low.toDecimal({ maximumFractionDigits: 4 })).toBe("0.0075");
    expect(fits({ pair: pair(15, 52), mount })).toMatchObject({ verdict: "fits" });
    expect(fits({ pair: pair(15, 52), mount }).mesh.operatingCentre).toBeCloseTo(26.85, 12);

    const touching = fits({ pair: pair(22, 68), mount }).reasons[0]!;
    expect([touching.code, low(touching, "available"), low(touching, "short")]).toEqual(["wall", "0/1", "1/2"]);
    expect(touching).toMatchObject({ weight: "refusal", of: "driven", label: "skid", teeth: 66 });
    const short = fits({ pair: pair(23, 67), mount }).reasons[0]!;
    expect([short.code, low(short, "available"), low(short, "short"), short.teeth]).toEqual([
      "wall",
      "2/5",
      "1/10",
      66,
    ]);
    expect(reasonText(short)).toBe("Leaves 0.4 mm to the skid, needs 0.5 mm, 0.1 mm more: 66 teeth at most.");
    expect(codes({ pair: pair(24, 66), mount }, "refusal")).toEqual([]);
    expect(codes({ pair: pair(22, 69), mount }, "refusal")).toEqual(["too-far", "wall"]);
  });

  it("follows the arm at any angle", () => {
    for (const [from, to] of [
      [0, 120],
      [10, 170.5],
      [33, 180],
    ] as const) {
      const [near, far] = limitsOf({ pivot: { distance: "30 mm", arm: "20 mm", from, to } }, {});
      for (const [limit, angle] of [
        [near!, from],
        [far!, to],
      ] as const) {
        // The arm's end, by its coordinates.
        const radians = (angle * Math.PI) / 180;
        const centre = Math.hypot(30 - 20 * Math.cos(radians), 20 * Math.sin(radians));
        expect(limit.at.low.toNumber()).toBeCloseTo(centre, 10);
        expect(limit.at.high.minus(limit.at.low).compare("1e-12")).toBe(-1);
        expect(limit.at.isExact).toBe(angle === 0 || angle === 180);
      }
    }
    expect(
      limitsOf({ pivot: { distance: "20 mm", arm: "20 mm", from: 0, to: 60 } }, {}).map(({ at }) =>
        at.low.toFraction(),
      ),
    ).toEqual(["0/1", "20/1"]);
    for (const angle of [-1, 181])
      expect(() => limitsOf({ pivot: { distance: "30 mm", arm: "20 mm", from: angle, to: 90 } }, {})).toThrowError(
        expect.objectContaining({
          code: "out-of-range",
          at: "pivot",
          message: `Found an angle of ${angle}; expected 0 to 180 degrees.`,
        }),
      );
  });
});

describe("a row of holes", () => {
  const pair = { driver: 20, driven: 40, module: 1 };
  const mount: FitMount = { holes: ["29 mm", "30.4 mm", "30.1 mm"], opening: "0.05 mm", openingTo: "0.5 mm" };

  it("takes the hole that leaves the least opening of those wanted", () => {
    const fit = fits({ pair, mount });
    expect([fit.verdict, fit.opening!.low.toFraction()]).toEqual(["fits", "1/10"]);
    expect(toothSumsFor({ ...mount, openingTo: "0.1 mm" }, { module: 1 })).toEqual([[60, 60]]);
    // 57 teeth at 28.5 mm reach the hole at 29 mm with the widest opening, 60 teeth two holes.
    expect(toothSumsFor(mount, { module: 1 })).toEqual([
      [57, 57],
      [60, 60],
      [60, 60],
    ]);
  });

  it("takes a hole at either end of what is wanted", () => {
    const opening = (holes: string[]) => fits({ pair, mount: { ...mount, holes } }).opening!.low.toFraction();
    expect(opening(["30.3 mm", "30.05 mm"])).toBe("1/20");
    expect(opening(["30.5 mm"])).toBe("1/2");
    expect(toothSumsFor({ holes: ["40 mm", "30 mm", "35 mm"] }, { module: 1 })).toEqual([
      [60, 60],
      [70, 70],
      [80, 80],
    ]);
  });

  it("names the nearest hole, and how far off it is, either way", () => {
    const near = fits({ pair, mount: { holes: ["30.4 mm", "29.9 mm", "29 mm"] } });
    expect([near.verdict, low(near.reasons[0], "available"), low(near.reasons[0], "short")]).toEqual([
      "does not fit",
      "299/10",
      "1/10",
    ]);
    expect(reasonText(near.reasons[0]!)).toBe(
      "Needs 30 mm between centres. The nearest hole is at 29.9 mm, 0.1 mm off.",
    );
    const far = fits({ pair, mount: { holes: ["29 mm", "30.4 mm"] } });
    expect([low(far.reasons[0], "available"), low(far.reasons[0], "short")]).toEqual(["152/5", "2/5"]);
  });

  it("cannot tell where floating point meets a hole exactly", () => {
    const helical = { driver: 20, driven: 40, module: 1, form: "helical", helixAngle: 60 } as const;
    const fit = fits({ pair: helical, mount: { holes: ["60 mm"] } });
    expect([fit.verdict, fit.reasons[0]!.weight]).toEqual(["cannot tell", "unknown"]);
  });
});

describe("walls", () => {
  const pair = { driver: 20, driven: 40, module: 1 };

  it("stand around the driven gear unless they say otherwise, and may be touched where no gap is asked", () => {
    expect(fits({ pair, mount: { walls: [{ distance: "21 mm" }] } }).verdict).toBe("fits");
    expect(fits({ pair, mount: { walls: [{ distance: "20.9 mm" }] } }).verdict).toBe("does not fit");
    const cover = fits({ pair, mount: { walls: [{ of: "driver", distance: "10.4 mm" }] } }).reasons[0]!;
    expect(cover).toMatchObject({ of: "driver", teeth: 18 });
    expect(reasonText(cover)).toContain("to the wall");
  });

  it("cannot be judged for a ring", () => {
    const ring = { driver: 20, driven: 60, module: 1, internal: true };
    const fit = fits({ pair: ring, mount: { walls: [{ distance: "40 mm" }] } });
    expect(fit.verdict).toBe("cannot tell");
    expect(fit.reasons[0]).toMatchObject({ code: "wall", weight: "unknown", of: "driven" });
    expect(fits({ pair: ring, mount: { walls: [{ of: "driver", distance: "12 mm" }] } }).verdict).toBe("fits");
  });
});

describe("bore, shaft and sleeves", () => {
  it("Scoter: a 5 mm bore on a 1/8 in shaft asks for a sleeve with a wall of 73/80 mm", () => {
    const [reason] = boreReasons("5 mm", ["1/8 in"], [], "driver");
    expect([reason!.code, reason!.weight, low(reason, "short")]).toEqual(["bore-too-large", "refusal", "73/80"]);
    expect([low(reason, "needed"), low(reason, "available")]).toEqual(["127/40", "5/1"]);
    expect(reasonText(reason!)).toBe("A bore of 5 mm on a shaft of 3.175 mm needs a sleeve with a wall of 0.913 mm.");
    const sleeves = [
      { label: "thin", bore: "3.175 mm", outside: "4 mm" },
      { label: "brass", bore: "3.17 mm", outside: "5 mm" },
    ];
    const [bridged, ...others] = boreReasons("5 mm", ["1/8 in"], sleeves, "driver");
    expect(others).toEqual([]);
    expect(bridged).toMatchObject({ code: "sleeve", weight: "information", of: "driver", label: "brass" });
    expect(low(bridged, "short")).toBe("73/80");
  });

  it("practice 20: a 2.3 mm shaft at 48 DP asks for both, bore and pitch", () => {
    const pair = { driver: 20, driven: 80, diametralPitch: 48 };
    const mount: FitMount = { shaft: "2.3 mm" };
    expect(codes({ pair, mount, driver: { bore: "2.3 mm" } }, "refusal")).toEqual([]);
    expect(codes({ pair, mount, driver: { bore: "2.3 mm", module: "0.5" } }, "refusal")).toEqual(["pitch-different"]);
    expect(codes({ pair, mount, driver: { bore: "2 mm" } }, "refusal")).toEqual(["bore-too-small"]);
    expect(codes({ pair, mount, driver: { bore: "3.17 mm" } }, "refusal")).toEqual(["bore-too-large"]);
    expect(codes({ pair, mount: { shaft: "3.175 mm" }, driver: { bore: "3.17 mm" } }, "refusal")).toEqual([]);
    expect(boreReasons("3.17 mm", ["3.1751 mm"], [], "driver")).toHaveLength(1);
  });

  it("looks at every step of a shaft, and asks for the thinnest wall", () => {
    const stepped: FitMount = { shaft: "5 mm", steps: ["4 mm", "3 mm"] };
    const pair = { driver: 20, driven: 80, module: 1 };
    for (const bore of ["3 mm", "4 mm", "5 mm"])
      expect(codes({ pair, mount: stepped, driver: { bore } }, "refusal")).toEqual([]);
    const [loose] = boreReasons("4.5 mm", ["3 mm", "5 mm", "4 mm"], [], "driven");
    expect([loose!.of, low(loose, "needed"), low(loose, "short")]).toEqual(["driven", "4/1", "1/4"]);
    const [small] = boreReasons("2 mm", ["5 mm", "3 mm"], [], "driver");
    expect([small!.code, low(small, "needed"), low(small, "available"), low(small, "short")]).toEqual([
      "bore-too-small",
      "3/1",
      "2/1",
      "1/1",
    ]);
    expect(reasonText(small!)).toBe("A bore of 2 mm is 1 mm too small for a shaft of 3 mm.");
    expect(codes({ pair, mount: { steps: ["4 mm"] }, driver: { bore: "3 mm" } }, "refusal")).toEqual([
      "bore-too-small",
    ]);
    expect(boreReasons("3 mm", [], [], "driver")).toEqual([]);
    const sleeve = [{ bore: "4 mm", outside: "6 mm" }];
    expect(boreReasons("6 mm", ["3 mm", "4 mm"], sleeve, "driver")[0]).toMatchObject({
      code: "sleeve",
      label: undefined,
    });
    expect(codes({ pair, mount: stepped, sleeves: sleeve, driver: { bore: "6 mm" } })).toContain("sleeve");
  });
});

describe("hub holes", () => {
  const three = { count: 3, diameter: "20 mm" };
  const four = { count: 4, diameter: "20 mm" };
  const six = { count: 6, diameter: "20.0 mm" };
  const wide = { count: 3, diameter: "1 in" };

  it("match any circle of the one with any of the other", () => {
    expect(hubReasons([three], [three], [], "driven")).toEqual([]);
    expect(hubReasons([wide, six], [four, three], [], "driven")).toEqual([]);
    expect(hubReasons([three], [wide, six], [], "driven")).toEqual([]);
    expect(hubReasons([four], [six], [], "driven")).toEqual([{ code: "hub-holes", weight: "refusal", of: "driven" }]);
    expect(hubReasons([three], [wide], [], "driver")[0]).toMatchObject({ code: "hub-holes", of: "driver" });
  });

  it("may be bridged by a plate with a circle for each", () => {
    const plates = [
      { label: "one circle", circles: [three] },
      { label: "other two", circles: [four, wide] },
      { label: "plate", circles: [wide, three] },
    ];
    expect(hubReasons([three], [wide], plates, "driven")).toEqual([
      { code: "plate", weight: "information", of: "driven", label: "plate" },
    ]);
    // One circle cannot carry both, even where it would match both.
    expect(hubReasons([three], [four], [{ circles: [{ count: 12, diameter: "20 mm" }] }], "driven")[0]!.code).toBe(
      "hub-holes",
    );
    const question: FitQuestion = {
      pair: { driver: 20, driven: 60, module: 1 },
      mount: { hubHoles: [wide] },
      driven: { circles: [three] },
    };
    expect(fits(question).verdict).toBe("does not fit");
    expect(fits({ ...question, plates })).toMatchObject({ verdict: "fits" });
    expect(codes({ ...question, driven: {} }, "refusal")).toEqual([]);
    expect(codes({ ...question, mount: {} }, "refusal")).toEqual([]);
  });
});

describe("width and facing on the shaft", () => {
  it("asks for shaft under the boss, or under teeth without one", () => {
    expect(reachReasons({ width: "8 mm" }, "8 mm", undefined, "driver")).toEqual([]);
    const [short] = reachReasons({ width: "8 mm" }, "6.5 mm", undefined, "driver");
    expect(short).toMatchObject({ code: "reach", weight: "refusal", of: "driver", facing: "hub in" });
    expect([low(short, "needed"), low(short, "available"), low(short, "short")]).toEqual(["8/1", "13/2", "3/2"]);
    expect(reasonText(short!)).toBe("Needs 8 mm of shaft. There are 6.5 mm, 1.5 mm short.");
    // Eight of teeth and five of boss on nine of shaft: only with the boss next to the motor.
    const body = { width: "8 mm", hub: "5 mm" };
    expect(reachReasons(body, "9 mm", undefined, "driver")).toEqual([
      { code: "facing", weight: "information", of: "driver", facing: "hub in" },
    ]);
    expect(reachReasons({ ...body, facing: "hub in" }, "5 mm", undefined, "driver")[0]).toMatchObject({
      code: "facing",
    });
    expect(reachReasons({ ...body, facing: "hub out" }, "9 mm", undefined, "driver")[0]).toMatchObject({
      code: "reach",
    });
    expect(low(reachReasons({ ...body, facing: "hub out" }, "9 mm", undefined, "driver")[0], "short")).toBe("4/1");
    expect(reachReasons(body, "13 mm", undefined, "driver")).toEqual([]);
    expect(reachReasons(body, "4 mm", undefined, "driver")[0]).toMatchObject({ code: "reach", facing: "hub in" });
    expect(reachReasons({}, "4 mm", undefined, "driver")).toEqual([]);
  });

  it("keeps the teeth in line with their partner's", () => {
    const body = { width: "5 mm", hub: "6 mm" };
    // Partner at 2 to 8 mm: with the boss inwards the teeth would begin at 6 and end at 11.
    const [long] = reachReasons({ ...body, facing: "hub in" }, "20 mm", { from: "2 mm", to: "8 mm" }, "driver");
    expect([long!.code, low(long, "needed"), low(long, "available"), low(long, "short")]).toEqual([
      "hub-too-long",
      "3/1",
      "6/1",
      "3/1",
    ]);
    expect(reasonText(long!)).toBe("A boss of 6 mm holds the teeth 3 mm out of line.");
    expect(reachReasons(body, "20 mm", { from: "2 mm", to: "8 mm" }, "driver")).toEqual([
      { code: "facing", weight: "information", of: "driver", facing: "hub out" },
    ]);
    // Far out, both ways are free; a narrow partner is covered rather than lain within.
    expect(reachReasons(body, "30 mm", { from: "10 mm", to: "16 mm" }, "driver")).toEqual([]);
    expect(reachReasons({ width: "5 mm" }, "7 mm", { from: "4 mm", to: "6 mm" }, "driver")).toEqual([]);
    expect(reachReasons({ width: "5 mm" }, "5.5 mm", { from: "4 mm", to: "6 mm" }, "driver")[0]).toMatchObject({
      code: "reach",
    });
    expect(codes({ pair: { driver: 20, driven: 61, module: 1 }, driver: { width: "90 mm" } })).toEqual([]);
    expect(codes({ pair: { driver: 20, driven: 61, module: 1 }, mount: { reach: "1 mm" } })).toEqual([]);
    const question: FitQuestion = {
      pair: { driver: 20, driven: 60, module: 1 },
      mount: { reach: "20 mm", line: { from: "2 mm", to: "8 mm" } },
      driver: { ...body, facing: "hub in" },
    };
    expect(codes(question, "refusal")).toEqual(["hub-too-long"]);
    expect(codes({ ...question, driver: {} }, "refusal")).toEqual([]);
    expect(textOf({ ...question, driver: body }, "facing")).toBe("Goes on with the hub out only.");
  });

  it("finds what trying every place along the shaft finds", () => {
    const small = fc.integer({ min: 0, max: 12 });
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 12 }),
        small,
        fc.integer({ min: 1, max: 30 }),
        fc.option(fc.tuple(small, fc.integer({ min: 1, max: 12 }))),
        fc.constantFrom(undefined, "hub in" as const, "hub out" as const),
        (width, hub, reach, line, facing) => {
          const works = (way: "hub in" | "hub out"): boolean => {
            for (let teeth = 0; teeth <= 60; teeth++) {
              const boss = way === "hub in" ? [teeth - hub, teeth] : [teeth + width, teeth + width + hub];
              const on = hub ? boss[0]! >= 0 && boss[1]! <= reach : teeth + width <= reach;
              const [from, to] = line ? [line[0], line[0] + line[1]] : [0, 99];
              const within = !line || (teeth >= from && teeth + width <= to) || (teeth <= from && teeth + width >= to);
              if (on && within) return true;
            }
            return false;
          };
          const ways = (["hub in", "hub out"] as const).filter((way) => way === (facing ?? way)).filter(works);
          const body = { width: `${width} mm`, hub: `${hub} mm`, ...(facing && { facing }) };
          const at = line && { from: `${line[0]} mm`, to: `${line[0] + line[1]} mm` };
          const reasons = reachReasons(body, `${reach} mm`, at ?? undefined, "driver");
          expect(reasons.some((one) => one.weight === "refusal")).toBe(ways.length === 0);
          if (hub && ways.length === 1) expect(reasons).toMatchObject([{ code: "facing", facing: ways[0] }]);
          if (ways.length === 2 || (ways.length && !hub)) expect(reasons).toEqual([]);
        },
      ),
      { numRuns: 500 },
    );
  });
});

it("names the figure that cannot be read", () => {
  const pair = { driver: 20, driven: 40, module: 1 };
  const named = (at: string) => expect.objectContaining({ at }) as Error;
  for (const at of ["from", "to", "opening", "openingTo"] as const)
    expect(() => fits({ pair, mount: { [at]: "near" } })).toThrowError(named(at));
  for (const at of ["closer", "farther"] as const)
    expect(() => fits({ pair, mount: { knownPair: [20, 40], [at]: "near" } })).toThrowError(named(at));
  for (const at of ["distance", "arm"] as const) {
    const pivot = { distance: "30 mm", arm: "20 mm", from: 60, to: 90, [at]: "near" };
    expect(() => fits({ pair, mount: { pivot } })).toThrowError(named(`pivot.${at}`));
  }
  expect(() => fits({ pair, mount: { holes: ["near"] } })).toThrowError(named("holes"));
  expect(() => fits({ pair, mount: { walls: [{ distance: "near" }] } })).toThrowError(named("distance"));
  expect(() => fits({ pair, mount: { walls: [{ distance: "30 mm", gap: "near" }] } })).toThrowError(named("gap"));
  expect(() => boreReasons("near", ["3 mm"], [], "driver")).toThrowError(named("bore"));
  expect(() => boreReasons("5 mm", ["near"], [], "driver")).toThrowError(named("shaft"));
  expect(() => boreReasons("5 mm", ["3 mm"], [{ bore: "near", outside: "5 mm" }], "driver")).toThrowError(
    named("sleeve"),
  );
  expect(() => boreReasons("5 mm", ["3 mm"], [{ bore: "3 mm", outside: "near" }], "driver")).toThrowError(
    named("sleeve"),
  );
  const circle = { count: 3, diameter: "near" };
  expect(() => hubReasons([circle], [circle], [], "driven")).toThrowError(named("circles"));
  expect(() => hubReasons([{ ...circle, diameter: "20 mm" }], [circle], [], "driven")).toThrowError(named("circles"));
  for (const at of ["width", "hub"] as const)
    expect(() => reachReasons({ [at]: "near" }, "9 mm", undefined, "driver")).toThrowError(named(at));
  expect(() => reachReasons({}, "near", undefined, "driver")).toThrowError(named("reach"));
  expect(() => reachReasons({}, "9 mm", { from: "near", to: "3 mm" }, "driver")).toThrowError(named("line"));
  expect(() => reachReasons({}, "9 mm", { from: "3 mm", to: "near" }, "driver")).toThrowError(named("line"));
  expect(() => toothSumsFor({}, {})).toThrowError(named("pair"));
});

describe("pitch and teeth", () => {
  it("never lets near pitches mesh, and says by how much they are apart", () => {
    const pair = { driver: 15, driven: 62, module: "0.8" };
    expect(codes({ pair, driver: { module: "0.8" }, driven: { module: "0.80" } }, "refusal")).toEqual([]);
    const near: FitQuestion = { pair, driver: { diametralPitch: 32 }, driven: { module: "0.8" } };
    expect(fits(near).verdict).toBe("does not fit");
    expect(textOf(near, "pitch-near")).toBe(
      "Close, not equal: module 0.8 is 0.79% coarser than 32 DP. Do not mesh them.",
    );
    const [reason] = fits(near).reasons;
    expect(reason!.coarser!.toFraction()).toBe("-1/128");
    expect(textOf({ pair, driven: { diametralPitch: 32 } }, "pitch-near")).toBe(
      "Close, not equal: module 0.8 is 0.79% coarser than 32 DP. Do not mesh them.",
    );
    expect(textOf({ pair, driven: { module: 1 } }, "pitch-different")).toBe("module 0.8 does not mesh with module 1.");
    expect(textOf({ pair, driven: { pressureAngle: "14.5" } }, "angle-different")).toBe(
      "Pressure angles differ: module 0.8, module 0.8 at 14.5°.",
    );
    expect(codes({ pair: { ...pair, pressureAngle: 25 }, driven: { module: "0.8" } }, "refusal")).toEqual([]);
    // The driver's own pitch is what the geometry goes by.
    expect(fits({ pair, driver: { module: 1 }, driven: { module: 1 } }).mesh.centreDistance!.low.toFraction()).toBe(
      "77/2",
    );
    expect(fits({ pair, driver: { diametralPitch: 32 } }).mesh.module!.toFraction()).toBe("127/160");
    expect(
      fits({ pair: { driver: 15, driven: 62 }, driver: { module: 1 } }).reasons.map(({ code }) => code),
    ).not.toContain("pitch-near");
  });

  it("says of which gear each reason speaks", () => {
    const { reasons } = fits({
      pair: { driver: 20, driven: 41, module: 1 },
      mount: {
        shaft: "5 mm",
        reach: "6 mm",
        hubHoles: [{ count: 3, diameter: "20 mm" }],
        walls: [{ of: "driver", distance: "9 mm" }, { distance: "9 mm" }],
      },
      driver: { bore: "4 mm", width: "8 mm" },
      driven: { circles: [{ count: 4, diameter: "20 mm" }] },
    });
    expect(reasons.map(({ code, of }) => `${of} ${code}`)).toEqual([
      "driver wall",
      "driven wall",
      "driver bore-too-small",
      "driven hub-holes",
      "driver reach",
    ]);
  });

  it("leaves open what may be short by nothing", () => {
    const weight = (least: number, most: number) => lacking("wall", bounded(least, most), {})[0]?.weight;
    expect([weight(1, 2), weight(0, 1), weight(-1, 1), weight(-1, 0), weight(0, 0)]).toEqual([
      "refusal",
      "unknown",
      "unknown",
      undefined,
      undefined,
    ]);
  });

  it("cannot tell where geometry is not known, unless something else already refuses", () => {
    const pair = { driver: 13, driven: 38, form: "bevel", module: 1 } as const;
    expect(fits({ pair })).toMatchObject({
      verdict: "cannot tell",
      reasons: [{ code: "angle-gears", weight: "unknown" }],
    });
    expect(fits({ pair })).not.toHaveProperty("opening");
    expect(fits({ pair, mount: { shaft: "5 mm" }, driver: { bore: "4 mm" } }).verdict).toBe("does not fit");
    expect(fits({ pair: { driver: 13, driven: 38 } }).reasons[0]!.code).toBe("pitch-not-given");
  });

  it("gives undercut and returning teeth as information", () => {
    const fit = fits({ pair: { driver: 12, driven: 16, module: 1 } });
    expect(fit.verdict).toBe("fits");
    expect(fit.reasons).toEqual([
      { code: "undercut", weight: "information", of: "driver" },
      { code: "same-teeth-meet", weight: "information", teeth: 4 },
    ]);
    expect(reasonText(fit.reasons[0]!)).toBe("The driver is undercut if its teeth are not shifted.");
    expect(reasonText(fit.reasons[1]!)).toBe("The same teeth meet every 4 driver turns.");
    expect(codes({ pair: { driver: 20, driven: 41, module: 1 } })).toEqual([]);
    // 17.1 teeth are never undercut at 20°; five sixths of that are 14.2, the practical limit.
    expect(codes({ pair: { driver: 15, driven: 62, module: 1 } })).toEqual([]);
    expect(codes({ pair: { driver: 14, driven: 61, module: 1 } })).toEqual(["undercut"]);
  });

  it("refuses an opening at which teeth part before the next two meet", () => {
    const pair = { driver: 20, driven: 41, module: 1 };
    const at = (opening: string) => codes({ pair, mount: { opening } }, "refusal");
    expect([at("0.3 mm"), at("1.2 mm"), at("5 mm")]).toEqual([[], ["no-contact"], ["no-contact"]]);
  });

  it("has a sentence for every code", () => {
    const every: Reason["code"][] = [
      "pitch-near",
      "pitch-different",
      "angle-different",
      "too-close",
      "too-far",
      "no-hole",
      "no-contact",
      "wall",
      "bore-too-small",
      "bore-too-large",
      "hub-holes",
      "reach",
      "hub-too-long",
      "undercut",
      "same-teeth-meet",
      "sleeve",
      "plate",
      "facing",
      "angle-gears",
      "pitch-not-given",
      "helix-not-given",
      "shift-not-given",
      "ring-too-small",
      "no-centre",
      "no-line-of-action",
      "tooth-pointed",
      "tooth-missing",
      "shafts-not-given",
    ];
    const texts = every.map((code) => reasonText({ code, weight: "refusal" }));
    for (const text of texts) expect(text).toMatch(/^\S.*\.$/);
    expect(new Set(texts).size).toBe(every.length);
    // What a reason does not say is left open.
    expect(reasonText({ code: "pitch-different", weight: "refusal" })).toBe("… does not mesh with ….");
  });
});

describe("square roots", () => {
  it("are exact where they are fractions, and close around where they are not", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 10 ** 9 }), fc.integer({ min: 1, max: 10 ** 9 }), (up, down) => {
        const value = rational(up).over(down);
        expect(rootOf(bounded(value.power(2))).toJSON()).toEqual({ low: value.toFraction(), high: value.toFraction() });
        const root = rootOf(bounded(value));
        expect(root.power(2).contains(value)).toBe(true);
        expect(root.high.minus(root.low).compare("1e-20")).toBeLessThanOrEqual(0);
      }),
    );
    expect(rootOf(bounded(4, 9)).toJSON()).toEqual({ low: "2/1", high: "3/1" });
    const wide = rootOf(bounded(2, 3));
    expect([wide.low.power(2).compare(2), wide.high.power(2).compare(3)]).toEqual([-1, 1]);
  });
});
