import { Decimal } from "decimal.js";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parseBuild } from "../../src/document/index.js";
import type { Battery, Build, ChemistryName } from "../../src/drivetrain/index.js";
import type { Stage } from "../../src/stages/index.js";
import { evaluate } from "../../src/evaluate/index.js";
import { bounded, rational } from "../../src/exact/index.js";
import {
  chemistries,
  electricalFindings,
  freeSpeed,
  overdriveFor,
  packVolts,
  solveCount,
  solveDiameter,
  solveSet,
  speedAt,
  speedFigures,
  speedsOf,
  travelPerPulse,
  turningRadius,
  wheelTorque,
} from "../../src/motion/index.js";
import { measurementsOf } from "../../src/counted/index.js";
import { toMillimetresPerMinute } from "../../src/motion/units.js";

const exact = (fraction: string) => ({ low: fraction, high: fraction });
const digits = (value: { low: { toDecimal(rounding: object): string } }, maximumFractionDigits: number) =>
  value.low.toDecimal({ maximumFractionDigits });

const rover = (more: Partial<Build> = {}): Build =>
  parseBuild({
    format: "meshwright-build/1",
    stages: [{ id: "primary", kind: "pair", driver: 20, driven: 80 }],
    outputs: [{ id: "rear", stages: [], wheel: { diameter: "100 mm" } }],
    motor: { kv: 1000 },
    battery: { cells: 2, chemistry: "lipo" },
    ...more,
  });

