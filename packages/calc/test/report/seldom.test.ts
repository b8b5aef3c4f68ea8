// Figures, addresses and sentences of builds that have less than a car with two axles, or more.
import { describe, expect, it } from "vitest";
import { evaluate } from "../../src/evaluate/index.js";
import { bounded, rational } from "../../src/exact/index.js";
import type { Reason } from "../../src/fit/index.js";
import { fillCount, reasonText } from "../../src/languages/index.js";
import { wordsFor } from "../../src/languages/all.js";
import { addressFault, checkQuery, figureOf, modeFault, versionFault, Writer } from "../../src/report/index.js";
import { document, pair, read, told } from "../make.js";

const nbsp = "\u00a0";
const mesh = pair("primary", 15, 62, { module: "0.8" });
const made = (...parts: Parameters<typeof document>) => read(document(...parts));
const figure = (query: Record<string, string>, ...parts: Parameters<typeof document>) =>
  figureOf(evaluate(made(...parts)), query as never);

describe("a slot", () => {
  const slot = (mount: object, more: object = {}) =>
    figure({ figure: "slot", ...more }, [mesh], { rear: [] }, { mounts: [{ stage: "primary", ...mount }] });

  it("with one end has no other", () => {
    expect(slot({ to: "31 mm" })).toBe(`up to 31.0${nbsp}mm`);
    expect(slot({ to: "31 mm" }, { measure: "from" })).toBe("not known");
    expect(slot({ measured: "over shafts", from: "35 mm", to: "36 mm", shaft: "4 mm" })).toBe("not known");
    expect(slot({ measured: "over shafts", holes: ["35 mm"] })).toBe("not known");
    expect(slot({ from: "30 mm" })).toBe(`from 30.0${nbsp}mm`);
    expect(slot({ from: "30 mm" }, { measure: "to" })).toBe("not known");
    expect(slot({})).toBe("not known");
    expect(figure({ figure: "slot", of: "primary" }, [mesh], { rear: [] })).toBe("not known");
  });

  it("of holes is one of them, each where it stands", () => {
    expect(slot({ holes: ["30.005 mm"] })).toMatch(/^30\.0[01]?\u00a0mm$/);
    expect(slot({ holes: ["29 mm", "30 mm"] })).toBe(`29.0${nbsp}mm or 30.0${nbsp}mm`);
    expect(slot({ holes: ["29 mm", "30 mm", "31 mm"] })).toBe(`29.0${nbsp}mm, 30.0${nbsp}mm or 31.0${nbsp}mm`);
    expect(slot({ holes: ["29 mm", "31 mm"] }, { measure: "to" })).toBe(`31.0${nbsp}mm`);
  });

  it("of a pair whose pitch nobody says has no centre distance to be held against", () => {
    expect(figure({ figure: "centre", of: "p" }, [pair("p", 15, 62)], { rear: [] })).toBe("not known");
  });

  it("falls short of a wall by what is lacking to it, by its name where it has one", () => {
    // The driven tips are 25.6 mm from their axis.
    const lack = (wall: object) =>
      figure(
        { figure: "shortfall" },
        [mesh],
        { rear: [] },
        {
          mounts: [{ stage: "primary", from: "30 mm", to: "32 mm", walls: [{ distance: "25.1 mm", ...wall }] }],
        },
      );
    expect(lack({ label: "bulkhead" })).toBe(`0.5${nbsp}mm, bulkhead`);
    expect(lack({})).toBe(`0.5${nbsp}mm, ${wordsFor("en").figures.lacks.wall}`);
    expect(lack({ distance: "26 mm" })).toBe("fits");
  });
});

