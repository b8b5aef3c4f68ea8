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
