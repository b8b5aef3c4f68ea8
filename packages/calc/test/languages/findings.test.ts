import { brotliCompressSync } from "node:zlib";
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import {
  applyChanges,
  attributeFindings,
  missingElement,
  buildFromAttributes,
  passedOver,
  changesFrom,
  layOver,
  linkOf,
  parseBuild,
  readBuild,
} from "../../src/document/index.js";
import { evaluate } from "../../src/evaluate/index.js";
import { languageCodes, wordsFor } from "../../src/languages/all.js";
import { findingWords, messageOf } from "../../src/languages/index.js";
import { electricalFindings } from "../../src/motion/index.js";
import { fittedFindings, readParts } from "../../src/parts/index.js";
import { checkQuery } from "../../src/report/index.js";
import { errorOf, findingOf, type Finding, type FindingCode } from "../../src/stages/index.js";
import { sealed } from "../../src/document/link-text.js";

type Data = Record<string, unknown>;
const codes = Object.keys(findingWords.texts) as FindingCode[];
const others = languageCodes.filter((code) => code !== "en");

const pair = (id: string, more: Data = {}): Data => ({ id, kind: "pair", driver: 12, driven: 35, ...more });
const made = (more: Data = {}, stages: readonly unknown[] = [pair("ring")]): Data => ({
  format: "meshwright-build/1",
  outputs: [{ id: "rear", label: "Rear axle", stages }],
  ...more,
});
const told = (json: unknown): readonly Finding[] => readBuild(json).findings;
const build = (more: Data = {}, stages?: readonly unknown[]) => parseBuild(made(more, stages));
const two = (more: Data = {}, rear: Data = {}) =>
  made({
    outputs: [
      { id: "front", label: "Front axle", stages: [pair("front-ring")] },
      { id: "rear", label: "Rear axle", stages: [pair("ring")], ...rear },
    ],
    ...more,
  });
const lever = (more: Data = {}): Data => ({
  id: "box",
  kind: "selectable",
  selected: "low",
  positions: [
    { id: "low", stages: [pair("low-pair")] },
    { id: "loose", released: "free" },
  ],
  ...more,
});
const planets = (more: Data): Data => ({
  ...{ id: "hub", kind: "planetary", sun: 18, ring: 54, fixed: "ring", input: "sun", output: "carrier" },
  ...more,
});
const rounding = (more: Data) => told(made({ rounding: more }));
const notation = (more: Readonly<Record<string, string>>) => buildFromAttributes({ stages: "", ...more }).findings;
const spur = (label: string) => build({}, [pair("ring", { label, set: true })]);
const levered = build({}, [lever()]);
const open = (axles: readonly Data[]): Finding[] => [
  ...evaluate(parseBuild(made({ centre: { kind: "differential" }, outputs: axles }))).findings,
];
const axle = (id: string, stages: readonly Data[], more: Data = {}): Data => ({
  id,
  label: `The ${id}`,
  stages,
  ...more,
});
const outside = (id: string, more: Data = {}) => pair(id, { form: "spur", ...more });
const changed = (change: Data) => applyChanges(levered, [change as never]).findings;
const ring = (driver: number) => build({}, [pair("ring", { label: "Ring", driver })]);
const rings = [0, 1].map((n) =>
  build({}, [pair("ring", { label: "Ring", internal: true, driver: 20, driven: 60 + n })]),
) as [ReturnType<typeof build>, ReturnType<typeof build>];

