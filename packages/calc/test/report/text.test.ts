import { describe, expect, it } from "vitest";
import type { Build } from "../../src/drivetrain/index.js";
import { evaluate } from "../../src/evaluate/index.js";
import { wordsFor } from "../../src/languages/all.js";
import { figureOf, type QueryText } from "../../src/report/index.js";
import { document, pair, read } from "../make.js";

const nbsp = "\u00a0";
const say = (build: Build, query: QueryText, locale = "en"): string =>
  figureOf(evaluate(build), query, { locale, words: wordsFor(locale).figures });

const axles = (more: object = {}, wheels: readonly [object, object] = [{}, {}]) =>
  document(
    [pair("primary", 15, 60)],
    {
      front: { stages: [pair("front-ring", 12, 36)], ...wheels[0] },
      rear: { stages: [pair("rear-ring", 12, 35)], ...wheels[1] },
    },
    more as never,
  );
const wheel = (diameter: string) => ({ wheel: { diameter } });

describe("a range", () => {
  const ranged = (from: unknown, to: unknown) => read(axles({ target: { from, to } }));

  it.each([
    ["28.5", "32.5", "28.5 to 32.5"],
    [38, 46, "38 to 46"],
    ["38.50", 46, "38.50 to 46"],
    [28.5, 32, "28.5 to 32"],
  ])("of %s to %s is shown with the digits it was given", (from, to, text) => {
    expect(say(ranged(from, to), { figure: "range" })).toBe(text);
  });

  it("of fewer digits stays within itself", () => {
    expect(say(ranged("28.5", "32.5"), { figure: "range", digits: 0 })).toBe("29 to 32");
  });

  it("has the digits of the language, and its word for ranges", () => {
    const texts = ["de", "fr", "es", "ja", "ar-EG"].map((locale) =>
      say(ranged("28.5", "32"), { figure: "range" }, locale),
    );
    expect(texts).toEqual(["28,5 bis 32", "28,5 à 32", "28,5 a 32", "28.5～32", "٢٨٫٥ إلى ٣٢"]);
  });
});

describe("gears that drive each other", () => {
  const shared = [
    pair("spur", 15, 62),
    { id: "row", kind: "train", teeth: [18, 31, 45] },
    { id: "sun", kind: "planetary", sun: 18, ring: 60, fixed: "ring", input: "sun", output: "carrier", repeat: 2 },
    { id: "worm", kind: "worm", starts: 2, teeth: 30 },
    { id: "belt", kind: "belt", driver: 20, driven: 60 },
    { id: "chain", kind: "belt", chain: true, driver: 14, driven: 42 },
    { id: "box", kind: "published", value: "2.60" },
    {
      id: "lever",
      kind: "selectable",
      selected: "low",
      positions: [
        { id: "low", label: "Low", stages: [pair("low-pair", 20, 60)] },
        { id: "out", released: "free" },
      ],
    },
  ];
  const build = read(document(shared, { rear: [] }));
  const all = (locale: string, measure?: string) =>
    shared.map(({ id }) => say(build, { figure: "counts", of: id as string, ...(measure && { measure }) }, locale));

  it.each([
    [
      "en",
      [
        "15 driving 62",
        "18 driving 31 driving 45",
        "sun 18 in ring 60 × 2",
        "worm 2 driving 30",
        "belt 20 driving 60",
        "chain 14 driving 42",
        "printed 2.60",
        "Low, 20 driving 60",
      ],
    ],
    [
      "de",
      [
        "15 auf 62",
        "18 auf 31 auf 45",
        "Sonnenrad 18 im Hohlrad 60 × 2",
        "Schnecke 2 auf 30",
        "Riemen 20 auf 60",
        "Kette 14 auf 42",
        "aufgedruckt 2,60",
        "Low, 20 auf 60",
      ],
    ],
    [
      "fr",
      [
        "15 entraînant 62",
        "18 entraînant 31 entraînant 45",
        "solaire 18 dans couronne 60 × 2",
        "vis 2 entraînant 30",
        "courroie 20 entraînant 60",
        "chaîne 14 entraînant 42",
        "imprimé 2,60",
        "Low, 20 entraînant 60",
      ],
    ],
    [
      "es",
      [
        "15 que mueve 62",
        "18 que mueve 31 que mueve 45",
        "solar 18 en corona 60 × 2",
        "sinfín 2 que mueve 30",
        "correa 20 que mueve 60",
        "cadena 14 que mueve 42",
        "impreso 2,60",
        "Low, 20 que mueve 60",
      ],
    ],
    [
      "ja",
      [
        "15が62を駆動",
        "18が31を駆動、31が45を駆動",
        "太陽歯車 18 内歯車 60 × 2",
        "ウォーム 2が30を駆動",
        "ベルト 20が60を駆動",
        "チェーン 14が42を駆動",
        "表示 2.60",
        "Low、20が60を駆動",
      ],
    ],
    [
      "ar",
      [
        "15 يدير 62",
        "18 يدير 31 يدير 45",
        "شمسي 18 في الحلقي 60 × 2",
        "دودي 2 يدير 30",
        "سير 20 يدير 60",
        "سلسلة 14 يدير 42",
        "مطبوع 2.60",
        "Low، 20 يدير 60",
      ],
    ],
  ])("read as a sentence in %s, whatever their kind", (locale, texts) => {
    expect(all(locale)).toEqual(texts);
  });

  it("are an arrow in tables, in the direction of reading", () => {
    expect(all("en", "arrow").slice(0, 5)).toEqual([
      "15 → 62",
      "18 → 31 → 45",
      "sun 18 in ring 60 × 2",
      "worm 2 → 30",
      "belt 20 → 60",
    ]);
    expect(all("ar-EG", "arrow").slice(0, 2)).toEqual(["١٥ ← ٦٢", "١٨ ← ٣١ ← ٤٥"]);
    expect(all("he", "arrow")[0]).toBe("15 ← 62");
  });

  it("are never written with the word of a range", () => {
    for (const locale of ["en", "de", "fr", "es", "ja", "ar"]) {
      const { range, driving, drives } = wordsFor(locale).figures;
      const word = (sentence: string) => sentence.replace(/\{\d\}/g, " ").trim();
      expect([word(driving), word(drives)]).not.toContain(word(range));
    }
  });

  it("a box with its lever out says so", () => {
    const out = read(document([{ ...shared.at(-1)!, selected: "out" }], { rear: [] }));
    expect(say(out, { figure: "counts", of: "lever" })).toBe("free");
  });
});

