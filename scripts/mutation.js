// npm run mutation: changes calc's code in small ways, one at a time, and sees whether a test notices.
// Writes reports/mutation, an .html and a .json for each part, and tests/mutation/figures.md with the scores and all that
// nobody noticed. Parts as arguments choose among them; the figures of the others are those of their last run. A change that
// was noticed is taken over from the last run while its code and the test by that name are there; all others are tried again.
// To try every one, delete reports/mutation.
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { availableParallelism } from "node:os";
import { Stryker } from "@stryker-mutator/core";
import { writeFormatted } from "./lib/formatted.js";
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

/**
 * Leaves in the record of a part's last run what was noticed, and tests by their names alone: their places are not known
 * here, and by their source every test of a file would count as new once one of them is.
 */
function keepNoticed(name) {
  const path = at(folder, `${name}-last.json`);
  if (!existsSync(path)) return;
  const record = JSON.parse(readFileSync(path, "utf8"));
  for (const file of Object.values(record.files))
    file.mutants = file.mutants.filter(({ status }) => status === "Killed");
  for (const file of Object.values(record.testFiles)) delete file.source;
  writeFileSync(path, JSON.stringify(record));
}

/** Runs one part; its results lie in the folder then. */
async function mutate(name) {
  const { code, tests } = parts[name];
  process.env.MUTATION_TESTS = tests.join(",");
  keepNoticed(name);
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
    // Loops without an end are told by counting their steps. A busy machine must not count as noticed.
    timeoutMS: 30_000,
    // Not needed by calc's tests; what other tools keep in .cache may be no plain files.
    ignorePatterns: [
      ".cache",
      ".stryker-tmp",
      "dist",
      "reports",
      "demo",
      "packages/elements",
      "packages/bench",
      "tests/hosts",
    ],
    reporters: ["json", "html", "progress-append-only"],
    jsonReporter: { fileName: `${folder}/${name}.json` },
    htmlReporter: { fileName: `${folder}/${name}.html` },
    tempDirName: ".stryker-tmp",
  }).runMutationTest();
}

/** What a part's last run left: how many changes were noticed, those that were not in a line each, how many not tried. */
function resultOf(name) {
  const { files } = JSON.parse(readFileSync(at(folder, `${name}.json`), "utf8"));
  let [noticed, left] = [0, 0];
  const missed = [];
  for (const [path, { mutants, source }] of Object.entries(files)) {
    const lines = source.split("\n");
    for (const { status, location, mutatorName, replacement = "" } of mutants) {
      if (status === "Killed" || status === "Timeout") noticed += 1;
      if (status === "Ignored") left += 1;
      if (status !== "Survived" && status !== "NoCoverage") continue;
      const { line } = location.start;
      const code = (text) => `\`\`${` ${text} `.replaceAll(/\s+/g, " ")}\`\``;
      missed.push(`- ${path}:${line} ${mutatorName}: ${code(lines[line - 1])}, as ${code(replacement)}`);
    }
  }
  return { name, noticed, missed, left, score: (100 * noticed) / Math.max(1, noticed + missed.length) };
}

process.chdir(root);
mkdirSync(at(folder), { recursive: true });
for (const name of names) await mutate(name);

const results = Object.keys(parts)
  .filter((name) => existsSync(at(folder, `${name}.json`)))
  .map(resultOf);
const table = [
  "| part | noticed | missed | score | not tried: run as a module loads |",
  "| --- | ---: | ---: | ---: | ---: |",
  ...results.map(
    ({ name, noticed, missed, left, score }) =>
      `| ${name} | ${noticed} | ${missed.length} | ${score.toFixed(1)} % | ${left} |`,
  ),
];
const page = [
  "# What tests notice",
  "Written by `npm run mutation`, which changes calc's code in small ways, one at a time.",
  table.join("\n"),
  "## What none noticed",
  results.flatMap(({ missed }) => missed).join("\n"),
].join("\n\n");
await writeFormatted(at("tests/mutation/figures.md"), page, "markdown");
process.stdout.write(`${table.join("\n")}\n`);
process.exitCode = results.every(({ name, score }) => !names.includes(name) || score >= least) ? 0 : 1;
