import { describe, expect, it } from "vitest";
import { cycleIn, importsOf, layoutProblems } from "../../scripts/lib/layout.js";

const problemsOf = (files: Record<string, string>) => layoutProblems(new Map(Object.entries(files)));

describe("the order of imports", () => {
  it("holds in the whole repository", () => {
    expect(layoutProblems()).toEqual([]);
  });

  it.each<[string, Record<string, string>]>([
    ["downward by the face", { "packages/calc/src/kinds/a.ts": 'import { b } from "../exact/index.js";' }],
    ["between neighbours", { "packages/calc/src/search/a.ts": 'export * from "../mesh/index.js";' }],
    ["within a folder", { "packages/calc/src/exact/a.ts": 'import "./b.js"; import type { C } from "./c.js";' }],
    ["the package's face on top of all", { "packages/calc/src/index.ts": 'export * from "./report/index.js";' }],
    ["a test past the face", { "packages/elements/src/base/a.test.ts": 'import { b } from "../teeth/mw-teeth.js";' }],
    ["calc by its name", { "packages/elements/src/teeth/a.ts": 'import { b } from "@meshwright/calc/exact";' }],
    ["a registration", { "packages/elements/src/article.ts": 'import "./teeth/define.js"; import "./words/de.js";' }],
    ["an import that only a comment holds", { "packages/calc/src/exact/a.ts": '/* import "../report/index.js" */' }],
  ])("allows %s", (_what, files) => {
    expect(problemsOf(files)).toEqual([]);
  });

  it.each<[string, Record<string, string>, RegExp]>([
    ["upward", { "packages/calc/src/exact/a.ts": 'import { b } from "../kinds/index.js";' }, /runs upward/],
    ["upward, types only", { "packages/calc/src/exact/a.ts": 'import type { B } from "../mesh/index.js";' }, /upward/],
    ["upward by export", { "packages/calc/src/mesh/a.ts": 'export type { B } from "../document/index.js";' }, /upward/],
    [
      "upward when it is needed",
      { "packages/calc/src/mesh/a.ts": 'const b = import("../report/index.js");' },
      /upward/,
    ],
    [
      "past the face",
      { "packages/calc/src/kinds/a.ts": 'import { b } from "../exact/rational.js";' },
      /past the index/,
    ],
    ["past the face, deeper", { "packages/elements/src/edits/a.ts": 'import "../teeth/parts/index.js";' }, /past the/],
    ["the top from below", { "packages/calc/src/mesh/a.ts": 'import { b } from "../index.js";' }, /top of the package/],
    ["a folder without a place", { "packages/calc/src/misc/a.ts": 'import "../exact/index.js";' }, /no place/],
    ["a dependency of calc", { "packages/calc/src/exact/a.ts": 'import Big from "big.js";' }, /no dependencies/],
    [
      "another package by a path",
      { "packages/elements/src/base/a.ts": 'import "../../../calc/src/index.js";' },
      /by its/,
    ],
    ["elements from calc", { "packages/calc/src/exact/a.ts": 'import "@meshwright/elements";' }, /upward between/],
    ["an element from the base", { "packages/elements/src/base/a.ts": 'import "../teeth/index.js";' }, /upward/],
    ["the base from the host", { "packages/elements/src/host/a.ts": 'import "../store/index.js";' }, /upward/],
    [
      "in a circle of folders",
      {
        "packages/calc/src/mesh/a.ts": 'import "../parts/index.js";',
        "packages/calc/src/parts/b.ts": 'import "../mesh/index.js";',
      },
      /circle/,
    ],
    [
      "in a circle of files",
      { "packages/calc/src/mesh/a.ts": 'import "./b.js";', "packages/calc/src/mesh/b.ts": 'import "./a.js";' },
      /circle: packages/,
    ],
  ])("refuses %s", (_what, files, message) => {
    expect(problemsOf(files).join("\n")).toMatch(message);
  });
});

it("imports are found however they are written", () => {
  const code = `import a from "./a.js"; import {
    b, // from "./no.js"
    c } from './b.js';
import * as d from "./d.js";import type { E } from "./e.js";
export * from "./f.js"; export { g as h } from "./g.js"; export type { I } from "./i.js";
const later = () => import("./j.js"); import "./k.js";
const text = "from here"; /* import "./never.js" */`;
  expect(importsOf(code).sort()).toEqual("abdefgijk".split("").map((name) => `./${name}.js`));
});

it("a circle is told as a way round", () => {
  const edges = (list: [string, string[]][]) => new Map(list.map(([from, to]) => [from, new Set(to)]));
  expect(
    cycleIn(
      edges([
        ["a", ["b"]],
        ["b", ["c"]],
        ["c", ["b"]],
      ]),
    ),
  ).toEqual(["b", "c", "b"]);
  expect(
    cycleIn(
      edges([
        ["a", ["b", "c"]],
        ["b", ["c"]],
      ]),
    ),
  ).toBeUndefined();
});
