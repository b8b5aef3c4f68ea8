// npm test: everything, from a clean clone on. Prints what each step took; the last line counts. Names of steps choose among
// them.
import { bringEngines } from "./lib/browsers.js";
import { countsIn, countsLine } from "./lib/counts.js";
import { install } from "./lib/install.js";
import { commandOf, runNode } from "./lib/run.js";

/** What compares our time with the engine's own: counting branches slows down ours alone. */
const compared = "packages/calc/test/document/hostile.test.ts";

const vitest = (...parameters) => [
  commandOf("vitest"),
  ...["run", "--reporter=minimal", "--reporter=./scripts/lib/counts.js", ...parameters],
];

/** By name, the script that is run and its parameters. One that prints no count of its own counts as one test. */
const steps = () => ({
  build: ["scripts/build.js"],
  check: ["scripts/check.js"],
  "calc and tools": vitest("--coverage", "--exclude", compared),
  "hostile input": vitest(compared),
  vectors: vitest("--config", "vitest.vectors.config.ts"),
  "words and slips": [commandOf("vitest"), "run", "--config", "vitest.words.config.ts"],
  "elements in chromium": ["scripts/engines.js", "chromium"],
  "elements in firefox": ["scripts/engines.js", "firefox"],
  "elements in webkit": ["scripts/engines.js", "webkit"],
  sizes: ["scripts/size.js"],
});

const say = (text) => process.stdout.write(`${text}\n`);

/** Runs one step; resolves to its counts. A step that breaks off counts as one failure at least. */
async function outcomeOf([script, ...parameters]) {
  const { code, output } = await runNode(script, parameters);
  say(output.trimEnd());
  const counts = countsIn(output) ?? { passed: code === 0 ? 1 : 0, failed: 0 };
  return code !== 0 && counts.failed === 0 ? { ...counts, failed: 1 } : counts;
}

const wanted = process.argv.slice(2);
const isWanted = ([name]) => wanted.length === 0 || wanted.includes(name);
const total = { passed: 0, failed: 0 };
const took = [];
if (await install()) {
  // Pages are opened by tests of every kind: what is missing is brought before the first of them.
  const missing = await bringEngines();
  if (missing.length > 0) say(`Not on this machine: ${missing.join(", ")}`);
  for (const [name, command] of Object.entries(steps()).filter(isWanted)) {
    say(`\n== ${name}`);
    const start = Date.now();
    const { passed, failed } = await outcomeOf(command);
    total.passed += passed;
    total.failed += failed;
    took.push(
      `${String(Math.round((Date.now() - start) / 1000)).padStart(5)} s  ${name}${failed > 0 ? "  failed" : ""}`,
    );
  }
  say(`\n${took.join("\n")}\n`);
}
if (total.passed + total.failed === 0) total.failed = 1;
say(countsLine(total));
process.exitCode = total.failed === 0 ? 0 : 1;
