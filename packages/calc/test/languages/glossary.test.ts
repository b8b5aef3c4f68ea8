import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { wordsFor } from "../../src/languages/all.js";

const columns = ["en", "de", "fr", "es", "ja", "ar"] as const;
const folder = new URL("../../src/languages/", import.meta.url);
const elements = new URL("../../../elements/src/languages/", import.meta.url);
const glossary = readFileSync(new URL("glossary.md", folder), "utf8");
const rows = glossary
  .split("\n")
  .filter((line) => line.startsWith("| "))
  .slice(2)
  .map((line) => line.split("|").map((cell) => cell.replace(/\(\d\)/g, "").trim()).slice(1, 7)); // prettier-ignore
const notes = (text: string): string[] => [...new Set(text.match(/\((\d)\)/g))].map((note) => note.slice(1, -1)).sort();

/** All that is said in a language, as it stands in its files. */
const saidIn = (code: string): string => {
  const { figures, reports } = wordsFor(code);
  const files = [
    new URL(`findings/${code}.ts`, folder),
    new URL(`tools/${code}.ts`, elements),
    new URL(`words/${code}.ts`, elements),
  ];
  return [JSON.stringify([figures, reports]), ...files.map((file) => readFileSync(file, "utf8"))]
    .join(" ")
    .toLowerCase();
};

describe.each(columns.slice(1))("the glossary in %s", (code) => {
  it("has the words that are said", () => {
    const said = saidIn(code);
    const column = columns.indexOf(code);
    const unsaid = rows
      .flatMap((row) => row[column]!.split(/, |、|، /))
      .map((term) => term.toLowerCase())
      .filter((term) => !said.includes(term));
    expect(unsaid).toEqual([]);
  });
});

describe("the glossary", () => {
  it("has six languages and a source a row, and a note for each number", () => {
    expect(rows.length).toBeGreaterThan(15);
    for (const row of rows) expect(row.filter(Boolean)).toHaveLength(6);
    const [table, below] = [glossary.slice(0, glossary.indexOf("\n1. ")), glossary.slice(glossary.indexOf("\n1. "))];
    expect(notes(table)).toEqual([...below.matchAll(/^(\d)\. /gm)].map(([, number]) => number));
  });
});

describe.each(["de", "fr", "es"])("sentences in %s", (code) => {
  it("begin with a capital, whichever table they stand in", () => {
    const sentences: string[] = [];
    const walk = (node: unknown): void => {
      if (typeof node === "string") sentences.push(...(/\.$/.test(node) ? [node] : []));
      else if (node && typeof node === "object") Object.values(node).forEach(walk);
    };
    walk(wordsFor(code));
    expect(sentences.length).toBeGreaterThan(60);
    expect(sentences.filter((text) => /^(?!kV )\p{Ll}/u.test(text))).toEqual([]);
  });
});
