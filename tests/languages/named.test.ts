// A language is a file in each list of words, and every list is named wherever it is fetched from.
import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { languageCodes } from "../../packages/calc/src/languages/all.js";
import { at } from "../../scripts/lib/paths.js";

const calc = (...parts: string[]) => ["packages", "calc", "src", "languages", ...parts];
const elements = (...parts: string[]) => ["packages", "elements", "src", ...parts];

/** The languages that a folder has a file of, English apart. */
const filesIn = (...place: string[]): string[] =>
  readdirSync(at(...place))
    .flatMap((name) => /^([a-z]{2,3})\.ts$/.exec(name)?.[1] ?? [])
    .filter((name) => name !== "en")
    .sort();

/** The languages that a loader names. */
const namedIn = (pattern: RegExp, ...place: string[]): string[] =>
  [...readFileSync(at(...place), "utf8").matchAll(pattern)].map(([, name]) => name!).sort();

const wanted = filesIn(...calc("figures"));

test.each([
  ["findings", calc("findings")],
  ["reports", calc("reports")],
  ["words", elements("languages", "words")],
  ["tools", elements("languages", "tools")],
])("every language has %s", (_, place) => {
  expect(filesIn(...place)).toEqual(wanted);
});

test("every language is one to programs", () => {
  expect(languageCodes.filter((code) => code !== "en").sort()).toEqual(wanted);
});

test.each([
  ["words", /languages\/words\/(\w+)\.js/g, "words"],
  ["figures", /languages\/figures\/(\w+)"/g, "words"],
  ["reports", /languages\/reports\/(\w+)"/g, "words"],
  ["findings", /languages\/findings\/(\w+)"/g, "words"],
  ["tools", /languages\/tools\/(\w+)\.js/g, "tools"],
])("the modules fetch the %s of every language", (_, pattern, room) => {
  const found = namedIn(pattern, ...elements("shared", room, "load.ts")).filter((name) => name !== "en");
  expect(found).toEqual(wanted);
});

test("the script files fetch those of every language", () => {
  const source = readFileSync(at(...elements("shared", "words", "load-classic.ts")), "utf8");
  const [, list] = /const languages = \[([^\]]*)\]/.exec(source) ?? [];
  expect(list!.match(/\w+/g)!.sort()).toEqual(wanted);
});
