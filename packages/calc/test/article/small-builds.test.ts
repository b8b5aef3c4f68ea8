// What is said of builds that have less, or more, than a car with two axles: one output, no prices, packs, a swinging mount.
import { describe, expect, it } from "vitest";
import {
  dateText,
  isUnsaid,
  needText,
  partName,
  sayCard,
  sayChanges,
  sayDrawing,
  sayGauge,
  sayOrder,
  sayParts,
  sayTotals,
  speakerOf,
  stepsToDraw,
  versionOf,
  type Reporter,
} from "../../src/article/index.js";
import type { Build } from "../../src/drivetrain/index.js";
import { evaluate } from "../../src/evaluate/index.js";
import { bounded } from "../../src/exact/index.js";
import { wordsFor } from "../../src/languages/all.js";
import { layoutOf } from "../../src/layout/index.js";
import type { Need } from "../../src/parts/index.js";
import { figures } from "../../src/report/index.js";
import { document, pair, read } from "../make.js";

const nbsp = "\u00a0";
const words = { words: wordsFor("en").figures, reports: wordsFor("en").reports };
const reporter = (build: Build, published = build): Reporter =>
  speakerOf({
    ...{ evaluation: evaluate(build), locale: "en", ...words, figures },
    version: (at) => evaluate(versionOf(published, at)!),
  });
const made = (...parts: Parameters<typeof document>): Build => read(document(...parts));

describe("an order", () => {
  const primary = pair("primary", 15, 62, { module: "0.8", label: "Spur and pinion" });
  const parts = [
    {
      ...{ id: "p15", is: "pinion", teeth: 15, module: "0.8", maker: "Wrackline", pack: 2, source: "the pier" },
      price: { amount: "4.20", currency: "EUR", checked: "2026-10-03" },
    },
    { id: "s62", is: "spur", teeth: 62, module: "0.8", available: false },
    { id: "s60", is: "spur", teeth: 60, module: "0.8", owned: 1 },
  ];
  const build = made(
    [primary],
    { rear: { label: "Rear", wheel: { diameter: "124 mm" } } },
    { title: "Turnstone", parts, alternatives: [{ id: "owned", changes: { "primary.driven": 60 } }] },
  );

  it("says packs, what has no price, what is not to be had and what no part answers", () => {
    const order = sayOrder(reporter(build), undefined);
    expect(order.heads).toEqual(["Part", "Pieces", "Packs", "Price", "Where"]);
    expect(order.buy.map(({ head, texts }) => [head, ...texts])).toEqual([
      ["p15 (15)", "1", "1 of 2", "€4.20", "the pier"],
      ["s62 (62)", "1", "1", "no price", "– not to be had now"],
    ]);
    expect(order.buy.map(({ checked }) => checked)).toEqual(["Oct 3, 2026", undefined]);
    expect(order.sum).toBe("€4.20 and 1 without a price and 1 not in the list");
    expect(order.missing).toEqual(["Rear: 2 × wheel 124 mm"]);
    // Two come in a pack, and one is needed.
    expect(order.notes).toEqual(["Left over: p15 (15).", "No part of the list answers: Rear: 2 × wheel 124 mm."]);
    expect(order.text.split("\n")).toEqual([
      ...["Turnstone", "", "To buy"],
      "1 × p15 (15), Wrackline: 1 of 2, €4.20, the pier",
      "1 × s62 (62): no price",
      ...["", "Together", order.sum, "", "Left over", "1 × p15 (15), Wrackline"],
      ...["", "No part of the list answers", order.missing[0]],
    ]);
  });

  it("of a version counts only what the published one has not: owned parts cost nothing", () => {
    const owned = versionOf(build, "owned")!;
    const order = sayOrder(reporter(owned, build), reporter(build));
    expect([order.buy, order.packed, order.tables]).toEqual([[], false, []]);
    expect(order.rest).toContainEqual(["Owned already", ["s60 (60)"]]);
    const columns = [build, owned].map((one) => ({ label: "", speaker: reporter(one, build) }));
    const [first] = sayChanges(columns[0]!.speaker, columns[0]!.speaker, columns).groups;
    expect(first!.rows.find(({ cost }) => cost)!.texts).toEqual(["–", "Owned already"]);
  });

  it("and the list of parts name what the place asks for where no part answers", () => {
    const { rows } = sayParts(reporter(build));
    expect(rows.map(({ head, texts, first }) => [head, first, ...texts])).toEqual([
      ["Spur and pinion", true, "1", "p15 (15)", "Wrackline", "the pier Oct 3, 2026"],
      ["Spur and pinion", false, "1", "s62 (62)", "–", "–"],
      ["Rear", true, "2", "wheel 124 mm: no part of the list", "–", "–"],
    ]);
  });

  it("calls parts by their names, else by their ids with their counts", () => {
    expect(partName({ id: "a", is: "set", driver: 13, driven: 38 })).toBe("a (13, 38)");
    expect(partName({ id: "a", is: "wheel" })).toBe("a");
    expect(partName({ id: "a", is: "spur", name: "Big one", teeth: 66 })).toBe("Big one");
    expect(dateText("next week", "en")).toBe("next week");
  });

  it("says what a place asks for: counts, sizes, either of two, sun and ring", () => {
    const speaker = reporter(build);
    const asks = (need: Partial<Need>) => needText({ stage: "", pieces: 1, is: ["gear"], ...need }, speaker);
    expect(asks({ is: ["planetary"], driver: 18, driven: 54 })).toBe("planetary set sun 18 in ring 54");
    expect(asks({ is: ["set"], driver: 13, driven: 38 })).toBe("gear set 13 → 38");
    expect(asks({ is: ["pinion"], either: [15, 16] })).toBe("pinion 15 or 16");
    expect(asks({ is: ["gearbox"], value: "27:1" })).toBe("gearbox 27:1");
    expect(asks({ is: ["sleeve"], bore: "3 mm", outside: "5 mm" })).toContain("3 mm, 5 mm");
    expect(asks({ is: ["wheel"], travel: { turns: 10, length: "3.9 m" } })).toBe("wheel 3.9 m");
    expect(asks({ is: ["wheel"] })).toBe("wheel");
    const german = speakerOf({
      ...speaker,
      locale: "de",
      words: wordsFor("de").figures,
      reports: wordsFor("de").reports,
      figures,
    });
    const ask = (need: Partial<Need>) => needText({ stage: "", pieces: 1, is: ["wheel"], ...need }, german);
    expect(ask({ diameter: "124.5 mm" })).toMatch(/ 124,5 mm$/);
    expect(ask({ is: ["gearbox"], value: "2.61" })).toMatch(/ 2,61$/);
    expect(asks({ is: ["pulley"], teeth: 20, beltPitch: "5 mm" })).toBe("pulley or sprocket 20, 5 mm");
  });
});

