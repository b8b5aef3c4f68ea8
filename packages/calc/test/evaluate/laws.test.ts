import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { applyChanges } from "../../src/document/index.js";
import type { Build } from "../../src/drivetrain/index.js";
import { bounded, rational, type Bounded } from "../../src/exact/index.js";
import { printedInterval, type PrintedReading } from "../../src/stages/index.js";
import { difference, evaluate, pi, quantityOf, type Evaluation } from "../../src/evaluate/index.js";
import { document, pair, read } from "../make.js";

/** A stage with what it comes to, worked out here: the ends of its reduction as whole numbers over whole numbers. */
interface Known {
  readonly stage: Record<string, unknown>;
  readonly low: readonly [bigint, bigint];
  readonly high: readonly [bigint, bigint];
  readonly turn: -1 | 0 | 1;
}

const teeth = fc.integer({ min: 1, max: 400 });
const exact = (stage: Record<string, unknown>, up: number, down: number, turn: Known["turn"], times = 1): Known => {
  const ratio = [BigInt(up) ** BigInt(times), BigInt(down) ** BigInt(times)] as const;
  return { stage, low: ratio, high: ratio, turn };
};

const plainPair = fc
  .record({ driver: teeth, driven: teeth })
  .map(({ driver, driven }) => exact({ kind: "pair", driver, driven }, driven, driver, -1));
const ringPair = fc
  .record({ driver: teeth, more: teeth })
  .map(({ driver, more }) =>
    exact({ kind: "pair", driver, driven: driver + more, internal: true }, driver + more, driver, 1),
  );
const bevel = fc
  .record({ driver: teeth, driven: teeth, form: fc.constantFrom("bevel", "hypoid", "crown") })
  .map((one) => exact({ kind: "pair", ...one }, one.driven, one.driver, 0));
const sided = fc
  .record({
    driver: teeth,
    driven: teeth,
    ringSide: fc.constantFrom("left", "right"),
    pinionSide: fc.constantFrom("ahead", "behind"),
  })
  .map((one) =>
    exact(
      { kind: "pair", form: "hypoid", ...one },
      one.driven,
      one.driver,
      (one.ringSide === "left") === (one.pinionSide === "behind") ? 1 : -1,
    ),
  );
const row = fc
  .array(teeth, { minLength: 2, maxLength: 9 })
  .map((gears) => exact({ kind: "train", teeth: gears }, gears.at(-1)!, gears[0]!, gears.length % 2 ? 1 : -1));
const belt = fc
  .record({ driver: teeth, driven: teeth, chain: fc.boolean() })
  .map((one) => exact({ kind: "belt", ...one }, one.driven, one.driver, 1));
const worm = fc
  .record({ starts: fc.integer({ min: 1, max: 8 }), teeth })
  .map((one) => exact({ kind: "worm", ...one }, one.teeth, one.starts, 0));
/** By Willis, in another way than the code: (input − carrier) and (output − carrier) of a set seen from its carrier. */
const planetary = fc
  .record({
    sun: teeth,
    more: teeth,
    roles: fc.shuffledSubarray(["sun", "ring", "carrier"], { minLength: 3 }),
    repeat: fc.integer({ min: 1, max: 4 }),
  })
  .map(({ sun, more, roles, repeat }) => {
    const [fixed, input, output] = roles as [string, string, string];
    const ring = sun + more;
    const stage = { kind: "planetary", sun, ring, fixed, input, output, repeat };
    const table: Record<string, [number, number, -1 | 1]> = {
      "ring sun carrier": [sun + ring, sun, 1],
      "ring carrier sun": [sun, sun + ring, 1],
      "sun ring carrier": [sun + ring, ring, 1],
      "sun carrier ring": [ring, sun + ring, 1],
      "carrier sun ring": [ring, sun, -1],
      "carrier ring sun": [sun, ring, -1],
    };
    const [up, down, turn] = table[roles.join(" ")]!;
    return exact(stage, up, down, turn < 0 && repeat % 2 ? -1 : 1, repeat);
  });
const printed = fc
  .record({
    units: fc.integer({ min: 1, max: 99_999 }),
    digits: fc.integer({ min: 1, max: 3 }),
    read: fc.constantFrom<PrintedReading>("rounded", "truncated", "unsure"),
  })
  .map(({ units, digits, read: reading }): Known => {
    const scale = 10 ** digits;
    const value = `${Math.floor(units / scale)}.${String(units % scale).padStart(digits, "0")}`;
    const half = (twice: number) => [BigInt(2 * units + twice), BigInt(2 * scale)] as const;
    return {
      stage: { kind: "published", value, read: reading },
      low: half(reading === "truncated" ? 0 : -1),
      high: half(reading === "rounded" ? 1 : 2),
      turn: 0,
    };
  });
