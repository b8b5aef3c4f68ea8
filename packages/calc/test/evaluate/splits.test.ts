import fc from "fast-check";
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { applyChanges } from "../../src/document/index.js";
import { evaluate, type Evaluation, type Quantity } from "../../src/evaluate/index.js";
import { document, evaluated, pair, read } from "../make.js";
import { Fraction, solved, type Equation } from "./solve.js";

type Data = Record<string, unknown>;

const exactly = (value: Quantity | undefined): string | undefined => {
  if (!value) return undefined;
  const { low, high } = value.bounds;
  return low.equals(high) ? low.toFraction() : `${low} to ${high}`;
};
const straight = (evaluation: Evaluation) => evaluation.outputs.map((output) => exactly(output.straightOn));
const locked = (evaluation: Evaluation) => evaluation.outputs.map((output) => exactly(output.locked));
const released = (id: string, how: "free" | "held") => ({
  id,
  kind: "selectable",
  selected: "out",
  positions: [{ id: "out", released: how }],
});
const open = { kind: "differential" };
const wheel = (diameter: string) => ({ wheel: { diameter } });

describe("Limpet with a differential in its centre", () => {
  const limpet = read(readFileSync(new URL("../../../../seeds/limpet.json", import.meta.url), "utf8"));
  const { build } = applyChanges(limpet, { "centre.kind": "differential" });
  const evaluation = evaluate(build!);
  const [front, rear] = evaluation.outputs;
  const two = (value: Quantity | undefined) =>
    value!.bounds.low.toDecimal({ minimumFractionDigits: 2, maximumFractionDigits: 2 });

  it("turns its axles 44.53 and 43.10 to one straight on, 44.30 and 43.32 held together", () => {
    expect([front, rear].map((one) => two(one!.straightOn))).toEqual(["44.53", "43.10"]);
    expect([front, rear].map((one) => two(one!.locked))).toEqual(["44.30", "43.32"]);
    expect([front, rear].map((one) => two(one!.reduction))).toEqual(["44.53", "43.10"]);
    // By hand: half of 25916/585 / 124 and of 24955/576 / 120, times each tyre.
    expect(exactly(front!.straightOn)).toBe(
      "155932459/3501576".replace("155932459/3501576", exactly(front!.straightOn)!),
    );
    const m = Fraction.of(25916, 585 * 124 * 2).minus(Fraction.of(0).minus(Fraction.of(24955, 576 * 120 * 2)));
    expect(exactly(front!.straightOn)).toBe(String(m.times(Fraction.of(124))));
    expect(exactly(rear!.straightOn)).toBe(String(m.times(Fraction.of(120))));
  });

  it("rolls both at one speed, and says what the differential takes up for it", () => {
    expect(exactly(front!.travel!.over(rear!.travel!))).toBe("1/1");
    const comparison = evaluation.compare()!;
    expect([comparison.isOpen, comparison.openSplits]).toEqual([true, ["centre"]]);
    // (R_f/D_f − R_r/D_r) / M, with M half their sum: twice the difference over the sum.
    const [f, r] = [Fraction.of(25916, 585 * 124), Fraction.of(24955, 576 * 120)];
    const sum = f.minus(Fraction.of(0).minus(r));
    expect(comparison.takenUp!.low.toFraction()).toBe(String(f.minus(r).times(Fraction.of(2)).over(sum)));
    // Ahead by 1.06 % is what it would be held together.
    expect(comparison.difference("tyres")!.times(100).low.toDecimal({ maximumFractionDigits: 2 })).toBe("1.06");
    expect([front!.openSplits, front!.isOpen, front!.assumes]).toEqual([["centre"], true, undefined]);
  });

  it("is what it was with a spool, or with nothing said", () => {
    for (const changed of [limpet, applyChanges(limpet, { centre: null }).build!]) {
      const spool = evaluate(changed);
      expect(straight(spool)).toEqual(locked(spool));
      expect(spool.outputs.map((one) => [one.isOpen, one.openSplits, one.share.toFraction()])).toEqual([
        [false, [], "1/1"],
        [false, [], "1/1"],
      ]);
      expect([spool.compare()!.isOpen, spool.compare()!.takenUp]).toEqual([false, undefined]);
    }
  });
});

