// npm run size: bytes of what a page loads, minified and with brotli at its strongest.
// --json: the last line is one object. --write: what is measured becomes what is expected.
// --of article: which modules it is made of, minified and not compressed, the heaviest first.
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { basename } from "node:path";
import { brotliCompressSync, constants } from "node:zlib";
import { countsLine } from "./lib/counts.js";
import { isMain } from "./lib/main.js";
import { at, shown } from "./lib/paths.js";

/**
 * What is wanted of each; each language has the last one. Whatever is above it stands in not-reached.json with the reason. What has
 * none is on record only.
 */
const limits = { exact: 4096, read_and_evaluate: 13_312, figure: 18_432, first: 20_480, article: 47_104 };
const onRecord = ["read_notation", "second", "third", "calc", "all", "notebook"];
const languageLimit = 1024;

/** The files of an article. */
const parts = ["first", "second", "third"];

/** Within this, a change is noise of another compiler version; beyond it, somebody should look. */
const tolerance = 64;

const expectedFile = at("tests", "size", "sizes.json");
const notReachedFile = at("tests", "size", "not-reached.json");

const brotli = (code) =>
  brotliCompressSync(code, {
    params: {
      [constants.BROTLI_PARAM_QUALITY]: 11,
      [constants.BROTLI_PARAM_LGWIN]: 22,
      [constants.BROTLI_PARAM_SIZE_HINT]: code.length,
      [constants.BROTLI_PARAM_MODE]: constants.BROTLI_MODE_TEXT,
    },
  }).length;

/** What is measured, and the source that it is made from. */
const sized = (name) => ({ input: at("tests", "size", "entries", `${name}.ts`), format: "es" });
const entries = {
  exact: { input: at("packages", "calc", "src", "exact", "index.ts"), format: "es" },
  read_and_evaluate: sized("read-and-evaluate"),
  read_notation: sized("read-notation"),
  figure: sized("figure"),
  calc: { input: at("packages", "calc", "src", "index.ts"), format: "es" },
  all: { input: at("packages", "elements", "src", "all.ts"), format: "iife" },
  notebook: { input: at("packages", "notebook", "src", "index.ts"), format: "iife", foreign: true },
};

/** Measures what is there, once it is built: an object of bytes by name. */
export async function measure() {
  const { languageSources, wholeScript } = await import("./lib/bundle.js");
  const { banner, writtenScripts } = await import("./build.js");
  const written = writtenScripts();
  const head = banner(JSON.parse(readFileSync(at("packages", "elements", "package.json"), "utf8")).version);
  /** What the build has written, without the lines that name the licences. */
  const sizeOf = (path) => brotli(Buffer.from(readFileSync(path, "utf8").replace(head, "")));
  const sizeOfEntry = async ([name, entry]) => {
    const path = written[entry.input];
    return [name, path ? sizeOf(path) : brotli(Buffer.from(await wholeScript(entry)))];
  };
  const there = Object.entries(entries).filter(([, { input }]) => existsSync(input));
  const sizes = Object.fromEntries(await Promise.all(there.map(sizeOfEntry)));
  for (const name of parts) sizes[name] = sizeOf(written[name]);
  // What is loaded while a reader changes counts. The third comes where something needs it.
  sizes.article = sizes.first + sizes.second;
  for (const [owner, kind] of [
    ["calc", "figures"],
    ["elements", "words"],
  ])
    for (const path of languageSources(at("packages", owner, "src", "languages", kind)))
      sizes[`${kind}-${basename(path, ".ts")}`] = sizeOf(
        at("packages", "elements", "dist", `${kind}-${basename(path, ".ts")}.js`),
      );
  return sizes;
}

/** Prints what one script is made of. */
async function tellModules(name) {
  const { splitScript, weighed, weightsOf } = await import("./lib/bundle.js");
  const { splitSources } = await import("./build.js");
  const weights = parts.includes(name)
    ? await weighed((await splitScript(splitSources())).modules[name])
    : await weightsOf(entries[name]);
  for (const [path, bytes] of weights) {
    process.stdout.write(`${String(bytes).padStart(7)} ${shown(path)}\n`);
  }
}

const limitOf = (name) => limits[name] ?? (onRecord.includes(name) ? Infinity : languageLimit);

/** What is wrong with the sizes, one sentence each. `notReached` names what is known to be above its limit, and why. */
export function sizeProblems(sizes, expected, notReached = {}) {
  const problems = [];
  for (const [name, bytes] of Object.entries(sizes)) {
    const over = bytes > limitOf(name);
    if (over && !(name in notReached)) problems.push(`${name} is ${bytes} bytes; at most ${limitOf(name)} are wanted.`);
    if (!over && name in notReached)
      problems.push(`${name} is ${bytes} bytes, within its limit: not-reached.json can let it go.`);
    if (expected === undefined) continue;
    const change = bytes - (expected[name] ?? Infinity);
    if (Math.abs(change) <= tolerance) continue;
    const what = Number.isFinite(change)
      ? `${Math.abs(change)} bytes ${change > 0 ? "more" : "fewer"} than the ${expected[name]} on record`
      : "not on record";
    problems.push(
      `${name} is ${bytes} bytes, ${what}. If that is meant: npm run size -- --write, and say why in the commit.`,
    );
  }
  for (const name of Object.keys(expected ?? {})) {
    if (!(name in sizes)) problems.push(`${name} is on record and was not found.`);
  }
  return problems;
}

/** Measures, prints a table and what is wrong. Resolves to counts and sizes. */
export async function checkSizes() {
  const sizes = await measure();
  const expected = existsSync(expectedFile) ? JSON.parse(readFileSync(expectedFile, "utf8")) : undefined;
  const notReached = existsSync(notReachedFile) ? JSON.parse(readFileSync(notReachedFile, "utf8")) : {};
  for (const [name, bytes] of Object.entries(sizes)) {
    const known = bytes > limitOf(name) && name in notReached ? `  not reached: ${notReached[name]}` : "";
    const limit = Number.isFinite(limitOf(name)) ? `of ${limitOf(name)} bytes` : "bytes, on record";
    process.stdout.write(`${name.padEnd(17)} ${String(bytes).padStart(6)} ${limit}${known}\n`);
  }
  const problems = sizeProblems(sizes, expected, notReached);
  for (const problem of problems) process.stdout.write(`${problem}\n`);
  const names = new Set([...Object.keys(sizes), ...Object.keys(expected ?? {})]);
  const failed = [...names].filter((name) => problems.some((problem) => problem.startsWith(`${name} is `))).length;
  return { passed: names.size - failed, failed, sizes };
}

if (isMain(import.meta)) {
  const { build } = await import("./build.js");
  if (!(await build(["calc", "elements", "notebook"]))) process.exit(1);
  const of = process.argv[process.argv.indexOf("--of") + 1];
  if (process.argv.includes("--of")) {
    const known = [...Object.keys(entries), ...parts];
    if (!known.includes(of)) throw new Error(`--of ${of}; expected one of ${known.join(", ")}.`);
    await tellModules(of);
    process.exit(0);
  }
  if (process.argv.includes("--write")) {
    const sizes = await measure();
    writeFileSync(expectedFile, `${JSON.stringify(sizes, null, 2)}\n`);
  }
  const { passed, failed, sizes } = await checkSizes();
  process.stdout.write(`${countsLine({ passed, failed })}\n`);
  if (process.argv.includes("--json")) process.stdout.write(`${JSON.stringify(sizes)}\n`);
  process.exitCode = failed === 0 ? 0 : 1;
}