describe("speed", () => {
  it("practice 23: 100 turns a minute of a 4 in wheel are 1.745 ft/s free; loaded, 81 to 90 % of that", () => {
    const question = { motor: { kv: 100 }, volts: 1, reduction: 1, wheel: { diameter: "4 in" } };
    const free = speedAt(question)!;
    expect(digits(free.feetPerSecond, 3)).toBe("1.745");
    const loaded = speedAt({ ...question, loaded: { from: "0.81", to: "0.9" } })!;
    expect(loaded.wheelRpm.toJSON()).toEqual({ low: "81/1", high: "90/1" });
    expect(loaded.motorRpm.toJSON()).toEqual({ low: "81/1", high: "90/1" });
    expect(loaded.feetPerSecond.toDecimals({ maximumFractionDigits: 3 })).toEqual({ low: "1.413", high: "1.571" });
  });

  it("names what it takes for granted", () => {
    const question = { motor: { kv: 100 }, volts: "7.4", reduction: 1, wheel: { diameter: "4 in" } };
    expect(speedAt(question)!.assumptions).toEqual([
      "kv-as-stated",
      "volts-as-stated",
      "no-load",
      "no-losses",
      "no-slip",
      "diameter-unloaded",
    ]);
    expect(
      speedAt({ ...question, wheel: { loadedDiameter: "95 mm" }, loaded: { from: 1, to: 1 } })!.assumptions,
    ).toEqual(["kv-as-stated", "volts-as-stated", "loaded-as-stated", "no-slip", "diameter-loaded"]);
    expect(speedAt(question)!.volts.toFraction()).toBe("37/5");
  });

  it("knows no π where the travel was measured: 10 turns = 3.72 m", () => {
    const speed = speedAt({
      motor: { kv: 1000 },
      volts: 6,
      reduction: 20,
      wheel: { travel: { turns: 10, length: "3.72 m" } },
    })!;
    // 300 turns a minute of 372 mm: 1.86 m a second.
    expect(speed.metresPerSecond.toJSON()).toEqual(exact("93/50"));
    expect(speed.kilometresPerHour.toJSON()).toEqual(exact("837/125"));
    expect(speed.assumptions).toContain("travel-measured");
  });

  it("carries an unknown reduction as an interval", () => {
    const speed = speedAt({ motor: { kv: 1000 }, volts: 1, reduction: bounded(2, 4), wheel: { diameter: "1 m" } })!;
    expect(speed.wheelRpm.toJSON()).toEqual({ low: "250/1", high: "500/1" });
    expect(speed.metresPerSecond.low.toNumber()).toBeCloseTo((250 * Math.PI) / 60, 12);
    expect(speed.metresPerSecond.high.toNumber()).toBeCloseTo((500 * Math.PI) / 60, 12);
  });

  it("converts exactly", () => {
    const figures = speedFigures(bounded(1_609_344));
    expect(figures.milesPerHour.toJSON()).toEqual(exact("60/1"));
    expect(figures.feetPerSecond.toJSON()).toEqual(exact("88/1"));
    expect(figures.kilometresPerHour.toJSON()).toEqual(exact("301752/3125"));
    expect(figures.metresPerSecond.toJSON()).toEqual(exact("16764/625"));
    for (const unit of ["metresPerSecond", "kilometresPerHour", "milesPerHour", "feetPerSecond"] as const)
      expect(speedFigures(toMillimetresPerMinute(bounded(7), unit))[unit].toJSON()).toEqual(exact("7/1"));
  });

  it("never makes kV of windings", () => {
    expect(freeSpeed({ turns: 27 }, 12)).toBeUndefined();
    expect(speedAt({ motor: { turns: 27 }, volts: 12, reduction: 1, wheel: { diameter: "1 m" } })).toBeUndefined();
    expect(freeSpeed({ kv: "1850.5", turns: 27 }, 2)!.toFraction()).toBe("3701/1");
  });

  it("refuses a loaded share that is none", () => {
    const question = { motor: { kv: 100 }, volts: 1, reduction: 1, wheel: { diameter: "4 in" } };
    const bad = expect.objectContaining({ code: "out-of-range", at: "loaded" }) as Error;
    expect(() => speedAt({ ...question, loaded: { from: 0, to: "0.9" } })).toThrowError(bad);
    expect(() => speedAt({ ...question, loaded: { from: "0.9", to: "1.01" } })).toThrowError(bad);
    expect(() => speedAt({ ...question, motor: { kv: "fast" } })).toThrowError(expect.objectContaining({ at: "kv" }));
  });

  it("comes at nominal, full and loaded for a build's output", () => {
    const speeds = (build: Build, loaded?: { from: string; to: string }) =>
      speedsOf(build, evaluate(build).outputs[0]!, loaded);
    const { nominal, full, loaded } = speeds(rover(), { from: "0.8", to: "0.9" });
    expect(nominal!.wheelRpm.toJSON()).toEqual(exact("1850/1"));
    expect(full!.wheelRpm.toJSON()).toEqual(exact("2100/1"));
    expect(loaded!.wheelRpm.toJSON()).toEqual({ low: "1480/1", high: "1665/1" });
    expect(nominal!.assumptions).toContain("nominal-volts");
    expect(full!.assumptions).toContain("full-charge");
    expect(full!.assumptions).not.toContain("volts-as-stated");
    expect(loaded!.assumptions).toEqual(expect.arrayContaining(["nominal-volts", "loaded-as-stated"]));
    expect(speeds(rover())).not.toHaveProperty("loaded");
    expect(speeds(rover()).nominal!.metresPerSecond.low.toNumber()).toBeCloseTo((1850 * Math.PI * 0.1) / 60, 12);

    const output = rover().outputs[0]!;
    expect(speeds(rover({ motor: {} }))).toEqual({ notKnown: "kv-not-given" });
    expect(speeds(rover({ motor: { turns: 27 } }))).toEqual({ notKnown: "turns-are-not-kv" });
    expect(speeds(rover({ battery: { cells: 2 } }))).toEqual({ notKnown: "battery-not-known" });
    const { battery: _, motor: __, ...bare } = rover();
    expect(speeds(parseBuild({ ...bare, motor: { kv: 1 } }))).toEqual({ notKnown: "battery-not-known" });
    expect(speeds(parseBuild(bare))).toEqual({ notKnown: "kv-not-given" });
    expect(speeds(rover({ outputs: [{ id: "rear", stages: [] }] }))).toEqual({ notKnown: "wheel-not-given" });
    const own = speeds(rover({ outputs: [{ ...output, motor: { kv: 400 } }] }));
    expect(own.nominal!.motorRpm.toJSON()).toEqual(exact("2960/1"));
    const lever = {
      id: "lever",
      kind: "selectable",
      selected: "out",
      positions: [{ id: "out", released: "free" }],
    } as const;
    expect(speeds(rover({ outputs: [{ ...output, stages: [lever] }] }))).toEqual({ notKnown: "not-driven" });
  });

  it("Gannet: each motor with its own kV at equal volts", () => {
    const front = speedAt({ motor: { kv: 2400 }, volts: "11.1", reduction: "171/4", wheel: { diameter: "120 mm" } })!;
    const rear = speedAt({ motor: { kv: 2100 }, volts: "11.1", reduction: "492/13", wheel: { diameter: "118 mm" } })!;
    expect(front.wheelRpm.toJSON()).toEqual(exact("11840/19"));
    expect(rear.wheelRpm.toJSON()).toEqual(exact("50505/82"));
    expect(front.metresPerSecond.low.over(rear.metresPerSecond.low).toNumber() - 1).toBeCloseTo(2949 / 102011, 12);
  });
});