const fractionStage = fc
  .record({ up: teeth, down: teeth })
  .map(({ up, down }) => exact({ kind: "published", value: `${up}/${down}` }, up, down, 0));

const unflagged = fc.oneof(plainPair, ringPair, bevel, sided, row, belt, worm, planetary, printed, fractionStage);
/** Any stage; some say themselves which way they turn. */
const known: fc.Arbitrary<Known> = fc
  .tuple(unflagged, fc.option(fc.boolean(), { nil: undefined, freq: 3 }))
  .map(([one, reverses]) =>
    reverses === undefined ? one : { ...one, stage: { ...one.stage, reverses }, turn: reverses ? -1 : 1 },
  );
const train = fc.array(known, { maxLength: 6 });

const named = (list: readonly Known[], prefix: string) =>
  list.map(({ stage }, n) => ({ id: `${prefix}-${n}`, ...stage }));
const product = (list: readonly Known[], end: "low" | "high") =>
  list.reduce((total, one) => total.times(rational(one[end][0]).over(one[end][1])), rational(1));
const turnOf = (list: readonly Known[]) => list.reduce<number>((turn, one) => turn * one.turn, 1);
const words = (turn: number) => (turn ? (turn > 0 ? "same way" : "opposite way") : "not known");
const json = (value: Bounded | undefined) => value?.toJSON();

/** Reads everything there is to read. */
function everything(evaluation: Evaluation): unknown {
  return {
    findings: evaluation.findings,
    outputs: evaluation.outputs.map((one) => ({
      id: one.id,
      label: one.label,
      state: one.state,
      bounds: json(one.bounds),
      locked: json(one.locked?.bounds),
      straightOn: json(one.straightOn?.bounds),
      turns: one.turns,
      standing: one.standing,
      travel: json(one.travel?.bounds),
      groups: one.groups.map(({ group, reduction }) => [group, json(reduction.bounds)]),
      steps: one.steps.map((step) => [
        step.stage.id,
        step.group,
        json(step.reduction.bounds),
        step.turns,
        json(step.running.bounds),
      ]),
    })),
  };
}

