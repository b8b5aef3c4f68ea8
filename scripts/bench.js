// npm run bench: measures what tests/bench holds. Each module there exports `run()`, which resolves to numbers by name.
// --json: the last line is one object of all of them. Names as arguments choose modules.
import { pathToFileURL } from "node:url";
import { basename } from "node:path";
import { build } from "./build.js";
import { at, filesBelow } from "./lib/paths.js";

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
    process.stdout.write(`${name.padEnd(32)} ${Number(value.toPrecision(4)).toLocaleString("en").padStart(14)}\n`);
  }
}
if (process.argv.includes("--json")) process.stdout.write(`${JSON.stringify(figures)}\n`);