describe("batteries", () => {
  it("practice 22: capacity and cells in parallel are no volts", () => {
    const volts = packVolts({ cells: 3, chemistry: "lipo" })!;
    expect(packVolts({ cells: 3, chemistry: "lipo", parallel: 2, capacity: 5 })).toEqual(volts);
    expect([volts.nominal, volts.full].map((one) => one.toDecimal())).toEqual(["11.1", "12.6"]);
  });

  it("practice 25: two full cells hold 8.4 V, of the high-voltage kind 8.7 V, three of those 13.05 V", () => {
    const full = (cells: number, chemistry: ChemistryName) => packVolts({ cells, chemistry })!.full.toDecimal();
    expect([full(2, "lipo"), full(2, "lipo-high-voltage"), full(3, "lipo-high-voltage")]).toEqual([
      "8.4",
      "8.7",
      "13.05",
    ]);
    const findings = (chemistry: ChemistryName, maxVolts: string) =>
      electricalFindings({ battery: { cells: 2, chemistry }, controller: { maxVolts }, outputs: [] });
    expect(findings("lipo", "7.2")).toMatchObject([
      {
        severity: "warning",
        about: "meaning",
        code: "full-over-controller",
        at: "/controller/maxVolts",
        message: "2 full cells reach 8.40 V, not 7.4. Controller limit: 7.2 V.",
      },
    ]);
    expect(findings("lipo", "8.4")).toEqual([]);
    expect(findings("lipo-high-voltage", "8.4")).toHaveLength(1);
  });

  it("hold more when full than their label says, and the table says whence", () => {
    for (const { nominal, full, source } of Object.values(chemistries)) {
      expect(rational(full).compare(nominal)).toBe(1);
      expect(source).not.toBe("");
    }
    expect(Object.keys(chemistries)).toEqual(["lipo", "lipo-high-voltage", "li-ion", "lifepo4", "nimh", "lead"]);
  });

  it("are not guessed", () => {
    for (const battery of [{}, { cells: 3 }, { chemistry: "lipo" }, { cells: 3, chemistry: "constructor" }])
      expect(packVolts(battery as Battery)).toBeUndefined();
    expect(
      electricalFindings({ battery: { cells: 3, chemistry: "salt" as ChemistryName }, outputs: [] }),
    ).toMatchObject([{ code: "chemistry-not-known", at: "/battery", message: "Volts of 3 salt cells are not known." }]);
    expect(electricalFindings({ battery: { chemistry: "lipo" }, outputs: [] })[0]!.message).toContain("? lipo");
    expect(electricalFindings({ battery: { cells: 3 }, outputs: [] })).toEqual([]);
    expect(electricalFindings({ outputs: [] })).toEqual([]);
  });

  it("are held against every motor's volts and turns", () => {
    const limits = { kv: 2000, maxVolts: "12", maxRpm: 25_000 };
    const found = (build: Parameters<typeof electricalFindings>[0]) =>
      electricalFindings(build).map(({ code, at, message }) => [code, at, message]);
    const battery = { cells: 3, chemistry: "lipo" } as const;
    const volts = "3 full cells reach 12.60 V, not 11.1. Motor limit: 12 V.";
    const turns = "2000 kV at 12.60 V is above 25000 turns a minute.";
    expect(found({ battery, motor: limits, outputs: [] })).toEqual([
      ["full-over-motor", "/motor/maxVolts", volts],
      ["over-max-rpm", "/motor/maxRpm", turns],
    ]);
    const plain = { id: "front", stages: [] };
    expect(found({ battery, outputs: [plain, { id: "rear", stages: [], motor: limits }] })).toEqual([
      ["full-over-motor", "/outputs/1/motor/maxVolts", volts],
      ["over-max-rpm", "/outputs/1/motor/maxRpm", turns],
    ]);
    expect(found({ battery, motor: { kv: 2000, maxRpm: 25_200, maxVolts: "12.6" }, outputs: [] })).toEqual([]);
    expect(found({ battery, motor: { maxRpm: 10 }, outputs: [] })).toEqual([]);
    expect(found({ battery, motor: { kv: 2000 }, outputs: [plain] })).toEqual([]);
  });
});