describe("a reduction", () => {
  it("is the product of what its stages come to, within all that each can be, and turns as they do together", () => {
    fc.assert(
      fc.property(train, train, train, (trunk, branch, own) => {
        const build = read(
          document(
            named(trunk, "trunk"),
            { rear: { from: "branch", stages: named(own, "own") }, front: [] },
            { branches: [{ id: "branch", stages: named(branch, "branch") }] },
          ),
        );
        const rear = evaluate(build).output("rear")!;
        const all = [...trunk, ...branch, ...own];
        expect(json(rear.bounds)).toEqual({
          low: product(all, "low").toFraction(),
          high: product(all, "high").toFraction(),
        });
        expect(rear.turns).toBe(words(turnOf(all)));
        expect(rear.reduction!.isExact).toBe(all.every((one) => one.low === one.high));
        // Step by step it runs up to the same.
        const steps = rear.steps;
        expect(steps.map((step) => step.stage.id)).toEqual(rear.path.flat().map((stage) => stage.id));
        steps.forEach((step, n) => {
          expect(json(step.reduction.bounds)).toEqual({
            low: product([all[n]!], "low").toFraction(),
            high: product([all[n]!], "high").toFraction(),
          });
          expect(json(step.running.bounds)).toEqual({
            low: product(all.slice(0, n + 1), "low").toFraction(),
            high: product(all.slice(0, n + 1), "high").toFraction(),
          });
          expect(step.turns).toBe(words(all[n]!.turn));
        });
        expect(json(evaluate(build).output("front")!.bounds)).toEqual({
          low: product(trunk, "low").toFraction(),
          high: product(trunk, "high").toFraction(),
        });
      }),
    );
  });

  it("never changes where a train is split: shared, in a branch, in an output, or inside a position", () => {
    fc.assert(
      fc.property(train, fc.nat(6), fc.nat(6), (list, first, second) => {
        const [a, b] = [Math.min(first, second), Math.max(first, second)];
        const stages = named(list, "s");
        const whole = evaluate(read(document([], { rear: stages }))).output("rear")!;
        const split = evaluate(
          read(
            document(
              stages.slice(0, a),
              { rear: { from: "mid", stages: stages.slice(b) } },
              { branches: [{ id: "mid", stages: stages.slice(a, b) }] },
            ),
          ),
        ).output("rear")!;
        const boxed = evaluate(
          read(
            document(
              [
                {
                  id: "box",
                  kind: "selectable",
                  selected: "on",
                  positions: [
                    { id: "off", released: "free" },
                    { id: "on", stages },
                  ],
                },
              ],
              { rear: [] },
            ),
          ),
        ).output("rear")!;
        for (const other of [split, boxed]) {
          expect(json(other.bounds)).toEqual(json(whole.bounds));
          expect(other.turns).toBe(whole.turns);
          expect(other.steps.map((step) => step.stage.id)).toEqual(whole.steps.map((step) => step.stage.id));
        }
      }),
    );
  });

  it("does not care for idlers, save for the direction: one turns it round, two do not", () => {
    const gears = fc.array(teeth, { minLength: 2, maxLength: 6 });
    fc.assert(
      fc.property(gears, teeth, fc.nat(), (list, idler, place) => {
        const at = 1 + (place % (list.length - 1));
        const result = (between: number[]) =>
          evaluate(
            read(
              document([{ id: "row", kind: "train", teeth: [...list.slice(0, at), ...between, ...list.slice(at)] }], {
                rear: [],
              }),
            ),
          ).output("rear")!;
        const [plain, one, two] = [result([]), result([idler]), result([idler, idler + 1])];
        expect(one.reduction!.factor.toFraction()).toBe(plain.reduction!.factor.toFraction());
        expect(one.turn).toBe(-plain.turn);
        expect([two.reduction!.factor.toFraction(), two.turn]).toEqual([
          plain.reduction!.factor.toFraction(),
          plain.turn,
        ]);
      }),
    );
  });

  it("turns as a stage says of itself, whatever its kind would say; one more reversal turns it round", () => {
    fc.assert(
      fc.property(fc.array(unflagged, { minLength: 1, maxLength: 5 }), fc.boolean(), (list, reverses) => {
        const stages = named(list, "s").map((stage) => ({ ...stage, reverses }));
        const turn = evaluate(read(document(stages, { rear: [] }))).output("rear")!.turn;
        expect(turn).toBe(reverses && list.length % 2 ? -1 : 1);
        const more = evaluate(read(document(stages, { rear: [pair("last", 1, 1)] }))).output("rear")!.turn;
        expect(more).toBe(-turn);
      }),
    );
  });

  it("holds whatever a printed ratio may stand for, and no more than its ends", () => {
    fc.assert(
      fc.property(
        printed,
        train.filter((list) => list.every((one) => one.low === one.high)),
        fc.nat(1000),
        (box, rest, part) => {
          const total = evaluate(read(document(named([box], "box"), { rear: named(rest, "s") }))).output(
            "rear",
          )!.bounds!;
          const [low, high] = [product([box], "low"), product([box], "high")];
          const real = low.plus(high.minus(low).times(part).over(1000));
          expect(total.contains(real.times(product(rest, "low")))).toBe(true);
          expect(total.low.equals(low.times(product(rest, "low")))).toBe(true);
          expect(total.high.equals(high.times(product(rest, "low")))).toBe(true);
        },
      ),
    );
  });

  it("comes out whole past the plain numbers, and with ten thousand stages", () => {
    const counts = Array.from({ length: 10_000 }, (_, n) => [7 + ((n * 37) % 90), 11 + ((n * 53) % 120)] as const);
    const build = read(document([], { rear: counts.map(([driver, driven], n) => pair(`s${n}`, driver, driven)) }));
    const factor = evaluate(build).output("rear")!.reduction!.factor;
    const [up, down] = counts.reduce(([u, d], [driver, driven]) => [u * BigInt(driven), d * BigInt(driver)], [1n, 1n]);
    expect(factor.numerator * down).toBe(factor.denominator * up);
    for (const size of [9, 10, 11, 12, 20]) {
      const primes = [999_983, 999_979, 999_961, 999_959, 999_953];
      const stages = Array.from({ length: size }, (_, n) => pair(`p${n}`, primes[(n + 2) % 5]!, primes[n % 5]! - 1));
      const result = evaluate(read(document(stages.slice(0, 3), { rear: stages.slice(3) }))).output("rear")!.reduction!
        .factor;
      const expected = stages.reduce(
        (total, one) => total.times(one.driven as number).over(one.driver as number),
        rational(1),
      );
      expect(result.toFraction()).toBe(expected.toFraction());
    }
  });
});

