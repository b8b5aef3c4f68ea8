// npm run test:hosts: the elements inside other people's software and pages, in the three engines.
import { mkdirSync, writeFileSync } from "node:fs";
import { dirname } from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "./build.js";
import { allEngines, bringEngines } from "./lib/browsers.js";
import { isMain } from "./lib/main.js";
import { at, filesBelow } from "./lib/paths.js";
import { startEngine } from "../tests/hosts/lib/engine.js";
import { startSite } from "../tests/hosts/lib/site.js";
import { bringPrograms, described, mayBring } from "../tests/hosts/lib/software.js";

const usual = 60_000;
const byNumber = (one, other) => (one.row ?? Infinity) - (other.row ?? Infinity);

/** Every row, those of the table first. Those without a number are more of the same kinds. */
export async function allRows() {
  const files = filesBelow(at("tests", "hosts", "rows"), (path) => path.endsWith(".js"));
  const modules = await Promise.all(files.map((path) => import(pathToFileURL(path))));
  return modules.flatMap(({ rows }) => rows).sort(byNumber);
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
  const { longest = usual } = row;
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

/** Runs rows one after another in one engine. */
async function inEngine(engine, rows, site, outcomes) {
  const mine = rows.filter((row) => row.engines.includes(engine) && !outcomes.get(row).impossible);
  if (mine.length === 0) return;
  const start = () => (engine === "node" ? undefined : startEngine(engine));
  let browser = await start();
  try {
    for (const row of mine) {
      const error = await attempt(row, engine, { browser, site });
      outcomes.get(row).engines[engine] = error;
      // Whatever a row left behind must not fail the next one.
      if (error && browser) {
        await browser.stop().catch(() => undefined);
        browser = await start();
      }
    }
  } finally {
    await browser?.stop().catch(() => undefined);
  }
}

const escaped = (text) => text.replaceAll("&", "&amp;").replaceAll("<", "&lt;");
const engineNames = { node: "Node", chromium: "Chromium", firefox: "Firefox", webkit: "WebKit" };

/** The table for the documentation. Says nothing that differs from one machine to the next. */
export function fragment(rows, outcomes) {
  const line = (row) => {
    const { impossible, failed } = outcomes.get(row);
    const outcome = impossible ? `not possible here: ${impossible}` : failed ? "fails" : "holds";
    const cells = [
      row.software.map(described).join(", "),
      row.engines.map((name) => engineNames[name]).join(", "),
      outcome,
    ];
    return `  <tr><td>${row.row ?? ""}</td><th scope="row">${escaped(row.title)}</th>${cells.map((cell) => `<td>${escaped(cell)}</td>`).join("")}</tr>`;
  };
  return `<table class="hosts">
<thead>
  <tr><th scope="col">No.</th><th scope="col">What goes wrong elsewhere</th><th scope="col">Tried with</th><th scope="col">In</th><th scope="col">Outcome</th></tr>
</thead>
<tbody>
${rows.map(line).join("\n")}
</tbody>
</table>
`;
}

/** Runs the rows; resolves to how many held and how many did not. */
export async function testHosts(wanted = [], { write = wanted.length === 0, fresh = true, engines: only } = {}) {
  if (fresh && !(await build(["calc", "elements"]))) return { passed: 0, failed: 1 };
  const every = await allRows();
  const rows =
    wanted.length === 0
      ? every
      : every.filter(
          (row) =>
            wanted.includes(String(row.row)) || wanted.some((word) => /\D/.test(word) && row.title.includes(word)),
        );
  const [missingEngines, missingPrograms] = [await bringEngines(), await bringPrograms()];
  const outcomes = new Map(rows.map((row) => [row, { engines: {} }]));
  for (const row of rows) {
    const outcome = outcomes.get(row);
    const lacking = row.software.filter((name) => missingPrograms.includes(name));
    if (lacking.length > 0) outcome.impossible = `${lacking.join(", ")} cannot be had`;
    if (row.impossible) outcome.impossible = row.impossible;
    if (lacking.length > 0 && process.env.CI === "true" && mayBring()) outcome.failed = true;
  }
  const site = await startSite();
  try {
    const engines = ["node", ...allEngines].filter(
      (name) => !missingEngines.includes(name) && (!only || only.includes(name)),
    );
    await Promise.all(engines.map((engine) => inEngine(engine, rows, site, outcomes)));
  } finally {
    await site.stop();
  }
  let passed = 0;
  let failed = 0;
  for (const row of rows) {
    const outcome = outcomes.get(row);
    const wrong = Object.entries(outcome.engines).filter(([, error]) => error);
    const untried = row.engines.filter((engine) => missingEngines.includes(engine));
    outcome.failed ||= wrong.length > 0 || (untried.length > 0 && process.env.CI === "true");
    if (outcome.failed) failed += 1;
    else if (!outcome.impossible) passed += 1;
    const verdict = outcome.failed ? "failed" : outcome.impossible ? "not possible" : "ok";
    const remarks = [outcome.impossible, untried.length > 0 && `without ${untried.join(", ")}`].filter(Boolean);
    process.stdout.write(`${verdict} ${row.row ?? "+"} ${row.title}${remarks.map((text) => ` (${text})`).join("")}\n`);
    for (const [engine, error] of wrong) {
      process.stdout.write(
        `  ${engine}: ${String(error.stack ?? error)
          .split("\n")
          .slice(0, 12)
          .join("\n    ")}\n`,
      );
    }
  }
  if (write) {
    const report = rows.map((row) => {
      const { impossible, engines, failed: isWrong } = outcomes.get(row);
      const results = Object.fromEntries(
        Object.entries(engines).map(([name, error]) => [name, error ? error.message : "ok"]),
      );
      return {
        row: row.row ?? null,
        title: row.title,
        software: row.software.map(described),
        failed: isWrong,
        impossible,
        engines: results,
      };
    });
    mkdirSync(at("reports"), { recursive: true });
    writeFileSync(at("reports", "hosts.json"), `${JSON.stringify({ passed, failed, rows: report }, undefined, 2)}\n`);
    const page = at("demo", "guide", "hosts.html");
    mkdirSync(dirname(page), { recursive: true });
    if (missingEngines.length === 0) writeFileSync(page, fragment(rows, outcomes));
  }
  return { passed, failed };
}

if (isMain(import.meta)) {
  const { passed, failed } = await testHosts(process.argv.slice(2));
  process.stdout.write(`${passed} passed, ${failed} failed\n`);
  process.exit(failed === 0 ? 0 : 1);
}
