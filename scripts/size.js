// npm run size: bytes of what a page loads, minified and with brotli at its strongest.
// --json: the last line is one object. --write: what is measured becomes what is expected.
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { brotliCompressSync, constants } from "node:zlib";
import { isMain } from "./lib/main.js";
import { at } from "./lib/paths.js";

/** Promised to users: these are never to be exceeded. Each language has the last one. */
const limits = { exact: 4000, calc: 16_000, article: 18_000, all: 40_000 };
const languageLimit = 800;

/** Within this, a change is noise of another compiler version; beyond it, somebody should look. */
const tolerance = 64;

const expectedFile = at("tests", "size", "sizes.json");

const brotli = (code) =>
  brotliCompressSync(code, {
    params: {
      [constants.BROTLI_PARAM_QUALITY]: 11,
      [constants.BROTLI_PARAM_LGWIN]: 22,
      [constants.BROTLI_PARAM_SIZE_HINT]: code.length,
      [constants.BROTLI_PARAM_MODE]: constants.BROTLI_MODE_TEXT,
    },
  }).length;

/** Measures what is there: an object of bytes by name. */
export async function measure() {
  const { minified, wholeScript } = await import("./lib/bundle.js");
  const sizes = {};
  const calcParts = { exact: "exact/index.ts", calc: "index.ts" };
  for (const [name, source] of Object.entries(calcParts)) {
    const input = at("packages", "calc", "src", source);
    if (existsSync(input)) sizes[name] = brotli(Buffer.from(await wholeScript({ input, format: "es" })));
  }
  const dist = at("packages", "elements", "dist");
  for (const [name, file] of Object.entries({ article: "meshwright-article.js", all: "meshwright.js" })) {
    if (existsSync(`${dist}/${file}`)) sizes[name] = brotli(readFileSync(`${dist}/${file}`));
  }
  const isLanguage = (file) => /^[a-z]{2,3}(-[A-Za-z]+)*\.js$/.test(file);
  for (const file of existsSync(`${dist}/words`) ? readdirSync(`${dist}/words`).filter(isLanguage) : []) {
    const code = readFileSync(`${dist}/words/${file}`, "utf8");
    sizes[`words-${file.slice(0, -3)}`] = brotli(Buffer.from(await minified(code, { module: true })));
  }
  return sizes;
}

const limitOf = (name) => limits[name] ?? languageLimit;

/** What is wrong with the sizes, one sentence each. */
export function sizeProblems(sizes, expected) {
  const problems = [];
  for (const [name, bytes] of Object.entries(sizes)) {
    if (bytes > limitOf(name)) problems.push(`${name} is ${bytes} bytes; at most ${limitOf(name)} are promised.`);
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
  for (const [name, bytes] of Object.entries(sizes)) {
    process.stdout.write(`${name.padEnd(10)} ${String(bytes).padStart(6)} of ${limitOf(name)} bytes\n`);
  }
  const problems = sizeProblems(sizes, expected);
  for (const problem of problems) process.stdout.write(`${problem}\n`);
  const names = new Set([...Object.keys(sizes), ...Object.keys(expected ?? {})]);
  const failed = [...names].filter((name) => problems.some((problem) => problem.startsWith(`${name} is `))).length;
  return { passed: names.size - failed, failed, sizes };
}

if (isMain(import.meta)) {
  const { build } = await import("./build.js");
  if (!(await build(["calc", "elements"]))) process.exit(1);
  if (process.argv.includes("--write")) {
    const sizes = await measure();
    writeFileSync(expectedFile, `${JSON.stringify(sizes, null, 2)}\n`);
  }
  const { failed, sizes } = await checkSizes();
  if (process.argv.includes("--json")) process.stdout.write(`${JSON.stringify(sizes)}\n`);
  process.exitCode = failed === 0 ? 0 : 1;
}
