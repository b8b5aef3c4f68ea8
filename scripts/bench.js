// npm run bench: measures what tests/bench holds. Each module there exports `run()`, which resolves to numbers by name.
// --json: the last line is one object of all of them. --write: tests/bench/figures.md is made anew.
// Names as arguments choose modules.
import { pathToFileURL } from "node:url";
import { basename } from "node:path";
import { build } from "./build.js";
import { number, writeFigures } from "./lib/figures-page.js";
import { at, filesBelow } from "./lib/paths.js";

/** What is wanted of a figure, where something is. */
const wanted = {
  chain6_vs_plain: ["at most", 5],
  chain6_vs_fractionjs: ["at least", 10],
  harmonic_vs_plain: ["at most", 6],
  harmonic_vs_fractionjs: ["at least", 8],
  parse_vs_fastest: ["at most", 1],
  todecimal_vs_fastest: ["at most", 1],
  small_after_wide: ["at most", 1.25],
  evaluate_totals_per_second: ["at least", 500_000],
  evaluate_all_per_second: ["at least", 100_000],
  evaluate_growth: ["at most", 1.2],
  two_stage_cold_ms: ["at most", 10],
  two_stage_warm_ms: ["at most", 1],
  three_stage_ms: ["at most", 100],
  joint_ms: ["at most", 10],
  train_parts_ms: ["at most", 50],
  parts_first_ms: ["at most", 50],
  parts_all_ms: ["at most", 500],
};

if (!(await build(["calc"]))) process.exit(1);
const chosen = process.argv.slice(2).filter((name) => !name.startsWith("--"));
const modules = filesBelow(at("tests", "bench"), (path) => path.endsWith(".js")).filter(
  (path) => chosen.length === 0 || chosen.includes(basename(path, ".js")),
);
const figures = {};
for (const path of modules) {
  const { run } = await import(pathToFileURL(path).href);
  if (run === undefined) continue; // a helper of the others
  const found = await run();
  for (const [name, value] of Object.entries(found)) {
    if (typeof value !== "number") throw new Error(`${basename(path)}: ${name} is not a number.`);
    figures[name] = value;
    process.stdout.write(`${name.padEnd(32)} ${number(value).padStart(14)}\n`);
  }
}
if (process.argv.includes("--write")) {
  const told = { command: "npm run bench -- --write", note: "Ratios are measured side by side in that run." };
  await writeFigures(at("tests", "bench", "figures.md"), told, figures, wanted);
}
if (process.argv.includes("--json")) process.stdout.write(`${JSON.stringify(figures)}\n`);
