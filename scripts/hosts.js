// npm run test:hosts: the elements inside other people's software and pages, in the three engines.
// Numbers and words of titles choose rows, names of engines choose engines. --write: the outcome becomes what the guide shows.
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { pathToFileURL } from "node:url";
import { isDeepStrictEqual } from "node:util";
import { build } from "./build.js";
import { allEngines, bringEngines } from "./lib/browsers.js";
import { writeFormatted } from "./lib/formatted.js";
import { isMain } from "./lib/main.js";
import { at, filesBelow } from "./lib/paths.js";
import { startEngine } from "../tests/hosts/lib/engine.js";
import { startSite } from "../tests/hosts/lib/site.js";
import { bringPrograms, described, mayBring } from "../tests/hosts/lib/software.js";

// No row takes a minute on a machine that has nothing else to do. Beyond this something hangs.
const longest = 300_000;
const everywhere = ["node", ...allEngines];
const recordFile = at("tests", "hosts", "results.json");

const byNumber = (one, other) => (one.row ?? Infinity) - (other.row ?? Infinity);

/** Every row, those of the numbered table first. Those without a number are more of the same kinds. */
export async function allRows() {
  const files = filesBelow(at("tests", "hosts", "rows"), (path) => path.endsWith(".js"));
  const modules = await Promise.all(files.map((path) => import(pathToFileURL(path))));
  return modules.flatMap(({ subject, rows }) => rows.map((row) => ({ ...row, subject }))).sort(byNumber);
}

/** Runs one row in one engine; resolves to what went wrong, or nothing. */
async function attempt(row, engine, { browser, site }) {
  const opened = [];
  const context = {
    engine,
    site,
    /** Opens an address, or markup as a page of its own. */
    async open(page, options = {}) {
      const url = /^[a-z]+:/.test(page) ? page : site.page(page, options);
      const window = await browser.open(url, options);
      opened.push(window);
      return window;
    },
  };
  let timer;
  try {
    const late = new Promise((_, reject) => {
      timer = setTimeout(() => reject(new Error(`Not done after ${longest / 1000} s`)), longest);
    });
    await Promise.race([row.run(context), late]);
    return undefined;
  } catch (error) {
    return error;
  } finally {
    clearTimeout(timer);
    for (const window of opened) await window.close().catch(() => undefined);
  }
}

/** Runs rows one after another in one engine; `tried` hears of each. Resolves to the engine's version. */
async function inEngine(engine, rows, site, tried) {
  const mine = rows.filter((row) => row.engines.includes(engine));
  let browser;
  let version = process.versions.node;
  try {
    for (const row of mine) {
      const begun = performance.now();
      let error;
      try {
        if (engine !== "node") browser ??= await startEngine(engine);
        version = browser?.version ?? version;
        error = await attempt(row, engine, { browser, site });
      } catch (reason) {
        error = reason;
      }
      const seconds = Math.round((performance.now() - begun) / 100) / 10;
      tried(row, { error, seconds });
      if (!error) continue;
      // Whatever a row left behind must not fail the next one.
      await browser?.stop().catch(() => undefined);
      browser = undefined;
    }
  } finally {
    await browser?.stop().catch(() => undefined);
  }
  return version;
}

/** What stands on record, or nothing. */
export function record() {
  try {
    return JSON.parse(readFileSync(recordFile, "utf8"));
  } catch {
    return undefined;
  }
}

/** A row as it is put on record. */
export const recorded = ({ row, subject, title, software, engines, elsewhere }, impossible) => ({
  ...(row === undefined ? {} : { row }),
  subject,
  title,
  software: software.map(described),
  engines,
  ...(elsewhere === undefined ? {} : { elsewhere }),
  ...(impossible === undefined ? {} : { impossible }),
});

async function write(found) {
  await writeFormatted(recordFile, JSON.stringify(found), "json");
  const { writePages } = await import("../demo/make.js");
  await writePages();
}

/** What was asked for, out of words: numbers and parts of titles, and engines. */
function wantedOf(words, rows) {
  const engines = words.filter((word) => everywhere.includes(word));
  const names = words.filter((word) => !everywhere.includes(word) && !word.startsWith("--"));
  const isWanted = ({ row, title }) =>
    names.some((word) => word === String(row) || (/\D/.test(word) && title.includes(word)));
  const chosen = engines.length > 0 ? engines : everywhere;
  return {
    engines: chosen,
    rows: rows
      .filter((row) => names.length === 0 || isWanted(row))
      .filter((row) => row.engines.some((engine) => chosen.includes(engine))),
    isWhole: engines.length + names.length === 0,
  };
}

