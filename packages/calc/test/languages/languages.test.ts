import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { fits } from "../../src/fit/index.js";
import { languageCodes, wordsFor } from "../../src/languages/all.js";
import {
  canonicalLocale,
  figureWords,
  fill,
  fillCount,
  isRightToLeft,
  pitchText,
  reasonText,
  reportWords,
  stringsFrom,
  type FigureWords,
} from "../../src/languages/index.js";

type Node = string | readonly string[] | { readonly [name: string]: Node };
const others = languageCodes.filter((code) => code !== "en");

const isForms = (node: Node): node is { readonly [form: string]: string } =>
  typeof node === "object" && !Array.isArray(node) && "other" in node;
const placeholders = (text: string): string => [...new Set(text.match(/\{\w+\}/g))].sort().join();

/** Every string with its path; sentences by count as one. */
function* strings(node: Node, path = ""): Generator<[string, string | { readonly [form: string]: string }]> {
  if (typeof node === "string" || isForms(node)) yield [path, node];
  else for (const [name, one] of Object.entries(node)) yield* strings(one as Node, `${path}.${name}`);
}

/** Said in the same letters in two languages, or of signs only. */
const shared = new Set([
  "fr.figures.lacks.contact",
  "fr.reports.reasons.module",
  "fr.reports.nominal",
  "fr.reports.room",
  "es.reports.nominal",
  "es.reports.line.motor",
  "es.reports.ownPlaces.motor",
  "es.reports.partKinds.motor",
]);

describe.each(others)("%s", (code) => {
  const own = wordsFor(code);

  it.each(["figures", "reports"] as const)("says all of the %s, with the same values in each sentence", (kind) => {
    const english = new Map(strings(wordsFor("en")[kind] as unknown as Node, kind));
    const theirs = new Map(strings(own[kind] as unknown as Node, kind));
    expect([...theirs.keys()]).toEqual([...english.keys()]);
    for (const [path, text] of theirs) {
      const known = english.get(path)!;
      if (typeof text === "object") {
        const { pluralCategories } = new Intl.PluralRules(code).resolvedOptions();
        expect(Object.keys(text).sort(), path).toEqual([...pluralCategories].sort());
        for (const one of Object.values(text)) expect(placeholders(one), path).toMatch(/^(\{0\})?$/);
        expect(placeholders(text.other!), path).toBe(placeholders((known as { other: string }).other));
        continue;
      }
      expect(placeholders(text), path).toBe(placeholders(known as string));
      expect(text, path).not.toMatch(/^\s|\s$|^$/);
      const bare = text.replace(/\{\w+\}/g, "");
      if (/\p{L}{2,}/u.test(bare))
        expect(text === known && !shared.has(`${code}.${path}`), `${path}: ${text}`).toBe(false);
      // A word in Latin letters is a unit or a name of the trade.
      if (code === "ar" || code === "ja")
        expect(bare.replace(/\bkV\b|\bV\b/g, ""), path).not.toMatch(/\p{Script=Latin}/u);
    }
  });

  it("imports nothing at run time: it is a file that a page fetches by itself", () => {
    for (const kind of ["figures", "reports"]) {
      const source = readFileSync(new URL(`../../src/languages/${kind}/${code}.ts`, import.meta.url), "utf8");
      expect(source.match(/^import (?!type )/gm)).toBeNull();
    }
  });
});

describe("words", () => {
  it("are English for a language that has none, and for what is no language", () => {
    expect(wordsFor("it").figures).toEqual(figureWords);
    expect(wordsFor("constructor").figures).toEqual(figureWords);
    expect(wordsFor("de_AT").figures.inside).toBe("im Bereich");
  });

  it("may come as values alone, and what another version lacks is English", () => {
    const values = (node: object): unknown[] =>
      Object.values(node).map((one: unknown) =>
        typeof one === "object" && !Array.isArray(one) && !("other" in one!) ? values(one!) : one,
      );
    expect(stringsFrom(reportWords, values(reportWords))).toEqual(reportWords);
    expect(stringsFrom<FigureWords>(figureWords, { inside: "ndani" } as FigureWords)).toEqual({
      ...figureWords,
      inside: "ndani",
    });
  });

  it("say distances rolled, not how far away something is", () => {
    expect([wordsFor("ja").figures.farther, wordsFor("ar").figures.lessFar]).not.toContain("遠い");
    expect(wordsFor("ja").figures.farther).toContain("進む");
    expect(wordsFor("ar").figures.farther).toContain("مسافة");
  });

  it("take the form that a count asks for, and the digits of the language", () => {
    const { unpriced } = wordsFor("en").reports;
    expect([fillCount(unpriced, 1, "en"), fillCount(unpriced, 3, "en")]).toEqual([
      "1 without a price",
      "3 without a price",
    ]);
    expect(fillCount(wordsFor("ar").reports.unpriced, 3, "ar-EG")).toContain("٣");
    expect(fill("{1} before {0}", "a", 2)).toBe("2 before a");
  });
});

describe("locales", () => {
  it.each([
    ["de_DE", "de-DE"],
    ["EN-us", "en-US"],
    ["x", "en"],
    ["", "en"],
  ])("%s is %s", (tag, locale) => {
    expect(canonicalLocale(tag)).toBe(locale);
  });

  it("know which way they are written", () => {
    expect(["ar-EG", "he", "fa-IR", "de", "ja", "arz"].map(isRightToLeft)).toEqual([
      true,
      true,
      true,
      false,
      false,
      false,
    ]);
  });
});

describe("reasons", () => {
  it("are told in every language, with its own lengths", () => {
    const { reasons } = fits({
      pair: { driver: 15, driven: 68, module: "0.8" },
      mount: { from: "30.3 mm", to: "31.3 mm" },
    });
    for (const code of languageCodes) {
      const text = reasonText(reasons[0]!, ({ low }) => `<${low.toDecimal()}>`, wordsFor(code).reports.reasons);
      for (const length of ["<33.2>", "<31.3>", "<1.9>"]) expect(text, code).toContain(length);
      expect(text).not.toMatch(/[{}…]/);
    }
  });

  it("name a pitch as it is marked", () => {
    const { reasons } = reportWords;
    expect([
      pitchText({ module: "0.8" }, reasons),
      pitchText({ diametralPitch: 48, pressureAngle: 20 }, reasons),
      pitchText({} as never, reasons),
    ]).toEqual(["module 0.8", "48 DP", ""]);
  });
});
