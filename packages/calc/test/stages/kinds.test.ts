import { describe, expect, it } from "vitest";
import { shapes, stageShape } from "../../src/drivetrain/index.js";
import { scalars, readBuild } from "../../src/document/index.js";
import { bounded, ratioOf } from "../../src/exact/index.js";
import {
  directions,
  Effect,
  effects,
  inners,
  notations,
  stageShapes,
  type Stage,
  type StageKind,
  type Surroundings,
} from "../../src/stages/index.js";
import { document, read } from "../make.js";

const stageOf = (stage: object): Stage => read(document([{ id: "a", ...stage }], { rear: [] })).stages[0]!;
/** What a stage is told that stands for itself. */
const alone: Surroundings = {
  namesake: ({ id }) => id,
  divide(into, stage) {
    const other = into.another();
    effects[(stage as Stage).kind](stage as Stage, other, alone);
    into.over(other);
  },
};
const effectOf = (fields: object): [string, number] => {
  const stage = stageOf(fields);
  const effect = new Effect();
  effects[stage.kind](stage, effect, alone);
  return [effect.factor.toFraction(), directions[stage.kind].turn(stage)];
};
const findings = (stage: object) =>
  readBuild(document([{ id: "a", ...stage }], { rear: [] })).findings.map(
    ({ severity, code, at, message }) => `${severity} ${code} ${at}: ${message}`,
  );

describe("every kind", () => {
  it.each(Object.keys(stageShapes) as StageKind[])(
    "%s has a shape that the reader knows, and no field of all stages again",
    (kind) => {
      const common = ["id", "label", "kind", "group", "reverses", "per", "fitted"];
      for (const [field, shape] of Object.entries(stageShapes[kind])) {
        expect(common).not.toContain(field);
        const name = shape.replace(/!$/, "").replace(/^\[(.+)\]\d+-\d+$/, "$1");
        const isKnown = name in scalars || name in shapes || ["flag", "stage"].includes(name) || name.includes("|");
        expect(isKnown, `${field}: ${shape}`).toBe(true);
      }
      expect(Object.keys(stageShape(kind))).toEqual([...common, ...Object.keys(stageShapes[kind])]);
    },
  );

  it.each(Object.keys(stageShapes) as StageKind[])("%s reads nothing into text that is not its own", (kind) => {
    for (const text of [
      "",
      "15",
      "15 to",
      "to 62",
      "15 to 62 to",
      "15 to 62.5",
      "-15 to 62",
      "15  to 62",
      "x 15 to 62",
      "15 to 62 x",
      "sun 12",
      "printed",
      "printed 1 5",
      "belt 15",
      "worm 15",
      "belt 15 to 62 to 70",
      "worm 1 to 2 to 3",
      "sun 12 in ring 60 × ",
      "18 to 31 to",
      "a 18 to 31 to 45",
      "18 to 31 to 45 a",
      "turned 20",
      "turned 20 for",
      "turned 20 for 7.2 to",
      "turned 20 to 7.2",
      "turned x for 7",
    ])
      expect(notations[kind]?.parse(text), text).toBeUndefined();
  });

  it("reads its counts as they are written", () => {
    const set = { sun: 12, ring: 60, fixed: "ring", input: "sun", output: "carrier" };
    const texts: readonly [Stage["kind"], string, object][] = [
      ["pair", "15 to 62", { driver: 15, driven: 62 }],
      ["pair", "7 to 8", { driver: 7, driven: 8 }],
      ["train", "18 to 31 to 45", { teeth: [18, 31, 45] }],
      ["train", "9 to 8 to 7 to 100", { teeth: [9, 8, 7, 100] }],
      ["belt", "belt 20 to 60", { driver: 20, driven: 60 }],
      ["belt", "chain 9 to 11", { driver: 9, driven: 11, chain: true }],
      ["worm", "worm 2 to 40", { starts: 2, teeth: 40 }],
      ["worm", "worm 10 to 7", { starts: 10, teeth: 7 }],
      ["published", "printed 1.5", { value: "1.5" }],
      ["measured", "turned 20 for 7.2 to 7.3", { turnsIn: "20", turnsOut: { from: "7.2", to: "7.3" } }],
      ["measured", "turned 57 for 11", { turnsIn: "57", turnsOut: "11" }],
      ["planetary", "sun 12 in ring 60", set],
      ["planetary", "sun 12 in ring 60 × 2", { ...set, repeat: 2 }],
      ["planetary", "sun 8 in ring 9 × 12", { ...set, sun: 8, ring: 9, repeat: 12 }],
    ];
    for (const [kind, text, fields] of texts)
      for (const other of Object.keys(stageShapes) as StageKind[])
        expect(notations[other]?.parse(text), `${text} as ${other}`).toEqual(other === kind ? fields : undefined);
    for (const [kind, text] of texts) {
      // What follows a printed value without a space belongs to it.
      const open = kind === "published" || kind === "measured";
      const wrong = [`a${text}`, `2 ${text}`, `${text} a`, ...(open ? [] : [`${text}a`, `${text}.5`])];
      for (const one of wrong) expect(notations[kind]!.parse(one), one).toBeUndefined();
    }
  });

  it("writes its counts as it is read", () => {
    const write = (stage: object) => notations[stageOf(stage).kind]!.write(stageOf(stage));
    expect(write({ kind: "pair", driver: 15, driven: 62 })).toBe("15 to 62");
    expect(write({ kind: "train", teeth: [18, 31, 45] })).toBe("18 to 31 to 45");
    expect(write({ kind: "belt", driver: 20, driven: 60 })).toBe("belt 20 to 60");
    expect(write({ kind: "belt", driver: 20, driven: 60, chain: true })).toBe("chain 20 to 60");
    expect(write({ kind: "worm", starts: 2, teeth: 40 })).toBe("worm 2 to 40");
    expect(write({ kind: "published", value: "1.5" })).toBe("printed 1.5");
    expect(write({ kind: "measured", turnsIn: 20, turnsOut: { from: "7.20", to: 7.3 } })).toBe(
      "turned 20 for 7.20 to 7.3",
    );
    expect(write({ kind: "measured", turnsIn: "57", turnsOut: 11 })).toBe("turned 57 for 11");
    const set = { kind: "planetary", sun: 12, ring: 60, fixed: "ring", input: "sun", output: "carrier" };
    expect(write(set)).toBe("sun 12 in ring 60");
    expect(write({ ...set, repeat: 2 })).toBe("sun 12 in ring 60 × 2");
  });
});

