// npm run check: types (two compilers), lint, format, layout. Each prints one line; what is wrong follows it.
import { existsSync } from "node:fs";
import { countsLine } from "./lib/counts.js";
import { isMain } from "./lib/main.js";
import { at, foldersIn } from "./lib/paths.js";
import { commandOf, runNode } from "./lib/run.js";

/** The root project, and each package that has one of its own. */
const projects = () => [
  at("tsconfig.json"),
  ...foldersIn(at("packages"))
    .map((name) => at("packages", name, "tsconfig.json"))
    .filter((path) => existsSync(path)),
];

async function types(packageName) {
  let output = "";
  for (const project of projects()) {
    // The packages' own projects read each other's built declarations; here the sources count.
    const ours = project === at("tsconfig.json") || project.includes("calc");
    if (!ours) continue;
    const result = await runNode(commandOf(packageName, "tsc"), ["--noEmit", "-p", project]);
    if (result.code !== 0) output += result.output;
  }
  return output;
}

async function outputOf(names, args) {
  const { code, output } = await runNode(commandOf(...[names].flat()), args);
  return code === 0 ? "" : output;
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
};

/** Runs every check; resolves to how many passed and failed. `only` names those to run. */
export async function check(only = Object.keys(checks)) {
  let passed = 0;
  let failed = 0;
  for (const name of only) {
    const trouble = await checks[name]();
    process.stdout.write(`${trouble === "" ? "ok    " : "wrong "} ${name}\n`);
    if (trouble === "") passed += 1;
    else {
      failed += 1;
      process.stdout.write(`${trouble.trimEnd()}\n`);
    }
  }
  return { passed, failed };
}

if (isMain(import.meta)) {
  const { passed, failed } = await check();
  process.stdout.write(`${countsLine({ passed, failed })}\n`);
  process.exitCode = failed === 0 ? 0 : 1;
}
