// npm run test:systems: articles in whole systems, written as an author writes there. Names choose systems. --write: the outcome
// becomes what the guide shows.
import { cpSync, existsSync, readFileSync, readdirSync } from "node:fs";
import { isDeepStrictEqual } from "node:util";
import { pathToFileURL } from "node:url";
import { build } from "./build.js";
import { pack } from "./integrations.js";
import { bringEngines } from "./lib/browsers.js";
import { countsLine } from "./lib/counts.js";
import { writeFormatted } from "./lib/formatted.js";
import { isMain } from "./lib/main.js";
import { at } from "./lib/paths.js";
import { bring, versionOfNpm, versionOfProgram } from "../tests/systems/lib/bring.js";
import { begin } from "../tests/systems/lib/run.js";

const recordFile = at("tests", "systems", "results.json");
const rowsFolder = at("tests", "systems", "rows");

/** Systems in the order in which they are tried: what is quick comes first. */
const order = [
  "hugo",
  "jekyll",
  "eleventy",
  "mkdocs",
  "pelican",
  "astro",
  "dokuwiki",
  "mediawiki",
  "wordpress",
  "ghost",
];
const names = () =>
  readdirSync(rowsFolder)
    .map((file) => file.replace(/\.js$/, ""))
    .sort((one, other) => order.indexOf(one) - order.indexOf(other));

/** What stands on record, or nothing. */
export const record = () => (existsSync(recordFile) ? JSON.parse(readFileSync(recordFile, "utf8")) : undefined);

/** Tries one system; resolves to what is put on record, or to what went wrong. */
async function attempt(name, notebook) {
  const row = await import(pathToFileURL(at("tests", "systems", "rows", `${name}.js`)));
  const missing = await bring(row.needs);
  if (missing.length > 0) return { impossible: `${missing.join(", ")} cannot be had` };
  const t = await begin(name);
  try {
    await row.run(t, notebook);
    const version = row.version?.() ?? (row.needs.npm ? versionOfNpm(row.made) : versionOfProgram(row.made));
    return { outcome: { version, steps: t.steps, outcomes: t.outcomes } };
  } catch (error) {
    await t.keep();
    return { error };
  } finally {
    await t.stop();
  }
}

/** Runs the systems that the words choose; resolves to how many held and how many did not. */
export async function testSystems(words = []) {
  if (!(await build())) return { passed: 0, failed: 1 };
  pack();
  const missing = await bringEngines(["chromium"]);
  if (missing.length > 0) throw new Error("Chromium is not on this machine.");
  const { notebook } = await import("../tests/systems/lib/post.js");
  const written = await notebook();
  const asked = words.filter((word) => !word.startsWith("--"));
  const wanted = names().filter((name) => asked.length === 0 || asked.includes(name));
  const found = {};
  let [passed, failed] = [0, 0];
  for (const name of wanted) {
    const begun = Date.now();
    const { outcome, impossible, error } = await attempt(name, written);
    const took = `${Math.round((Date.now() - begun) / 1000)} s`;
    if (outcome) {
      passed += 1;
      found[name] = outcome;
    } else if (error) failed += 1;
    else found[name] = { impossible };
    process.stdout.write(`${outcome ? "ok" : error ? "failed" : "not possible"} ${name} (${impossible ?? took})\n`);
    for (const one of outcome?.outcomes ?? []) process.stdout.write(`   ${one.place}: ${one.outcome}\n`);
    if (error)
      process.stdout.write(
        `   ${String(error.stack ?? error)
          .split("\n")
          .slice(0, 40)
          .join("\n   ")}\n`,
      );
  }
  const now = record() ?? {};
  const next = asked.length === 0 ? found : { ...now, ...found };
  if (words.includes("--write") && failed === 0) {
    await writeFormatted(recordFile, JSON.stringify(next), "json");
    const pictures = at("reports", "systems", "pictures");
    if (existsSync(pictures)) cpSync(pictures, at("demo", "guide", "systems"), { recursive: true });
    const { writePages } = await import("../demo/make.js");
    await writePages();
  } else if (failed === 0 && !isDeepStrictEqual(next, now))
    process.stdout.write("The guide shows another outcome: npm run test:systems -- --write\n");
  return { passed, failed };
}

if (isMain(import.meta)) {
  const counts = await testSystems(process.argv.slice(2));
  process.stdout.write(`${countsLine(counts)}\n`);
  process.exit(counts.failed === 0 ? 0 : 1);
}