describe("a pair", () => {
  it("is driven over driver; an external mesh turns round, an internal one keeps", () => {
    expect(effectOf({ kind: "pair", driver: 15, driven: 62 })).toEqual(["62/15", -1]);
    expect(effectOf({ kind: "pair", driver: 15, driven: 62, form: "spur" })).toEqual(["62/15", -1]);
    expect(effectOf({ kind: "pair", driver: 15, driven: 62, form: "helical", helixAngle: 20 })).toEqual(["62/15", -1]);
    expect(effectOf({ kind: "pair", driver: 15, driven: 62, internal: true })).toEqual(["62/15", 1]);
  });

  it("at an angle turns as its sides say, and is not known without both", () => {
    for (const form of ["bevel", "hypoid", "crown"]) {
      expect(effectOf({ kind: "pair", driver: 12, driven: 36, form })).toEqual(["3/1", 0]);
      expect(effectOf({ kind: "pair", driver: 12, driven: 36, form, ringSide: "left" })).toEqual(["3/1", 0]);
      expect(effectOf({ kind: "pair", driver: 12, driven: 36, form, pinionSide: "ahead" })).toEqual(["3/1", 0]);
      expect(effectOf({ kind: "pair", driver: 12, driven: 36, form, ringSide: "left", pinionSide: "behind" })).toEqual([
        "3/1",
        1,
      ]);
      expect(effectOf({ kind: "pair", driver: 12, driven: 36, form, ringSide: "right", pinionSide: "behind" })).toEqual(
        ["3/1", -1],
      );
      expect(effectOf({ kind: "pair", driver: 12, driven: 36, form, ringSide: "left", pinionSide: "ahead" })).toEqual([
        "3/1",
        -1,
      ]);
      expect(effectOf({ kind: "pair", driver: 12, driven: 36, form, ringSide: "right", pinionSide: "ahead" })).toEqual([
        "3/1",
        1,
      ]);
    }
  });

  it("cannot hold a gear in a ring that is no larger", () => {
    expect(findings({ kind: "pair", driver: 30, driven: 30, internal: true })).toEqual([
      "error ring-too-small /stages/0/driven: A ring of 30 cannot hold a gear of 30.",
    ]);
    expect(findings({ kind: "pair", driver: 30, driven: 31, internal: true })).toEqual([]);
    expect(findings({ kind: "pair", driver: 31, driven: 30 })).toEqual([]);
  });
});

