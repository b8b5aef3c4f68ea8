import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { readBuild } from "../../src/document/index.js";
import { bounded, rational, type Bounded } from "../../src/exact/index.js";
import { changeOf, evaluate } from "../../src/evaluate/index.js";

interface Ends {
  readonly low: string;
  readonly high: string;
}
interface ExpectedOutput {
  readonly ratio: Ends;
  readonly exact: boolean;
  readonly turns: string;
  readonly groups: Readonly<Record<string, Ends>>;
  readonly decimal?: Readonly<Record<string, string>>;
  readonly travelPerMotorTurnOverPi_mm: Ends;
  readonly target?: string;
}
interface BuildVector {
  readonly name: string;
  readonly build: unknown;
  readonly expect: {
    readonly outputs: Readonly<Record<string, ExpectedOutput>>;
    readonly travelDifference?: Readonly<Record<string, Ends>>;
    readonly gearsOnlyDifference?: Readonly<Record<string, Ends>>;
    readonly sameWay?: boolean | null;
    readonly meanRatio?: { readonly arithmetic: string; readonly harmonic: string };
  };
}

const vectors = <T>(name: string): readonly T[] =>
  JSON.parse(readFileSync(new URL(`../../../../tests/vectors/${name}.json`, import.meta.url), "utf8")) as readonly T[];

const ends = (value: Bounded | undefined) => value?.toJSON();

describe("answers worked out elsewhere", () => {
  it.each(vectors<BuildVector>("builds"))("$name", ({ build: json, expect: expected }) => {
    const { build, findings } = readBuild(json);
    expect(findings.filter((one) => one.severity === "error")).toEqual([]);
    const evaluation = evaluate(build!);
    expect(evaluation.outputs.map((output) => output.id)).toEqual(Object.keys(expected.outputs));
    for (const output of evaluation.outputs) {
      const wanted = expected.outputs[output.id]!;
      expect(ends(output.bounds)).toEqual(wanted.ratio);
      expect(output.reduction!.isExact).toBe(wanted.exact);
      expect(output.turns).toBe(wanted.turns);
      const groups = output.groups.map(({ group, reduction }) => [group, ends(reduction.bounds)]);
      expect(groups).toEqual(Object.entries(wanted.groups));
      for (const [digits, text] of Object.entries(wanted.decimal ?? {}))
        expect(
          output.reduction!.factor.toDecimal({ minimumFractionDigits: +digits, maximumFractionDigits: +digits }),
        ).toBe(text);
      const travel = output.travel!;
      const pi = travel.unknowns.find((one) => one.key === "π");
      expect(pi?.power).toBe(1);
      const overPi = travel.unknowns
        .filter((one) => one !== pi)
        .reduce((product, { interval, power }) => product.times(interval.power(power)), bounded(travel.factor));
      expect(ends(overPi)).toEqual(wanted.travelPerMotorTurnOverPi_mm);
      expect(output.standing).toBe(wanted.target);
    }
    const comparison = evaluation.compare();
    for (const base of ["with", "of", "mean"] as const) {
      if (expected.travelDifference)
        expect(ends(comparison!.difference("tyres", base))).toEqual(expected.travelDifference[`base=${base}`]);
      if (expected.gearsOnlyDifference)
        expect(ends(comparison!.difference("gears", base))).toEqual(expected.gearsOnlyDifference[`base=${base}`]);
    }
    if (expected.sameWay !== undefined) expect(comparison!.sameWay).toBe(expected.sameWay);
    if (expected.meanRatio) {
      const { arithmetic, harmonic } = expected.meanRatio;
      expect(ends(comparison!.arithmeticMean)).toEqual({ low: arithmetic, high: arithmetic });
      expect(ends(comparison!.harmonicMean)).toEqual({ low: harmonic, high: harmonic });
    }
  });

  it("tells every change of change.json by its four names", () => {
    type Case = { from: string; to: string; expect: Record<string, string> };
    for (const { from, to, expect: expected } of vectors<Case>("change")) {
      const change = changeOf(bounded(rational(to).over(from)));
      const texts = Object.fromEntries(Object.entries(change).map(([name, value]) => [name, value.low.toFraction()]));
      expect(texts).toEqual(expected);
      expect(change.midpoint.isExact).toBe(true);
    }
  });
});
