import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readBuild } from "../../src/document/index.js";
import { leanRead } from "../../src/document/lean/index.js";
import { chemistryNames } from "../../src/drivetrain/index.js";
import { lengthOf, rational, type Rounding } from "../../src/exact/index.js";
import { meshOf, type ToothPair } from "../../src/gears/index.js";
import { chemistries } from "../../src/motion/index.js";
import { document, pair, read, told } from "../make.js";

const plain = (more: object) =>
  document([pair("primary", 15, 62)], { front: [pair("f", 1, 2)], rear: [] }, more as never);
const found = (json: unknown) => told(readBuild(json).findings);

describe("a value above zero", () => {
  it.each([
    ["/wheelbase", { wheelbase: "0/3 mm" }],
    ["/target/from", { target: { from: "0/5", to: 3 } }],
    ["/outputs/0/wheel/diameter", { outputs: [{ id: "rear", stages: [], wheel: { diameter: "0/5 mm" } }] }],
    ["/stages/0/module", { stages: [pair("primary", 15, 62, { module: "0/5" })] }],
    ["/stages/0/diametralPitch", { stages: [pair("primary", 15, 62, { diametralPitch: "0.0/7" })] }],
    ["/centre/share/front", { centre: { kind: "differential", share: { front: "0/5", rear: "0/3" } } }],
    ["/stages/0/value", { stages: [{ id: "box", kind: "published", value: "0:1" }] }],
    ["/stages/0/value", { stages: [{ id: "box", kind: "published", value: "0.00 : 1" }] }],
    ["/stages/0/value", { stages: [{ id: "box", kind: "published", value: "0/7" }] }],
  ])("is none at %s in %j, whichever way the zero is written", (at, more) => {
    const json = { ...document([], { front: [], rear: [] }), ...more };
    expect(found(json)[0]).toContain(` at ${at}`);
    expect(readBuild(json).ok).toBe(false);
    expect(leanRead(json)).toBeUndefined();
  });
});

describe("rounding options", () => {
  const options = fc.record(
    {
      minimumFractionDigits: fc.constantFrom(0, 1, 2, 5, 20),
      maximumFractionDigits: fc.constantFrom(0, 1, 2, 3, 5, 20),
      minimumSignificantDigits: fc.constantFrom(1, 2, 3, 21),
      maximumSignificantDigits: fc.constantFrom(1, 2, 3, 21),
      roundingIncrement: fc.constantFrom(1, 2, 5, 25, 5000),
      roundingMode: fc.constantFrom("ceil", "halfEven", "halfExpand"),
      trailingZeroDisplay: fc.constantFrom("auto", "stripIfInteger"),
    },
    { requiredKeys: [] },
  );
  const isTaken = (rounding: object): boolean => {
    try {
      new Intl.NumberFormat("en", rounding);
      return true;
    } catch {
      return false;
    }
  };

  it("are taken exactly where ECMA-402 takes them, alone and together", () => {
    const seen = { taken: 0, refused: 0 };
    fc.assert(
      fc.property(options, (rounding) => {
        const taken = isTaken(rounding);
        seen[taken ? "taken" : "refused"]++;
        const reading = readBuild(plain({ rounding }));
        expect(reading.ok, JSON.stringify(rounding)).toBe(taken);
        // What is taken can be used.
        if (reading.ok) expect(rational("62/15").toDecimal(reading.build.rounding as Rounding)).toMatch(/^\d/);
        else expect(reading.findings[0]!.at).toMatch(/^\/rounding\/\w+$/);
      }),
      { numRuns: 3000 },
    );
    expect(Math.min(seen.taken, seen.refused)).toBeGreaterThan(500);
  });

  it.each([0, 3, 4, 15, 5001, 10_000, 1.5, "25 ", 22])("do not know an increment of %s", (roundingIncrement) => {
    expect(
      found(plain({ rounding: { roundingIncrement, maximumFractionDigits: 2, minimumFractionDigits: 2 } })),
    ).toEqual(["not-increment at /rounding/roundingIncrement"]);
  });

  it("say what is wrong with them together", () => {
    const told = (rounding: object) =>
      readBuild(plain({ rounding })).findings.map(({ at, message }) => `${at}: ${message}`);
    expect(told({ minimumFractionDigits: 4, maximumFractionDigits: 2 })).toEqual([
      "/rounding/maximumFractionDigits: 4 is more than 2; expected a minimum up to the maximum.",
    ]);
    expect(told({ roundingIncrement: 5, maximumFractionDigits: 2 })).toEqual([
      "/rounding/roundingIncrement: An increment needs equal minimum and maximum fraction digits, and no significant digits.",
    ]);
    expect(told({ maximumSignificantDigits: 22 })).toEqual([
      "/rounding/maximumSignificantDigits: Expected a whole number from 1 to 21, found 22.",
    ]);
  });
});

