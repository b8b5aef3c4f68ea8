import { spawnSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { axleAttributeOf, buildWords, elementAttributes } from "@meshwright/calc/document";
import { at } from "../../scripts/lib/paths.js";

const read = (...path: string[]): string => readFileSync(at("integrations", ...path), "utf8");

/** What each element may have, worked out here from calc's table alone. */
const axles = ["front", "middle", "rear", "left", "right", "drive"].flatMap((axle) => [
  axle,
  `${axle}-wheel`,
  `${axle}-motor`,
]);
const wanted = Object.fromEntries(
  Object.entries(elementAttributes).map(([tag, names]) => [
    tag,
    new Set<string>([...names, "build", ...(tag === "mw-build" ? [...buildWords, ...axles] : [])]),
  ]),
);
const sets = (lists: Record<string, string[]>) =>
  Object.fromEntries(Object.entries(lists).map(([tag, names]) => [tag, new Set(names)]));

/** The lists as the file's own language reads them, or as they are written in it. */
const written: Record<string, () => Record<string, string[]>> = {
  hugo: () => JSON.parse(read("hugo", "data", "meshwright.json")).elements,
  wordpress: () =>
    Object.fromEntries(
      [...read("wordpress", "meshwright", "marks.php").matchAll(/'(mw-[a-z-]+)' => array\(([^)]*)\)/g)].map((found) => [
        found[1]!,
        [...found[2]!.matchAll(/'([^']+)'/g)].map((one) => one[1]!),
      ]),
    ),
  mkdocs: () =>
    Object.fromEntries(
      [...read("mkdocs", "meshwright.py").matchAll(/"(mw-[a-z-]+)": "([^"]*)"\.split\(\)/g)].map((found) => [
        found[1]!,
        found[2]!.split(" "),
      ]),
    ),
  ...Object.fromEntries(
    ["markdown-it", "remark", "eleventy", "astro"].map((folder) => [
      folder,
      () => {
        const [, text] = /const elements = (\{[^]*?\n\});/.exec(read(folder, "marks.js"))!;
        return JSON.parse(text!.replace(/,(\s*[}\]])/g, "$1")) as Record<string, string[]>;
      },
    ]),
  ),
};

describe("the lists of elements and attributes", () => {
  test.each(Object.keys(written))("of %s are those of calc", (name) => {
    expect(sets(written[name]!())).toEqual(wanted);
  });

  test("an axle of another name is taken wherever calc takes it", () => {
    const { axle } = JSON.parse(read("hugo", "data", "meshwright.json")) as { axle: string };
    const pattern = new RegExp(axle);
    for (const name of [
      "axle-third",
      "axle-third-wheel",
      "axle-a2-motor",
      "axle",
      "axle-",
      "axle-3",
      "onfront",
      "axle-x onload",
    ])
      expect([name, pattern.test(name)]).toEqual([name, axleAttributeOf(name) !== undefined]);
  });

  test("Hugo has a shortcode for every element, and for nothing else", () => {
    const names = readdirSync(at("integrations", "hugo", "layouts", "shortcodes")).map((name) =>
      name.replace(".html", ""),
    );
    expect(new Set(names)).toEqual(new Set(Object.keys(elementAttributes)));
  });

  test("are what the command writes", () => {
    const code = `
      const { made } = await import(${JSON.stringify(at("scripts", "integrations.js"))});
      const { readFileSync } = await import("node:fs");
      const stale = Object.entries(await made()).filter(([path, text]) => readFileSync(path, "utf8") !== text);
      console.log(JSON.stringify(stale.map(([path]) => path)));`;
    const { stdout, stderr } = spawnSync(process.execPath, ["--input-type=module", "-e", code], { encoding: "utf8" });
    expect(JSON.parse(stdout || JSON.stringify(stderr))).toEqual([]);
  });

  test("every folder says how it is installed", () => {
    for (const { name } of readdirSync(at("integrations"), { withFileTypes: true }).filter((one) => one.isDirectory()))
      expect([name, existsSync(at("integrations", name, "README.md"))]).toEqual([name, true]);
  });
});