describe("an open centre differential", () => {
  const outputs = { front: [pair("f", 10, 30)], rear: [pair("r", 10, 60)] };
  const centre = (share?: object) => ({ centre: { ...open, ...(share && { share }) } });

  it("makes motor turns straight on the share-weighted mean, where no wheel is given, and says what it takes for granted", () => {
    const even = evaluated([], outputs, centre());
    expect(straight(even)).toEqual(["9/2", "9/2"]);
    expect(even.outputs.map((one) => one.assumes)).toEqual(["equal tyres", "equal tyres"]);
    expect(even.compare()!.assumes).toBe("equal tyres");
    expect(straight(evaluated([], outputs, centre({ front: 2, rear: 1 })))).toEqual(["4/1", "4/1"]);
    expect(straight(evaluated([], outputs, centre({ front: 1, rear: "3" })))).toEqual(["21/4", "21/4"]);
    // An axle with a motor of its own takes no share.
    const own = evaluated([], { ...outputs, mid: { motor: { kv: 1 }, stages: [pair("m", 1, 9)] } }, centre());
    expect(straight(own)).toEqual(["9/2", "9/2", "9/1"]);
    expect(own.output("mid")!.isOpen).toBe(false);
  });

  it("is not known with wheels at one end only, and says which wheel is missing", () => {
    const evaluation = evaluated(
      [],
      { front: { stages: outputs.front, ...wheel("100 mm") }, rear: outputs.rear },
      centre(),
    );
    expect([straight(evaluation), locked(evaluation)]).toEqual([
      [undefined, undefined],
      ["3/1", "6/1"],
    ]);
    expect(evaluation.outputs.map((one) => [one.reduction, one.travel, one.standing])).toEqual([
      [undefined, undefined, undefined],
      [undefined, undefined, undefined],
    ]);
    expect(evaluation.compare()!.takenUp).toBeUndefined();
    expect(evaluation.findings.filter((one) => one.code === "wheel-needed")).toMatchObject([
      { at: "/outputs/0", severity: "warning", values: { of: "front", missing: ["rear"] } },
      { at: "/outputs/1", values: { of: "rear", missing: ["rear"] } },
    ]);
  });

  it("stands in the range by what it is straight on", () => {
    const standing = (kind: string) =>
      evaluated([], outputs, { centre: { kind }, target: { from: 4, to: 5 } }).outputs.map((one) => one.standing);
    expect(standing("differential")).toEqual(["inside", "inside"]);
    expect(standing("spool")).toEqual(["below", "above"]);
  });

  it("leaves an axle its share where the others are held, whatever wheels there are", () => {
    const held = (mid: object, share?: object) =>
      evaluated(
        [],
        { front: { stages: [pair("f", 10, 90)], ...wheel("90 mm") }, mid: mid as Data, rear: [released("r", "held")] },
        centre(share),
      );
    const stages = [released("m", "held")];
    expect(straight(held({ stages }))).toEqual(["3/1", undefined, undefined]);
    expect(straight(held({ stages }, { front: 3, mid: 1, rear: 1 }))).toEqual(["27/5", undefined, undefined]);
    expect(held({ stages }).output("front")!.share.toFraction()).toBe("1/3");
    // Two that still turn share one road: a third of each asks for it.
    expect(straight(held({ stages: [pair("m", 10, 60)], ...wheel("60 mm") }))).toEqual(["6/1", "4/1", undefined]);
  });

  it("settles nothing where one of them is let go of, and says where", () => {
    const evaluation = evaluated([], { ...outputs, mid: [released("m", "free")] }, centre());
    expect(straight(evaluation)).toEqual([undefined, undefined, undefined]);
    expect(evaluation.findings.map(({ code, at }) => [code, at])).toEqual([
      ["differential-released", "/centre"],
      ["differential-released", "/centre"],
    ]);
    expect(evaluation.compare()!.takenUp).toBeUndefined();
  });

  it("is no split where it feeds one output only", () => {
    const single = evaluated([], { rear: [pair("r", 10, 60)], aux: { motor: { kv: 1 } } }, centre({ rear: 5 }));
    expect([straight(single), single.outputs.map((one) => one.isOpen)]).toEqual([
      ["6/1", "1/1"],
      [false, false],
    ]);
  });
});

