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
  "hostile input": vitest(compared),
  "calc and tools": vitest("--coverage", "--exclude", compared),
  vectors: vitest("--config", "vitest.vectors.config.ts"),
  "words and slips": [commandOf("vitest"), "run", "--config", "vitest.words.config.ts"],
  sizes: ["scripts/size.js"],
  "elements in chromium": ["scripts/engines.js", "chromium"],
  "elements in firefox": ["scripts/engines.js", "firefox"],
  "elements in webkit": ["scripts/engines.js", "webkit"],
});

/** What comes first, each step alone: all else needs it, or it compares times. */
const first = ["build", "check", "hostile input"];

/** A browser shows one page at a time and leaves half of two processors idle: its steps run beside the others. */
const isBeside = (name) => name.startsWith("elements in ");

const say = (text) => process.stdout.write(`${text}\n`);

const total = { passed: 0, failed: 0 };
const took = {};

/** Runs one step and counts. A step that breaks off counts as one failure at least. */
async function take(name, [script, ...parameters]) {
  const start = Date.now();
  const { code, output } = await runNode(script, parameters);
  say(`\n== ${name}\n${output.trimEnd()}`);
  const { passed, failed } = countsIn(output) ?? { passed: code === 0 ? 1 : 0, failed: 0 };
  total.passed += passed;
  total.failed += code !== 0 && failed === 0 ? 1 : failed;
  const seconds = String(Math.round((Date.now() - start) / 1000)).padStart(5);
  took[name] = `${seconds} s  ${name}${code !== 0 || failed > 0 ? "  failed" : ""}`;
}

/** Runs steps one after the other. */
async function takeAll(some) {
  for (const [name, command] of some) await take(name, command);
}

const wanted = process.argv.slice(2);
if (await install()) {
  // Pages are opened by tests of every kind: what is missing is brought before the first of them.
  const missing = await bringEngines();
  if (missing.length > 0) say(`Not on this machine: ${missing.join(", ")}`);
  const start = Date.now();
  const chosen = Object.entries(steps()).filter(([name]) => wanted.length === 0 || wanted.includes(name));
  await takeAll(chosen.filter(([name]) => first.includes(name)));
  const others = chosen.filter(([name]) => !first.includes(name));
  await Promise.all([
    takeAll(others.filter(([name]) => isBeside(name))),
    takeAll(others.filter(([name]) => !isBeside(name))),
  ]);
  say(`\n${chosen.map(([name]) => took[name]).join("\n")}\n`);
  say(`${Math.round((Date.now() - start) / 1000)} s in all\n`);
}
if (total.passed + total.failed === 0) total.failed = 1;
say(countsLine(total));
process.exitCode = total.failed === 0 ? 0 : 1;
