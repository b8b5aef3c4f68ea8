import { describe, expect, it } from "vitest";
import { difference, evaluate } from "../../src/evaluate/index.js";
import { directions } from "../../src/stages/index.js";
import { document, evaluated, fraction, pair, read } from "../make.js";

type Data = Record<string, unknown>;

const json = (value: { toJSON(): unknown } | undefined) => value?.toJSON();
const is = (fraction: string) => ({ low: fraction, high: fraction });
const released = (id: string, how: "free" | "held") => ({
  id,
  kind: "selectable",
  selected: "out",
  positions: [{ id: "out", released: how }],
});

describe("comparing", () => {
  const three = { front: [pair("f", 10, 20)], mid: [pair("m", 10, 30)], rear: [pair("r", 10, 40)] };

  it("takes the outputs named, else those that the build compares, else front and rear, else the only two", () => {
    const names = (...parts: Parameters<typeof evaluated>) => {
      const comparison = evaluated(...parts).compare();
      return comparison && [comparison.of.id, comparison.with.id];
    };
    expect(names([], three)).toEqual(["front", "rear"]);
    expect(names([], three, { compare: { of: "rear", with: "mid" } })).toEqual(["rear", "mid"]);
    expect(names([], { left: [], right: [] })).toEqual(["left", "right"]);
    expect(names([], { left: [], right: [], mid: [] })).toBeUndefined();
    expect(names([], { rear: [] })).toBeUndefined();
    expect(names([], { front: [], mid: [] })).toEqual(["front", "mid"]);
    const evaluation = evaluated([], three, { compare: { of: "rear", with: "mid" } });
    const asked = (of?: string, other?: string) => {
      const comparison = evaluation.compare(of, other);
      return comparison && [comparison.of.id, comparison.with.id];
    };
    expect(asked("front")).toEqual(["front", "mid"]);
    expect(asked(undefined, "front")).toEqual(["rear", "front"]);
    expect(asked("front", "none")).toBeUndefined();
    expect(asked("none")).toBeUndefined();
    expect(evaluated([], { left: [], right: [] }).compare("left", "none")).toBeUndefined();
    expect(evaluated([], { left: [], right: [] }).compare("left")).toBeUndefined();
    expect(evaluation.output("none")).toBeUndefined();
  });

  it("needs both wheels for the tyres, and both drives for anything", () => {
    const compare = (front: Data, rear: Data) => evaluated([], { front, rear }).compare()!;
    const wheel = { wheel: { diameter: "100 mm" } };
    expect(compare(wheel, {}).difference("tyres")).toBeUndefined();
    expect(compare({}, wheel).difference("tyres")).toBeUndefined();
    expect(json(compare({}, wheel).difference("gears"))).toEqual(is("0/1"));
    expect(compare({ ...wheel, stages: [released("d", "free")] }, wheel).difference("tyres")).toBeUndefined();
    expect(compare(wheel, { ...wheel, stages: [released("d", "held")] }).difference("gears")).toBeUndefined();
    expect(json(compare({ wheel: { loadedDiameter: "99 mm" } }, wheel).difference("tyres"))).toEqual(is("-1/100"));
    // One wheel by its diameter and one by what it was seen to roll: π remains, and with it an interval.
    const mixed = compare(
      { wheel: { travel: { turns: 10, length: "3.72 m" } } },
      { wheel: { diameter: "120 mm" } },
    ).difference("tyres")!;
    expect(mixed.isExact).toBe(false);
    expect(mixed.low.toDecimal({ maximumFractionDigits: 10 })).toBe(
      (372 / (Math.PI * 120) - 1).toFixed(10).replace(/0+$/, ""),
    );
  });

  it("goes by kV as soon as one side has a motor of its own; the other has the build's", () => {
    const compare = (rear: Data, more: Data) =>
      evaluated([pair("s", 10, 20)], { front: [], rear: { stages: [pair("r", 10, 20)], ...rear } }, more).compare()!;
    const own = compare({ motor: { kv: 2000 } }, { motor: { kv: 3000 } });
    expect(own.by).toBe("motor-speed");
    expect(json(own.difference("gears"))).toEqual(is("1/2"));
    expect(own.sameWay).toBeNull();
    expect(compare({ motor: { kv: 2000 } }, {}).difference("gears")).toBeUndefined();
    expect(compare({ motor: {} }, { motor: { kv: 3000 } }).difference("gears")).toBeUndefined();
    expect(compare({}, { motor: { kv: 3000 } }).by).toBe("shaft");
    expect(json(compare({}, { motor: { kv: 3000 } }).difference("gears"))).toEqual(is("1/1"));
    expect(evaluated([], { front: { motor: { kv: 1 } }, rear: [] }).compare()!.by).toBe("motor-speed");
  });

  it("has two means, and says which", () => {
    const comparison = evaluated([], { front: [pair("f", 10, 30)], rear: [pair("r", 10, 60)] }).compare()!;
    expect(json(comparison.arithmeticMean)).toEqual(is("9/2"));
    expect(json(comparison.harmonicMean)).toEqual(is("4/1"));
    const printed = evaluated([], {
      front: [{ id: "f", kind: "published", value: "3.0" }],
      rear: [pair("r", 10, 60)],
    }).compare()!;
    expect(json(printed.arithmeticMean)).toEqual({ low: "179/40", high: "181/40" });
    expect(json(printed.harmonicMean)).toEqual({ low: "708/179", high: "732/181" });
    const turned = evaluated([], {
      front: [pair("f", 10, 60)],
      rear: [{ id: "r", kind: "published", value: "3.0" }],
    }).compare()!;
    expect(json(turned.arithmeticMean)).toEqual(json(printed.arithmeticMean));
    expect(json(turned.harmonicMean)).toEqual(json(printed.harmonicMean));
  });

  it("finds an output level with itself, whatever is not known of it", () => {
    const evaluation = evaluated([{ id: "box", kind: "published", value: "3.0" }], { rear: [pair("r", 1, 2)] });
    const comparison = evaluation.compare("rear", "rear")!;
    expect(comparison.sameWay).toBe(true);
    expect(json(comparison.difference("gears"))).toEqual(is("0/1"));
  });

  it("has no mean of an output that nothing drives", () => {
    for (const outputs of [
      { front: [released("d", "free")], rear: [] },
      { front: [], rear: [released("d", "held")] },
    ]) {
      const comparison = evaluated([], outputs).compare()!;
      expect([comparison.arithmeticMean, comparison.harmonicMean]).toEqual([undefined, undefined]);
    }
  });

  it("knows directions by what stands after the split only", () => {
    const hidden = { id: "box", kind: "published", value: "3.0" };
    const same = (shared: object[], front: object[], rear: object[], more: object = {}) =>
      evaluated(
        shared as never,
        { front: { from: "shaft", stages: front }, rear: { from: "shaft", stages: rear } },
        { branches: [{ id: "shaft", stages: [] }], ...more },
      ).compare()!.sameWay;
    expect(same([hidden], [pair("f", 1, 2)], [pair("r", 1, 2)])).toBe(true);
    expect(same([hidden], [pair("f", 1, 2)], [])).toBe(false);
    expect(same([], [hidden], [pair("r", 1, 2)])).toBeNull();
    expect(same([], [], [hidden])).toBeNull();
    expect(same([], [], [], { branches: [{ id: "shaft", stages: [hidden] }] })).toBe(true);
  });
});

