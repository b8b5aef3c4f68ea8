import { describe, expect, it } from "vitest";
import { agreement, measurementsOf } from "../../src/counted/index.js";
import { parseBuild } from "../../src/document/index.js";
import type { Build, Measurement } from "../../src/drivetrain/index.js";
import { evaluate } from "../../src/evaluate/index.js";
import { bounded } from "../../src/exact/index.js";

/** A rear axle of 12 to so many teeth behind 4 to 1. */
const buildOf = (driven: number, measurements: readonly Measurement[]): Build =>
  parseBuild({
    format: "meshwright-build/1",
    stages: [{ id: "first", kind: "pair", driver: 10, driven: 40 }],
    outputs: [{ id: "rear", stages: [{ id: "ring", kind: "pair", driver: 12, driven }] }],
    measurements,
  });

const verdicts = (build: Build) => measurementsOf(evaluate(build)).map((one) => one.agreement?.verdict);

// 4 × 35 / 12 = 35/3: 35 turns of the motor are 3 of the wheels.
const counted: Measurement = { what: "rear", motorTurns: 35, wheelTurns: { from: "2.99", to: "3.01" } };
const kept: Measurement = { ...counted, with: { "ring.driver": 12, "ring.driven": 35 } };

describe("measurements of a build", () => {
  it("are compared with what it comes to", () => {
    expect(verdicts(buildOf(35, [counted]))).toEqual(["agrees"]);
    expect(verdicts(buildOf(42, [counted]))).toEqual(["disagrees"]);
    expect(measurementsOf(evaluate(buildOf(35, [])))).toEqual([]);
  });

  it("keep the counts that they were made with, and are compared with those only", () => {
    // After a swap from 35 to 42 teeth what was measured is not wrong.
    expect(verdicts(buildOf(42, [kept]))).toEqual(["agrees"]);
    expect(verdicts(buildOf(42, [kept, counted]))).toEqual(["agrees", "disagrees"]);
    expect(verdicts(buildOf(42, [{ ...kept, with: { "ring.driven": 36 } }]))).toEqual(["disagrees"]);
    expect(verdicts(buildOf(35, [{ ...counted, with: {} }]))).toEqual(["agrees"]);
  });
});

describe("a measurement that does not say what it was made with", () => {
  const swapped = buildOf(42, [counted]);

  it("was made with what its author has published: nobody has measured a reader's version", () => {
    const published = buildOf(35, [counted]);
    const verdict = (now: Build) => measurementsOf(evaluate(now), published).map((one) => one.agreement?.verdict);
    expect(verdict(published)).toEqual(["agrees"]);
    expect(verdict(swapped)).toEqual(["agrees"]);
    expect(verdict(buildOf(36, []))).toEqual(["agrees"]);
  });

  it("was made with what the revisions tell of its day", () => {
    // 35 teeth until August, 42 until October, 40 since: 4 · 40 / 12 = 40/3.
    const revised = (date: string | undefined, more: Partial<Build> = {}): Build =>
      parseBuild({
        ...buildOf(40, [{ ...counted, ...(date !== undefined && { date }) }]),
        revision: { number: 3, date: "2026-10-03" },
        revisions: [
          { number: 2, date: "2026-08-02", back: [{ set: "ring.driven", to: 42 }] },
          { number: 1, date: "2026-05-01", back: [{ set: "ring.driven", to: 35 }] },
        ],
        ...more,
      });
    const comes = (build: Build) => measurementsOf(evaluate(build))[0]!.reduction!.low.toFraction();
    expect(comes(revised("2026-10-03"))).toBe("40/3");
    expect(comes(revised("2026-10-02"))).toBe("14/1");
    expect(comes(revised("2026-08-01"))).toBe("35/3");
    // Before there was a first one nobody knows better.
    expect(comes(revised("2026-01-01"))).toBe("35/3");
    expect(comes(revised(undefined))).toBe("40/3");
    // Of a build whose revision has no day, every measurement is of the build as it stands.
    expect(comes(revised("2026-01-01", { revision: { number: 3 } }))).toBe("40/3");
  });
});

describe("an interval against an interval", () => {
  const count = { motorTurns: 40, wheelTurns: { from: "0.9", to: "1" } };

  it("agrees where all that the build can be was measured, disagrees by the least there is between, else cannot be told", () => {
    // Measured: 40 to 44.4.
    expect(agreement(bounded(41, 44), count).verdict).toBe("agrees");
    expect(agreement(bounded(40, "400/9"), count).verdict).toBe("agrees");
    expect(agreement(bounded(39, 41), count).verdict).toBe("cannot tell");
    expect(agreement(bounded(39, 46), count)).not.toHaveProperty("by");
    const deep = agreement(bounded(50, 60), count);
    expect([deep.verdict, deep.by!.toFraction()]).toEqual(["disagrees", "-1/9"]);
    const shallow = agreement(bounded(20, 25), count);
    expect([shallow.verdict, shallow.by!.toFraction()]).toEqual(["disagrees", "3/5"]);
    expect(deep.off.toJSON()).toEqual({ low: "-1/3", high: "-1/9" });
  });
});
