// The README's figures, from what is on record, each with the command that measures it anew.
import { readFileSync } from "node:fs";
import { at } from "../lib/paths.js";

const read = (...parts) => readFileSync(at(...parts), "utf8");
const kilobytes = (bytes) => `${Math.round(bytes / 1000)} kB`;

/** A figure of the benchmarks' table, by name. */
const benched = (name) =>
  Number(
    new RegExp(`^\\| ${name} +\\| +([\\d.,]+)`, "m").exec(read("tests", "bench", "figures.md"))[1].replaceAll(",", ""),
  );

export function measuredMade() {
  const sizes = JSON.parse(read("tests", "size", "sizes.json"));
  const { rows } = JSON.parse(read("tests", "hosts", "results.json"));
  const held = rows.filter(({ impossible }) => !impossible).length;
  const millions = (benched("evaluate_totals_per_second") / 1e6).toFixed(1);
  const times = Math.round(benched("chain6_vs_fractionjs"));
  const lines = [
    [
      "what a reader of an article loads first, compressed; once the page has loaded",
      `${kilobytes(sizes.first)}; ${kilobytes(sizes.second)}`,
      "npm run size",
    ],
    [
      "and where it has a build in attributes, as above, a table, a changed count or its author at it",
      kilobytes(sizes.third),
      "npm run size",
    ],
    ["every element in one file", kilobytes(sizes.all), "npm run size"],
    [
      "exact fractions alone; reading and evaluating a build",
      `${kilobytes(sizes.exact)}; ${kilobytes(sizes.read_and_evaluate)}`,
      "npm run size",
    ],
    ["totals of a build of ten stages, a second", `${millions} million`, "npm run bench"],
    ["a chain of six ratios, against a well-known library of fractions", `${times} times as fast`, "npm run bench"],
    [
      "ways in which other people’s software breaks components, that hold",
      `${held} of ${rows.length}`,
      "npm run test:hosts",
    ],
  ];
  return [
    "",
    "| figure | measured | measured by |",
    "| --- | --- | --- |",
    ...lines.map(([name, value, command]) => `| ${name} | ${value} | \`${command}\` |`),
    "",
  ].join("\n");
}