describe("the mount of a pair", () => {
  const mounted = (
    mount: object,
    stage: Readonly<Record<string, unknown>> = { module: "0.8" },
    counts: readonly [number, number] = [15, 62],
  ) => read(document([pair("primary", ...counts, stage)], { rear: [] }, { mounts: [{ stage: "primary", ...mount }] }));
  const both = (build: Build) => [
    say(build, { figure: "slot" }),
    say(build, { figure: "fit" }),
    say(build, { figure: "shortfall" }),
  ];

  it("leaves what all its limits leave", () => {
    // Its slot from 30 to 32, makers' sums from 76 to 79 teeth: 30.4 to 31.6.
    expect(both(mounted({ from: "30 mm", to: "32 mm", toothSum: [76, 79] }))).toEqual([
      `30.4${nbsp}mm to 31.6${nbsp}mm`,
      "fits",
      "fits",
    ]);
    expect(say(mounted({ from: "30 mm", to: "29 mm" }), { figure: "slot" })).toBe("none");
  });

  it("is rounded inward: 31.999 is not 32", () => {
    const build = mounted({ from: "30.001 mm", to: "31.999 mm" });
    expect(say(build, { figure: "slot" })).toBe(`30.01${nbsp}mm to 31.99${nbsp}mm`);
    expect(say(build, { figure: "slot", digits: 0 })).toBe(`31${nbsp}mm`);
    expect(say(build, { figure: "slot", measure: "to", unit: "in" })).toBe(`1.259${nbsp}in`);
  });

  it("may be open at one end", () => {
    expect(say(mounted({ to: "31.3 mm" }), { figure: "slot" })).toBe(`up to 31.3${nbsp}mm`);
    expect(say(mounted({ from: "30 mm" }), { figure: "slot" })).toBe(`from 30.0${nbsp}mm`);
    expect(say(mounted({ opening: "0.1 mm" }), { figure: "slot" })).toBe("not known");
  });

  it("is a row of holes, as many as the rest of it leaves", () => {
    const holes = ["32 mm", "30.8 mm", "29 mm"];
    expect(both(mounted({ holes }))).toEqual([`29.0${nbsp}mm, 30.8${nbsp}mm or 32.0${nbsp}mm`, "fits", "fits"]);
    expect(say(mounted({ holes, from: "30 mm" }), { figure: "slot" })).toBe(`30.8${nbsp}mm or 32.0${nbsp}mm`);
    expect(say(mounted({ holes, from: "33 mm" }), { figure: "slot" })).toBe("none");
    expect(say(mounted({ holes }), { figure: "slot" }, "de")).toBe(`29,0${nbsp}mm, 30,8${nbsp}mm oder 32,0${nbsp}mm`);
  });

  it.each<[string, object, Record<string, unknown> | undefined, string]>([
    ["the slot's end", { to: "30 mm" }, undefined, `0.8${nbsp}mm`],
    ["a hole", { holes: ["30 mm", "32 mm"] }, undefined, `0.8${nbsp}mm, holes of the mount`],
    ["a wall by its name", { walls: [{ label: "skid", distance: "25.5 mm" }] }, undefined, `0.1${nbsp}mm, skid`],
    ["a wall without a name", { walls: [{ distance: "25.5 mm" }] }, undefined, `0.1${nbsp}mm, wall`],
    ["a pitch that nobody gives", { to: "30 mm" }, {}, "cannot tell: pitch"],
    ["axes that cross", { to: "30 mm" }, { form: "bevel", module: "0.8" }, "cannot tell: crossed axes"],
    ["a helix that nobody gives", { to: "30 mm" }, { form: "helical", module: "0.8" }, "cannot tell: helix angle"],
  ])("falls short by %s, and says what", (_what, mount, stage, text) => {
    const build = mounted(mount, stage);
    expect(say(build, { figure: "shortfall" })).toBe(text);
    expect(say(build, { figure: "fit" })).not.toBe("fits");
  });

  it("sets a mesh to the hundredth of a millimetre, to the thousandth of an inch", () => {
    // 93 and 56 teeth of 64 DP: 149 / 128 in = 1.1640625 in = 29.5671875 mm.
    const build = mounted({ from: "1 in", to: "1.25 in" }, { diametralPitch: 64 }, [56, 93]);
    expect(say(build, { figure: "centre" })).toBe(`29.57${nbsp}mm`);
    expect(say(build, { figure: "centre", unit: "in" })).toBe(`1.164${nbsp}in`);
    expect(say(build, { figure: "slot", unit: "in" })).toBe(`1.000${nbsp}in to 1.250${nbsp}in`);
    expect(say(build, { figure: "centre", unit: "cm" })).toBe(`2.957${nbsp}cm`);
  });
});

