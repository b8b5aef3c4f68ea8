#!/usr/bin/env node
import { realpathSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { reportOf, type FileReport, type Place } from "./file-report.js";
import { filesOf } from "./files.js";
import { help, optionsFrom } from "./options.js";
import { version } from "./version.js";

type Say = (line: string) => void;

const lineOf = (file: string, { line, column, element, message, reason }: Place): string =>
  `${file}:${line}:${column} ${element} ${message}${reason ? ` (to be mended by hand: ${reason})` : ""}`;

const sum = (reports: readonly FileReport[], what: "compared" | "stale" | "mended" | "left" | "untold"): number =>
  reports.reduce((all, report) => all + report[what], 0);

function notCheckedIn(reports: readonly FileReport[]): Readonly<Record<string, number>> {
  const all: Record<string, number> = {};
  for (const { notChecked } of reports)
    for (const [what, times] of Object.entries(notChecked)) all[what] = (all[what] ?? 0) + times;
  return all;
}

/** What all files come to. 0: nothing is stale. 1: something is. 2: it could not be told. */
function totalOf(reports: readonly FileReport[]) {
  const untold = sum(reports, "untold");
  const left = sum(reports, "left");
  const stuck = untold > 0 || reports.some(({ trouble }) => trouble !== undefined);
  return {
    compared: sum(reports, "compared"),
    stale: sum(reports, "stale"),
    mended: sum(reports, "mended"),
    left,
    untold,
    notChecked: notCheckedIn(reports),
    exit: stuck ? 2 : left ? 1 : 0,
  };
}

const list = (notChecked: Readonly<Record<string, number>>): string =>
  Object.entries(notChecked)
    .map(([what, times]) => `${times} ${what}`)
    .join(", ");

function sayReport(report: FileReport, say: Say, complain: Say): void {
  const { file, mended, notChecked, warnings, places, trouble } = report;
  if (mended) say(`${file}: ${mended} mended`);
  for (const place of places) if (place.outcome !== "mended") say(lineOf(file, place));
  for (const { line, column, element, message } of warnings)
    say(`${file}:${line}:${column} ${element} warning: ${message}`);
  if (list(notChecked)) say(`${file}: not checked: ${list(notChecked)}`);
  if (trouble !== undefined) complain(`${file} ${trouble}`);
}

function sayTotal({ compared, stale, mended, left, untold }: ReturnType<typeof totalOf>, say: Say): void {
  const parts = [`${compared} compared`, `${stale} stale`];
  if (stale) parts[1] += `: ${mended} mended, ${left} left`;
  if (untold) parts.push(`${untold} could not be told`);
  say(parts.join("; "));
}

/** The command: answers its exit status. */
export function run(parameters: readonly string[], say: Say = console.log, complain: Say = console.error): number {
  const options = optionsFrom(parameters);
  if (typeof options === "string") {
    complain(`${options}\n${help}`);
    return 2;
  }
  if (options.help || options.version) {
    say(options.help ? help.trimEnd() : version);
    return 0;
  }
  const reports: FileReport[] = [];
  for (const found of filesOf(options.names)) {
    const report = reportOf(found, options.write, options.system);
    if (!options.json) sayReport(report, say, complain);
    reports.push(report);
  }
  const total = totalOf(reports);
  if (options.json) say(JSON.stringify({ version, files: reports, ...total }, null, 2));
  else sayTotal(total, say);
  return total.exit;
}

if (process.argv[1] && fileURLToPath(import.meta.url) === realpathSync(process.argv[1]))
  process.exitCode = run(process.argv.slice(2));
