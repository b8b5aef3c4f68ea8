import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { buildAsMeasured, buildAt, readBuild } from "../../src/document/index.js";
import type { Build } from "../../src/drivetrain/index.js";
import { Bounded, Rational } from "../../src/exact/index.js";
import { difference, evaluate, Quantity, type Comparison, type OutputEvaluation } from "../../src/evaluate/index.js";
import { anyBuild } from "./any-build.js";

/** Goes through whatever was answered: nothing in it is NaN, and what is an interval has its smaller end first. */
function look(answer: unknown): void {
  if (typeof answer === "number") expect(answer).not.toBeNaN();
  else if (answer instanceof Rational) expect(answer.toNumber()).not.toBeNaN();
  else if (answer instanceof Bounded) {
    look([answer.low, answer.high]);
    expect(answer.low.compare(answer.high)).toBeLessThanOrEqual(0);
  } else if (answer instanceof Quantity) {
    look([answer.factor, answer.bounds, answer.unknowns.map(({ power, interval }) => [power, interval])]);
    expect(answer.bounds.low.sign).toBe(1);
  } else if (Array.isArray(answer)) answer.forEach(look);
}

const ofOutput = (one: OutputEvaluation): unknown => [
  ...[one.locked, one.straightOn, one.straightOver, one.reduction, one.bounds, one.travel, one.share],
  ...[one.state, one.standing, one.turn, one.turns, one.establishedTurns, one.isOpen, one.openSplits, one.assumes],
  one.groups.map(({ reduction }) => reduction),
  one.steps.map((step) => [step.reduction, step.running, step.runningBounds, step.turns]),
];

const ofComparison = (one: Comparison): unknown => [
  ...(["gears", "tyres"] as const).flatMap((scope) => [
    one.quotient(scope),
    ...(["with", "of", "mean"] as const).map((base) => one.difference(scope, base)),
  ]),
  ...[one.sameWay, one.establishedSameWay, one.isOpen, one.openSplits, one.takenUp, one.assumes],
  ...[one.arithmeticMean, one.harmonicMean, one.by],
];

/** What a finding may not say, whatever was found. */
const nonsense = /NaN|undefined|\[object/;

function everything(build: Build): void {
  for (const mode of [undefined, ...(build.modes ?? []).map(({ id }) => id)]) {
    const evaluation = evaluate(build, mode);
    look(evaluation.outputs.map(ofOutput));
    for (const one of evaluation.outputs)
      for (const other of evaluation.outputs) look(ofComparison(evaluation.compare(one.id, other.id)!));
    evaluation.compare();
    for (const { severity, message } of evaluation.findings) {
      expect(severity).toBe("warning");
      expect(message).not.toMatch(nonsense);
    }
  }
}

describe("whatever is accepted", () => {
  it("can be worked out, in every mode and every version", () => {
    const seen = { builds: 0, refused: 0, open: 0, inexact: 0 };
    fc.assert(
      fc.property(anyBuild, (json) => {
        const reading = readBuild(json);
        for (const { message } of reading.findings) expect(message).not.toMatch(nonsense);
        if (!reading.ok) return void seen.refused++;
        const { build } = reading;
        seen.builds++;
        everything(build);
        const { outputs } = evaluate(build);
        if (outputs.some((one) => one.isOpen && one.straightOn)) seen.open++;
        if (outputs.some((one) => one.locked && !one.locked.isExact)) seen.inexact++;
        for (const id of [...build.alternatives!.map((one) => one.id), "revision-1", "revision-2", "article"]) {
          const version = buildAt(build, id);
          expect(version.findings.filter(({ severity }) => severity === "error")).toEqual([]);
          everything(version.build!);
          look(difference(build, version.build!).map(({ reduction, midpoint }) => [reduction, midpoint]));
        }
        everything(buildAsMeasured(build, build.measurements![0]!).build!);
        // And it is a document as it stands.
        expect(readBuild(JSON.stringify(build)).build).toEqual(build);
      }),
      { numRuns: 250 },
    );
    expect(Math.min(seen.builds - 80, seen.refused, seen.open - 5, seen.inexact - 20)).toBeGreaterThan(0);
  });
});