describe("what is compared", () => {
  const rings = { front: [pair("f", 10, 20)], rear: [pair("r", 10, 21)] };
  const three = made([], { ...rings, wing: [pair("w", 10, 22)] }, { compare: undefined });
  const others = made([], { left: [], middle: [], right: [] });

  it("is the usual two, whichever of them is named", () => {
    expect(figure({ figure: "gap", with: "rear", scope: "gears" }, [], rings)).toBe("5.00%");
    // 20/21 is 4.76 % less.
    expect(figure({ figure: "gap", with: "front", scope: "gears" }, [], rings)).toBe("4.76%");
    expect(checkQuery({ figure: "gap", with: "wing" }, three)).toEqual([]);
  });

  it("is asked for where there are no usual two", () => {
    expect(told(checkQuery({ figure: "gap" }, others))).toEqual(["word-needed at /with"]);
    expect(told(checkQuery({ figure: "gap" }, made([], { rear: [] })))).toEqual(["word-needed at /of"]);
    const [base] = checkQuery({ figure: "gap", base: "lefft" }, others);
    expect([base!.at, base!.values.known, base!.values.nearest]).toEqual([
      ...["/base", ["left", "middle", "right", "mean"], ["left"]],
    ]);
  });

  it("takes a distance that is a length, and turns that are a number", () => {
    const asked = (figure: string, over: string) => told(checkQuery({ figure, over }, three));
    expect([asked("drift", "10 m"), asked("hand-turns", "10")]).toEqual([[], []]);
    for (const over of ["ten", "0 m", "-1 m", ""]) expect(asked("drift", over), over).toEqual(["not-size at /over"]);
    for (const over of ["ten", "0", "-1", "10 m"])
      expect(asked("hand-turns", over), over).toEqual(["not-positive at /over"]);
  });

  it("knows groups inside a lever's positions, and that a released one has none", () => {
    const box = {
      ...{ id: "box", kind: "selectable", selected: "free" },
      positions: [
        { id: "low", stages: [pair("slow", 10, 30, { group: "gearbox" })] },
        { id: "free", released: "free" },
      ],
    };
    const build = made([box], { rear: [pair("r", 1, 2, { group: "axle" })] });
    expect(checkQuery({ figure: "reduction", group: "gearbox" }, build)).toEqual([]);
    expect(checkQuery({ figure: "reduction", group: "gearbx" }, build)[0]!.values.nearest).toEqual(["gearbox"]);
  });
});

describe("names and addresses", () => {
  const build = made(
    [mesh],
    { rear: { from: "long" } },
    {
      branches: [{ id: "long", stages: [], split: { kind: "spool" } }],
      modes: [{ id: "crawl", positions: {} }],
      revision: { number: 2 },
      revisions: [{ number: 1, back: [] }],
    },
  );

  it("of a mode, a revision and a shaft's split are there, or told with the nearest", () => {
    expect(modeFault(build, "crawl")).toBeUndefined();
    expect(modeFault(build, "craal")!.values.nearest).toEqual(["crawl"]);
    expect(modeFault(made([], { rear: [] }), "crawl")!.values.known).toEqual([]);
    expect(versionFault(build, "revision-1")).toBeUndefined();
    expect(versionFault(build, "revision-9")!.values.known).toEqual(["article", "revision-1"]);
    expect(addressFault(build, "long.split.kind")).toBeUndefined();
    expect(addressFault(build, "long.split.kidn")!.nearest).toContain("long.split.kind");
    expect(addressFault(build, "longg")!.nearest).toContain("long");
    expect(addressFault(build, "wheelbase")).toBeUndefined();
  });
});

describe("what a writer writes", () => {
  const writer = new Writer({ locale: "en", words: wordsFor("en").figures });

  it("of a gap that may be none begins at level", () => {
    const words = ["ahead", "behind", "level"] as const;
    const percent = { percent: true, digits: 2 };
    expect(writer.worded(bounded(0, "0.0222"), ...words, percent)).toBe("level to 2.22% ahead");
    expect(writer.worded(bounded("-0.01", 0), ...words, percent)).toBe("1.00% behind to level");
    expect(writer.worded(bounded(0), ...words, percent)).toBe("level");
  });

  it("of several of which any will do is a list with or", () => {
    expect([[], ["a"], ["a", "b"], ["a", "b", "c"]].map((texts) => writer.oneOf(texts))).toEqual([
      ...["", "a", "a or b", "a, b or c"],
    ]);
    const german = new Writer({ locale: "de", words: wordsFor("de").figures });
    expect(german.oneOf(["a", "b", "c"])).toBe("a, b oder c");
  });
});

