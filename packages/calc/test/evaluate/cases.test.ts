import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { applyChanges, readBuild } from "../../src/document/index.js";
import type { Build } from "../../src/drivetrain/index.js";
import { lengthOf, rational, type Bounded } from "../../src/exact/index.js";
import { difference, evaluate, type Evaluation } from "../../src/evaluate/index.js";
import { document, evaluated, fraction, pair, read } from "../make.js";

const exactly = (value: Bounded | undefined): string => {
  expect(value!.isExact).toBe(true);
  return value!.low.toFraction();
};
const ends = (value: Bounded | undefined): string => `${value!.low.toFraction()} to ${value!.high.toFraction()}`;
const shown = (value: Bounded | undefined, digits = 2): string => {
  const { low, high } = value!.toDecimals({ minimumFractionDigits: digits, maximumFractionDigits: digits });
  return low === high ? low : `${low} to ${high}`;
};
const percent = (value: Bounded | undefined): string => shown(value!.times(100));
const changed = (build: Build, changes: Record<string, unknown>): Build => {
  const result = applyChanges(build, changes);
  expect(result.findings).toEqual([]);
  return result.build!;
};
const codes = (evaluation: Evaluation): string[] => evaluation.findings.map((one) => one.code);

describe("builds worked through", () => {
  it("1, Whelk: a printed box cancels in front against rear, and blurs the totals outward", () => {
    const whelk = read(
      document(
        [pair("primary", 14, 59), { id: "box", kind: "published", value: "2.61" }],
        {
          front: [pair("front-transfer", 22, 20), pair("front-ring", 11, 43)],
          rear: [pair("rear-transfer", 20, 22), pair("rear-ring", 10, 37)],
        },
        { target: { from: 38, to: "44.8" } },
      ),
    );
    const evaluation = evaluate(whelk);
    const [front, rear] = evaluation.outputs;
    expect(ends(front!.bounds)).toBe("1321777/33880 to 1326851/33880");
    expect(shown(front!.bounds)).toBe("39.01 to 39.17");
    expect(ends(rear!.bounds)).toBe("12510773/280000 to 12558799/280000");
    expect(shown(rear!.bounds)).toBe("44.68 to 44.86");
    expect([front!.standing, rear!.standing]).toEqual(["inside", "uncertain"]);
    expect(exactly(evaluation.compare()!.difference("gears"))).toBe("6247/43000");
    expect(percent(evaluation.compare()!.difference("gears"))).toBe("14.53");
    expect(evaluation.compare()!.difference("tyres")).toBeUndefined();
    for (const change of difference(whelk, changed(whelk, { "primary.driver": 15 }))) {
      expect(exactly(change.reduction)).toBe("-1/15");
      expect(exactly(change.wheelSpeed)).toBe("1/14");
    }
  });

  it("3, Gannet: a motor on each axle is compared at equal volts", () => {
    const gannet = evaluated([], {
      front: {
        motor: { kv: 2400 },
        stages: [pair("a", 12, 54), pair("b", 8, 38), pair("c", 12, 24)],
        wheel: { diameter: "120 mm" },
      },
      rear: {
        motor: { kv: 2100 },
        stages: [pair("d", 14, 56), pair("e", 9, 41), pair("f", 13, 27)],
        wheel: { diameter: "118 mm" },
      },
    });
    expect(fraction(gannet, "front")).toBe("171/4");
    expect(fraction(gannet, "rear")).toBe("492/13");
    const turns = (id: string, kv: number) =>
      rational("11.1").times(kv).over(gannet.output(id)!.reduction!.factor).toFraction();
    expect([turns("front", 2400), turns("rear", 2100)]).toEqual(["11840/19", "50505/82"]);
    const comparison = gannet.compare()!;
    expect(comparison.by).toBe("motor-speed");
    expect(exactly(comparison.difference("tyres"))).toBe("2949/102011");
    expect(comparison.sameWay).toBeNull();
    // The travel for one motor turn is another question, with another answer.
    const [front, rear] = gannet.outputs;
    expect(exactly(front!.travel!.over(rear!.travel!).bounds.minus(1))).toBe("-1453/14573");
    expect(codes(gannet)).toEqual([]);
  });

  it("5, Avocet: three bases, two scopes, and axles that oppose", () => {
    const axle = (id: string, teeth: number, diameter: string, pinionSide: string) => ({
      stages: [pair(`${id}-ring`, 12, teeth, { form: "bevel", ringSide: "left", pinionSide })],
      wheel: { diameter },
    });
    const avocet = (front: string, rear: string, rearPinion = "ahead") =>
      evaluated([], { front: axle("front", 36, front, "behind"), rear: axle("rear", 39, rear, rearPinion) });
    const equal = avocet("110 mm", "110 mm").compare()!;
    expect(exactly(equal.difference("gears"))).toBe("1/12");
    expect(exactly(equal.difference("tyres"))).toBe("1/12");
    const fitted = avocet("108 mm", "110 mm");
    const comparison = fitted.compare()!;
    expect(exactly(comparison.difference("gears"))).toBe("1/12");
    expect(exactly(comparison.difference("tyres"))).toBe("7/110");
    expect(exactly(comparison.difference("tyres", "with"))).toBe("7/110");
    expect(exactly(comparison.difference("tyres", "of"))).toBe("7/117");
    expect(exactly(comparison.difference("tyres", "mean"))).toBe("14/227");
    // At a radius of 400 mm the front would need 5/4: √(1 + (300/400)²).
    expect(rational(1).minus(comparison.quotient("tyres")!.factor.over("5/4")).toFraction()).toBe("41/275");
    expect(comparison.sameWay).toBe(false);
    expect(codes(fitted)).toEqual(["outputs-oppose"]);
    expect(fitted.findings[0]).toMatchObject({
      at: "/outputs/1",
      message: "front and rear turn against each other.",
    });
    expect(codes(avocet("108 mm", "110 mm", "behind"))).toEqual([]);
  });

  describe("6, Limpet", () => {
    const limpet = read(readFileSync(new URL("../../../../seeds/limpet.json", import.meta.url), "utf8"));

    it("as counted", () => {
      const evaluation = evaluate(limpet);
      expect(fraction(evaluation, "front")).toBe("25916/585");
      expect(fraction(evaluation, "rear")).toBe("24955/576");
      expect(shown(evaluation.output("front")!.bounds)).toBe("44.30");
      expect(shown(evaluation.output("rear")!.bounds)).toBe("43.32");
      expect(percent(evaluation.compare()!.difference("tyres"))).toBe("1.06");
      expect(evaluation.outputs.map((one) => one.standing)).toEqual(["inside", "inside"]);
    });

    it("as printed: the front may be out of the range, and on either side of the rear", () => {
      const printed = changed(limpet, { "front-hub": { id: "front-hub", kind: "published", value: "1.5" } });
      const front = evaluate(printed).output("front")!;
      expect(ends(front.bounds)).toBe("17081/390 to 18259/390");
      expect(shown(front.bounds)).toBe("43.79 to 46.82");
      expect(front.standing).toBe("uncertain");
      expect(front.turns).toBe("not known");
      expect(percent(evaluate(printed).compare()!.difference("tyres"))).toBe("-4.38 to 2.22");
      const exact = evaluate(
        changed(limpet, { "front-hub": { id: "front-hub", kind: "published", value: "1.5", exact: true } }),
      );
      expect(fraction(exact, "front")).toBe("589/13");
      expect(percent(exact.compare()!.difference("tyres"))).toBe("-1.19");
    });

    it("were it 23 teeth", () => {
      const evaluation = evaluate(changed(limpet, { "front-hub.driven": 23 }));
      expect(fraction(evaluation, "front")).toBe("27094/585");
      expect(percent(evaluation.compare()!.difference("tyres"))).toBe("-3.34");
    });

    it("from 23 to 53 to 15 to 62: four numbers with four names", () => {
      const first = changed(limpet, { "primary.driver": 23, "primary.driven": 53 });
      expect(evaluate(first).outputs.map((one) => shown(one.bounds))).toEqual(["24.70", "24.15"]);
      for (const change of difference(first, limpet)) {
        expect(shown(change.reduction.times(100), 1)).toBe("79.4");
        expect(shown(change.wheelTorque.times(100), 1)).toBe("79.4");
        expect(shown(change.wheelSpeed.times(100), 1)).toBe("-44.2");
        expect(shown(change.midpoint.times(100), 1)).toBe("56.8");
      }
    });

    it("with the deeper rear set, by the three bases", () => {
      const evaluation = evaluate(changed(limpet, { "rear-ring.driver": 11, "rear-ring.driven": 36 }));
      expect(shown(evaluation.output("rear")!.bounds)).toBe("48.61");
      const bases = (["with", "of", "mean"] as const).map((base) =>
        percent(evaluation.compare()!.difference("tyres", base)),
      );
      expect(bases).toEqual(["13.39", "11.81", "12.55"]);
    });
  });
});

