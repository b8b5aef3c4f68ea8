// Twenty sheets that look like the real thing, read whole, against what their rows mean: written beside them by hand, or
// known to what made them up.
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { Part } from "../../src/drivetrain/index.js";
import { partsFromSheet, readParts, readSheet, type SheetParts } from "../../src/parts/index.js";
import { generated } from "./sheets/generate.js";

/** What a row means, as text by field; `asks` names the fields that nobody could tell from the sheet. */
type Truth = Readonly<Record<string, string>>;

interface Known {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly rows: ReadonlyMap<number, Truth>;
  readonly passed: readonly number[];
}

const folder = new URL("sheets/", import.meta.url);

function byHand(name: string): Known {
  const truth = readFileSync(new URL(name.replace(/\.\w+$/, ".truth"), folder), "utf8");
  const lines = truth
    .trim()
    .split("\n")
    .map((line) => line.split("|").map((cell) => cell.trim()));
  const heads = lines[0]!;
  const rows = lines.slice(1, -1).map((cells) => {
    const named = heads.map((head, n) => [head, cells[n] ?? ""] as const).filter(([, cell]) => cell !== "");
    return [Number(cells[0]), Object.fromEntries(named.slice(1))] as const;
  });
  const passed = lines.at(-1)!.slice(1).map(Number);
  return { name, bytes: readFileSync(new URL(name, folder)), rows: new Map(rows), passed };
}

const made: Known[] = generated.map(({ name, bytes, first, truth, ...more }) => ({
  name,
  bytes,
  rows: new Map(
    truth.map((row, n) => [
      first + n,
      Object.fromEntries(Object.entries(row).map(([field, value]) => [field, String(value)])),
    ]),
  ),
  passed: "passed" in more ? (more.passed as readonly number[]) : [],
}));

const isSheet = (name: string): boolean => /\.(csv|tsv|txt)$/.test(name);
const written = readdirSync(folder).filter((name) => isSheet(name) && !made.some((one) => one.name === name));
const sheets: readonly Known[] = [...written.map(byHand), ...made];

/** A part in the words of the truth. */
function told(part: Part): Truth {
  const {
    price,
    module,
    diametralPitch,
    available,
    circles,
    pitch,
    tipDiameter: _,
    id: _id,
    name: _name,
    ...rest
  } = part;
  const plain = Object.entries(rest).map(([field, value]) => [field, String(value)] as const);
  return {
    ...Object.fromEntries(plain),
    ...(price && { price: `${price.amount} ${price.currency}` }),
    ...(price?.checked && { checked: price.checked }),
    ...(module !== undefined && { pitch: `m${module}` }),
    ...(diametralPitch !== undefined && { pitch: `${diametralPitch}dp` }),
    ...(pitch !== undefined && { beltPitch: pitch }),
    ...(available !== undefined && { available: available ? "yes" : "no" }),
    ...(circles && { circles: circles.map(({ count, diameter }) => `${count} x ${diameter}`).join("; ") }),
  };
}

/** Numbers that are equal are the same, however they are written; a ratio may stand for its one. */
const same = (a: string | undefined, b: string | undefined): boolean => {
  const canonical = (text = ""): string =>
    text
      .replace(/:1$/, "")
      .replace(/(\.\d*?)0+(?=\D|$)/g, "$1")
      .replace(/\.(?=\D|$)/g, "");
  return canonical(a) === canonical(b);
};

/** The fields of the truth that a question about a field of a sheet is about. */
const about: Readonly<Record<string, readonly string[]>> = {
  teeth: ["teeth", "driver", "driven", "value"],
  toothPitch: ["pitch", "beltPitch"],
  module: ["pitch"],
  diametralPitch: ["pitch"],
  pitch: ["beltPitch"],
  round: ["outside", "diameter"],
  across: ["outside", "diameter"],
  currency: ["price"],
};