describe("a reason", () => {
  const reason = (one: Partial<Reason>): string => reasonText({ weight: "refusal", ...one } as Reason);

  it("names the coarser pitch first, whichever it was given as", () => {
    // 48 DP is 25.4 / 48 = 0.52917 mm: 5.83 % coarser than module 0.5.
    const [metric, inch] = [{ module: "0.5" }, { diametralPitch: "48" }] as const;
    const text = "Close, not equal: 48 DP is 5.83% coarser than module 0.5. Do not mesh them.";
    const coarser = rational("25.4").over(24).minus(1);
    expect(reason({ code: "pitch-near", pitches: [inch, metric], coarser })).toBe(text);
    expect(reason({ code: "pitch-near", pitches: [metric, inch], coarser: rational(24).over("25.4").minus(1) })).toBe(
      text,
    );
  });

  it("says pressure angles where they are given", () => {
    const pitches = [{ module: "0.5", pressureAngle: "14.5" }, { module: "0.5" }] as const;
    expect(reason({ code: "angle-different", pitches })).toBe(
      "Pressure angles differ: module 0.5 at 14.5°, module 0.5.",
    );
    expect(reason({ code: "pitch-different", pitches: [{ module: "0.5" }, {}] })).toBe(
      "module 0.5 does not mesh with .",
    );
  });

  it("says what is not known as dots, and its own words in the language", () => {
    const [one, other] = ["en", "de"].map((locale) => wordsFor(locale).reports.reasons);
    expect(reason({ code: "wall", available: bounded(1) })).toBe(
      "Leaves 1 mm to the wall, needs …, … more: … teeth at most.",
    );
    const undercut = (words: typeof one) =>
      reasonText({ code: "undercut", weight: "information", of: "driver" } as Reason, undefined, words);
    expect(undercut(one)).toContain(one!.terms.driver);
    expect(undercut(other)).toContain(other!.terms.driver);
  });
});

describe("a count in a sentence", () => {
  const forms = { one: "{0} gear", other: "{0} gears" };

  it("has the form and the digits of its language, and a form for all where there is no other", () => {
    expect([1, 2, 1234].map((count) => fillCount(forms, count, "en"))).toEqual(["1 gear", "2 gears", "1,234 gears"]);
    expect(fillCount({ other: "{0} Räder" }, 1, "de")).toBe("1 Räder");
    const arabic = { two: "اثنان", few: "{0} قليل", other: "{0}" };
    expect([2, 3].map((count) => fillCount(arabic, count, "ar"))).toEqual([
      "اثنان",
      expect.stringContaining("قليل") as string,
    ]);
    expect(fillCount({ other: "{0}" }, 1, "en")).toBe("1");
  });
});

describe("a turning circle", () => {
  it("is in feet where the build is in inches", () => {
    const wheel = { diameter: "4 in" };
    const axles = { front: { wheel, stages: [pair("f", 10, 20)] }, rear: { wheel, stages: [pair("r", 10, 21)] } };
    const circle = (more: object) => figure({ figure: "circle" }, [], axles, { wheelbase: "12 in", ...more });
    // The front rolls 21/20 as far: the rear's circle has a radius of 12 in · 20 / √(21² − 20²) = 37.5 in, 3.12 ft, 0.95 m.
    expect(circle({ lengths: "in" })).toBe(`3.1${nbsp}ft`);
    expect(circle({})).toMatch(/^(1|1\.0|0\.95)\u00a0m$/);
    expect(figure({ figure: "circle" }, [], axles)).toBe("not known");
  });
});
