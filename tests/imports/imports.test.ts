// Rules about imports prove something only if breaking one is noticed: a small tree breaks each of them once.
import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import config from "../../.dependency-cruiser.js";
import { at } from "../../scripts/lib/paths.js";
import { commandOf, run } from "../../scripts/lib/run.js";

/** In this order: the rule, the file that breaks it, and what that file imports. */
const breaking: [rule: string, file: string, imported: string][] = [
  ["calc-exact", "calc/src/exact/number.ts", "../gears/index.js"],
  ["calc-gears", "calc/src/gears/tooth.ts", "../stages/index.js"],
  ["calc-stages", "calc/src/stages/pair.ts", "../drivetrain/index.js"],
  ["calc-drivetrain", "calc/src/drivetrain/types.ts", "../document/index.js"],
  ["calc-document", "calc/src/document/read.ts", "../evaluate/index.js"],
  ["calc-evaluate", "calc/src/evaluate/total.ts", "../fit/index.js"],
  ["calc-fit", "calc/src/fit/walls.ts", "../layout/index.js"],
  ["calc-layout", "calc/src/layout/places.ts", "../counted/index.js"],
  ["calc-counted", "calc/src/counted/pairs.ts", "../motion/index.js"],
  ["calc-motion", "calc/src/motion/speed.ts", "../layout/index.js"],
  ["calc-parts", "calc/src/parts/sheet.ts", "../search/index.js"],
  ["calc-search", "calc/src/search/pairs.ts", "../languages/index.js"],
  ["calc-languages", "calc/src/languages/de.ts", "../report/index.js"],
  ["calc-report", "calc/src/report/figure.ts", "../article/index.js"],
  ["room-without-place", "calc/src/cellar/jar.ts", "../exact/index.js"],
  ["import-of-room-without-place", "calc/test/cellar.ts", "../src/cellar/jar.js"],
  ["calc-alone", "calc/src/report/write.ts", "node:fs"],
  ["circle", "calc/src/exact/one.ts", "./other.js"],
  ["unresolved", "calc/src/exact/lost.ts", "./nowhere.js"],
  ["face", "calc/src/gears/deep.ts", "../exact/number.js"],
  ["face-from-top", "elements/src/all.ts", "./elements/build/mw-build.js"],
  ["top", "calc/src/article/says.ts", "../index.js"],
  ["shared-page", "elements/src/shared/page/policy.ts", "../words/index.js"],
  ["shared-tables", "elements/src/shared/tables/table.ts", "../store/index.js"],
  ["shared-words", "elements/src/shared/words/table.ts", "../drawn/index.js"],
  ["shared-drawn", "elements/src/shared/drawn/line.ts", "../findings/index.js"],
  ["shared-store", "elements/src/shared/store/layer.ts", "../element/index.js"],
  ["shared-element", "elements/src/shared/element/draw.ts", "../tools/index.js"],
  ["shared-findings", "elements/src/shared/findings/list.ts", "../tools/index.js"],
  ["shared-tools", "elements/src/shared/tools/button.ts", "../../elements/teeth/index.js"],
  ["languages-run-nothing", "elements/src/languages/words/fr.ts", "../../shared/words/index.js"],
  ["languages-types", "elements/src/languages/words/es.ts", "type ../../shared/store/index.js"],
  ["elements-apart", "elements/src/elements/teeth/choice.ts", "../value/index.js"],
  ["elements-apart-edits", "elements/src/elements/edits/strip.ts", "../value/index.js"],
  ["elements-need", "elements/src/elements/value/text.ts", "other"],
  ["test-helpers", "elements/src/elements/value/help.ts", "../../test/fixture.js"],
  ["figures-need", "figures/src/page.ts", "@meshwright/elements"],
  ["declared", "figures/src/parse.ts", "other"],
  ["packages-only", "figures/src/demo.ts", "../../../demo/make.js"],
  ["other-package-by-name", "figures/src/path.ts", "../../calc/src/index.js"],
  ["notebook-last", "elements/src/article.ts", "@meshwright/notebook"],
  ...(
    [
      ["model", "keeping"],
      ["writing", "model"],
      ["embed", "model"],
      ["keeping", "frame"],
      ["frame", "page"],
      ["start", "post"],
      ["drivetrain", "writing"],
      ["parts", "keeping"],
      ["buy", "parts"],
      ["workshop", "buy"],
      ["post", "page"],
      ["page", "post"],
    ] as const
  ).map(([room, other]): [string, string, string] => [
    `notebook-${room}`,
    `notebook/src/${room}/one.ts`,
    `../${other}/index.js`,
  ]),
];

