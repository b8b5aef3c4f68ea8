// The last line of a run counts, alone on it: whoever reads it must not take a broken run for a good one.
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { countsIn, countsLine } from "../../scripts/lib/counts.js";
import { at } from "../../scripts/lib/paths.js";
import { commandOf, runNode } from "../../scripts/lib/run.js";

mkdirSync(at("reports"), { recursive: true });
const made = mkdtempSync(at("reports", "counts-"));
afterAll(() => rmSync(made, { recursive: true }));

/** Runs these files as tests; resolves to the exit code and the output. */
async function outcomeOf(files: Record<string, string>) {
  const folder = mkdtempSync(join(made, "run-"));
  for (const [name, text] of Object.entries(files)) {
    writeFileSync(join(folder, `${name}.test.js`), `import { it } from "vitest";\n${text}\n`);
  }
  writeFileSync(join(folder, "vitest.config.js"), "export default { test: { include: ['*.test.js'] } };\n");
  return runNode(commandOf("vitest"), [
    ...["run", "--root", folder, "--reporter=minimal"],
    `--reporter=${at("scripts", "lib", "counts.js")}`,
  ]);
}

const lastLine = (output: string) => output.trimEnd().split("\n").at(-1);

describe("the last line of a run", () => {
  it("counts what passed", async () => {
    const { code, output } = await outcomeOf({ good: 'it("one", () => {}); it("two", () => {});' });
    expect([code, lastLine(output)]).toEqual([0, "2 passed, 0 failed"]);
  });

  it.each([
    ["a test that fails", 'it("one", () => {}); it("two", () => { throw new Error("no"); });', 1, 1],
    ["a test that is skipped", 'it("one", () => {}); it.skip("two", () => {});', 1, 1],
    ["a file that cannot be loaded", 'it("one", () => {}); throw new Error("no");', 0, 1],
    [
      "a fault outside of tests",
      'it("one", () => new Promise((resolve) => { setTimeout(resolve, 99); void Promise.reject(1); }));',
      1,
      1,
    ],
  ])("counts %s as failed", async (_what, text, passed, failed) => {
    const { code, output } = await outcomeOf({ bad: text });
    expect(lastLine(output)).toBe(countsLine({ passed, failed }));
    expect(code).not.toBe(0);
  });

  it("counts a run without a test as failed", async () => {
    const { code, output } = await outcomeOf({});
    expect(countsIn(output)).toEqual({ passed: 0, failed: 1 });
    expect(code).not.toBe(0);
  });

  it("is the last of those that an output holds", () => {
    expect(countsIn("1 passed, 0 failed\nchromium: 3 passed, 1 failed\nmore\n")).toEqual({ passed: 3, failed: 1 });
    expect(countsIn("4 passed, 0 failed of something")).toBeUndefined();
  });
});