function tell(row, { failed, impossible, engines }, untried) {
  const verdict = failed ? "failed" : impossible ? "not possible" : "ok";
  const remarks = [impossible, untried.length > 0 && `without ${untried.join(", ")}`].filter(Boolean);
  process.stdout.write(`${verdict} ${row.row ?? "+"} ${row.title}${remarks.map((text) => ` (${text})`).join("")}\n`);
  for (const [engine, { error }] of Object.entries(engines)) {
    if (!error) continue;
    const lines = String(error.stack ?? error).split("\n");
    process.stdout.write(`  ${engine}: ${lines.slice(0, 12).join("\n    ")}\n`);
  }
}

/** Runs the rows that the words choose; resolves to how many held and how many did not. */
export async function testHosts(words = []) {
  if (!(await build(["calc", "elements"]))) return { passed: 0, failed: 1 };
  const wanted = wantedOf(words, await allRows());
  const { rows } = wanted;
  const [missingEngines, missingPrograms] = [await bringEngines(), await bringPrograms()];
  const outcomes = new Map(rows.map((row) => [row, { engines: {} }]));
  for (const row of rows) {
    const lacking = row.software.filter((name) => missingPrograms.includes(name));
    if (lacking.length === 0) continue;
    outcomes.get(row).impossible = `${lacking.join(", ")} cannot be had`;
    outcomes.get(row).failed = process.env.CI === "true" && mayBring();
  }
  const engines = wanted.engines.filter((name) => !missingEngines.includes(name));
  const untold = [...rows];
  let [passed, failed] = [0, 0];
  /** Tells the rows that have been tried wherever they are to be, in their order. */
  const tellNext = () => {
    for (let [row] = untold; row; [row] = untold) {
      const outcome = outcomes.get(row);
      const mine = row.engines.filter((engine) => engines.includes(engine));
      if (!outcome.impossible && mine.some((engine) => !(engine in outcome.engines))) return;
      const untried = row.engines.filter((engine) => missingEngines.includes(engine));
      outcome.failed ||= Object.values(outcome.engines).some(({ error }) => error);
      outcome.failed ||= untried.length > 0 && process.env.CI === "true";
      if (outcome.failed) failed += 1;
      else if (!outcome.impossible) passed += 1;
      tell(row, outcome, untried);
      untold.shift();
    }
  };
  const site = await startSite();
  const versions = {};
  try {
    const possible = rows.filter((row) => !outcomes.get(row).impossible);
    await Promise.all(
      engines.map(async (engine) => {
        versions[engine] = await inEngine(engine, possible, site, (row, found) => {
          outcomes.get(row).engines[engine] = found;
          tellNext();
        });
      }),
    );
  } finally {
    await site.stop();
  }
  tellNext();
  const report = rows.map((row) => {
    const { impossible, engines, failed: isWrong } = outcomes.get(row);
    const seconds = Object.fromEntries(Object.entries(engines).map(([name, one]) => [name, one.seconds]));
    return { ...recorded(row, impossible), failed: isWrong, seconds };
  });
  mkdirSync(at("reports"), { recursive: true });
  writeFileSync(at("reports", "hosts.json"), JSON.stringify({ passed, failed, versions, rows: report }, undefined, 2));
  const found = { versions, rows: rows.map((row) => recorded(row, outcomes.get(row).impossible)) };
  const isSound = wanted.isWhole && failed === 0 && missingEngines.length === 0;
  if (words.includes("--write") && isSound) await write(found);
  else if (words.includes("--write")) process.stdout.write("Only a whole run without a fault goes on record.\n");
  else if (isSound && !isDeepStrictEqual(found.rows, record()?.rows))
    process.stdout.write("The guide shows another outcome: npm run test:hosts -- --write\n");
  return { passed, failed };
}

if (isMain(import.meta)) {
  const { passed, failed } = await testHosts(process.argv.slice(2));
  process.stdout.write(`${passed} passed, ${failed} failed\n`);
  process.exit(failed === 0 ? 0 : 1);
}
