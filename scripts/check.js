// npm run check: types (two compilers), lint, format, imports and what is counted. Each prints one line; what is wrong
// follows it. Names of checks choose among them.
import { existsSync } from "node:fs";
import { availableParallelism } from "node:os";
import { countsLine } from "./lib/counts.js";
import { isMain } from "./lib/main.js";
import { at, foldersIn, shown } from "./lib/paths.js";
import { commandOf, runNode } from "./lib/run.js";

/** The root project, and each package that has one of its own. */
const projects = () => [
  at("tsconfig.json"),
  ...foldersIn(at("packages"))
    .map((name) => at("packages", name, "tsconfig.json"))
    .filter((path) => existsSync(path)),
];

/** What is wrong, nothing where all is well; `note` is told beside the name. */
const verdict = (trouble, note = "") => ({ trouble, note });

async function types(packageName) {
  let output = "";
  for (const project of projects()) {
    // The packages' own projects read each other's built declarations; here the sources count.
    const ours = project === at("tsconfig.json") || project.includes("calc");
    if (!ours) continue;
    const result = await runNode(commandOf(packageName, "tsc"), ["--noEmit", "-p", project]);
    if (result.code !== 0) output += result.output;
  }
  return verdict(output);
}

async function outputOf(names, args) {
  const { code, output } = await runNode(commandOf(...[names].flat()), args);
  return verdict(code === 0 ? "" : output);
}

/** Counts what a configuration of the linter finds: more than it allows is wrong. */
async function counted(config, path) {
  const { most } = await import(`../${config}`);
  const { output } = await runNode(commandOf("eslint"), ["--config", config, "--no-inline-config", "-f", "json", path]);
  const lines = JSON.parse(output).flatMap(({ filePath, messages }) =>
    messages.map(({ line, column, message }) => `${shown(filePath)}:${line}:${column} ${message}`),
  );
  const note = `${lines.length} found, at most ${most} wanted`;
  return verdict(lines.length > most ? lines.join("\n") : "", note);
}

/** What the oldest browsers do not know, in the scripts that they get. */
async function browsers() {
  const { build } = await import("./build.js");
  if (!(await build(["calc", "elements"]))) return verdict("The scripts cannot be built.");
  return counted("eslint.browsers.config.js", "packages/elements/dist");
}

/** A public name without a line of its own, or a link to what is not there. */
async function lines() {
  const { areDocsFresh, docs } = await import("./docs.js");
  return verdict(areDocsFresh() || (await docs()) ? "" : "The pages of the API cannot be made.");
}

const checks = {
  "types, TypeScript 6": () => types("typescript"),
  "types, TypeScript 7": () => types("typescript-native"),
  lint: () => outputOf("eslint", ["--cache", "--cache-location", ".cache/eslint", "--max-warnings", "0", "."]),
  format: () =>
    outputOf("prettier", ["--check", "--cache", "--cache-location", ".cache/prettier", "--log-level", "warn", "."]),
  imports: () =>
    outputOf(
      ["dependency-cruiser", "depcruise"],
      ["packages", "demo", "scripts", "--config", ".dependency-cruiser.js", "--output-type", "err"],
    ),
  "a line for every public name": lines,
  "nothing unused": () => outputOf("knip", []),
  "stages asked for their kind": () => counted("eslint.kinds.config.js", "packages"),
  "features newer than Safari 16.0 and Chromium 103": browsers,
};

/**
 * Runs every check, as many at a time as there are processors; resolves to how many passed and failed. `only` names those to run.
 */
export async function check(only = Object.keys(checks)) {
  let passed = 0;
  let failed = 0;
  const waiting = [...only];
  const lane = async () => {
    for (let name = waiting.shift(); name !== undefined; name = waiting.shift()) {
      const { trouble, note } = await checks[name]();
      const line = `${trouble === "" ? "ok    " : "wrong "} ${name}${note && `: ${note}`}\n`;
      process.stdout.write(trouble === "" ? line : `${line}${trouble.trimEnd()}\n`);
      if (trouble === "") passed += 1;
      else failed += 1;
    }
  };
  await Promise.all(Array.from({ length: availableParallelism() }, lane));
  return { passed, failed };
}

if (isMain(import.meta)) {
  const named = process.argv.slice(2);
  const { passed, failed } = await check(named.length > 0 ? named : undefined);
  process.stdout.write(`${countsLine({ passed, failed })}\n`);
  process.exitCode = failed === 0 ? 0 : 1;
}