describe("versions side by side", () => {
  const said = (build: Build, ...at: readonly string[]) => {
    const columns = ["article", ...at].map((id) => ({ label: id, speaker: reporter(versionOf(build, id)!, build) }));
    return sayChanges(columns[0]!.speaker, columns[0]!.speaker, columns);
  };
  const alternatives = [{ id: "deep", changes: { "primary.driver": 14 } }];

  it("of one axle without wheels, range or battery have its reduction and what that changes, and no more", () => {
    // 62/15 = 4.133…, 62/14 = 4.428…: 15/14 is 7.14 % more.
    const { groups, heads, notes } = said(
      made([pair("primary", 15, 62)], { drive: { label: "Drive" } }, { alternatives }),
      "deep",
    );
    expect(heads).toEqual(["Motor turns for one wheel turn", "article", "deep"]);
    expect(groups[0]!.rows).toEqual([{ head: "Drive", texts: ["4.13", "4.43"] }]);
    expect(groups[1]!.rows.map(({ head, texts }) => [head, texts[1]])).toEqual([
      ["reduction", "+7.14%"],
      ["wheel speed", "\u22126.67%"],
      ["wheel torque", "+7.14%"],
      ["reduction, against the middle of both", "+6.90%"],
    ]);
    expect(notes).toEqual([words.reports.fourNames]);
  });

  it("of two axles hold gears against gears where one has no wheel, and say the range where it is meant", () => {
    const { groups } = said(
      made(
        [pair("primary", 15, 62)],
        {
          front: { label: "Front", stages: [pair("f", 10, 20)], wheel: { diameter: "100 mm" } },
          rear: { label: "Rear", stages: [pair("r", 10, 21)] },
        },
        { alternatives, target: { from: 5, to: 9, output: "rear" } },
      ),
    );
    const [front, rear, gap] = groups[0]!.rows;
    expect(gap!.head).toBe("Front against Rear, gears alone");
    expect(front!.words).toBeUndefined();
    // 62/15 · 2.1 = 8.68.
    expect([rear!.texts, rear!.words]).toEqual([["8.68"], ["inside"]]);
    expect(groups.map(({ rows }) => rows.length)).toEqual([3, 5, 4]);
  });

  it("behind an open differential are told to be straight on; each motor of its own gives a speed", () => {
    const motor = { kv: 1000 };
    const battery = { cells: 2, chemistry: "lipo" };
    const own = said(made([], { left: { motor, stages: [pair("l", 10, 20)] }, right: { motor } }, { battery }));
    expect(own.groups[0]!.rows.map(({ head }) => head)).toEqual([
      ...["left", "right", "left against right, gears alone"],
      ...["Ideal speed at full charge, left", "Ideal speed at full charge, right"],
    ]);
    expect(own.notes).toContain(words.reports.ideal);
    const open = said(made([pair("primary", 15, 62)], { front: [], rear: [] }, { centre: { kind: "differential" } }));
    expect(open.heads[0]).toBe("Motor turns for one wheel turn, straight on");
  });
});

