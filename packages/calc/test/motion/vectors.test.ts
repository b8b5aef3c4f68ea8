import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { solveCount, speedAt } from "../../src/motion/index.js";

function vectors<T>(name: string): readonly T[] {
  const file = new URL(`../../../../tests/vectors/${name}.json`, import.meta.url);
  return JSON.parse(readFileSync(file, "utf8")) as readonly T[];
}

const exact = (fraction: string) => ({ low: fraction, high: fraction });

describe("answers worked out elsewhere", () => {
  it("meets every case of solve.json", () => {
    interface Case {
      driven: number;
      restOfTrain: string;
      wantedRatio: string;
      expect: { driverTeeth: string; neighbours: { teeth: number; ratio: string; off: string }[] };
    }
    for (const { driven, restOfTrain: rest, wantedRatio: reduction, expect: wanted } of vectors<Case>("solve")) {
      const { teeth, neighbours, reduction: goal } = solveCount({ driven, rest, wanted: { reduction } });
      expect(teeth.toJSON()).toEqual(exact(wanted.driverTeeth));
      expect(goal.toJSON()).toEqual(exact(reduction));
      expect(
        neighbours.map((one) => [one.choice, one.reduction.toJSON(), one.off.toJSON(), one.gives.toJSON()]),
      ).toEqual(wanted.neighbours.map((one) => [one.teeth, exact(one.ratio), exact(one.off), exact(one.ratio)]));
    }
  });

  it("meets every case of speed.json", () => {
    interface Case {
      motor: { kv: number };
      volts: string;
      ratio: string;
      wheel: { diameter: string };
      expect: Record<"metresPerSecond" | "kilometresPerHour" | "milesPerHour", number> &
        Record<"motorRpm" | "wheelRpm", string>;
    }
    for (const { motor, volts, ratio: reduction, wheel, expect: wanted } of vectors<Case>("speed")) {
      const speed = speedAt({ motor, volts, reduction, wheel })!;
      expect(speed.motorRpm.toJSON()).toEqual(exact(wanted.motorRpm));
      expect(speed.wheelRpm.toJSON()).toEqual(exact(wanted.wheelRpm));
      for (const unit of ["metresPerSecond", "kilometresPerHour", "milesPerHour"] as const)
        for (const end of ["low", "high"] as const)
          expect(Math.abs(speed[unit][end].toNumber() / wanted[unit] - 1)).toBeLessThan(1e-12);
    }
  });
});