describe("torque and pulses", () => {
  it("practice 27: 0.1 N·m through 40:1 and three stages of 97 % is 3.651 N·m, not 4", () => {
    expect(wheelTorque("0.1", 40, ["0.97", "0.97", "0.97"]).toJSON()).toEqual(exact("912673/250000"));
    expect(wheelTorque("0.1", 40, []).toJSON()).toEqual(exact("4/1"));
    expect(wheelTorque("0.1", bounded(40, 50), ["0.5"]).toJSON()).toEqual({ low: "2/1", high: "5/2" });
    for (const efficiency of [0, "1.01", "-0.5"])
      expect(() => wheelTorque(1, 1, [1, efficiency])).toThrowError(
        expect.objectContaining({ code: "out-of-range", at: "efficiencies" }),
      );
  });

  it("practice 24: 400 pulses a turn, 83:1, 101.6 mm: 0.798 mm or 0.00961 mm, by the side of the gearbox", () => {
    const { onWheel, onMotor } = travelPerPulse(400, 83, { diameter: "101.6 mm" });
    expect([digits(onWheel, 3), digits(onMotor, 5)]).toEqual(["0.798", "0.00961"]);
    expect(travelPerPulse(400, bounded(80, 100), { travel: { turns: 1, length: "32 m" } }).onMotor.toJSON()).toEqual({
      low: "4/5",
      high: "1/1",
    });
  });

  it("practice 6: a box that counts 57/11 and a 20-tooth pulley of 2 mm pitch: 440/57 mm a turn", () => {
    const { onMotor } = travelPerPulse(1, "57/11", { travel: { turns: 1, length: "40 mm" } });
    expect(onMotor.toJSON()).toEqual(exact("440/57"));
    expect(digits(onMotor, 4)).toBe("7.7193");
  });
});

describe("the turning circle that an overdrive matches", () => {
  it("Avocet: 1/12 ahead at a wheelbase of 300 mm matches r = 720 mm", () => {
    expect(turningRadius("1/12", "300 mm")!.toJSON()).toEqual(exact("720/1"));
  });

  it("Avocet: 7/110 matches 33000/√1589 = 827.85 mm; r = 400 needs 5/4 and is short by 41/275", () => {
    const radius = turningRadius("7/110", "300 mm")!;
    expect(digits(radius, 2)).toBe("827.85");
    expect(radius.power(2).contains(rational(33000).power(2).over(1589))).toBe(true);
    expect(radius.high.minus(radius.low).compare("1e-19")).toBe(-1);
    const needed = overdriveFor("400 mm", "300 mm");
    expect(needed.toJSON()).toEqual(exact("5/4"));
    expect(bounded(rational("7/110").plus(1)).over(needed).minus(1).toJSON()).toEqual(exact("-41/275"));
  });

  it("agrees with wheels rolling around one centre", () => {
    fc.assert(
      fc.property(fc.integer({ min: 100, max: 5000 }), fc.integer({ min: 100, max: 900 }), (r, wheelbase) => {
        const front = new Decimal(r).pow(2).plus(new Decimal(wheelbase).pow(2)).sqrt().div(r);
        const needed = overdriveFor(`${r} mm`, `${wheelbase} mm`);
        expect(new Decimal(needed.low.toDecimal({ maximumFractionDigits: 15 })).minus(front).abs().lt("1e-14")).toBe(
          true,
        );
        const back = turningRadius(needed.minus(1), `${wheelbase} mm`)!;
        expect(back.contains(r)).toBe(true);
        expect(back.low.toNumber()).toBeCloseTo(r, 9);
      }),
      { numRuns: 50 },
    );
  });

  it("matches none where the front is not surely ahead", () => {
    for (const overdrive of [0, "-0.1", "-1.5", "-3"]) expect(turningRadius(overdrive, "300 mm")).toBeUndefined();
    expect(turningRadius(bounded("-0.01", "0.02"), "300 mm")).toBeUndefined();
    const wide = turningRadius(bounded("1/12", "1/4"), "300 mm")!;
    expect(wide.toJSON()).toEqual({ low: "400/1", high: "720/1" });
  });
});

