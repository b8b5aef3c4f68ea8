// npm run mutation: stryker.config.js, once for each room that is named, or for all of them. What tests let pass stands in
// reports/mutation, an .html for each room, and the scores in tests/mutation/figures.md. -- --incremental takes over from the
// last run what has not changed since.
import { existsSync, readFileSync } from "node:fs";
import { rooms } from "../stryker.config.js";
import { writeFormatted } from "./lib/formatted.js";
import { at } from "./lib/paths.js";
import { commandOf, runNode } from "./lib/run.js";

const words = process.argv.slice(2);
const named = words.filter((word) => !word.startsWith("--"));
const unknown = named.filter((name) => !Object.hasOwn(rooms, name));
if (unknown.length > 0) throw new Error(`${unknown.join(", ")}; expected some of ${Object.keys(rooms).join(", ")}.`);

const options = words.filter((word) => word.startsWith("--"));
const now = named.length > 0 ? named : Object.keys(rooms);
for (const room of now) {
  const command = commandOf("@stryker-mutator/core", "stryker");
  const { code } = await runNode(command, ["run", ...options], { show: true, env: { ROOM: room } });
  if (code === 0) continue;
  process.stdout.write(`${room}: fewer are noticed than wanted, or the run broke off\n`);
  process.exitCode = 1;
}

/** A room's row, from its last run. */
function rowOf(room) {
  const { files } = JSON.parse(readFileSync(at("reports", "mutation", `${room}.json`), "utf8"));
  const all = Object.values(files).flatMap(({ mutants }) => mutants);
  const count = (...statuses) => all.filter(({ status }) => statuses.includes(status)).length;
  const [noticed, missed] = [count("Killed", "Timeout"), count("Survived", "NoCoverage")];
  const score = ((100 * noticed) / (noticed + missed)).toFixed(1);
  return `| ${room} | ${noticed} | ${missed} | ${score} % | ${count("Ignored")} |`;
}

// What was not run here keeps the row that it has.
const figures = at("tests", "mutation", "figures.md");
const before = new Map(
  readFileSync(figures, "utf8")
    .split("\n")
    .map((row) => [row.split("|")[1]?.trim(), row]),
);
const wasRun = (room) => now.includes(room) && existsSync(at("reports", "mutation", `${room}.json`));

const page = [
  "# What tests notice",
  "",
  "Written by `npm run mutation`, which changes calc's code in small ways, one at a time. At least 90 % are wanted of a room.",
  "",
  "| room | noticed | missed | score | not tried: run as a module loads |",
  "| --- | ---: | ---: | ---: | ---: |",
  ...Object.keys(rooms)
    .map((room) => (wasRun(room) ? rowOf(room) : before.get(room)))
    .filter((row) => row !== undefined),
].join("\n");
await writeFormatted(figures, page, "markdown");