describe("a drawing", () => {
  // (15 + 62) · 0.8 / 2 = 30.8 mm between centres; the tips of the driven gear are 25.6 mm from its axis, of the driver 6.8.
  const mesh = pair("primary", 15, 62, { module: "0.8" });
  const drawn = (mount: object, stages: Parameters<typeof document>[0] = [mesh]) => {
    const build = made(stages, { rear: [] }, { mounts: [{ stage: "primary", ...mount }] });
    const speaker = reporter(build);
    return sayDrawing(speaker, layoutOf(speaker.evaluation.outputs[0]!.steps, build.mounts));
  };

  it("of a mount with holes says how far the nearest is", () => {
    expect(drawn({ holes: ["29 mm", "32 mm"] }).verdicts).toEqual([
      `Needs 30.8${nbsp}mm between centres. The nearest hole is 1.2${nbsp}mm away.`,
    ]);
  });

  it("of a slot that begins too far out says where, and of both its ends what can be set", () => {
    const { verdicts, told } = drawn({ from: "31.3 mm", to: "32 mm" });
    expect(verdicts).toEqual([
      `Needs 30.8${nbsp}mm between centres. The slot begins at 31.3${nbsp}mm, 0.5${nbsp}mm farther.`,
    ]);
    expect(told).toBe(
      `15 teeth turn 62 the other way, 30.8${nbsp}mm between centres. Centres can be set from 31.3${nbsp}mm to 32.0${nbsp}mm. ${verdicts[0]}`,
    );
    expect(drawn({ to: "32 mm" }).told).toBe(`15 teeth turn 62 the other way, 30.8${nbsp}mm between centres.`);
  });

  it("of a mount that swings speaks of the mount: a right angle between arms of 18 and 24 mm spans 30 mm", () => {
    expect(drawn({ pivot: { distance: "24 mm", arm: "18 mm", from: 60, to: 90 } }).verdicts).toEqual([
      `Needs 30.8${nbsp}mm between centres. The mount reaches 30.0${nbsp}mm, 0.8${nbsp}mm short.`,
    ]);
    // Stretched out, 15 + 18 mm; folded to 60°, √(18² + 40² − 18 · 40) = 34.69 mm.
    const [begins] = drawn({ pivot: { distance: "40 mm", arm: "18 mm", from: 60, to: 90 } }).verdicts;
    expect(begins).toMatch(
      /^Needs 30\.8\u00a0mm between centres\. The mount begins at 34\.70?\u00a0mm, 3\.\d+\u00a0mm farther\.$/,
    );
  });

  it("of walls says what room is left, and what is needed where that is said", () => {
    const walls = [
      { label: "bulkhead", distance: "26 mm", gap: "0.5 mm" },
      { of: "driver", distance: "10 mm" },
    ];
    const { told } = drawn({ from: "30 mm", to: "31 mm", walls });
    expect(told).toContain(`bulkhead: 0.4${nbsp}mm clear, needs 0.5${nbsp}mm.`);
    expect(told).toMatch(new RegExp(` 3\\.2${nbsp}mm clear\\.$`));
  });

  it("says what is not in it, by its name or its id, and that a belt turns no other way", () => {
    const belt = { id: "b", kind: "belt", driver: 20, driven: 40, pitch: "5 mm", centre: "100 mm" };
    const box = { id: "box", kind: "published", value: "2.6" };
    const { rest, told } = drawn({}, [mesh, belt, box, { ...box, id: "other", label: "Other box" }]);
    expect(rest).toBe("Not drawn: box, Other box.");
    expect(told).toMatch(/20 teeth turn 40, 1\d\d\.\d+\u00a0mm between centres\.$/);
  });

  it("is of the output or the stages that are named, else of the headline, else of the first", () => {
    const stages = { front: [pair("f", 1, 2)], rear: [pair("r", 1, 2), pair("s", 1, 2)] };
    const ids = (of: string | undefined, more = {}) =>
      stepsToDraw(evaluate(made([mesh], stages, more)), of).map(({ stage }) => stage.id);
    expect(ids(undefined)).toEqual(["primary", "f"]);
    expect(ids(undefined, { headline: "rear" })).toEqual(["primary", "r", "s"]);
    expect(ids("rear")).toEqual(["primary", "r", "s"]);
    expect(ids("s, primary", { headline: "rear" })).toEqual(["primary", "s"]);
    expect(ids("nobody")).toEqual([]);
  });
});