describe("findings of the drive", () => {
  it("name every output that opposes the first", () => {
    const spur = { form: "spur" };
    const { findings } = evaluated([pair("s", 1, 2)], {
      front: [],
      mid: [pair("m", 1, 2, spur)],
      rear: { label: "Rear axle", stages: [pair("r", 1, 2, spur)] },
    });
    expect(findings).toMatchObject([
      {
        severity: "warning",
        about: "meaning",
        code: "outputs-oppose",
        at: "/outputs/1",
        message: "front and mid turn against each other.",
      },
      {
        severity: "warning",
        about: "meaning",
        code: "outputs-oppose",
        at: "/outputs/2",
        message: "front and Rear axle turn against each other.",
      },
    ]);
    expect(evaluated([], { front: [], rear: [{ id: "w", kind: "worm", starts: 1, teeth: 40 }] }).findings).toEqual([]);
    expect(evaluated([], { rear: [pair("r", 1, 2)] }).findings).toEqual([]);
  });
});

describe("an output", () => {
  it("has its label, or its id", () => {
    const evaluation = evaluated([], { front: { label: "Front axle" }, rear: [] });
    expect(evaluation.outputs.map((one) => [one.id, one.label])).toEqual([
      ["front", "Front axle"],
      ["rear", "rear"],
    ]);
  });

  it("is undriven behind whatever is let go of, however deep, and from there on", () => {
    const nested = {
      id: "outer",
      kind: "selectable",
      selected: "on",
      positions: [{ id: "on", stages: [pair("a", 1, 2), released("inner", "free"), pair("b", 1, 2)] }],
    };
    const evaluation = evaluated(
      [pair("s", 1, 2)],
      { front: { from: "shaft", stages: [pair("f", 1, 2)] }, rear: [pair("r", 1, 2)] },
      { branches: [{ id: "shaft", stages: [nested] }] },
    );
    expect([evaluation.output("front")!.state, evaluation.output("rear")!.state]).toEqual(["free", "driven"]);
    expect(evaluation.output("front")!.locked).toBeUndefined();
    expect(evaluation.output("front")!.steps.map((step) => step.stage.id)).toEqual(["s", "a", "b", "f"]);
    const whole = evaluated([released("s", "held")], {
      front: [pair("f", 1, 2)],
      rear: { motor: { kv: 1 }, stages: [pair("r", 1, 2)] },
    });
    expect(whole.outputs.map((one) => one.state)).toEqual(["held", "driven"]);
  });

  it("does not pass through the shared stages with a motor of its own", () => {
    const evaluation = evaluated([pair("s", 10, 20, { group: "box" })], {
      front: { motor: { kv: 1 }, stages: [pair("f", 10, 30)] },
      rear: [],
    });
    expect([fraction(evaluation, "front"), fraction(evaluation, "rear")]).toEqual(["3/1", "2/1"]);
    expect(evaluation.output("front")!.turns).toBe("opposite way");
    expect(evaluation.output("front")!.groups).toEqual([]);
  });

  it("totals its groups in the order of the train, wherever their stages stand, positions included", () => {
    const box = {
      id: "box",
      kind: "selectable",
      group: "b",
      selected: "x",
      positions: [{ id: "x", stages: [pair("i", 10, 30), pair("j", 10, 70, { group: "a" })] }],
    };
    const evaluation = evaluated([pair("s", 10, 20, { group: "a" }), pair("t", 10, 50), box], {
      rear: [pair("r", 10, 110, { group: "b" })],
    });
    expect(
      evaluation.output("rear")!.groups.map(({ group, reduction }) => [group, reduction.factor.toFraction()]),
    ).toEqual([
      ["a", "14/1"],
      ["b", "33/1"],
    ]);
    expect(evaluation.output("rear")!.steps.map(({ stage, group }) => [stage.id, group])).toEqual([
      ["s", "a"],
      ["t", undefined],
      ["i", "b"],
      ["j", "a"],
      ["r", "b"],
    ]);
  });

  it("stands in a target that is meant for it, ends included", () => {
    const standing = (target: object, driven = 40) =>
      evaluated([], { front: [pair("f", 10, 50)], rear: [pair("r", 10, driven)] }, { target }).outputs.map(
        (one) => one.standing,
      );
    expect(standing({ from: 4, to: 5 })).toEqual(["inside", "inside"]);
    expect(standing({ from: "4.01", to: "4.99" })).toEqual(["above", "below"]);
    expect(standing({ from: 4, to: 5, output: "rear" })).toEqual([undefined, "inside"]);
    expect(standing({ from: 1, to: 2, output: "front" })).toEqual(["above", undefined]);
    expect(evaluated([], { rear: [] }).output("rear")!.standing).toBeUndefined();
    const printed = (from: string, to: string) =>
      evaluated([], { rear: [{ id: "b", kind: "published", value: "2.5" }] }, { target: { from, to } }).output("rear")!
        .standing;
    expect(printed("2.45", "2.55")).toBe("inside");
    expect(printed("2.46", "2.55")).toBe("uncertain");
    expect(printed("2.45", "2.54")).toBe("uncertain");
    expect(printed("2.55", "3")).toBe("uncertain");
    expect(printed("2", "2.45")).toBe("uncertain");
    expect(printed("2.551", "3")).toBe("below");
    expect(printed("2", "2.449")).toBe("above");
  });

  it("rolls what its wheel rolls, over its reduction", () => {
    const travel = (wheel: object) =>
      evaluated([], { rear: { stages: [pair("r", 10, 40)], wheel } }).output("rear")!.travel!;
    expect(travel({ diameter: "120 mm" }).factor.toFraction()).toBe("30/1");
    expect(travel({ diameter: "120 mm" }).unknowns.map(({ key, power }) => [key, power])).toEqual([["π", 1]]);
    expect(travel({ loadedDiameter: "4 in" }).factor.toFraction()).toBe("127/5");
    expect(travel({ travel: { turns: 10, length: "3.72 m" } }).factor.toFraction()).toBe("93/1");
    expect(travel({ travel: { turns: 10, length: "3.72 m" } }).isExact).toBe(true);
    expect(evaluated([], { rear: [] }).output("rear")!.travel).toBeUndefined();
    const evaluation = evaluated([], { rear: { stages: [pair("r", 10, 40)], wheel: { diameter: "120 mm" } } });
    expect(evaluation.output("rear")!.travel!.bounds.low.toDecimal({ maximumFractionDigits: 12 })).toBe(
      "94.247779607694",
    );
  });

  it("comes out whole past the plain numbers on every way there is: branches, positions, motors of their own, groups", () => {
    // A thousand to one, six times over; then twice as much.
    const steep = (id: string, more: Data = {}) => ({
      id,
      kind: "planetary",
      sun: 1,
      ring: 999,
      fixed: "ring",
      input: "sun",
      output: "carrier",
      repeat: 6,
      ...more,
    });
    const box = { id: "box", kind: "selectable", selected: "x", positions: [{ id: "x", stages: [steep("inner")] }] };
    const printed = { id: "printed", kind: "published", value: "2.5" };
    const large = evaluated(
      [steep("shared", { group: "all" })],
      {
        branched: { from: "b", stages: [pair("c", 1, 2, { reverses: false })] },
        boxed: [box, printed],
        own: { motor: { kv: 1 }, stages: [steep("e"), pair("f", 3, 1)] },
      },
      { branches: [{ id: "b", stages: [steep("d", { group: "all" })] }] },
    );
    const power = (zeros: number) => 10n ** BigInt(zeros);
    const factor = (id: string) => large.output(id)!.reduction!.factor.toFraction();
    expect(factor("branched")).toBe(`${2n * power(36)}/1`);
    expect(factor("boxed")).toBe(`${power(36)}/1`);
    expect(factor("own")).toBe(`${power(18)}/3`);
    expect(large.output("boxed")!.reduction!.unknowns.map(({ key, power }) => [key, power])).toEqual([
      ["printed 2.5 rounded", 1],
    ]);
    expect(large.outputs.map((one) => one.turns)).toEqual(["same way", "not known", "opposite way"]);
    const { groups, steps } = large.output("branched")!;
    expect(groups.map(({ reduction }) => reduction.factor.toFraction())).toEqual([`${power(36)}/1`]);
    expect(steps.map(({ reduction, running }) => [reduction, running].map((one) => one.factor.toFraction()))).toEqual([
      [`${power(18)}/1`, `${power(18)}/1`],
      [`${power(18)}/1`, `${power(36)}/1`],
      ["2/1", `${2n * power(36)}/1`],
    ]);
  });

  it("is worked out once", () => {
    const evaluation = evaluated([pair("s", 1, 2)], { rear: [pair("r", 1, 2)] });
    expect(evaluation.outputs).toBe(evaluation.outputs);
    const rear = evaluation.output("rear")!;
    expect(rear.locked).toBe(rear.locked);
    expect(rear.steps).toBe(rear.steps);
  });

  it("is looked for by what is inside a selectable stage, which itself keeps the direction", () => {
    expect(directions.selectable.turn({} as never)).toBe(1);
    const box = {
      id: "box",
      kind: "selectable",
      selected: "x",
      reverses: true,
      positions: [{ id: "x", stages: [pair("i", 1, 2), pair("j", 1, 2)] }],
    };
    expect(evaluated([box], { rear: [] }).output("rear")!.turns).toBe("opposite way");
    expect(evaluated([{ ...box, reverses: false }, pair("k", 1, 2)], { rear: [] }).output("rear")!.turns).toBe(
      "opposite way",
    );
  });
});

describe("a difference", () => {
  it("is told for outputs that both builds drive", () => {
    const before = read(document([], { front: [pair("f", 10, 20)], rear: [pair("r", 10, 20)], mid: [] }));
    const after = read(document([], { rear: [pair("r", 10, 30)], mid: [released("m", "free")], aux: [] }));
    expect(difference(before, after).map(({ id, reduction }) => [id, json(reduction)])).toEqual([["rear", is("1/2")]]);
    expect(difference(evaluate(after), before).map(({ id, reduction }) => [id, json(reduction)])).toEqual([
      ["rear", is("-1/3")],
    ]);
    expect(difference(before, before).map(({ id, midpoint }) => [id, json(midpoint)])).toEqual([
      ["front", is("0/1")],
      ["rear", is("0/1")],
      ["mid", is("0/1")],
    ]);
  });
});
