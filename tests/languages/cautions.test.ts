import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";

const folder = (path: string): URL => new URL(`../../${path}`, import.meta.url);
const languages = ["en", "de", "fr", "es", "ja", "ar"];

async function cautionsOf(language: string): Promise<readonly string[]> {
  const table = (await import(`../../packages/elements/src/languages/tools/${language}.ts`)) as Record<string, unknown>;
  const [words] = Object.values(table) as { readonly cautions: readonly string[] }[];
  return words!.cautions;
}

describe("cautions", () => {
  it.each(languages)("are all there in %s, local rules and makers first", async (language) => {
    const [cautions, english] = [await cautionsOf(language), await cautionsOf("en")];
    expect(cautions.length).toBe(english.length);
    expect(new Set(cautions).size).toBe(cautions.length);
    expect(english[0]).toMatch(/local rules.*makers.*come first/i);
  });

  it("practice 26: heat is measured and compared with what is known to run well; nothing is called safe", async () => {
    const english = await cautionsOf("en");
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
