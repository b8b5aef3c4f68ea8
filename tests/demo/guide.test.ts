import { readFileSync } from "node:fs";
import { transform } from "esbuild";
import { describe, expect, test } from "vitest";
import * as calc from "@meshwright/calc";
import * as documents from "@meshwright/calc/document";
import { framed } from "../../packages/notebook/src/embed/shown.js";
import { checkFigures } from "../../packages/figures/src/index.js";
import { pages } from "../../demo/make.js";
import { attributesOf, elementsIn, sourceOf, textOf } from "./page.js";

const readme = readFileSync(new URL("../../README.md", import.meta.url), "utf8");
const fences = (language: string): string[] =>
  [...readme.matchAll(new RegExp(`^\`\`\`${language}\\n([^]*?)^\`\`\``, "gm"))].map((fence) => fence[1]!);

const written: Readonly<Record<string, string>> = await pages();
const paths = Object.keys(written);
const names = paths.filter((path) => path.startsWith("guide/"));

/** The text of the guide's code blocks that carry an attribute. */
const blocks = (name: string, attribute: string): string[] =>
  elementsIn(sourceOf(name))
    .filter((element) => element.tagName === "code" && attribute in attributesOf(element))
    .map((element) => textOf(element));

describe("the guide", () => {
  test.each(paths)("%s says what the code says: else run node demo/make.js", (path) => {
    expect(sourceOf(path)).toBe(written[path]);
  });

  test("its specimen and its snippets are right", () => {
    const snippets = blocks("guide/index.html", "data-check");
    expect(snippets).toHaveLength(2);
    for (const source of [snippets.join("\n"), sourceOf("guide/index.html")]) {
      const { differences, compared } = checkFigures(source);
      expect(differences).toEqual([]);
      expect(compared).toBeGreaterThanOrEqual(4);
    }
  });

  test("its page on frames names what a frame can show, and its drivetrain arrives", async () => {
    const page = elementsIn(sourceOf("guide/frames.html"));
    const list = page.find((element) => attributesOf(element).class === "shown")!;
    const named = page.filter(({ tagName, parentNode }) => tagName === "li" && parentNode === list);
    expect(named.map((one) => textOf(one).split(":")[0])).toEqual([...framed]);
    const [frame] = page.filter(({ tagName }) => tagName === "iframe");
    const carried = attributesOf(frame!).src!;
    expect(blocks("guide/frames.html", "data-snippet")[0]).toContain(carried.slice(carried.indexOf("#")));
    const reading = await documents.buildFromLink(carried.split("#")[1]!);
    expect(reading.ok).toBe(true);
    expect(reading.findings).toEqual([]);
  });

  test("its build document can be read", () => {
    const documentsShown = blocks("guide/build.html", "data-build");
    expect(documentsShown).toHaveLength(1);
    expect(documents.readBuild(documentsShown[0]).findings).toEqual([]);
  });

  test.each(names)("every link of %s leads somewhere", (name) => {
    const elements = elementsIn(sourceOf(name));
    for (const link of elements.filter(({ tagName }) => tagName === "a")) {
      const [file, anchor] = attributesOf(link).href!.split("#");
      if (file?.startsWith("../")) continue;
      expect([...names, ""].map((one) => one.replace("guide/", ""))).toContain(file);
      const target = file ? elementsIn(sourceOf(`guide/${file}`)) : elements;
      if (anchor) expect(target.map((element) => attributesOf(element).id)).toContain(anchor);
    }
  });

  test.each(names)("%s has headings in order and every id once", (name) => {
    const elements = elementsIn(sourceOf(name));
    const levels = elements.filter(({ tagName }) => /^h[1-6]$/.test(tagName)).map(({ tagName }) => Number(tagName[1]));
    expect(levels[0]).toBe(1);
    levels.slice(1).forEach((level, n) => expect(level - levels[n]!).toBeLessThanOrEqual(1));
    const ids = elements.flatMap((element) => attributesOf(element).id ?? []);
    expect(new Set(ids).size).toBe(ids.length);
  });
});

test("the article passes the command that it recommends", () => {
  expect(checkFigures(sourceOf("index.html")).differences).toEqual([]);
});

test("the elements' README reads right", () => {
  const source = readFileSync(new URL("../../packages/elements/README.md", import.meta.url), "utf8");
  const lines = [...source.matchAll(/^```html\n([^]*?)^```/gm)].map(([, text]) => text!);
  expect(checkFigures(lines.join("\n"))).toMatchObject({ differences: [], compared: 2 });
});

describe("the README", () => {
  test("its lines for a blog are right", () => {
    const { differences, compared } = checkFigures(fences("html").join("\n"));
    expect(differences).toEqual([]);
    expect(compared).toBeGreaterThanOrEqual(3);
  });

  test("its example for developers comes to what it says", async () => {
    const [example] = fences("ts");
    const body = example!
      .replace(/^import .*$/gm, "")
      .replace(/^(.+);\s*\/\/ => (.+)$/gm, (_, found: string, wanted: string) => `$equal(${found}, ${wanted});`);
    const { code } = await transform(`function example() {${body}}`, { loader: "ts" });
    const checks: [unknown, unknown][] = [];
    const scope = { ...calc, ...documents, $equal: (found: unknown, wanted: unknown) => checks.push([found, wanted]) };
    // The example is our own, and this is a test of it.
    const make = new Function(...Object.keys(scope), `${code}\nreturn example;`) as (
      ...values: unknown[]
    ) => () => void;
    make(...Object.values(scope))();
    expect(checks).toHaveLength(1);
    for (const [found, wanted] of checks) expect(found).toEqual(wanted);
  });
});