describe("which count gives what is wanted", () => {
  it("practice 16: rollout 2.40 in with a 116-tooth spur and a 2.25 in tyre: 39.39; 39 gives 2.377, 40 gives 2.437", () => {
    const wanted = { travel: "2.40 in", wheel: { diameter: "2.25 in" } };
    const { teeth, neighbours } = solveCount({ driven: 116, rest: 1, wanted });
    expect(digits(teeth, 2)).toBe("39.39");
    const inches = neighbours.map((one) => [
      one.choice,
      one.gives.low.over("25.4").toDecimal({ maximumFractionDigits: 3 }),
    ]);
    expect(inches).toEqual([
      [39, "2.377"],
      [40, "2.437"],
    ]);
    expect(neighbours.map((one) => one.off.low.sign)).toEqual([-1, 1]);
    expect(neighbours[0]!.reduction.toJSON()).toEqual(exact("116/39"));
    for (const { gives, off } of neighbours) expect(gives.over("60.96").minus(1).minus(off).contains(0)).toBe(true);
  });

  it("practice 15: a 2.25 in tyre with 23/120 rolls 1.355 in", () => {
    const travel = travelPerPulse(1, "120/23", { diameter: "2.25 in" }).onMotor;
    expect(travel.low.over("25.4").toDecimal({ maximumFractionDigits: 3 })).toBe("1.355");
  });

  it("finds driven counts, exact hits alone, and nothing below one tooth", () => {
    const driven = solveCount({ driver: 15, rest: "31/7", wanted: { reduction: 20 } });
    expect(driven.teeth.toJSON()).toEqual(exact("2100/31"));
    expect(driven.neighbours.map((one) => [one.choice, one.reduction.toJSON().low])).toEqual([
      [67, "2077/105"],
      [68, "2108/105"],
    ]);
    const hit = solveCount({ driver: 15, rest: 2, wanted: { reduction: 8 } });
    expect(hit.neighbours).toMatchObject([{ choice: 60 }]);
    expect(hit.neighbours[0]!.off.toJSON()).toEqual(exact("0/1"));
    expect(solveCount({ driven: 10, rest: 1, wanted: { reduction: 100 } }).neighbours.map((one) => one.choice)).toEqual(
      [1],
    );
    const unsure = solveCount({ driven: 60, rest: bounded("2.735", "2.745"), wanted: { reduction: 10 } });
    expect(unsure.neighbours.map((one) => one.choice)).toEqual([16, 17]);
    expect(unsure.neighbours[0]!.reduction.toJSON()).toEqual({ low: "1641/160", high: "1647/160" });
    expect(() => solveCount({ driven: 60, rest: 1, wanted: { reduction: 0 } })).toThrowError(
      expect.objectContaining({ code: "division-by-zero" }),
    );
  });

  it("finds counts for a speed", () => {
    // 20 km/h at 12,000 motor turns a minute, measured wheel of 400 mm: 27.7… mm a motor turn, 14.4 to one.
    const wheel = { travel: { turns: 1, length: "400 mm" } };
    const wanted = { speed: 20, unit: "kilometresPerHour", motorRpm: 12_000, wheel } as const;
    const { reduction, teeth, neighbours } = solveCount({ driver: 16, rest: 3, wanted });
    expect([reduction.toJSON(), teeth.toJSON()]).toEqual([exact("72/5"), exact("384/5")]);
    expect(neighbours.map((one) => [one.choice, one.gives.toJSON(), one.off.toJSON()])).toEqual([
      [76, exact("384/19"), exact("1/95")],
      [77, exact("1536/77"), exact("-1/385")],
    ]);
  });

  it("agrees with trying every count", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 8, max: 40 }),
        fc.integer({ min: 20, max: 400 }),
        fc.integer({ min: 10, max: 900 }),
        (fixed, tenths, hundredths) => {
          const [rest, reduction] = [rational(hundredths).over(100), rational(tenths).over(10)];
          const counts = Array.from({ length: 40 * 41 * 10 }, (_, n) => n + 1);
          const value = (count: number): number => count * hundredths * 10 - fixed * tenths * 100;
          const below = counts.filter((count) => value(count) <= 0).at(-1);
          const above = counts.find((count) => value(count) >= 0);
          const { neighbours } = solveCount({ driver: fixed, rest, wanted: { reduction } });
          expect(neighbours.map((one) => one.choice)).toEqual(
            [...new Set([below, above])].filter((one) => one !== undefined),
          );
        },
      ),
      { numRuns: 50 },
    );
  });

  it("finds the sets of a list on either side", () => {
    const sets = [
      { driver: 13, driven: 38, name: "a" },
      { driver: 10, driven: 37, name: "b" },
      { driver: 11, driven: 43, name: "c" },
      { driver: 12, driven: 35, name: "d" },
    ];
    const found = (reduction: string, list = sets) =>
      solveSet({ sets: list, rest: 2, wanted: { reduction } }).neighbours.map((one) => one.choice.name);
    expect(found("6")).toEqual(["a", "b"]);
    expect(found("7.4")).toEqual(["b"]);
    expect(found("5")).toEqual(["d"]);
    expect(found("9")).toEqual(["c"]);
    expect(found("9", [])).toEqual([]);
    const wanted = { travel: "60 mm", wheel: { travel: { turns: 1, length: "360 mm" } } };
    const [near] = solveSet({ sets, rest: 2, wanted }).neighbours;
    expect([near!.choice.name, near!.gives.toJSON()]).toEqual(["a", exact("1170/19")]);
    expect(near!.off.toJSON()).toEqual(exact("1/38"));
    // An interval may lie on both sides at once.
    const [low, high] = solveSet({ sets: sets.slice(0, 1), rest: bounded(2, 3), wanted: { reduction: 7 } }).neighbours;
    expect([low!.choice.name, high]).toEqual(["a", undefined]);
  });

  it("finds the tyre that would do", () => {
    // 100 mm of ground for one motor turn at 10 to one: a metre around.
    const tyre = solveDiameter(10, { travel: "100 mm" });
    expect(tyre.low.toNumber()).toBeCloseTo(1000 / Math.PI, 12);
    const quick = solveDiameter("72/5", { speed: 20, unit: "kilometresPerHour", motorRpm: 12_000 });
    expect(quick.low.toNumber()).toBeCloseTo(400 / Math.PI, 12);
  });
});

describe("measurements", () => {
  it("are held against the output that they name", () => {
    const lever = { id: "lever", kind: "selectable", selected: "out", positions: [{ id: "out", released: "free" }] };
    const build = rover({
      outputs: [
        { id: "rear", stages: [] },
        { id: "bow", stages: [lever as Stage] },
      ],
      measurements: [
        { what: "rear", motorTurns: 40, wheelTurns: { from: "9.9", to: "10.1" } },
        { what: "rear", motorTurns: 40, wheelTurns: { from: "9.9", to: "10.1" }, oneWheelHeld: true },
        { what: "bow", motorTurns: 40, wheelTurns: 10 },
      ],
    });
    const checked = measurementsOf(evaluate(build));
    expect(checked.map((one) => one.agreement?.verdict)).toEqual(["agrees", "disagrees", undefined]);
    expect(checked[0]!.measurement).toBe(build.measurements![0]);
    expect(measurementsOf(evaluate(rover()))).toEqual([]);
  });
});
