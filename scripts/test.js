// npm test: everything, from a clean clone on. Ends with one line that counts.
import { existsSync, readFileSync } from "node:fs";
import { install } from "./lib/install.js";
import { at } from "./lib/paths.js";
import { commandOf, runNode } from "./lib/run.js";

const say = (text) => process.stdout.write(`${text}\n`);
const tail = (output, lines) => output.trimEnd().split("\n").slice(-lines).join("\n");

let passed = 0;
let failed = 0;

/** Runs one step and adds its counts; a step that breaks counts as one failure. */
async function step(name, action) {
  const start = Date.now();
  say(`\n== ${name}`);
  let counts;
  try {
    counts = await action();
  } catch (error) {
    say(error.stack ?? String(error));
    counts = { passed: 0, failed: 1 };
  }
  passed += counts.passed;
  failed += counts.failed;
  say(`${counts.passed} passed, ${counts.failed} failed (${Math.round((Date.now() - start) / 1000)} s)`);
}

const verdict = (good) => ({ passed: good ? 1 : 0, failed: good ? 0 : 1 });

/** What compares our time with the engine's own: counting branches slows down ours alone. */
const compared = "packages/calc/test/document/hostile.test.ts";

async function nodeTests(parameters) {
  const report = at("reports", "vitest.json");
  const { code, output } = await runNode(commandOf("vitest"), [
    ...["run", ...parameters, "--reporter=dot", "--reporter=json", `--outputFile.json=${report}`],
  ]);
  if (code !== 0) say(tail(output, 80));
  if (!existsSync(report)) return verdict(false);
  const { numPassedTests, numTotalTests } = JSON.parse(readFileSync(report, "utf8"));
  // A test that was skipped did not pass. A file that did not load holds no test: the runner's own verdict covers it.
  const notPassed = numTotalTests - numPassedTests;
  return { passed: numPassedTests, failed: code !== 0 && notPassed === 0 ? 1 : notPassed };
}

if (!(await install())) {
  say("0 passed, 1 failed");
  process.exit(1);
}
const { build } = await import("./build.js");
const { check } = await import("./check.js");
const { testVectors } = await import("./vectors.js");
const { testElements } = await import("./engines.js");
const { allEngines } = await import("./lib/browsers.js");
const { checkSizes } = await import("./size.js");

await step("build", async () => verdict(await build(undefined, { always: true })));
await step("check: types, lint, format, layout", check);
await step("calc and tools", () => nodeTests(["--coverage", "--exclude", compared]));
await step("hostile input", () => nodeTests([compared]));
await step("vectors", () => testVectors());
for (const engine of allEngines) {
  await step(`elements in ${engine}`, async () => {
    const counts = await testElements([engine], { show: false });
    return counts[engine] ?? { passed: 0, failed: 0 };
  });
}
await step("sizes", checkSizes);

say("");
say(`${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