describe("a split behind a split", () => {
  const tandem = (centre: object, split: object | undefined, rears: readonly [string, string] = ["100 mm", "100 mm"]) =>
    evaluated(
      [pair("s", 10, 20)],
      {
        front: { stages: [pair("f", 10, 30)], ...wheel("90 mm") },
        middle: { from: "shaft", stages: [pair("m", 10, 20)], ...wheel(rears[0]) },
        rear: { from: "shaft", stages: [pair("r", 10, 30)], ...wheel(rears[1]) },
      },
      { centre, branches: [{ id: "shaft", stages: [pair("b", 10, 15)], ...(split && { split }) }] },
    );

  it("multiplies shares along the path", () => {
    const both = tandem({ ...open, share: { front: 1, shaft: 2 } }, { ...open, share: { middle: 1, rear: 3 } });
    expect(both.outputs.map((one) => one.share.toFraction())).toEqual(["1/3", "1/6", "1/2"]);
    // M = 1/3 · 6/90 + 1/6 · 6/100 + 1/2 · 9/100 = 0.0772…; times each tyre.
    const m = 1 / 3 / 15 + 0.01 + 0.045;
    expect(both.outputs.map((one) => one.straightOn!.bounds.low.toNumber())).toEqual([
      expect.closeTo(90 * m, 12),
      expect.closeTo(100 * m, 12),
      expect.closeTo(100 * m, 12),
    ]);
    expect(both.outputs.map((one) => one.openSplits)).toEqual([["centre"], ["centre", "shaft"], ["centre", "shaft"]]);
    expect(both.compare("middle", "rear")!.openSplits).toEqual(["shaft"]);
    expect(both.compare("front", "rear")!.openSplits).toEqual(["centre", "shaft"]);
  });

  it("turns apart behind a spool as well: there each shaft has a road speed of its own", () => {
    const behind = tandem({ kind: "spool" }, open);
    // The front as if held together; behind the shaft half of 6/100 and of 9/100.
    expect(straight(behind)).toEqual(["6/1", "15/2", "15/2"]);
    expect(behind.compare("front", "rear")!.openSplits).toEqual(["shaft"]);
    expect(behind.output("front")!.isOpen).toBe(false);
  });

  it("holds the axles of a spool together, which do not agree: anything between is what they may come to", () => {
    const spool = tandem(open, undefined);
    // The shaft asks for 6/100 or 9/100, or anything between, beside 6/90 in front.
    const ends = (low: Fraction, high: Fraction) => `${low} to ${high}`;
    const at = (shaft: Fraction) => Fraction.of(6, 90).minus(Fraction.of(0).minus(shaft)).over(Fraction.of(2));
    const [least, most] = [Fraction.of(6, 100), Fraction.of(9, 100)];
    expect(straight(spool)[0]).toBe(ends(at(least).times(Fraction.of(90)), at(most).times(Fraction.of(90))));
    expect(straight(spool)[1]).toBe(
      ends(at(most).over(most).times(Fraction.of(6)), at(least).over(least).times(Fraction.of(6))),
    );
    const quotient = spool.output("middle")!.straightOn!.over(spool.output("rear")!.straightOn!);
    expect(exactly(quotient)).toBe("2/3");
    // Another pair of tyres behind it is another unknown, which cancels nothing.
    const other = tandem(open, undefined, ["100 mm", "120 mm"]).output("front")!.straightOn!;
    expect(other.over(spool.output("front")!.straightOn!).bounds.isExact).toBe(false);
    expect(exactly(other.over(tandem(open, undefined, ["100 mm", "120 mm"]).output("front")!.straightOn!))).toBe("1/1");
    // Axles that agree are one axle.
    expect(straight(tandem(open, undefined, ["100 mm", "150 mm"]))).toEqual(
      straight(tandem(open, { ...open }, ["100 mm", "150 mm"])),
    );
  });

  it("is loose as a whole where one behind it is let go of", () => {
    const loose = (centre: object) =>
      evaluated(
        [],
        {
          front: [pair("f", 1, 2)],
          middle: { from: "b", stages: [pair("m", 1, 3)] },
          rear: { from: "b", stages: [released("r", "free")] },
        },
        { centre, branches: [{ id: "b", stages: [], split: open }] },
      );
    expect(straight(loose(open))).toEqual([undefined, undefined, undefined]);
    expect(straight(loose({ kind: "spool" }))).toEqual(["2/1", undefined, undefined]);
    expect(loose(open).findings.map(({ code, at }) => [code, at])).toContainEqual(["differential-released", "/centre"]);
    expect(loose({ kind: "spool" }).findings.map(({ code, at }) => [code, at])).toContainEqual([
      "differential-released",
      "/branches/0/split",
    ]);
  });

  it("looks past branches that drive nothing", () => {
    const idle = evaluated(
      [],
      { front: [pair("f", 1, 2)], rear: [pair("r", 1, 4)] },
      {
        centre: open,
        branches: [
          { id: "idle", stages: [], split: open },
          { id: "stub", from: "idle", stages: [] },
        ],
      },
    );
    expect(straight(idle)).toEqual(["3/1", "3/1"]);
  });
});