describe("a row of gears, belts and worms", () => {
  it("come to last over first, driven over driver, teeth over starts", () => {
    expect(effectOf({ kind: "train", teeth: [18, 31, 45] })).toEqual(["5/2", 1]);
    expect(effectOf({ kind: "train", teeth: [18, 45] })).toEqual(["5/2", -1]);
    expect(effectOf({ kind: "belt", driver: 20, driven: 60 })).toEqual(["3/1", 1]);
    expect(effectOf({ kind: "worm", starts: 2, teeth: 41 })).toEqual(["41/2", 0]);
  });
});

describe("a planetary set", () => {
  const set = { kind: "planetary", sun: 12, ring: 60, fixed: "ring", input: "sun", output: "carrier" };

  it.each([
    ["ring", "sun", "carrier", "6/1", 1],
    ["ring", "carrier", "sun", "1/6", 1],
    ["sun", "ring", "carrier", "6/5", 1],
    ["sun", "carrier", "ring", "5/6", 1],
    ["carrier", "sun", "ring", "5/1", -1],
    ["carrier", "ring", "sun", "1/5", -1],
  ])("with the %s fixed, from %s to %s, is %s", (fixed, input, output, ratio, turn) => {
    expect(effectOf({ ...set, fixed, input, output })).toEqual([ratio, turn]);
  });

  it("in a row comes to a power, and turns round once each", () => {
    expect(effectOf({ ...set, repeat: 1 })).toEqual(["6/1", 1]);
    expect(effectOf({ ...set, repeat: 3 })).toEqual(["216/1", 1]);
    expect(effectOf({ ...set, fixed: "carrier", output: "ring", repeat: 2 })).toEqual(["25/1", 1]);
    expect(effectOf({ ...set, fixed: "carrier", output: "ring", repeat: 3 })).toEqual(["125/1", -1]);
  });

  it("is told what does not fit", () => {
    const at = "/stages/0";
    expect(findings({ ...set, planets: 3, planet: 24, repeat: 100 })).toEqual([]);
    // Planets of 24 teeth, 26 modules across, 18 from the middle: three stand 31.2 apart, four 25.5.
    expect(findings({ ...set, planets: 4, planet: 24 })).toEqual([
      `warning planets-touch ${at}/planets: 4 planets of 24 teeth touch each other.`,
    ]);
    expect(findings({ ...set, output: "sun" })).toEqual([
      `error members-repeated ${at}/output: Fixed ring, input sun, output sun: expected all three.`,
    ]);
    expect(findings({ ...set, repeat: 101 })).toEqual([
      `error not-sets ${at}/repeat: Expected a whole number from 1 to 100, found 101.`,
    ]);
    expect(findings({ ...set, ring: 12 })).toEqual([
      `error ring-too-small ${at}/ring: A ring of 12 cannot hold a gear of 12.`,
    ]);
    expect(findings({ ...set, ring: 13 })).toEqual([]);
    expect(findings({ ...set, planet: 23 })).toEqual([
      `warning planet-does-not-fit ${at}/planet: Ring 60 is not sun 12 + 2 × planet 23.`,
    ]);
    expect(findings({ ...set, planets: 5 })).toEqual([
      `warning planets-uneven ${at}/planets: 5 planets cannot be spaced evenly: 72 does not divide.`,
    ]);
    // 72 teeth together take 4 or 9 planets; 48, which they differ by, would take 16.
    expect(findings({ ...set, planets: 4 })).toEqual([]);
    expect(findings({ ...set, planets: 9 })).toEqual([]);
    expect(findings({ ...set, planets: 16 })).toHaveLength(1);
  });
});