/** Documents, notations, queries, links and changes that are wrong, one at the least for each code. */
const wrong = (): readonly Finding[] => [
  ...['{"a": }', '{"a": 1', "{a: 1}", '"a', "[1 2]", '{"a" 1}', "[1] 2"].flatMap(told),
  ...told('{"a": 1, "a": 2}'),
  ...told(
    Object.defineProperty({}, "format", {
      enumerable: true,
      get() {
        throw new Error();
      },
    }),
  ),
  ...told(made({ format: "meshwright-build/2" })),
  ...told(made({ uses: ["cycloidl"] })),
  ...told(made({ taget: 1 })),
  ...told(made({ format: "meshwright-build/1.7", taget: 1 })),
  ...told({ format: "meshwright-build/1" }),
  ...told(made({}, [pair("ring", { kind: "pear" })])),
  ...told(made({}, [pair("ring", { set: 1 })])),
  ...told(made({ lengths: "im" })),
  ...told(made({ outputs: [] })),
  ...told(made({ motor: 5 })),
  ...told(made({ alternatives: [{ id: "a", changes: { "Ring driver": 1 } }] })),
  ...told(
    made(
      {
        mounts: [{ stage: "ring", toothSum: [40, 60] }],
        alternatives: [{ id: "a", changes: { "ring.module": "0.5" } }],
      },
      [pair("ring", { label: "Ring", module: "0.8" })],
    ),
  ),
  ...told(made({ "x-a": () => 0 })),
  ...told(made({}, [pair("Ring")])),
  ...told(made({ title: 7 })),
  ...told(made({ revision: { number: 0, date: "2026-02-31" } })),
  ...told({ ...made(), format: "meshwright" }),
  ...told(made({}, [planets({ repeat: 0 })])),
  ...rounding({ maximumFractionDigits: 101 }),
  ...rounding({ maximumSignificantDigits: 22 }),
  ...rounding({ roundingIncrement: 3 }),
  ...rounding({ roundingIncrement: 5, minimumFractionDigits: 1, maximumFractionDigits: 2 }),
  ...rounding({ minimumFractionDigits: 3, maximumFractionDigits: 2 }),
  ...told(made({ parts: [{ id: "p", is: "other", owned: -1, price: { amount: "x", currency: "euro" } }] })),
  ...told(made({ motor: { kv: 0 }, wheelbase: "3 yd" })),
  ...told(made({ mounts: [{ stage: "ring", from: "1 mm", to: "2 mm", closer: "much" }] })),
  ...told(made({}, [pair("ring", { driverShift: "x", shift: "x", pressureAngle: "x" })])),
  ...told(made({ mounts: [{ stage: "ring", pivot: { distance: "1 mm", arm: "1 mm", from: "x", to: 1 } }] })),
  ...told(made({}, [{ id: "hub", kind: "published", value: "x" }])),
  ...notation({ rear: "Ring: 12 to 35", title: "a".repeat(300_001) }),
  ...told(made({ "x-a": Array.from({ length: 300 }).reduce<unknown>((inner) => [inner], 0) })),
  ...told(made({ motor: { kv: 1 / 3 } })),
  errorOf("meaning", "load-failed", "", { address: "limpet.json", found: 404 }),
  errorOf("meaning", "no-build", ""),
  ...told(made({}, [pair("ring"), pair("ring")])),
  ...told(made({}, [pair("motor")])),
  ...told(made({ headline: "raer" })),
  ...told(made({ alternatives: [{ id: "a", changes: { "rng.driver": 1 } }] })),
  ...told(made({ stages: Array.from({ length: 10_000 }, (_, n) => pair(`s${n}`)) })),
  ...told(made({}, [{ id: "b", kind: "belt", driver: 1, driven: 1, pitch: "999999999999 ft", beltTeeth: 1_000_000 }])),
  ...told(made({}, [{ id: "a", kind: "published", value: "2.5", sameAs: "a" }])),
  ...told(made({ references: [{ id: "sold" }] })),
  ...told(made({ references: [{ id: "sold", build: made({ references: [] }) }] })),
  ...told(made({ revision: { number: 2 }, revisions: [{ number: 3, back: [{ remove: "ring", insert: pair("x") }] }] })),
  ...told(made({ revision: { number: 2 }, revisions: [{ number: 1, back: [{ insert: pair("x") }] }] })),
  ...told(
    made({
      stages: Array.from({ length: 5000 }, (_, n) => pair(`s${n}`)),
      alternatives: Array.from({ length: 5 }, (_, n) => ({ id: `a${n}`, changes: { stages: [pair(`other-${n}`)] } })),
    }),
  ),
  ...told(
    made({}, [
      { id: "a", kind: "published", value: "2.5" },
      { id: "b", kind: "published", value: "2.6", sameAs: "a" },
    ]),
  ),
  ...told(two({ centre: { kind: "differential", share: { front: 1 } } })),
  ...told(two({ centre: { kind: "spool", share: { front: 1, rear: 1 } }, compare: { of: "front", with: "front" } })),
  ...told(made({ mounts: [{ stage: "ring" }, { stage: "ring" }] })),
  ...told(made({ mounts: [{ stage: "ring", knownPair: [12, 35], closer: "40 mm" }] }, [pair("ring", { module: 1 })])),
  ...notation({ rear: "12 to 35, set, set" }),
  ...notation({ front: "Ring: 12 to 35", rear: "Ring: 12 to 35", mount: "Ring: 23 mm to 24 mm" }),
  ...told(two({ branches: [{ id: "shaft", stages: [] }] }, { from: "shaft", motor: { kv: 1000 } })),
  ...told(
    made({}, [{ id: "m", kind: "measured", turnsIn: 40, turnsOut: { from: "0.9", to: "0.8" }, spans: [lever()] }]),
  ),
  ...told(made({ outputs: [{ id: "rear", stages: [], wheel: {} }] })),
  ...told(made({ target: { from: 46, to: 38 } })),
  ...told(made({}, [pair("ring", { internal: true, driver: 35, driven: 12 })])),
  ...told(made({}, [planets({ output: "sun" })])),
  ...told(made({}, [planets({ planet: 17, planets: 5 })])),
  ...told(made({}, [planets({ planet: 18, planets: 12 })])),
  ...told(made({}, [{ id: "c", kind: "cycloidal", lobes: 12, pins: 11 }])),
  ...told(made({}, [{ id: "w", kind: "worm", starts: 20, teeth: 2 }])),
  ...told(made({}, [pair("ring", { module: "0.8", pressureAngle: 89, diametralPitch: 32 })])),
  ...told(made({}, [pair("ring", { driven: 1, module: 45, drivenShift: 1, pressureAngle: 89 })])),
  ...told(made({}, [{ id: "hub", kind: "published", value: "19" }])),
  ...told(made({}, [lever({ selected: "lwo" })])),
  ...told(made({}, [lever({ positions: [{ id: "low" }] })])),
  ...changed({ set: "box", to: null }),
  ...changed({ remove: "rear" }),
  ...changed({ remove: "lwo" }),
  ...changed({ move: "box", into: "rear", at: 9 }),
  ...changed({ move: "box", into: "box.low", at: 0 }),
  ...applyChanges(spur("Ring and pinion"), { "ring.driver": 13 }).findings,
  ...layOver(build({}, [lever({ label: "Gearbox" })]), {
    structure: [],
    sets: { "gone.driver": 13 },
  }).dropped.flatMap(({ address, label, why }) => [
    why,
    findingOf("warning", "meaning", "change-dropped", address, { label, why }),
  ]),
  findingOf("warning", "meaning", "went-along", "box", {
    label: "Gearbox",
    what: [{ term: "mount" }, { term: "parts", amount: 3 }, "Deeper"],
  }),
  ...changesFrom("no link", build()).findings,
  ...changesFrom(sealed("changes", "A"), build()).findings,
  ...changesFrom(sealed("build" as never, "A"), build()).findings,
  ...changesFrom(linkOf(ring(12), { "ring.driver": 13 }), ring(14)).findings,
  ...changesFrom(linkOf(rings[0], { "ring.driver": 59 }), rings[1]).findings,
  errorOf("meaning", "change-refused", "ring", { address: "Ring", why: errorOf("meaning", "no-longer-there", "ring") }),
  errorOf("meaning", "newer-link", ""),
  errorOf("meaning", "link-words", "title", { address: "title" }),
  ...notation({ rear: "Ring: twelve" }),
  ...buildFromAttributes({ rear: "Ring: 12 to 35" }).findings,
  ...notation({ "rear-wheel": "120 mm" }),
  ...notation({ rear: "Ring: 12 to 35, Hub: 15 to 22" }),
  ...notation({ rear: "Ring: 12 to 35, modul 0.8" }),
  ...notation({ raer: "Ring: 12 to 35" }),
  ...notation({ aft: "Ring: 12 to 35" }),
  ...notation({ rear: "Ring: 12 to 35", seal: "abc" }),
  ...attributeFindings("mw-value", ["figur"]),
  missingElement("mw-vaule")!,
  missingElement("mw-working")!,
  ...passedOver(["src", "stages"], false),
  ...evaluate(
    parseBuild(
      made({
        outputs: [axle("front", [outside("f1")]), axle("rear", [outside("r1"), outside("r2")])],
      }),
    ),
  ).findings,
  ...open([axle("front", [pair("f")]), axle("rear", [pair("r")], { wheel: { diameter: "90 mm" } })]),
  ...open([
    axle("front", [pair("f")], { wheel: { diameter: "90 mm" } }),
    axle("rear", [lever({ selected: "loose" })], { wheel: { diameter: "90 mm" } }),
  ]),
  findingOf("warning", "meaning", "chemistry-not-known", "/battery", { cells: 3, chemistry: "nixx" }),
  ...fittedFindings(build({ parts: [{ id: "p", is: "pinion", teeth: 11 }] }, [pair("ring", { fitted: ["p"] })])),
  ...electricalFindings(
    build({
      battery: { cells: 3, chemistry: "lipo" },
      controller: { maxVolts: 10 },
      motor: { kv: 4000, maxRpm: 30000, maxVolts: 10 },
    }),
  ),
  ...readParts([{ id: "s62", is: "spur" }]).findings,
  ...checkQuery({ figure: "leed" }, build()),
  ...checkQuery({ figure: "travel", unit: "MM" }, build()),
  ...checkQuery({ figure: "speed", unit: "kph" }, build()),
  ...checkQuery({ figure: "travel", base: "rear" }, build()),
  ...checkQuery({ figure: "lead" }, build()),
  ...checkQuery({ figure: "count" }, build()),
  errorOf("meaning", "figure-missing", "", { element: "<mw-value>", why: "…" }),
];