describe("what builders ask", () => {
  it("1: the idler in a row of gears is no stage", () => {
    const stages = [pair("spur", 21, 90), { id: "row", kind: "train", teeth: [15, 22, 28] }];
    const evaluation = evaluated(stages, { rear: [pair("axle", 13, 38)] });
    expect(fraction(evaluation, "rear")).toBe("304/13");
    expect(evaluation.output("rear")!.steps.map((step) => step.reduction.factor.toFraction())).toEqual([
      "30/7",
      "28/15",
      "38/13",
    ]);
    expect(evaluation.output("rear")!.steps.map((step) => step.running.factor.toFraction())).toEqual([
      "30/7",
      "8/1",
      "304/13",
    ]);
  });

  it("2: with an even number of gears between the wheels the axles oppose, with an odd number they agree", () => {
    const between = (gears: number) =>
      evaluated([pair("spur", 20, 60)], {
        front: [{ id: "row", kind: "train", teeth: Array.from({ length: gears }, () => 20) }],
        rear: [],
      });
    for (let gears = 2; gears < 9; gears++) {
      // The row runs from the gear on one axle to the gear on the other, both counted.
      expect(between(gears).compare()!.sameWay).toBe(gears % 2 === 1);
      expect(codes(between(gears))).toEqual(gears % 2 ? [] : ["outputs-oppose"]);
    }
  });

  it("3: a 3:1 reducer before 19.23 is 57.69, and says how far it is not", () => {
    const printed = (value: string) =>
      evaluated([pair("reducer", 20, 60)], { rear: [{ id: "box", kind: "published", value }] });
    const rear = printed("19.23").output("rear")!;
    expect(rear.bounds!.contains("57.69")).toBe(true);
    expect(ends(rear.bounds)).toBe("11535/200 to 11541/200".replace("11535/200", "2307/40"));
    expect(rear.bounds!.contains(60)).toBe(false);
  });

  it("4: sprockets 30 to 10, then 20 to 50, are a reduction of 5/6: 100 turns become 120", () => {
    const chain = (id: string, driver: number, driven: number) => ({ id, kind: "belt", chain: true, driver, driven });
    const evaluation = evaluated([chain("first", 30, 10), chain("second", 20, 50)], { rear: [] });
    expect(fraction(evaluation, "rear")).toBe("5/6");
    expect(rational(100).over(evaluation.output("rear")!.reduction!.factor).toFraction()).toBe("120/1");
    expect(evaluation.output("rear")!.turns).toBe("same way");
  });

  it("5: five teeth more on the pinion are not five teeth less on the spur", () => {
    const build = read(document([pair("spur", 20, 80)], { rear: [] }));
    const speed = (changes: Record<string, number>) =>
      exactly(difference(build, changed(build, changes))[0]!.wheelSpeed);
    expect(speed({ "spur.driver": 25 })).toBe("1/4");
    expect(speed({ "spur.driven": 75 })).toBe("1/15");
  });

  it("6: a box sold as 5:1 that counts 57/11, and a pulley whose travel needs no π", () => {
    const evaluation = evaluated([{ id: "box", kind: "published", value: "57/11" }], {
      // 20 teeth of 2 mm.
      carriage: { wheel: { travel: { turns: 1, length: "40 mm" } } },
    });
    expect(fraction(evaluation, "carriage")).toBe("57/11");
    const { travel } = evaluation.output("carriage")!;
    expect(travel!.isExact).toBe(true);
    expect(travel!.factor.toFraction()).toBe("440/57");
    expect(shown(travel!.bounds, 4)).toBe("7.7193");
  });

  describe("8: one output let go of", () => {
    const dig = (released: "free" | "held", centre: "spool" | "differential", share?: object) =>
      evaluated(
        [pair("spur", 15, 60)],
        {
          front: [pair("front-ring", 10, 30)],
          rear: [
            {
              id: "dog",
              kind: "selectable",
              selected: "dig",
              positions: [
                { id: "drive", stages: [] },
                { id: "dig", released },
              ],
            },
            pair("rear-ring", 10, 30),
          ],
        },
        { centre: { kind: centre, ...share } },
      );

    it("leaves the front as it is where the centre is a spool, and the rear without drive", () => {
      for (const released of ["free", "held"] as const) {
        const evaluation = dig(released, "spool");
        expect(fraction(evaluation, "front")).toBe("12/1");
        const rear = evaluation.output("rear")!;
        expect([rear.state, rear.reduction, rear.bounds, rear.travel, rear.standing, rear.turns]).toEqual([
          released,
          undefined,
          undefined,
          undefined,
          undefined,
          "not known",
        ]);
        expect(evaluation.output("front")!.isOpen).toBe(false);
        expect(evaluation.compare()!.difference("gears")).toBeUndefined();
        expect(evaluation.compare()!.sameWay).toBeNull();
        expect(evaluation.compare()!.arithmeticMean).toBeUndefined();
        expect(evaluation.compare()!.harmonicMean).toBeUndefined();
        expect(codes(evaluation)).toEqual([]);
      }
    });

    it("turns the front twice as fast where an open differential holds the rear", () => {
      const evaluation = dig("held", "differential");
      expect(fraction(evaluation, "front")).toBe("6/1");
      expect(evaluation.output("front")!.locked!.factor.toFraction()).toBe("12/1");
      expect(codes(evaluation)).toEqual([]);
      // With three parts in five of the torque, the front turns 5/3 as fast.
      expect(fraction(dig("held", "differential", { share: { front: 3, rear: 2 } }), "front")).toBe("36/5");
    });

    it("settles nothing where an open differential lets the rear run", () => {
      const evaluation = dig("free", "differential");
      expect(evaluation.output("front")!.reduction).toBeUndefined();
      expect(evaluation.output("front")!.bounds).toBeUndefined();
      expect(evaluation.findings).toMatchObject([
        {
          severity: "warning",
          about: "meaning",
          code: "differential-released",
          at: "/centre",
          message: "Another output is let go of, and a differential is open: nothing settles how fast front turns.",
        },
      ]);
    });
  });

  it("9: a hub reduction on the front axle only belongs to the sum", () => {
    const evaluation = evaluated([], {
      front: [pair("front-ring", 12, 31), pair("hub", 15, 23)],
      rear: [pair("rear-ring", 11, 43)],
    });
    expect(fraction(evaluation, "front")).toBe("713/180");
    expect(shown(evaluation.output("front")!.bounds, 3)).toBe("3.961");
    expect(shown(evaluation.output("rear")!.bounds, 3)).toBe("3.909");
    expect(percent(evaluation.compare()!.difference("gears"))).toBe("-1.31");
  });

  it("10: a ring gear on the wrong side reverses; moved, it does not", () => {
    const turns = (ringSide: string, pinionSide: string) =>
      evaluated([], { rear: [pair("ring", 12, 36, { form: "bevel", ringSide, pinionSide })] }).output("rear")!.turns;
    expect(turns("left", "behind")).toBe("same way");
    expect(turns("right", "behind")).toBe("opposite way");
    expect(turns("left", "ahead")).toBe("opposite way");
    expect(turns("right", "ahead")).toBe("same way");
  });

  it("11: transfer outputs of 20 and 22 teeth before 40/11 and 44/11 make 21 %, not 20", () => {
    const evaluation = evaluated([], {
      front: [pair("front-transfer", 10, 20), pair("front-ring", 11, 40)],
      rear: [pair("rear-transfer", 10, 22), pair("rear-ring", 11, 44)],
    });
    expect(exactly(evaluation.compare()!.difference("gears"))).toBe("21/100");
  });

  it("12: equal millimetres of wear turn over- into underdrive", () => {
    const worn = (front: string, rear: string) =>
      evaluated([], {
        front: { stages: [pair("front-ring", 100, 300)], wheel: { diameter: front } },
        rear: { stages: [pair("rear-ring", 100, 342)], wheel: { diameter: rear } },
      }).compare()!;
    expect(exactly(worn("67 mm", "76 mm").difference("gears"))).toBe("7/50");
    expect(shown(worn("67 mm", "76 mm").quotient("tyres")!.bounds, 4)).toBe("1.0050");
    expect(shown(worn("62 mm", "71 mm").quotient("tyres")!.bounds, 4)).toBe("0.9955");
    expect(exactly(worn("67 mm", "76 mm").difference("tyres"))).toBe("1/200");
    expect(exactly(worn("62 mm", "71 mm").difference("tyres"))).toBe("-8/1775");
  });

  it("13: from 36 to 45 is a quarter deeper, a fifth slower, 22.2 % against the middle", () => {
    const build = read(document([pair("spur", 10, 360)], { rear: [] }));
    const [change] = difference(build, changed(build, { "spur.driven": 450 }));
    expect(exactly(change!.reduction)).toBe("1/4");
    expect(exactly(change!.wheelTorque)).toBe("1/4");
    expect(exactly(change!.wheelSpeed)).toBe("-1/5");
    expect(exactly(change!.midpoint)).toBe("2/9");
  });

  it("14: an axle of 4.10 with 32 in tyres is like 3.780 on the old ones, 22.7 % deeper than 3.08", () => {
    const axle = (value: string, diameter: string) =>
      evaluated([], { rear: { stages: [{ id: "axle", kind: "published", value, exact: true }], wheel: { diameter } } });
    const [before, after] = [axle("3.08", "29.5 in"), axle("4.10", "32 in")].map((one) => one.output("rear")!);
    const alike = after!.reduction!.factor.times(lengthOf("29.5 in")).over(lengthOf("32 in"));
    expect(alike.toDecimal({ minimumFractionDigits: 3 })).toBe("3.780");
    const deeper = before!.travel!.over(after!.travel!).bounds.minus(1);
    expect(shown(deeper.times(100), 1)).toBe("22.7");
    expect(deeper.low.toFraction()).toBe(alike.over("3.08").minus(1).toFraction());
  });
});

describe("what a build is warned of", () => {
  it("a whole number on a box is nominal", () => {
    for (const value of ["19:1", "19 : 1", "19"]) {
      const { build, findings } = readBuild(document([{ id: "box", kind: "published", value }], { rear: [] }));
      expect(build).toBeDefined();
      expect(findings).toMatchObject([
        {
          severity: "warning",
          about: "meaning",
          code: "ratio-nominal",
          at: "/stages/0/value",
          message: `${value} is a nominal figure; count the teeth.`,
        },
      ]);
      expect(ends(evaluate(build!).output("rear")!.bounds)).toBe("37/2 to 39/2");
    }
    for (const value of ["2.74", "52/19"])
      expect(readBuild(document([{ id: "box", kind: "published", value }], { rear: [] })).findings).toEqual([]);
  });
});