describe("a printed ratio", () => {
  const interval = (fields: object) => {
    const stage = stageOf({ kind: "published", ...fields });
    const effect = new Effect();
    effects.published(stage, effect, alone);
    expect(directions.published.turn(stage)).toBe(0);
    expect(effect.factor.toFraction()).toBe("1/1");
    return effect.unknowns.map(({ key, interval }) => [key, interval.toJSON()]);
  };

  it("is an interval by the way it is read, named after its stage and what it says", () => {
    expect(interval({ value: "2.74" })).toEqual([["a 2.74 rounded", { low: "547/200", high: "549/200" }]]);
    expect(interval({ value: "2.74", read: "truncated" })).toEqual([
      ["a 2.74 truncated", { low: "137/50", high: "11/4" }],
    ]);
    expect(interval({ value: "2.74", read: "unsure" })).toEqual([["a 2.74 unsure", { low: "547/200", high: "11/4" }]]);
    expect(interval({ value: "19:1" })).toEqual([["a 19 rounded", { low: "37/2", high: "39/2" }]]);
    expect(interval({ value: "2.5 : 1" })).toEqual([["a 2.5 rounded", { low: "49/20", high: "51/20" }]]);
    expect(interval({ value: "2.74", exact: false })).toHaveLength(1);
  });

  it("is exact as a fraction, or where it says so", () => {
    expect(effectOf({ kind: "published", value: "52/19" })).toEqual(["52/19", 0]);
    expect(effectOf({ kind: "published", value: "2.74", exact: true })).toEqual(["137/50", 0]);
    expect(effectOf({ kind: "published", value: "19:1", exact: true })).toEqual(["19/1", 0]);
    expect(findings({ kind: "published", value: "19:1", exact: true })).toEqual([]);
  });

  it("of the least value is above nothing still", () => {
    for (const read of ["rounded", "truncated", "unsure"] as const) {
      const [[, { low }]] = interval({ value: "0.000001", read }) as [[string, { low: string }]];
      expect(low.startsWith("0/") || low.startsWith("-")).toBe(false);
    }
  });
});

describe("a box with a lever", () => {
  const box = (positions: object[], selected = "low") => ({ kind: "selectable", selected, positions });

  it("is told what is odd about its positions", () => {
    const at = "/stages/0";
    const [low, high] = [
      { id: "low", stages: [] },
      { id: "high", released: "free" },
    ];
    expect(findings(box([low, high]))).toEqual([]);
    expect(findings(box([low, high], "mid"))).toEqual([
      `error position-missing ${at}/selected: No position "mid"; expected one of low, high.`,
    ]);
    expect(findings(box([low, { ...high, id: "low" }]))).toEqual([
      `error id-repeated ${at}/positions: "low" is used twice; expected ids of their own.`,
    ]);
    expect(findings(box([low, { id: "high" }]))).toEqual([
      `error position-unclear ${at}/positions: Position "high" needs either stages or released.`,
    ]);
    expect(findings(box([{ ...high, id: "low", stages: [] }]))).toEqual([
      `error position-unclear ${at}/positions: Position "low" needs either stages or released.`,
    ]);
  });

  it("is what its selected position is, or another that is asked for", () => {
    const stage = stageOf(
      box([
        { id: "low", stages: [{ id: "b", kind: "pair", driver: 1, driven: 2 }] },
        { id: "off", released: "held" },
      ]),
    );
    expect(inners.selectable!.at(stage)).toMatchObject([{ id: "b" }]);
    expect(inners.selectable!.at(stage, "off")).toBe("held");
  });
});

describe("an effect", () => {
  it("goes on from another without touching it", () => {
    const trunk = new Effect();
    trunk.times(62, 15);
    trunk.unknown("box", bounded(2, 3));
    const front = new Effect(false, trunk);
    const rear = new Effect(false, trunk);
    front.times(38, 13);
    front.unknown("hub", bounded(1, 2));
    front.unknown("cap", bounded(1, 2));
    rear.unknown("other", bounded(4, 5));
    expect(trunk.unknowns.map((one) => one.key)).toEqual(["box"]);
    expect(front.unknowns.map((one) => one.key)).toEqual(["box", "hub", "cap"]);
    expect(rear.unknowns.map((one) => one.key)).toEqual(["box", "other"]);
    expect([trunk, front, rear].map((one) => one.factor.toFraction())).toEqual(["62/15", "2356/195", "62/15"]);
    expect(new Effect().unknowns).toEqual([]);
  });

  it("says when plain numbers no longer hold it, to the last one that they hold", () => {
    const large = new Effect();
    large.times(2 ** 53 - 1, 1);
    expect(large.fits).toBe(true);
    expect(large.factor.toFraction()).toBe("9007199254740991/1");
    large.times(2, 1);
    expect(large.fits).toBe(false);
    const small = new Effect();
    small.times(1, 2 ** 53 - 1);
    expect(small.fits).toBe(true);
    small.times(1, 2);
    expect(small.fits).toBe(false);
    const listed = new Effect(true);
    for (let n = 0; n < 40; n++) listed.times(10, 3);
    expect(listed.fits).toBe(false);
    expect(listed.factor.equals(ratioOf(10n ** 40n, 3n ** 40n))).toBe(true);
  });
});