describe("what both sides share", () => {
  it("cancels in front against rear, however little is known of it", () => {
    fc.assert(
      fc.property(train, train, train, (shared, front, rear) => {
        const compare = (trunk: readonly Known[]) =>
          evaluate(read(document(named(trunk, "t"), { front: named(front, "f"), rear: named(rear, "r") }))).compare()!;
        const [with_, without] = [compare(shared), compare([])];
        for (const base of ["with", "of", "mean"] as const)
          expect(json(with_.difference("gears", base))).toEqual(json(without.difference("gears", base)));
        expect(with_.sameWay).toBe(without.sameWay);
        const turn = turnOf([...front, ...rear]);
        expect(with_.sameWay).toBe(turn ? turn > 0 : null);
        const quotient = rational(1);
        expect(
          without.difference("gears")!.low.equals(product(rear, "low").over(product(front, "high")).minus(quotient)),
        ).toBe(true);
        expect(
          without.difference("gears")!.high.equals(product(rear, "high").over(product(front, "low")).minus(quotient)),
        ).toBe(true);
      }),
    );
  });

  it("cancels in a difference; and a difference turned round undoes itself", () => {
    fc.assert(
      fc.property(train, teeth, teeth, teeth, teeth, (shared, a, b, c, d) => {
        const build = (driver: number, driven: number) =>
          read(document(named(shared, "t"), { rear: [pair("swap", driver, driven)] }));
        const [there] = difference(build(a, b), build(c, d));
        const [back] = difference(evaluate(build(c, d)), evaluate(build(a, b)));
        const quotient = rational(d).over(c).over(b).times(a);
        expect(there!.reduction.isExact).toBe(true);
        expect(there!.reduction.low.toFraction()).toBe(quotient.minus(1).toFraction());
        expect(there!.wheelTorque).toEqual(there!.reduction);
        expect(json(there!.wheelSpeed)).toEqual(json(back!.reduction));
        expect(json(back!.wheelSpeed)).toEqual(json(there!.reduction));
        expect(json(back!.midpoint)).toEqual(json(there!.midpoint.times(-1)));
        expect(there!.id).toBe("rear");
      }),
    );
  });

  it("is the same box only while it says the same", () => {
    const box = (more: object, id = "box") =>
      read(document([{ id, kind: "published", value: "2.74", ...more }], { rear: [] }));
    const width = (before: Build, after: Build) => difference(before, after)[0]!.reduction;
    expect(width(box({}), box({ label: "renamed" })).isExact).toBe(true);
    expect(width(box({}), box({ read: "rounded" })).isExact).toBe(true);
    expect(width(box({}), box({ read: "unsure" })).isExact).toBe(false);
    expect(width(box({}), box({ value: "2.75" })).isExact).toBe(false);
    expect(width(box({}), box({}, "other")).isExact).toBe(false);
    // Three of a kind under three names are three unknowns; nothing says that they came out of one mould.
    expect(json(width(box({}), box({}, "other")))).toEqual(
      json(printedInterval("2.74").over(printedInterval("2.74")).minus(1)),
    );
  });
});

describe("outputs", () => {
  it("come to the same in any order, and in the order of the document", () => {
    fc.assert(
      fc.property(
        train,
        fc.uniqueArray(fc.tuple(fc.constantFrom("front", "mid", "rear", "aux"), train), {
          selector: ([id]) => id,
          minLength: 2,
        }),
        (trunk, list) => {
          const build = (order: typeof list) =>
            evaluate(
              read(
                document(named(trunk, "t"), Object.fromEntries(order.map(([id, stages]) => [id, named(stages, id)])), {
                  target: { from: 1, to: 50 },
                }),
              ),
            );
          const [there, back] = [build(list), build([...list].reverse())];
          expect(there.outputs.map((one) => one.id)).toEqual(list.map(([id]) => id));
          for (const [id] of list) {
            const [a, b] = [there.output(id)!, back.output(id)!];
            expect([json(a.bounds), a.turns, a.standing]).toEqual([json(b.bounds), b.turns, b.standing]);
          }
          const [first, second] = [list[0]![0], list[1]![0]];
          expect(json(there.compare(first, second)!.difference("gears"))).toEqual(
            json(back.compare(first, second)!.difference("gears")),
          );
          expect(json(there.compare(first, second)!.difference("gears", "of"))).toEqual(
            json(there.compare(second, first)!.difference("gears")!.times(-1)),
          );
          expect(json(there.compare(first, second)!.difference("gears", "mean"))).toEqual(
            json(there.compare(second, first)!.difference("gears", "mean")!.times(-1)),
          );
        },
      ),
    );
  });

  it("stand in the range as every value between their ends does", () => {
    fc.assert(
      fc.property(known, teeth, teeth, (one, a, b) => {
        const [from, to] = [Math.min(a, b), Math.max(a, b)].map((x) => rational(x).over(10));
        const { standing } = evaluate(
          read(
            document(named([one], "s"), { rear: [] }, { target: { from: from!.toFraction(), to: to!.toFraction() } }),
          ),
        ).output("rear")!;
        const places = (["low", "high"] as const).map((end) => {
          const value = product([one], end);
          return value.compare(from!) < 0 ? "below" : value.compare(to!) > 0 ? "above" : "inside";
        });
        expect(standing).toBe(places[0] === places[1] ? places[0] : "uncertain");
      }),
    );
  });
});