describe("a day", () => {
  it("is one of the calendar", () => {
    fc.assert(
      fc.property(fc.nat(9999), fc.nat(14), fc.nat(33), (year, month, day) => {
        const text = [String(year).padStart(4, "0"), ...[month, day].map((n) => String(n).padStart(2, "0"))].join("-");
        const time = new Date(`${text}T00:00:00Z`);
        const exists = !Number.isNaN(time.getTime()) && time.toISOString().startsWith(text);
        expect(readBuild(plain({ revision: { date: text } })).ok, text).toBe(exists);
      }),
      { numRuns: 2000 },
    );
    for (const [text, exists] of [
      ["2026-02-31", false],
      ["2026-02-29", false],
      ["2024-02-29", true],
      ["1900-02-29", false],
      ["2000-02-29", true],
      ["2026-04-31", false],
      ["2026-12-31", true],
    ] as const)
      expect(readBuild(plain({ revision: { date: text } })).ok, text).toBe(exists);
  });
});

describe("a chemistry", () => {
  it("is one whose volts are known, and the nearest is named", () => {
    expect(Object.keys(chemistries)).toEqual([...chemistryNames]);
    for (const chemistry of chemistryNames) expect(found(plain({ battery: { chemistry } }))).toEqual([]);
    const [finding] = readBuild(plain({ battery: { cells: 3, chemistry: "lipp" } })).findings;
    expect([finding!.code, finding!.at, finding!.values.nearest]).toEqual([
      "not-a-choice",
      "/battery/chemistry",
      ["lipo"],
    ]);
    expect(readBuild(plain({ battery: { chemistry: "LiPo" } })).findings[0]!.values.nearest).toEqual(["lipo"]);
  });
});

describe("a length", () => {
  it("is read with white space of any kind, and stays as it was written", () => {
    const spaces = ["", " ", "\u00a0", "\u202f", "\u2009", "\t", "\u3000", " \u00a0 "];
    for (const between of spaces)
      for (const around of spaces) {
        const wheelbase = `${around}118${between}mm${around}`;
        expect(read(plain({ wheelbase })).wheelbase).toBe(wheelbase);
        expect(lengthOf(wheelbase).toFraction()).toBe("118/1");
      }
    expect(found(plain({ wheelbase: "1 18 mm" }))).toEqual(["not-size at /wheelbase"]);
  });

  it("above zero says so, and a number with too many digits says how many there may be", () => {
    const message = (more: object) => readBuild(plain(more)).findings[0]!.message;
    expect(message({ wheelbase: "0.00 mm" })).toBe('Expected a length above 0 such as "118 mm", found "0.00 mm".');
    for (const from of ["1234567890123", "0.1234567890123", 1234567890123])
      expect(message({ target: { from, to: from } })).toBe(
        `Expected a number above 0 with up to 12 digits either side of the point, found ${JSON.stringify(from)}.`,
      );
  });
});

describe("what stands in order", () => {
  it("has the smaller first", () => {
    const measurement = (wheelTurns: object) => plain({ measurements: [{ what: "rear", motorTurns: 1, wheelTurns }] });
    expect(found(measurement({ from: 2, to: 1 }))).toEqual(["range-backwards at /measurements/0/wheelTurns"]);
    expect(found(measurement({ from: "1/3", to: "0.333" }))).toEqual(["range-backwards at /measurements/0/wheelTurns"]);
    expect(found(measurement({ from: "1.0", to: 1 }))).toEqual([]);
    const counted = (turnsOut: object) => document([{ id: "a", kind: "measured", turnsIn: 1, turnsOut }], { rear: [] });
    expect(found(counted({ from: 2, to: 1 }))).toEqual(["range-backwards at /stages/0/turnsOut"]);
    expect(found(counted({ from: 0, to: 1 }))).toEqual(["not-positive at /stages/0/turnsOut/from"]);
  });
});

