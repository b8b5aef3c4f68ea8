import { readBuild } from "@meshwright/calc/document";
import {
  type Comparison,
  type ComparisonBase,
  evaluate,
  type OutputEvaluation,
  pi,
  type Scope,
} from "@meshwright/calc/evaluate";
import type { VectorFile } from "../cases.js";
import { ends, interval } from "../ends.js";
import { fraction, mapOf, same } from "../fields.js";

interface Expected {
  readonly outputs?: Readonly<Record<string, { readonly decimal?: Readonly<Record<string, string>> }>>;
}

const differenceForm = { "base=with": interval, "base=of": interval, "base=mean": interval };

function differenceOn(comparison: Comparison, scope: Scope) {
  if (comparison.difference(scope) === undefined) return undefined;
  const on = (base: ComparisonBase) => {
    const difference = comparison.difference(scope, base);
    return difference && ends(difference);
  };
  return { "base=with": on("with"), "base=of": on("of"), "base=mean": on("mean") };
}

/** What stands before π in the travel; nothing where the wheel was measured in another way than across. */
function travelOverPi({ travel }: OutputEvaluation) {
  const holdsPi = travel?.unknowns.some((unknown) => unknown.key === pi().unknowns[0]?.key);
  return travel && holdsPi ? ends(travel.over(pi()).bounds) : undefined;
}

function outputAnswer(output: OutputEvaluation, expected: Expected) {
  const total = output.reduction;
  const digits = new Set(["0", "1", "2", "4", ...Object.keys(expected.outputs?.[output.id]?.decimal ?? {})]);
  if (total === undefined) return {};
  const rounded = (count: string) =>
    total.factor.toDecimal({ minimumFractionDigits: Number(count), maximumFractionDigits: Number(count) });
  return {
    ratio: ends(total.bounds),
    exact: total.isExact,
    turns: output.turns,
    groups: Object.fromEntries(output.groups.map(({ group, reduction }) => [group, ends(reduction.bounds)])),
    decimal: total.isExact ? Object.fromEntries([...digits].map((count) => [count, rounded(count)])) : undefined,
    travelPerMotorTurnOverPi_mm: travelOverPi(output),
    target: output.standing,
  };
}

export const file: VectorFile<{ name: string; build: unknown }> = {
  given: ["name", "build"],
  form: {
    expect: {
      outputs: mapOf({
        ratio: interval,
        exact: same,
        turns: same,
        groups: mapOf(interval, { ordered: true }),
        decimal: mapOf(same),
        travelPerMotorTurnOverPi_mm: interval,
        target: same,
      }),
      travelDifference: differenceForm,
      gearsOnlyDifference: differenceForm,
      sameWay: same,
      meanRatio: { harmonic: fraction, arithmetic: fraction },
    },
  },
  answer({ build: document }, { expect }) {
    const read = readBuild(document);
    if (!("build" in read) || read.build === undefined)
      throw new Error(read.findings.map((finding) => finding.message).join(" "));
    const evaluation = evaluate(read.build);
    const outputs = Object.fromEntries(
      evaluation.outputs.map((output) => [output.id, outputAnswer(output, (expect ?? {}) as Expected)]),
    );
    const comparison = read.build.compare && evaluation.compare();
    if (comparison === undefined) return { expect: { outputs } };
    const { harmonicMean: harmonic, arithmeticMean: arithmetic } = comparison;
    return {
      expect: {
        outputs,
        travelDifference: differenceOn(comparison, "tyres"),
        gearsOnlyDifference: differenceOn(comparison, "gears"),
        sameWay: comparison.sameWay,
        meanRatio:
          harmonic?.isExact && arithmetic?.isExact
            ? { harmonic: harmonic.low.toFraction(), arithmetic: arithmetic.low.toFraction() }
            : undefined,
      },
    };
  },
};
