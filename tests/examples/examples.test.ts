// Every @example in calc's doc comments runs, and comes to what it says.
//   expression; // => value      the expression equals the value
//   expression; // throws code   it throws a MeshwrightError with that code
// All public names of calc are in reach without an import; a line that imports them may stand there all the same.
import { readdirSync, readFileSync } from "node:fs";
import { join, relative } from "node:path";
import { fileURLToPath } from "node:url";
import { transform } from "esbuild";
import { describe, expect, it } from "vitest";
import { examplesOf, type Example } from "./read.js";

const sources = fileURLToPath(new URL("../../packages/calc/src/", import.meta.url));
const folders = readdirSync(sources, { withFileTypes: true }).filter((entry) => entry.isDirectory());
const paths = readdirSync(sources, { recursive: true, encoding: "utf8" }).filter((name) => name.endsWith(".ts"));

/** An example as the body of a function that checks what its comments say. */
function checked(code: string): string {
  return code
    .split("\n")
    .filter((line) => !/^\s*import\b/.test(line))
    .map((line) => {
      const match = /^(\s*)(.*?);?\s*\/\/\s*(=>|throws)\s+(.*)$/.exec(line);
      if (match === null) return line;
      const [, , expression, kind, outcome] = match;
      return kind === "=>" ? `$equal((${expression}), (${outcome}));` : `$throws(() => (${expression}), "${outcome}");`;
    })
    .join("\n");
}

async function run(example: Example): Promise<number> {
  let checks = 0;
  const names: Record<string, unknown> = {};
  for (const { name } of folders) {
    Object.assign(names, await import(join(sources, name, "index.ts")).catch(() => ({})));
  }
  Object.assign(names, await import(join(sources, "document/lean/index.ts")));
  // What a file keeps to its folder may have examples as well.
  Object.assign(names, await import(join(sources, example.file)));
  const scope = {
    ...names,
    $equal(found: unknown, expected: unknown) {
      checks += 1;
      expect(found).toEqual(expected);
    },
    $throws(call: () => unknown, code: string) {
      checks += 1;
      expect(call).toThrowError(expect.objectContaining({ code: code.trim() }) as Error);
    },
  };
  const { code } = await transform(`async function example() {\n${checked(example.code)}\n}`, { loader: "ts" });
  // The examples are our own, and this is a test of them.
  const make = new Function(...Object.keys(scope), `${code}\nreturn example;`);
  await (make(...Object.values(scope)) as () => Promise<void>)();
  return checks;
}

const examples = paths.flatMap((path) =>
  examplesOf(relative(sources, join(sources, path)), readFileSync(join(sources, path), "utf8")),
);

describe("examples in doc comments", () => {
  it.each(examples.map((example) => [example.where, example] as const))("%s", async (_where, example) => {
    expect(await run(example)).toBeGreaterThan(0);
  });

  it("are found, and a wrong one is noticed", async () => {
    const [example] = examplesOf("exact/index.ts", "/**\n * Words.\n *\n * @example\n * 1 + 1; // => 3\n */\n");
    expect(example?.code).toContain("1 + 1; // => 3");
    await expect(run(example as Example)).rejects.toThrow();
    expect(examples.length).toBeGreaterThan(5);
  });
});
