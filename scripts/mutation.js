// npm run mutation: changes calc's code in small ways, one at a time, and sees whether a test notices.
// Writes reports/mutation/mutation.json, .html and, for reading, summary.md. Folders as arguments choose parts.
import { readFileSync, writeFileSync } from "node:fs";
import { at, root } from "./lib/paths.js";

const parts = { exact: ["exact"], train: ["kinds", "evaluate"], mesh: ["mesh"] };
const chosen = process.argv.slice(2).filter((name) => name in parts);
const names = chosen.length > 0 ? chosen : Object.keys(parts);
const folders = names.flatMap((name) => parts[name]);
const least = 90;

process.chdir(root);
const { Stryker } = await import("@stryker-mutator/core");
const report = "reports/mutation/mutation.json";
await new Stryker({
  mutate: folders.map((folder) => `packages/calc/src/${folder}/**/*.ts`),
  testRunner: "vitest",
  plugins: ["@stryker-mutator/vitest-runner"],
  vitest: { configFile: "tests/mutation/vitest.config.ts" },
  coverageAnalysis: "perTest",
  incremental: true,
  incrementalFile: "reports/mutation/incremental.json",
  concurrency: 2,
  ignorePatterns: ["dist", "reports", "demo", "seeds", "packages/elements", "packages/bench", "tests/hosts"],
  ignoreStatic: true,
  reporters: ["json", "html", "progress-append-only"],
  jsonReporter: { fileName: report },
  htmlReporter: { fileName: "reports/mutation/mutation.html" },
  tempDirName: ".stryker-tmp",
}).runMutationTest();

const { files } = JSON.parse(readFileSync(at(report), "utf8"));
const noticed = new Set(["Killed", "Timeout"]);
const missed = new Set(["Survived", "NoCoverage"]);
const lines = ["# Mutation", "", "| part | noticed | missed | score |", "| --- | ---: | ---: | ---: |"];
const survivors = [];
let good = true;
for (const name of names) {
  let killed = 0;
  let survived = 0;
  for (const [path, { mutants, source }] of Object.entries(files)) {
    if (!parts[name].some((folder) => path.includes(`packages/calc/src/${folder}/`))) continue;
    for (const mutant of mutants) {
      if (noticed.has(mutant.status)) killed += 1;
      if (!missed.has(mutant.status)) continue;
      survived += 1;
      const { line } = mutant.location.start;
      const code = source.split("\n")[line - 1].trim();
      survivors.push(`- ${path}:${line} ${mutant.mutatorName}: \`${code}\` as \`${mutant.replacement ?? ""}\``);
    }
  }
  const score = (100 * killed) / Math.max(1, killed + survived);
  if (score < least) good = false;
  lines.push(`| ${name} | ${killed} | ${survived} | ${score.toFixed(1)} % |`);
}
lines.push("", "## Missed", "", ...survivors, "");
writeFileSync(at("reports", "mutation", "summary.md"), lines.join("\n"));
process.stdout.write(`${lines.slice(2, 4 + names.length).join("\n")}\n`);
process.exitCode = good ? 0 : 1;