describe("other elements", () => {
  it("a card says the play of the opening that is wanted", () => {
    const build = made(
      [pair("primary", 15, 62, { module: "0.8" })],
      { rear: [] },
      { mounts: [{ stage: "primary", from: "30 mm", to: "32 mm", opening: "0.1 mm" }] },
    );
    const { rows } = sayCard(reporter(build)).mesh;
    const wanted = rows.find(({ head }) => head.endsWith("Opening wanted"));
    expect(wanted!.texts[0]).toMatch(/^0\.1\smm$/);
    // 2 · 0.1 · tan 20° = 0.073 mm.
    const plays = rows.filter(({ head }) => head.includes("Play "));
    expect(plays.length).toBeGreaterThan(0);
    for (const { texts } of plays) expect(texts[0]).toMatch(/^0\.07/);
  });

  it("a pair that is offered is in no range where the build names none, and too low below one", () => {
    const stages = [pair("primary", 15, 62)];
    const totals = [{ id: "rear", total: bounded("4.5") }];
    expect(sayTotals(reporter(made(stages, { rear: { label: "Rear" } })), totals)).toEqual([
      { label: "Rear", text: "4.50", outside: undefined },
    ]);
    const target = { target: { from: 5, to: 9 } };
    expect(sayTotals(reporter(made(stages, { rear: {} }, target)), totals)[0]!.outside).toBe(
      `rear 4.50: ${words.words.below}.`,
    );
    expect(sayTotals(reporter(made(stages, { rear: {} })), [{ id: "gone", total: bounded(1) }])[0]!.label).toBe("gone");
  });

  it("a gauge says that motors of their own are compared at equal volts, and nothing where that cannot be", () => {
    const wheel = { diameter: "100 mm" };
    const axles = (motor: object) =>
      made([], {
        front: { motor, wheel, stages: [pair("f", 10, 20)] },
        rear: { motor, wheel, stages: [pair("r", 10, 21)] },
      });
    const gauge = sayGauge(reporter(axles({ kv: 1000 })), {});
    expect(!gauge || isUnsaid(gauge) ? [] : gauge.notes).toContain(words.words.bySpeed);
    expect(sayGauge(reporter(axles({ turns: 17 })), {})).toBeUndefined();
  });

  it("a gauge of a build in inches has its turning circle in feet", () => {
    const wheel = { diameter: "4 in" };
    const axles = { front: { wheel, stages: [pair("f", 10, 20)] }, rear: { wheel, stages: [pair("r", 10, 21)] } };
    const notes = (more: object) => {
      const said = sayGauge(reporter(made([], axles, { wheelbase: "12 in", ...more })), {});
      return !said || isUnsaid(said) ? [] : said.notes;
    };
    // The front rolls 21/20 as far: the rear's circle has a radius of 12 in · 20 / √(21² − 20²) = 37.5 in, 3.12 ft, 0.95 m.
    expect(notes({ lengths: "in" })).toContainEqual(expect.stringContaining(`3.1${nbsp}ft`));
    expect(notes({})).toContainEqual(expect.stringMatching(/\b(1|1\.0|0\.95)\u00a0m\b/));
  });
});