describe("two axles", () => {
  it("without tyres are compared by their gears, and the text says so unless it was asked for", () => {
    const build = read(axles());
    const texts = ["gap", "lead", "farther", "leader", "drift"].map((figure) => say(build, { figure }));
    // 35 / 36 − 1 = −2.78 %.
    expect(texts).toEqual([
      "2.78%, gears alone",
      "2.78% behind, gears alone",
      "2.78% less far, gears alone",
      "behind, gears alone",
      `278${nbsp}mm, gears alone`,
    ]);
    expect(say(build, { figure: "lead", scope: "gears" })).toBe("2.78% behind");
    expect(say(build, { figure: "lead", scope: "tyres" })).toBe("not known");
    expect(say(build, { figure: "lead" }, "de").replace(/\s/g, " ")).toBe("2,78 % zurück, nur Zahnräder");
    expect(say(read(axles({}, [wheel("120 mm"), {}])), { figure: "lead" })).toBe("2.78% behind, gears alone");
  });

  it("are compared in the rounding of the build", () => {
    const rounding = { minimumFractionDigits: 1, maximumFractionDigits: 1, roundingMode: "ceil" };
    const build = read(axles({ rounding }, [wheel("120 mm"), wheel("120 mm")]));
    expect(say(build, { figure: "gap" })).toBe("2.8%");
    expect(say(build, { figure: "change" })).toBe("0.0%");
  });

  it("change with their tyres: what changes is told, and what does not is not", () => {
    const before = axles({}, [wheel("120 mm"), wheel("120 mm")]);
    const build = read({
      ...before,
      alternatives: [{ id: "large", changes: { "rear.wheel": { diameter: "124 mm" } } }],
    });
    const measures = ["reduction", "wheel-speed", "wheel-torque", "midpoint", "travel"];
    const changed = evaluate(read(axles({}, [wheel("120 mm"), wheel("124 mm")])));
    const texts = measures.map((measure) =>
      figureOf(changed, { figure: "change", of: "rear", measure }, { version: () => evaluate(build) }),
    );
    // 124 / 120 − 1 = 3.33 %; back again 120 / 124 − 1 = −3.23 %.
    expect(texts).toEqual(["0.00%", "0.00%", "0.00%", "0.00%", "+3.33%"]);
    expect(say(build, { figure: "change", of: "rear", measure: "travel", from: "large" })).toBe("\u22123.23%");
  });
});

