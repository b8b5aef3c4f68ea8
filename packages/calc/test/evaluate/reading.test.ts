import { describe, expect, it } from "vitest";
import { parseBuild } from "../../src/document/index.js";
import { evaluate, totalsOf } from "../../src/evaluate/index.js";
import type { Build } from "../../src/drivetrain/index.js";
import type { Stage } from "../../src/stages/index.js";

const rear = { id: "rear", stages: [{ id: "ring", kind: "pair", driver: 12, driven: 35 }] };
const plain = { format: "meshwright-build/1", outputs: [rear] };

describe("a build that is worked out", () => {
  it("has been read before: what has not is told so, by what works all out and by what works out totals", () => {
    for (const work of [evaluate, totalsOf])
      expect(() => work(plain as unknown as Build)).toThrow(
        expect.objectContaining({
          code: "not-read",
          at: "build",
          message: "Found data that has not been read; expected a build as readBuild or parseBuild gives it.",
        }),
      );
  });

  it("by its totals only says so where more is asked of it", () => {
    const totals = totalsOf(parseBuild(plain));
    const told = expect.objectContaining({
      code: "not-worked-out",
      at: "build",
      message: "Found totals only; expected evaluate().",
    });
    expect(totals.output("rear")!.reduction!.factor.toFraction()).toBe("35/12");
    expect(() => totals.output("rear")!.steps).toThrow(told);
    expect(() => totals.output("rear")!.groups).toThrow(told);
    expect(() => totals.findings).toThrow(told);
  });
});

/** Stages whose product no plain number holds after a few, one of them with a range now and then. */
const many = (ranges: boolean): Stage[] =>
  Array.from({ length: 200 }, (_, n) =>
    ranges && n % 50 === 20
      ? { id: `s${n}`, kind: "published", value: "2.60" }
      : { id: `s${n}`, kind: "pair", driver: 991 + (n % 7), driven: 983 + (n % 5) },
  ) as unknown as Stage[];

describe("the steps of a long way", () => {
  it.each([
    ["forwards", (n: number) => n],
    ["backwards", (n: number) => 199 - n],
    ["across each other", (n: number) => (n * 73) % 200],
  ])("say the same product so far, read %s", (_, order) => {
    const build = parseBuild({ format: "meshwright-build/1", outputs: [{ id: "rear", stages: many(false) }] });
    const { steps } = evaluate(build).output("rear")!;
    let [top, bottom] = [1n, 1n];
    const wanted = steps.map((_one, n) => {
      top *= BigInt(983 + (n % 5));
      bottom *= BigInt(991 + (n % 7));
      return [top, bottom] as const;
    });
    for (let n = 0; n < 200; n++) {
      const place = order(n);
      const { numerator, denominator } = steps[place]!.running.factor;
      expect(numerator * wanted[place]![1] === denominator * wanted[place]![0], `${place}`).toBe(true);
    }
  });

  it.each([
    ["forwards", (n: number) => n],
    ["backwards", (n: number) => 199 - n],
  ])("say the same ends, read %s", (_, order) => {
    const build = parseBuild({ format: "meshwright-build/1", outputs: [{ id: "rear", stages: many(true) }] });
    const { steps } = evaluate(build).output("rear")!;
    const ends: (readonly [bigint, bigint, bigint])[] = [];
    let [low, high, bottom] = [1n, 1n, 1n];
    for (let n = 0; n < 200; n++) {
      // 2.60 as printed: from 2.595 to 2.605.
      if (n % 50 === 20) [low, high, bottom] = [low * 2595n, high * 2605n, bottom * 1000n];
      else {
        const [driver, driven] = [BigInt(991 + (n % 7)), BigInt(983 + (n % 5))];
        [low, high, bottom] = [low * driven, high * driven, bottom * driver];
      }
      ends.push([low, high, bottom]);
    }
    for (let n = 0; n < 200; n++) {
      const place = order(n);
      const bounds = steps[place]!.runningBounds;
      const [least, most, under] = ends[place]!;
      expect(bounds.low.numerator * under === bounds.low.denominator * least, `${place}`).toBe(true);
      expect(bounds.high.numerator * under === bounds.high.denominator * most, `${place}`).toBe(true);
    }
  });
});
