// npm run mutation: changes calc's code in small ways, one at a time, and sees whether a test notices.
// Writes reports/mutation: an .html and a .json for each part, and summary.md with all that nobody noticed.
// Parts as arguments choose among them. What has not changed since the last run is taken over from it.
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { availableParallelism } from "node:os";
import { Stryker } from "@stryker-mutator/core";
import { at, root } from "./lib/paths.js";

/** Folders of calc whose code is changed, and whose tests have to notice. */
const parts = {
  exact: { code: ["exact"], tests: ["exact"] },
  train: { code: ["kinds", "evaluate"], tests: ["kinds", "build", "evaluate"] },
  mesh: { code: ["mesh"], tests: ["mesh"] },
};
const least = 90;

const named = process.argv.slice(2).filter((name) => name in parts);
const names = named.length > 0 ? named : Object.keys(parts);
const folder = "reports/mutation";

/** Runs one part; resolves to the changes that were noticed, and those that were not, told in a line each. */
async function mutate(name) {
  const { code, tests } = parts[name];
  process.env.MUTATION_TESTS = tests.join(",");
  await new Stryker({
    mutate: code.map((one) => `packages/calc/src/${one}/**/*.ts`),
    testRunner: "vitest",
    plugins: ["@stryker-mutator/vitest-runner"],
    vitest: { configFile: "tests/mutation/vitest.config.ts" },
    coverageAnalysis: "perTest",
    // What runs once, as a module loads, would need every test each time; tables of that sort are few and told by type.
    ignoreStatic: true,
    incremental: true,
    incrementalFile: `${folder}/${name}-last.json`,
    concurrency: availableParallelism(),
    ignorePatterns: ["dist", "reports", "demo", "seeds", "packages/elements", "packages/bench", "tests/hosts"],
    reporters: ["json", "html", "progress-append-only"],
    jsonReporter: { fileName: `${folder}/${name}.json` },
    htmlReporter: { fileName: `${folder}/${name}.html` },
    tempDirName: ".stryker-tmp",
  }).runMutationTest();
  const { files } = JSON.parse(readFileSync(at(folder, `${name}.json`), "utf8"));
  let noticed = 0;
  const missed = [];
  for (const [path, { mutants, source }] of Object.entries(files)) {
    const lines = source.split("\n");
    for (const { status, location, mutatorName, replacement = "" } of mutants) {
      if (status === "Killed" || status === "Timeout") noticed += 1;
      if (status !== "Survived" && status !== "NoCoverage") continue;
      const { line } = location.start;
      missed.push(`- ${path}:${line} ${mutatorName}: \`${lines[line - 1].trim()}\`, as \`${replacement}\``);
    }
  }
  return { name, noticed, missed };
}

process.chdir(root);
mkdirSync(at(folder), { recursive: true });
const results = [];
for (const name of names) results.push(await mutate(name));

const score = ({ noticed, missed }) => (100 * noticed) / Math.max(1, noticed + missed.length);
const table = [
  "| part | noticed | missed | score |",
  "| --- | ---: | ---: | ---: |",
  ...results.map((one) => `| ${one.name} | ${one.noticed} | ${one.missed.length} | ${score(one).toFixed(1)} % |`),
];
const missed = results.flatMap((one) => one.missed);
writeFileSync(at(folder, "summary.md"), ["# Mutation", "", ...table, "", "## Missed", "", ...missed, ""].join("\n"));
process.stdout.write(`${table.join("\n")}\n`);
process.exitCode = results.every((one) => score(one) >= least) ? 0 : 1;
