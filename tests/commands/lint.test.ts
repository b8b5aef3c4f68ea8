// What npm run check counts, tried on lines that have to be found and on lines that must not be.
import { ESLint } from "eslint";
import { describe, expect, it } from "vitest";
import { at } from "../../scripts/lib/paths.js";

const linter = (config: string) => new ESLint({ cwd: at(), overrideConfigFile: at(config), allowInlineConfig: false });
const found = async (eslint: ESLint, code: string, filePath: string) =>
  (await eslint.lintText(code, { filePath: at(filePath) })).flatMap(({ messages }) =>
    messages.map((one) => one.message),
  );

describe("features that the oldest browsers do not know", () => {
  const eslint = linter("eslint.browsers.config.js");
  const path = "packages/elements/dist/meshwright.js";

  it.each([
    "a.toReversed();",
    "a.toSorted();",
    "const b = a.with(0, 1);",
    "Array.fromAsync(a);",
    "Object.groupBy(a, b);",
    "Promise.withResolvers();",
    "Promise.try(a);",
    "new CompressionStream(a);",
    "requestIdleCallback(a);",
    "new Set(a).union(b);",
    "class A { static { a(); } }",
    "/(?<=a)b/.test(a);",
    "/[a&&b]/v.test(a);",
    'import a from "./a.json" with { type: "json" };',
    "new Intl.DurationFormat();",
  ])("%s is found", async (code) => {
    expect(await found(eslint, code, path)).not.toEqual([]);
  });

  it.each([
    "a.findLast(b); a.at(-1); Object.hasOwn(a, b);",
    "structuredClone(a); new ResizeObserver(a); a.replaceChildren();",
    "class A { #a; static b = 1; has(c) { return #a in c; } }",
    "a ??= b?.c;",
    'new Intl.ListFormat("en").format(a);',
    "a.map(b).filter(c).some(d); a.take(b); a.with.id; a.difference(b);",
  ])("%s is not", async (code) => {
    expect(await found(eslint, code, path)).toEqual([]);
  });
});

describe("stages asked for their kind", () => {
  const eslint = linter("eslint.kinds.config.js");
  const path = "packages/calc/src/parts/order.ts";

  it.each([
    'if (stage.kind === "pair") a();',
    'if (stage?.kind !== "belt") a();',
    'if ("worm" === stage.kind) a();',
    'const { kind } = stage; if (kind === "train") a();',
    'switch (stage.kind) { case "planetary": a(); }',
    'if (["selectable", "published"].includes(stage.kind)) a();',
  ])("%s is found", async (code) => {
    expect(await found(eslint, code, path)).toHaveLength(1);
  });

  it.each([
    'if (centre.kind === "differential") a();',
    'if (expected.kind === "text") a();',
    'switch (limit.kind) { case "slot": a(); }',
    'if (part.is === "belt") a();',
    "const facet = facets[stage.kind];",
    'if (["few"].includes(note.kind)) a();',
  ])("%s is not", async (code) => {
    expect(await found(eslint, code, path)).toEqual([]);
  });

  it("their own room may ask", async () => {
    expect(await eslint.isPathIgnored(at("packages/calc/src/stages/pair.ts"))).toBe(true);
  });
});