/** What is as it should be, each an import that a rule might take for one of the others. */
const allowed: [file: string, imported: string][] = [
  ["calc/src/index.ts", "./exact/index.js"],
  ["calc/src/gears/index.ts", "../exact/index.js"],
  ["calc/src/search/index.ts", "../layout/index.js"],
  ["calc/src/article/index.ts", "../report/index.js"],
  ["calc/src/exact/index.ts", "./number-inside.js"],
  ["calc/test/deep.test.ts", "../src/exact/number-inside.js"],
  ["elements/src/elements/edits/index.ts", "../teeth/index.js"],
  ["elements/src/elements/value/index.ts", "lit"],
  ["elements/src/elements/value/value.test.ts", "../teeth/deep.js"],
  ["elements/src/shared/words/index.ts", "../../languages/words/en.js"],
  ["elements/src/languages/tools/en.ts", "type ../../shared/words/index.js"],
  ["elements/src/test/fixture.ts", "other"],
  ["elements/src/index.ts", "@meshwright/calc/exact"],
  ["figures/src/index.ts", "@meshwright/calc"],
  ["notebook/src/index.ts", "@meshwright/elements"],
  ["notebook/src/post/two.ts", "../writing/index.js"],
  ["notebook/src/page/two.ts", "../keeping/index.js"],
];

/** Files that are only imported. */
const others = [
  ..."stages drivetrain document evaluate fit layout counted motion parts languages report"
    .split(" ")
    .map((room) => `calc/src/${room}/index.ts`),
  "calc/src/exact/number-inside.ts",
  ..."page tables store element drawn findings tools"
    .split(" ")
    .map((folder) => `elements/src/shared/${folder}/index.ts`),
  "elements/src/languages/words/en.ts",
  ..."index deep".split(" ").map((name) => `elements/src/elements/teeth/${name}.ts`),
  "elements/src/elements/build/mw-build.ts",
  ..."model writing keeping frame post parts buy page".split(" ").map((room) => `notebook/src/${room}/index.ts`),
];

interface Violation {
  readonly rule: { readonly name: string };
  readonly from: string;
}

const folder = realpathSync(mkdtempSync(join(tmpdir(), "meshwright-imports-")));
const broken = new Map<string, string[]>();

const write = (path: string, text: string) => {
  mkdirSync(dirname(join(folder, path)), { recursive: true });
  writeFileSync(join(folder, path), text);
};
const writePackage = (path: string, content: object) => write(`${path}/package.json`, JSON.stringify(content));
const importOf = (what: string) =>
  what.startsWith("type ") ? `import type { A } from "${what.slice(5)}";` : `import "${what}";`;

beforeAll(async () => {
  for (const path of others) write(`packages/${path}`, "export type A = 1;\n");
  for (const [path, imported] of allowed) write(`packages/${path}`, `${importOf(imported)}\nexport type A = 1;\n`);
  for (const [, path, imported] of breaking) write(`packages/${path}`, `${importOf(imported)}\n`);
  write("packages/calc/src/exact/other.ts", 'import "./one.js";\n');
  write("demo/make.js", 'import "@meshwright/notebook";\nimport "@meshwright/calc";\n');
  for (const name of ["calc", "figures", "notebook"]) writePackage(`packages/${name}`, { name: `@meshwright/${name}` });
  writePackage("packages/elements", { name: "@meshwright/elements", dependencies: { lit: "1.0.0" } });
  for (const name of ["lit", "other"]) {
    writePackage(`node_modules/${name}`, { name, version: "1.0.0", main: "index.js" });
    write(`node_modules/${name}/index.js`, "");
  }
  const paths = {
    "@meshwright/calc/*": ["./packages/calc/src/*/index.ts"],
    ...Object.fromEntries(
      ["calc", "elements", "notebook"].map((name) => [`@meshwright/${name}`, [`./packages/${name}/src/index.ts`]]),
    ),
  };
  write(
    "tsconfig.json",
    JSON.stringify({ compilerOptions: { module: "NodeNext", verbatimModuleSyntax: true, paths } }),
  );
  const command = commandOf("dependency-cruiser", "depcruise");
  const { output } = await run(
    process.execPath,
    [command, "packages", "demo", "--config", at(".dependency-cruiser.js"), "--output-type", "json"],
    { cwd: folder },
  );
  const { summary } = JSON.parse(output) as { summary: { violations: Violation[] } };
  for (const { rule, from } of summary.violations) broken.set(from, [...(broken.get(from) ?? []), rule.name]);
});

afterAll(() => rmSync(folder, { recursive: true }));

describe("the order of imports", () => {
  it.each(breaking)("%s is broken by %s", (rule, file) => {
    expect(broken.get(`packages/${file}`)).toContain(rule);
  });

  it.each(allowed)("%s may import %s", (file) => {
    expect(broken.get(`packages/${file}`)).toBeUndefined();
  });

  it("has no rule that nothing here breaks", () => {
    expect(config.forbidden.map(({ name }) => name).sort()).toEqual(breaking.map(([rule]) => rule).sort());
  });

  it("is broken by nothing else", () => {
    expect([...broken.keys()].sort()).toEqual(breaking.map(([, file]) => `packages/${file}`).sort());
  });
});