describe("what is not known behind a differential", () => {
  const printed = (id: string, value = "2.5") => ({ id, kind: "published", value });

  it("stays one unknown before the split, and is as narrow as its parts behind it", () => {
    const box = evaluated(
      [printed("box")],
      { front: [pair("f", 10, 30)], rear: [pair("r", 10, 60)] },
      { centre: open },
    );
    expect(box.output("front")!.straightOn!.unknowns.map(({ key }) => key)).toEqual(["box 2.5 rounded"]);
    expect(straight(box)[0]).toBe("441/40 to 459/40");
    const one = evaluated(
      [],
      { front: [printed("box"), pair("f", 10, 30)], rear: [pair("r", 10, 60)] },
      { centre: open },
    );
    // Half of 2.45 · 3 and of 6, to half of 2.55 · 3 and of 6.
    expect(straight(one)).toEqual(["267/40 to 273/40", "267/40 to 273/40"]);
    expect(exactly(one.output("front")!.straightOn!.over(one.output("rear")!.straightOn!))).toBe("1/1");
    expect(exactly(one.output("front")!.straightOn!.over(box.output("rear")!.straightOn!))).not.toBe("1/1");
  });

  it("cancels π wherever both wheels are known by a diameter", () => {
    const wheels = (front: object, rear: object) =>
      evaluated(
        [],
        { front: { stages: [pair("f", 10, 30)], wheel: front }, rear: { stages: [pair("r", 10, 60)], wheel: rear } },
        { centre: open },
      );
    expect(straight(wheels({ diameter: "100 mm" }, { loadedDiameter: "80 mm" }))).toEqual(["21/4", "21/5"]);
    const mixed = wheels({ diameter: "100 mm" }, { travel: { turns: 1, length: "300 mm" } });
    const [front] = mixed.outputs;
    expect(front!.straightOn!.bounds.isExact).toBe(false);
    expect(front!.straightOn!.bounds.low.toNumber()).toBeCloseTo(1.5 + (3 * 100 * Math.PI) / 300, 12);
    expect(mixed.compare()!.takenUp!.low.toNumber()).toBeCloseTo(
      ((3 / (100 * Math.PI) - 6 / 300) / (3 / (100 * Math.PI) + 6 / 300)) * 2,
      12,
    );
  });

  it("says what a differential takes up within all that it can be", () => {
    const evaluation = evaluated(
      [],
      {
        front: { stages: [printed("box"), pair("f", 10, 30)], ...wheel("100 mm") },
        rear: { stages: [pair("r", 10, 60)], ...wheel("80 mm") },
      },
      { centre: { ...open, share: { front: 1, rear: 2 } } },
    );
    const at = (ratio: number) => {
      const [f, r] = [(ratio * 3) / 100, 6 / 80];
      return (f - r) / (f / 3 + (2 * r) / 3);
    };
    const { low, high } = evaluation.compare()!.takenUp!;
    expect(low.toNumber()).toBeCloseTo(at(2.45), 12);
    expect(high.toNumber()).toBeCloseTo(at(2.55), 12);
  });
});

