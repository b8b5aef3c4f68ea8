import { existsSync, readdirSync, readFileSync } from "node:fs";
import { beforeAll, describe, expect, test } from "vitest";
import { areDocsFresh, docs } from "../../scripts/docs.js";
import { folder } from "./browser.js";
import { elementsIn, textOf } from "./page.js";

// The pages about every public name: a beginning, a line for each, and nothing that only a tool understands.

const api = folder("dist/api");
const pagesBelow = (place: string): string[] =>
  readdirSync(place, { recursive: true, encoding: "utf8" }).filter((name) => name.endsWith(".html"));
const read = (name: string): string => readFileSync(`${api}/${name}`, "utf8");

describe("the API's pages", () => {
  beforeAll(async () => {
    // A public name without a line fails here, by its name.
    if (!areDocsFresh()) expect(await docs()).toBe(true);
  });

  test("begin with what to begin with", () => {
    const front = textOf(elementsIn(read("index.html")).find(({ tagName }) => tagName === "body")!);
    for (const name of ["parseBuild", "evaluate", "figureOf", "checkFigures", "MeshwrightError"])
      expect(front).toContain(name);
  });

  test("are about every package, under the names that are imported", () => {
    const modules = readdirSync(`${api}/modules`).map((name) => name.replace(".html", ""));
    const { exports } = JSON.parse(readFileSync(folder("packages/calc/package.json"), "utf8")) as { exports: object };
    const rooms = Object.keys(exports).flatMap((path) => /^\.\/([a-z]+(?:\/lean)?)$/.exec(path)?.[1] ?? []);
    expect(rooms.length).toBeGreaterThan(14);
    for (const room of rooms) expect(modules).toContain(`_meshwright_calc_${room.replace("/", "_")}`);
    expect(modules).toEqual(expect.arrayContaining(["_meshwright_elements", "_meshwright_figures"]));
  });

  test("name no parameter as a tool does, and show examples with their imports", () => {
    const names = pagesBelow(api);
    expect(names.length).toBeGreaterThan(400);
    expect(names.filter((name) => read(name).includes("__namedParameters"))).toEqual([]);
    const example = names.find((name) => /functions\/.*evaluate\.evaluate\.html$/.test(name))!;
    expect(textOf(elementsIn(read(example)).find(({ tagName }) => tagName === "pre")!)).toMatch(
      /import \{ parseBuild \} from "@meshwright\/calc\/document"/,
    );
  });

  test("link to pages that are there", () => {
    const broken = ["index.html", ...readdirSync(`${api}/modules`).map((name) => `modules/${name}`)].flatMap((name) =>
      elementsIn(read(name)).flatMap(({ attrs }) => {
        const href = attrs.find((one) => one.name === "href")?.value ?? "";
        if (!/\.html/.test(href) || /^\w+:/.test(href)) return [];
        const target = new URL(href, `file://${api}/${name}`).pathname;
        return existsSync(decodeURIComponent(target)) ? [] : `${name}: ${href}`;
      }),
    );
    expect(broken).toEqual([]);
  });
});