const findings = wrong();
const places = (text: string): string => [...new Set(text.match(/\{\w+\}/g))].sort().join();
const optional = (text: string): string => (text.match(/\[[^\]]*\]/g) ?? []).map(places).sort().join(";");

describe("findings", () => {
  it("are found in documents, notations, queries, links and changes: one at the least of each code", () => {
    const found = new Set(findings.map(({ code }) => code));
    expect(codes.filter((code) => !found.has(code))).toEqual([]);
  });

  it("say the same in English as they bear", () => {
    for (const finding of findings) expect(messageOf(finding, findingWords)).toBe(finding.message);
  });
});

describe.each(languageCodes)("%s", (language) => {
  const { findings: words } = wordsFor(language);

  it("says every finding with all its values: no place stays empty", () => {
    for (const finding of findings) {
      const { code, values } = finding;
      const text = messageOf(finding, words);
      expect(text, code).not.toMatch(/[{}[\]](?![^"]*")|undefined|@(?!meshwright)\w|^\s|\s$/);
      const bare = text.replace("x-…", "").replaceAll(", …", "").replaceAll("、…", "").replaceAll("، …", "");
      if (code !== "figure-missing") expect(bare, `${code}: ${text}`).not.toContain("…");
      for (const [name, value] of Object.entries(values))
        if (words.texts[code].includes(`{${name}}`) && typeof value === "string" && !value.startsWith("@"))
          expect(text, code).toContain(value);
    }
  });
});

describe.each(others)("%s", (language) => {
  const { findings: words } = wordsFor(language);

  it("has a sentence for each code, with the places of the English one, and the same left out together", () => {
    expect(Object.keys(words.texts)).toEqual(codes);
    expect(Object.keys(words.terms)).toEqual(Object.keys(findingWords.terms));
    for (const code of codes) {
      const [own, english] = [words.texts[code], findingWords.texts[code]];
      expect(places(own), code).toBe(places(english));
      expect(optional(own), code).toBe(optional(english));
      if (/[a-z]{3}/.test(english.replace(/\{\w+\}/g, ""))) expect(own, code).not.toBe(english);
    }
    for (const [name, english] of Object.entries(findingWords.terms)) {
      const own = words.terms[name as keyof typeof words.terms];
      expect(places(own), name).toBe(places(english));
      expect(own, name).not.toBe(english);
    }
  });

  it("bears in 4 kB", () => {
    const source = readFileSync(new URL(`../../src/languages/findings/${language}.ts`, import.meta.url));
    expect(brotliCompressSync(source).length).toBeLessThan(4096);
    expect(source.toString().match(/^import (?!type )/gm)).toBeNull();
  });

  it("calls things as figures and reports do", () => {
    const { figures } = wordsFor(language);
    const has = (code: FindingCode, word: string) => expect(words.texts[code].toLowerCase(), code).toContain(word);
    const stem = (word: string) => word.toLowerCase().replace(/^ال/, "").slice(0, 5);
    has("ring-too-small", stem(figures.lacks.ring));
    has("pins-too-few", stem(figures.joints.pins));
    has("planet-does-not-fit", stem(figures.joints.sun));
    has("not-a-stage", stem(figures.stage));
    has("wheel-needed", stem(figures.straightOn.replace(/時$/, "")));
    has(
      "outputs-oppose",
      { de: "gegeneinander", fr: "sens contraire", es: "sentidos opuestos", ja: "逆に回", ar: "متعاكسين" }[language]!,
    );
  });
});

describe("a sentence from right to left", () => {
  const { findings: words } = wordsFor("ar");

  it("keeps every word of the document apart from it", () => {
    for (const finding of findings) {
      const text = messageOf(finding, words);
      const outsideOf = text.replace(/\u2068[^\u2068\u2069]*\u2069/g, "");
      expect(outsideOf, `${finding.code}: ${text}`).not.toMatch(/\p{Script=Latin}/u);
      expect(text.split("\u2068").length, finding.code).toBe(text.split("\u2069").length);
    }
  });

  it("does so in a list too, word by word", () => {
    const [finding] = attributeFindings("mw-value", ["wit"]);
    expect(messageOf(finding!, words)).toContain("\u2068with\u2069");
    expect(messageOf({ code: "change-unclear", values: { needed: ["at", "to"] } }, words)).toContain(
      "\u2068at\u2069، \u2068to\u2069",
    );
  });
});