describe("teeth", () => {
  const of = (more: object) => document([pair("a", 15, 62, more as never)], { rear: [] });

  it("have one pitch, and angles that gears have", () => {
    expect(found(of({ module: 1, diametralPitch: 32 }))).toEqual(["pitch-twice at /stages/0/diametralPitch"]);
    expect(found(of({ pressureAngle: 45 }))).toEqual([]);
    expect(found(of({ pressureAngle: "45.1" }))).toEqual(["angle-out-of-range at /stages/0/pressureAngle"]);
    for (const helixAngle of [89, -89, "-30.5"]) expect(found(of({ form: "helical", helixAngle }))).toEqual([]);
    for (const helixAngle of [90, "89.1", -90, 180])
      expect(found(of({ form: "helical", helixAngle }))).toEqual(["angle-out-of-range at /stages/0/helixAngle"]);
    expect(readBuild(of({ pressureAngle: 90 })).findings[0]!.message).toBe(
      "Expected an angle from 0 to 45 degrees, found 90.",
    );
    const train = { id: "a", kind: "train", teeth: [10, 20], pressureAngle: 60 };
    expect(found(document([train], { rear: [] }))).toEqual(["angle-out-of-range at /stages/0/pressureAngle"]);
    const worm = { id: "a", kind: "worm", starts: 1, teeth: 20, module: 1, diametralPitch: 25 };
    expect(found(document([worm], { rear: [] }))).toEqual(["pitch-twice at /stages/0/diametralPitch"]);
    const set = { id: "a", kind: "planetary", sun: 1, ring: 3, fixed: "sun", input: "ring", output: "carrier" };
    expect(found(document([{ ...set, pressureAngle: 50 }], { rear: [] }))).toEqual([
      "angle-out-of-range at /stages/0/pressureAngle",
    ]);
  });

  it("that are taken have a geometry, or a reason why none is known; never an error", () => {
    const number = (min: number, max: number) => fc.double({ min, max, noNaN: true }).map((x) => x.toFixed(3));
    const seen = { taken: 0, refused: 0 };
    fc.assert(
      fc.property(
        fc.record(
          {
            driver: fc.integer({ min: 1, max: 200 }),
            driven: fc.integer({ min: 1, max: 200 }),
            module: number(0.001, 40),
            form: fc.constantFrom("spur", "helical", "bevel"),
            internal: fc.boolean(),
            pressureAngle: number(0.001, 89),
            helixAngle: number(-120, 120),
            driverShift: number(-4, 4),
            drivenShift: number(-4, 4),
            driverTip: number(0.001, 300).map((x) => `${x} mm`),
            thinning: number(0, 3).map((x) => `${x} mm`),
          },
          { requiredKeys: ["driver", "driven", "module"] },
        ),
        (stage) => {
          const reading = readBuild(document([{ id: "a", kind: "pair", ...stage }], { rear: [] }));
          seen[reading.ok ? "taken" : "refused"]++;
          if (!reading.ok) return;
          const mesh = meshOf(reading.build.stages[0] as unknown as ToothPair);
          for (const value of Object.values(mesh)) expect(Number.isNaN(value)).toBe(false);
        },
      ),
      { numRuns: 500 },
    );
    expect(Math.min(seen.taken, seen.refused)).toBeGreaterThan(30);
  });

  it("of a worm are more than its starts, as a rule", () => {
    const worm = (starts: number, teeth: number) => document([{ id: "a", kind: "worm", starts, teeth }], { rear: [] });
    expect(found(worm(2, 30))).toEqual([]);
    expect(found(worm(30, 2))).toEqual(["worm-backwards at /stages/0/starts"]);
    expect(readBuild(worm(30, 2)).ok).toBe(true);
  });
});
