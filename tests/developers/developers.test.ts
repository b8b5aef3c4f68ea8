// What DEVELOPERS.md and the READMEs say agrees with the repository: every path is there, every command is one, every command
// is told, and the order of imports is the one that is checked.
import { existsSync, readFileSync, statSync } from "node:fs";
import { dirname, join } from "node:path";
import { describe, expect, it } from "vitest";
import config from "../../.dependency-cruiser.js";
import { at, filesBelow, root, shown } from "../../scripts/lib/paths.js";

const read = (path: string): string => readFileSync(at(path), "utf8");
const { scripts } = JSON.parse(read("package.json")) as { scripts: Readonly<Record<string, string>> };
const documents = [
  "DEVELOPERS.md",
  "README.md",
  ...filesBelow(at("packages"), (path) => /decisions[\\/].*\.md$/.test(path)).map(shown),
];
const text = read("DEVELOPERS.md");

/** Paths that a text names: in code, with a slash or a known ending; what stands for many, or is made, is left out. */
function pathsIn(document: string): string[] {
  const codes = [...document.matchAll(/`([^`\s]+)`/g)].map(([, code]) => code!);
  return codes.filter(
    (code) =>
      /^[\w.@-]+(\/[\w.@-]+)*\/?$/.test(code) &&
      (/^(packages|scripts|tests|demo|seeds|src|integrations)\b/.test(code) ||
        /[\w-]\.(ts|js|json|jsonc|md)$/.test(code)) &&
      !/(^|\/)dist(\/|$)/.test(code) &&
      !code.startsWith("@"),
  );
}

/** Where a path may be meant from. */
const roots = [
  "",
  "packages/calc",
  "packages/calc/src",
  "packages/calc/src/stages",
  "packages/elements",
  "packages/elements/src",
  "packages/notebook",
  "packages/notebook/src",
  "packages/calc/src/document",
  "packages/calc/src/languages/figures",
];

describe.each(documents)("%s", (name) => {
  const document = read(name);

  it("names no path that is not there", () => {
    const made = /^(meshwright[\w-]*\.js|notebook\.js|files\.json)$/;
    const lost = pathsIn(document).filter(
      (path) => !made.test(path) && !roots.some((place) => existsSync(at(place, path))),
    );
    expect(lost).toEqual([]);
  });

  it("links to nothing that is not there", () => {
    const links = [...document.matchAll(/\]\(([^)#\s]+)(?:#[^)]*)?\)/g)]
      .map(([, link]) => link!)
      .filter((link) => !/^\w+:/.test(link));
    expect(links.filter((link) => !existsSync(join(root, dirname(name), link)))).toEqual([]);
  });

  it("names no command that there is not", () => {
    const commands = [...document.matchAll(/npm run ([\w:]+)/g)].map(([, command]) => command!);
    expect(commands.filter((command) => !(command in scripts))).toEqual([]);
  });
});

describe("DEVELOPERS.md", () => {
  it("tells every command", () => {
    const silent = Object.keys(scripts).filter(
      (name) => !["start", "test"].includes(name) && !text.includes(`npm run ${name}\``),
    );
    expect(silent).toEqual([]);
  });

  it("has the order of imports that is checked", () => {
    const [, block] = /Imports run one way:\s+```([^]*?)```/.exec(text) ?? [];
    const order = block!
      .replace(/\([\w, ]+\)/g, "")
      .split(/<-|,/)
      .map((word) => word.trim());
    const ruled = (config.forbidden as readonly { name: string }[]).flatMap(
      ({ name }) => /^(?:calc|shared)-(\w+)$/.exec(name)?.[1] ?? [],
    );
    const rooms = ruled.filter((name) => name !== "alone");
    expect(order.filter((word) => rooms.includes(word))).toEqual(rooms);
  });
});

it("the README's picture is there, and small", () => {
  const [, path] = /!\[[^\]]+\]\(([^)]+)\)/.exec(read("README.md")) ?? [];
  expect(statSync(at(path!)).size).toBeLessThan(80_000);
});

describe("the workflow files", () => {
  const files = filesBelow(at(".github", "workflows"));

  it("call commands that there are, and say what they may do", () => {
    expect(files.length).toBeGreaterThan(2);
    for (const path of files) {
      const workflow = readFileSync(path, "utf8");
      expect(workflow, path).toMatch(/^permissions:\n {2}contents: read$/m);
      const commands = [...workflow.matchAll(/npm run ([\w:]+)/g)].map(([, command]) => command!);
      const listed = /command: \[([^\]]+)\]/.exec(workflow)?.[1]?.match(/[\w:]+/g) ?? [];
      expect([...commands, ...listed].filter((command) => !(command in scripts))).toEqual([]);
    }
    expect(files.some((path) => readFileSync(path, "utf8").includes(".ci/run"))).toBe(true);
    expect(existsSync(at(".ci", "run"))).toBe(true);
  });
});