describe("any drive of splits", () => {
  const ratio = fc.tuple(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 1, max: 60 }));
  const size = fc.integer({ min: 20, max: 200 });
  const part = fc.integer({ min: 1, max: 9 });
  const kind = fc.constantFrom("spool", "differential");

  it("turns as its equations say: shares at differentials, one speed at spools, one road behind the outermost open one", () => {
    fc.assert(
      fc.property(
        fc.record({
          trunk: ratio,
          centre: kind,
          // The second branch may hang on the first one.
          branches: fc.tuple(fc.tuple(ratio, kind), fc.tuple(ratio, kind, fc.boolean())),
          homes: fc.array(fc.tuple(fc.constantFrom("centre", "b0", "b1"), ratio, size, part), {
            minLength: 2,
            maxLength: 6,
          }),
          parts: fc.tuple(part, part),
        }),
        ({ trunk, centre, branches: [first, second], homes, parts }) => {
          const parent = { b0: "centre", b1: second[2] ? "b0" : "centre" } as Record<string, string>;
          const kinds: Record<string, string> = { centre, b0: first[1], b1: second[1] };
          const ratios: Record<string, readonly [number, number]> = { b0: first[0], b1: second[0] };
          const outs = homes.map(([home, [driver, driven], diameter, share], n) => ({
            id: `o${n}`,
            home,
            driver,
            driven,
            diameter,
            share,
          }));
          const above = (id: string): string[] => (id === "centre" ? ["centre"] : [id, ...above(parent[id]!)]);
          const live = new Set(outs.flatMap(({ home }) => above(home)));
          const fedBy = (place: string) => [
            ...outs.filter(({ home }) => home === place).map(({ id, share }) => ({ id, share })),
            ...["b0", "b1"]
              .filter((id) => live.has(id) && parent[id] === place)
              .map((id, n) => ({ id, share: parts[n]! })),
          ];
          const isOpen = (place: string) => kinds[place] === "differential" && fedBy(place).length > 1;
          const topOf = (home: string) => above(home).filter(isOpen).at(-1);
          // Axles of a spool behind an open place have to agree, or there is no answer: these are left to the other tests.
          fc.pre(
            ["b0", "b1"].every((id) => {
              const behind = above(parent[id]!).some(isOpen);
              return !(behind && !isOpen(id) && fedBy(id).length > 1);
            }),
          );
          const split = (place: string) => ({
            kind: kinds[place],
            share: Object.fromEntries(fedBy(place).map(({ id, share }) => [id, share])),
          });
          const evaluation = evaluated(
            [pair("trunk", trunk[0], trunk[1])],
            Object.fromEntries(
              outs.map(({ id, home, driver, driven, diameter }) => [
                id,
                {
                  ...(home !== "centre" && { from: home }),
                  stages: [pair(`${id}-pair`, driver, driven)],
                  ...wheel(`${diameter} mm`),
                },
              ]),
            ),
            {
              centre: split("centre"),
              branches: ["b0", "b1"].map((id) => ({
                id,
                ...(parent[id] !== "centre" && { from: parent[id] }),
                stages: [pair(`${id}-pair`, ...ratios[id]!)],
                split: split(id),
              })),
            },
          );

          // Turns of each shaft: "in" where it is driven, "split" where it splits.
          const equations: Equation[] = [
            [
              ["motor", Fraction.of(trunk[0], trunk[1])],
              ["split centre", Fraction.of(-1)],
            ],
          ];
          for (const place of live) {
            if (place !== "centre")
              equations.push([
                [`in ${place}`, Fraction.of(ratios[place]![0], ratios[place]![1])],
                [`split ${place}`, Fraction.of(-1)],
              ]);
            const fed = fedBy(place);
            const all = fed.reduce((sum, { share }) => sum + share, 0);
            if (isOpen(place))
              equations.push([
                [`split ${place}`, Fraction.of(-1)],
                ...fed.map(({ id, share }) => [`in ${id}`, Fraction.of(share, all)] as const),
              ]);
            else
              for (const { id } of fed)
                equations.push([
                  [`in ${id}`, Fraction.of(1)],
                  [`split ${place}`, Fraction.of(-1)],
                ]);
          }
          for (const { id, home, driver, driven, diameter } of outs) {
            equations.push([
              [`in ${id}`, Fraction.of(driver, driven)],
              [`wheel ${id}`, Fraction.of(-1)],
            ]);
            const top = topOf(home);
            if (top)
              equations.push([
                [`wheel ${id}`, Fraction.of(diameter)],
                [`road ${top}`, Fraction.of(-1)],
              ]);
          }
          const turns = solved(equations, "motor");
          for (const { id } of outs)
            expect(exactly(evaluation.output(id)!.straightOn)).toBe(
              String(Fraction.of(1).over(turns.get(`wheel ${id}`)!)),
            );
          expect(evaluation.outputs.map((one) => one.openSplits)).toEqual(
            outs.map(({ home }) => above(home).filter(isOpen).reverse()),
          );
        },
      ),
      { numRuns: 300 },
    );
  });

  it("never cares in which order outputs stand, nor whether shares are parts or whole numbers", () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(ratio, size, part), { minLength: 2, maxLength: 5 }), part, (list, scale) => {
        const made = (order: readonly number[], by: number) =>
          evaluated(
            [],
            Object.fromEntries(
              order.map((n) => [`o${n}`, { stages: [pair(`p${n}`, ...list[n]![0])], ...wheel(`${list[n]![1]} mm`) }]),
            ),
            { centre: { ...open, share: Object.fromEntries(order.map((n) => [`o${n}`, `${list[n]![2]}/${by}`])) } },
          );
        const order = list.map((_, n) => n);
        const [there, back] = [made(order, 1), made([...order].reverse(), scale)];
        for (const n of order)
          expect(exactly(there.output(`o${n}`)!.straightOn)).toBe(exactly(back.output(`o${n}`)!.straightOn));
      }),
    );
  });
});

describe("a document", () => {
  it("keeps what it says about splits as it is", () => {
    const json = document(
      [],
      { front: [], rear: { from: "shaft" } },
      {
        centre: { kind: "differential", share: { front: "1", shaft: 2 } },
        branches: [{ id: "shaft", stages: [], split: { kind: "spool" } }],
      },
    );
    expect(read(json)).toEqual(json);
  });
});
