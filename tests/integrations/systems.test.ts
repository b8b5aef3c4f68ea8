import { existsSync, readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { systems, type System } from "@meshwright/calc/article";
import { at } from "../../scripts/lib/paths.js";
import { stepsOf } from "../systems/lib/way.js";
import { elementsIn, sourceOf, textOf } from "../demo/page.js";

interface Result {
  readonly version?: string;
  readonly steps?: readonly string[];
  readonly outcomes?: readonly { readonly place: string; readonly outcome: string }[];
  readonly impossible?: string;
}

const results = JSON.parse(readFileSync(at("tests", "systems", "results.json"), "utf8")) as Record<string, Result>;
const names = Object.keys(systems);

describe("the table of systems", () => {
  test("has the systems that are tried, and no other", () => {
    const rows = readdirSync(at("tests", "systems", "rows")).map((file) => file.replace(/\.js$/, ""));
    expect(new Set(rows)).toEqual(new Set(names));
    expect(new Set(Object.keys(results))).toEqual(new Set(names));
  });

  test("names folders that are there", () => {
    for (const { integration } of Object.values<System>(systems))
      if (integration)
        expect([integration, existsSync(at("integrations", integration, "README.md"))]).toEqual([integration, true]);
  });
});

describe("the guide's page about blogs and wikis", () => {
  const page = elementsIn(sourceOf("guide/systems.html"));

  test.each(names)("%s: says what a run has found, line by line", (name) => {
    const texts = page
      .filter(({ tagName }) => ["th", "li", "p"].includes(tagName))
      .map((one) => textOf(one).replace(/\s+/g, " ").trim());
    for (const { place, outcome } of results[name]!.outcomes ?? [])
      expect(texts).toContain(
        place.startsWith("the way")
          ? `Walked as it stands here, from an empty site: ${outcome}.`
          : place.charAt(0).toUpperCase() + place.slice(1),
      );
    for (const step of results[name]!.steps ?? [])
      expect(texts.map((text) => text.replace(/ /g, ""))).toContain(step.replace(/[`\s]|\*\*/g, ""));
  });

  test("is reached from every other page of the guide", () => {
    for (const file of readdirSync(at("demo", "guide")).filter((name) => name.endsWith(".html")))
      expect([file, sourceOf(`guide/${file}`).includes('href="systems.html"')]).toEqual([file, true]);
  });
});

describe("the way from an empty site to a living post", () => {
  const installed = Object.entries<System>(systems).flatMap(([name, { integration }]) => (integration ? [name] : []));

  test.each(installed)("of %s is told in its README, and was walked as it stands there", (name) => {
    const text = readFileSync(at("integrations", name, "README.md"), "utf8");
    const words = ["no", "one", "two", "three", "four", "five", "six"];
    const steps = stepsOf(name);
    expect(text).toContain(`In ${words[steps.length]} steps`);
    expect(results[name]!.steps).toEqual(
      steps.map(({ text: said, block }: { text: string; block: string }) => (block ? `${said}\n${block}` : said)),
    );
    expect(results[name]!.outcomes).toContainEqual({
      place: "the way from an empty site, by the README alone",
      outcome: `${steps.length} steps, no error`,
    });
  });
});
