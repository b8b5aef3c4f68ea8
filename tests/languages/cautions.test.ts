import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { wordsFor } from "@meshwright/calc/languages/all";

const folder = (path: string): URL => new URL(`../../${path}`, import.meta.url);
const languages = ["en", "de", "fr", "es", "ja", "ar"];

const cautionsOf = (language: string): readonly string[] => wordsFor(language).reports.cautions;

describe("cautions", () => {
  it.each(languages)("are all there in %s, local rules and makers first", (language) => {
    const [cautions, english] = [cautionsOf(language), cautionsOf("en")];
    expect(cautions.length).toBe(english.length);
    expect(new Set(cautions).size).toBe(cautions.length);
    expect(english[0]).toMatch(/local rules.*makers.*come first/i);
  });

  it("practice 26: heat is measured and compared with what is known to run well; nothing is called safe", () => {
    const english = cautionsOf("en");
    expect(english.join(" ")).toMatch(
      /stop and measure temperatures, and compare them with a set-up known to run well/,
    );
    const pages = ["demo/index.html", ...readdirSync(folder("demo/guide")).map((name) => `demo/guide/${name}`)]
      .filter((path) => path.endsWith(".html"))
      .map((path) => readFileSync(folder(path), "utf8"));
    const promises = [...english, ...pages].flatMap((text) => text.match(/[^.]{0,60}\b(?:safe|safely)\b/gi) ?? []);
    for (const one of promises) expect(one).toMatch(/\b(?:never|not|no)\b/i);
  });
});