function questioned(read: SheetParts, row: number): ReadonlySet<string> {
  return new Set(
    read.questions.filter((one) => one.row === row && one.field).flatMap((one) => about[one.field!] ?? [one.field!]),
  );
}

const text = new Set(["number", "maker", "source"]);

interface Score {
  cells: number;
  right: number;
  asked: number;
  readonly silent: string[];
  readonly unasked: string[];
}

/** Every cell that has to be understood: right without a question, asked about, or wrong in silence. */
function scoreOf({ rows }: Known, read: SheetParts): Score {
  const score: Score = { cells: 0, right: 0, asked: 0, silent: [], unasked: [] };
  read.rows.forEach(({ row, line }, n) => {
    const truth = rows.get(line) ?? {};
    const part = told(read.parts[n]!);
    const asks = questioned(read, row);
    const open = new Set((truth.asks ?? "").split(" "));
    for (const field of new Set([...Object.keys(truth), ...Object.keys(part)])) {
      if (field === "asks" || (text.has(field) && truth[field] === undefined)) continue;
      const isRight = same(part[field], truth[field]);
      if (text.has(field)) {
        if (!isRight && !asks.has(field)) score.silent.push(`${line} ${field}: ${part[field]} for ${truth[field]}`);
        continue;
      }
      score.cells += 1;
      if (asks.has(field)) score.asked += 1;
      else if (isRight) score.right += 1;
      else score.silent.push(`${line} ${field}: ${part[field]} for ${truth[field]}`);
    }
    for (const field of open) if (field !== "" && !asks.has(field)) score.unasked.push(`${line} ${field}`);
  });
  return score;
}

describe("sheets as people keep them", () => {
  const scores = new Map<string, Score>();

  it("are twenty, of a thousand rows and more, and those made up are as their maker makes them", () => {
    expect(sheets).toHaveLength(20);
    expect(sheets.reduce((sum, { rows }) => sum + rows.size, 0)).toBeGreaterThanOrEqual(1000);
    for (const { name, bytes } of made) expect(readFileSync(new URL(name, folder)).equals(bytes)).toBe(true);
  });

  it.each(sheets.map((sheet) => [sheet.name, sheet] as const))(
    "%s: no row is lost, no guess is silent",
    (_name, sheet) => {
      const read = partsFromSheet(readSheet(sheet.bytes).rows);
      const score = scoreOf(sheet, read);
      scores.set(sheet.name, score);
      expect(read.rows.map(({ line }) => line)).toEqual([...sheet.rows.keys()]);
      const heads = new Set(["head", "units"]);
      expect(read.passed.filter(({ code }) => !heads.has(code)).map(({ line }) => line)).toEqual(sheet.passed);
      expect(score.silent).toEqual([]);
      expect(score.unasked).toEqual([]);
      expect(new Set(read.parts.map(({ id }) => id)).size).toBe(read.parts.length);
    },
  );

  it("are right in 97 of 100 cells without a question", () => {
    const all = [...scores.values()];
    const sum = (of: (score: Score) => number): number => all.reduce((total, score) => total + of(score), 0);
    if (process.env.SHEETS)
      console.warn(
        [...scores].map(([name, { cells, right, asked }]) => `${name} ${cells} ${right} ${asked}`).join("\n"),
        sum(({ right }) => right) / sum(({ cells }) => cells),
      );
    expect(all).toHaveLength(20);
    expect(sum(({ right }) => right) / sum(({ cells }) => cells)).toBeGreaterThanOrEqual(0.97);
  });

  it.each(sheets.map((sheet) => [sheet.name, sheet] as const))(
    "%s: complete parts are a list of parts",
    (_name, { bytes }) => {
      const read = partsFromSheet(readSheet(bytes).rows);
      const complete = read.parts.filter((_, n) => read.rows[n]!.isComplete);
      expect(readParts(complete).findings).toEqual([]);
    },
  );
});