describe("modes", () => {
  it("come to what selecting their positions by hand comes to", () => {
    fc.assert(
      fc.property(train, train, fc.boolean(), (low, high, free) => {
        const box = {
          id: "box",
          kind: "selectable",
          group: "box",
          selected: "low",
          positions: [
            { id: "low", stages: named(low, "low") },
            { id: "high", stages: named(high, "high") },
          ],
        };
        const dog = {
          id: "dog",
          kind: "selectable",
          selected: "in",
          positions: [
            { id: "in", stages: [] },
            { id: "out", released: free ? "free" : "held" },
          ],
        };
        const build = read(
          document(
            [box],
            { front: [], rear: [dog] },
            {
              modes: [
                { id: "crawl", positions: {} },
                { id: "road", positions: { box: "high" } },
                { id: "dig", positions: { box: "high", dog: "out" } },
              ],
              centre: { kind: "differential" },
            },
          ),
        );
        const by = (changes: Record<string, string>) => everything(evaluate(applyChanges(build, changes).build!));
        expect(everything(evaluate(build, "crawl"))).toEqual(everything(evaluate(build)));
        expect(everything(evaluate(build, "road"))).toEqual(by({ "box.selected": "high" }));
        expect(everything(evaluate(build, "dig"))).toEqual(by({ "box.selected": "high", "dog.selected": "out" }));
        const groups = evaluate(build, "road").output("front")!.groups;
        expect(groups.map((one) => one.group)).toEqual(high.length ? ["box"] : []);
      }),
    );
  });

  it("that a build does not have are refused by name", () => {
    const build = read(document([], { rear: [] }));
    expect(() => evaluate(build, "road")).toThrow(
      expect.objectContaining({
        code: "mode-missing",
        at: "mode",
        message: expect.stringContaining('"road"') as string,
      }),
    );
    expect(evaluate(build).mode).toBeUndefined();
  });
});

describe("quantities", () => {
  it("cancel unknowns by name and power, and keep what is left", () => {
    const box = { key: "box", interval: bounded(2, 3) };
    const square = quantityOf(rational(5), [box, box]);
    expect(square.unknowns).toEqual([{ ...box, power: 2 }]);
    expect(json(square.bounds)).toEqual({ low: "20/1", high: "45/1" });
    expect(json(square.over(quantityOf(rational(1), [box])).bounds)).toEqual({ low: "10/1", high: "15/1" });
    expect(json(quantityOf(rational(1), []).over(square).bounds)).toEqual({ low: "1/45", high: "1/20" });
    expect(square.over(square).isExact).toBe(true);
    expect(json(square.over(square).bounds)).toEqual({ low: "1/1", high: "1/1" });
    expect(square.times(2).over("1/2").factor.toFraction()).toBe("20/1");
    expect(square.times(square).unknowns[0]!.power).toBe(4);
  });

  it("hold π between two fractions closer than 39 digits, and cancel it", () => {
    const { low, high } = pi().bounds;
    // Machin's formula, summed here to 45 digits.
    const unit = 10n ** 50n;
    const arctan = (n: bigint) => {
      let [term, sum, k, sign] = [unit / n, 0n, 1n, 1n];
      while (term) {
        sum += (sign * term) / k;
        term /= n * n;
        k += 2n;
        sign = -sign;
      }
      return sum;
    };
    const machin = rational(4n * (4n * arctan(5n) - arctan(239n))).over(unit);
    expect(low.compare(machin)).toBe(-1);
    expect(high.compare(machin)).toBe(1);
    expect(high.minus(low).compare("1e-39")).toBe(-1);
    expect(pi().over(pi()).isExact).toBe(true);
  });
});
