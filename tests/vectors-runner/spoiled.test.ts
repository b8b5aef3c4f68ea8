// Vectors prove something only if a wrong one is noticed: every expected field is spoiled here, one at a time.
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, describe, expect, it } from "vitest";
import { casesIn, fileOf, names, troubleOf } from "./cases.js";

type Json = string | number | boolean | null | Json[] | { [key: string]: Json };
type Case = { [key: string]: Json };

const folder = fileURLToPath(new URL("../vectors/", import.meta.url));
const casesOf = (name: string) => JSON.parse(readFileSync(join(folder, `${name}.json`), "utf8")) as Case[];

/** Wrong values in the place of a right one. */
function* wrongFor(value: Json): Generator<Json> {
  if (typeof value === "number") {
    yield value + 1;
    yield value * (1 + 1e-8) || 1e-8;
    yield String(value);
  } else if (typeof value === "string") {
    yield `${value}0`;
    yield `-${value}`;
    const [numerator, denominator] = value.split("/");
    if (denominator !== undefined) {
      yield `${BigInt(numerator ?? "") + 1n}/${denominator}`;
      yield `${BigInt(numerator ?? "") * 2n}/${BigInt(denominator) * 2n}`;
    }
  } else if (typeof value === "boolean") yield !value;
  else if (value === null) yield true;
  if (value !== null) yield null;
}

/** Copies of a value with one thing wrong in each, and the words for what that is. */
function* spoiled(value: Json, path: string): Generator<{ value: Json; what: string }> {
  if (Array.isArray(value)) {
    if (value.length > 0) yield { value: value.slice(0, -1), what: `${path} without its last` };
    yield { value: [...value, value[0] ?? 1], what: `${path} with one more` };
    const [first, second, ...rest] = value;
    if (second !== undefined && JSON.stringify(first) !== JSON.stringify(second)) {
      yield { value: [second, first as Json, ...rest], what: `${path} in another order` };
    }
    for (const [index, item] of value.slice(0, 3).entries()) {
      for (const one of spoiled(item, `${path}.${index}`)) yield { ...one, value: value.with(index, one.value) };
    }
  } else if (typeof value === "object" && value !== null) {
    for (const key of Object.keys(value)) {
      const { [key]: _left, ...without } = value;
      yield { value: without, what: `${path} without ${key}` };
      for (const one of spoiled(value[key] as Json, `${path}.${key}`)) {
        yield { ...one, value: { ...value, [key]: one.value } };
      }
    }
    yield { value: { ...value, unheard: 1 }, what: `${path} with an unknown key` };
    if (path.endsWith(".groups")) {
      yield { value: Object.fromEntries(Object.entries(value).reverse()), what: `${path} in another order` };
    }
    yield { value: "text", what: `${path} as text` };
  } else {
    for (const wrong of wrongFor(value)) yield { value: wrong, what: `${path} as ${JSON.stringify(wrong)}` };
  }
}

describe.each(names)("%s", async (name) => {
  const file = await fileOf(name);
  const passes = (one: Case) => troubleOf(name, file, one, 0).length === 0;

  it("passes as it stands", () => {
    expect(casesOf(name).flatMap((one, index) => troubleOf(name, file, one, index))).toEqual([]);
  });

  it("fails wherever one expected thing is wrong, missing or too many", () => {
    const cases = casesOf(name);
    const step = Math.max(1, Math.floor(cases.length / 12));
    let spoils = 0;
    const unnoticed: string[] = [];
    for (let index = 0; index < cases.length; index += step) {
      const one = cases[index] as Case;
      for (const key of Object.keys(one).filter((field) => field.startsWith("expect"))) {
        const { [key]: _left, ...without } = one;
        if (passes(without)) unnoticed.push(`[${index}] without ${key}`);
        for (const { value, what } of spoiled(one[key] as Json, key)) {
          spoils += 1;
          if (passes({ ...one, [key]: value })) unnoticed.push(`[${index}] ${what}`);
        }
      }
      if (passes({ ...one, extra: 1 })) unnoticed.push(`[${index}] with an unknown field`);
    }
    expect(unnoticed).toEqual([]);
    expect(spoils).toBeGreaterThan(10);
  });
});

it("every file of vectors has its answers, and the other way round", () => {
  const files = readdirSync(folder).filter((name) => name.endsWith(".json"));
  expect(files.map((name) => name.slice(0, -".json".length)).sort()).toEqual(names);
});

describe("a folder of vectors", () => {
  const made = mkdtempSync(join(tmpdir(), "meshwright-vectors-"));
  afterAll(() => rmSync(made, { recursive: true }));

  const folderWith = (files: Record<string, string>) => {
    const path = mkdtempSync(join(made, "case-"));
    for (const [name, text] of Object.entries(files)) writeFileSync(join(path, name), text);
    return path;
  };
  const good = JSON.stringify(casesOf("rounding").slice(0, 3));
  const countsOf = async (path: string) => {
    const cases = await casesIn(path);
    const failed = cases.filter(({ trouble }) => trouble().length > 0).length;
    return { passed: cases.length - failed, failed };
  };

  it("may hold some of the files only", async () => {
    expect(await countsOf(folderWith({ "rounding.json": good, "README.md": "" }))).toEqual({ passed: 3, failed: 0 });
  });

  it.each<[string, Record<string, string>]>([
    ["is empty", {}],
    ["holds a file of an unknown name", { "roundings.json": good }],
    ["holds a file that is an object's inherited name", { "constructor.json": good }],
    ["holds broken JSON", { "rounding.json": good.slice(0, -1) }],
    ["holds a file without cases", { "rounding.json": "[]" }],
    ["holds a file that is no list", { "rounding.json": "{}" }],
    ["holds a case that is none", { "rounding.json": "[3]" }],
    ["holds a case that cannot be answered", { "rounding.json": '[{"value":"x","rounding":{},"expect":"1"}]' }],
  ])("fails where it %s", async (_what, files) => {
    expect(await countsOf(folderWith(files))).toEqual({ passed: 0, failed: 1 });
  });

  it("fails where it is not there", async () => {
    expect(await countsOf(join(made, "nothing"))).toEqual({ passed: 0, failed: 1 });
  });
});