describe("an open differential in the middle", () => {
  const build = (centre: object | undefined) =>
    read(
      axles(
        {
          ...(centre && { centre }),
          wheelbase: "310 mm",
          motor: { kv: 100 },
          battery: { cells: 2, chemistry: "lipo" },
        },
        [wheel("124 mm"), wheel("120 mm")],
      ),
    );
  const open = build({ kind: "differential" });

  // Front 4 · 3 = 12, rear 4 · 35 / 12 = 11.6667. Along the road 12 / 124 = 0.0967742 and 0.0972222: mean 0.0969982,
  // times 124 is 12.0278, times 120 is 11.6398. The front is 0.46 % ahead; taken up: −0.000448 / 0.0969982 = 0.46 %.
  it.each<[QueryText, string]>([
    [{ figure: "reduction", of: "front", drive: "locked" }, "12.00"],
    [{ figure: "reduction", of: "front", drive: "straight-on" }, "12.03"],
    [{ figure: "reduction", of: "rear", drive: "straight-on" }, "11.64"],
    [{ figure: "reduction", of: "front" }, "12.03, straight on"],
    [{ figure: "reduction", of: "front-ring" }, "3.00"],
    [{ figure: "lead" }, "0.46% ahead, locked"],
    [{ figure: "lead", drive: "locked" }, "0.46% ahead"],
    [{ figure: "taken-up" }, "0.46%"],
    [{ figure: "travel", of: "front" }, `32.39${nbsp}mm, straight on`],
    [{ figure: "travel", of: "rear" }, `32.39${nbsp}mm, straight on`],
    [{ figure: "travel", of: "front", drive: "locked" }, `32.46${nbsp}mm`],
    [{ figure: "speed", of: "front", drive: "straight-on" }, `1.6${nbsp}km/h`],
    [{ figure: "wheel-rpm", of: "front", digits: 2, drive: "straight-on" }, "69.84"],
    [{ figure: "wheel-rpm", of: "rear", digits: 2, drive: "straight-on" }, "72.17"],
    [{ figure: "wheel-rpm", of: "front", digits: 2 }, "69.84, straight on"],
  ])("%j: %s", (query, text) => {
    expect(say(open, query)).toBe(text);
  });

  it("turns its axles by their shares", () => {
    // 0.4 · 0.0967742 + 0.6 · 0.0972222 = 0.0970430, times 124 is 12.0333.
    const uneven = build({ kind: "differential", share: { front: "0.4", rear: "0.6" } });
    expect(say(uneven, { figure: "reduction", of: "front", drive: "straight-on", digits: 4 })).toBe("12.0333");
  });

  it("is nothing that a spool has to say", () => {
    const spool = build(undefined);
    expect(say(spool, { figure: "reduction", of: "front" })).toBe("12.00");
    expect(say(spool, { figure: "lead" })).toBe("0.46% ahead");
    expect(say(spool, { figure: "taken-up" })).toBe("not known");
  });

  it("is not known straight on where a wheel is not given", () => {
    const bare = read(axles({ centre: { kind: "differential" } }, [wheel("124 mm"), {}]));
    expect(say(bare, { figure: "reduction", of: "front", drive: "straight-on" })).toBe("not known");
    expect(say(bare, { figure: "travel", of: "front" })).toBe(`32.46${nbsp}mm, locked`);
    expect(say(bare, { figure: "reduction", of: "front" })).toBe("12.00, locked");
    // Without any wheel equal tyres are taken for granted: half of 12 and half of 11.6667.
    const none = read(axles({ centre: { kind: "differential" } }));
    expect(say(none, { figure: "reduction", of: "front" })).toBe("11.83, straight on, gears alone");
  });
});
