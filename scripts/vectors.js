// npm run test:vectors: answers every case of tests/vectors, or of another folder in VECTORS, with the built calc.
import { existsSync } from "node:fs";
import { resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { isMain } from "./lib/main.js";
import { at, foldersIn } from "./lib/paths.js";
import { runVectors } from "./vectors/run.js";

/** Everything that the built calc offers, by name. */
async function builtCalc() {
  const dist = at("packages", "calc", "dist");
  const modules = ["", ...foldersIn(dist)].map((folder) => at("packages", "calc", "dist", folder, "index.js"));
  const calc = {};
  for (const path of modules.filter((module) => existsSync(module))) {
    Object.assign(calc, await import(pathToFileURL(path).href));
  }
  return calc;
}

/** Runs the vectors; prints what differs. Resolves to the counts. */
export async function testVectors(folder = process.env.VECTORS ?? at("tests", "vectors")) {
  const { passed, failed, lines } = runVectors(await builtCalc(), resolve(folder));
  for (const line of lines) process.stdout.write(`${line}\n`);
  return { passed, failed };
}

if (isMain(import.meta)) {
  const { build } = await import("./build.js");
  if (!(await build(["calc"]))) process.exit(1);
  const { passed, failed } = await testVectors();
  process.stdout.write(`${passed} passed, ${failed} failed\n`);
  process.exitCode = failed === 0 ? 0 : 1;
}
