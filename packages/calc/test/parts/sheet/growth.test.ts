// Work that grows with the square of a cell or a sheet would take hours for these; work that grows with them takes a blink.
import { describe, expect, it } from "vitest";
import { csvOf, partsFromSheet, readSheet, sheetOf } from "../../../src/parts/index.js";

const long = (text: string, letters = 200_000): string => text.repeat(Math.ceil(letters / text.length));

const hostile: readonly string[] = [
  "worm ",
  "worm",
  "1",
  "1 ",
  "1,",
  "1.",
  "1/",
  "ø",
  " ",
  "\t ",
  "(",
  ")",
  "a,",
  '"',
  '""',
  "1'",
  "- ",
  "€",
  "m",
  "0.8 m ",
  "15T ",
  "ring and ",
  "3 of 4 x ",
  "\u0301",
  "歯",
  "用",
  "ギア",
  "ﷺ",
  "2026-",
  "z=",
  ";",
  "x",
  "1 x 2; ",
  "&",
  "#",
  ":",
  "27:1 ",
];
const heads = [
  "Id",
  "Part no.",
  "Name",
  "What",
  "Teeth",
  "Driver",
  "Ratio",
  "Pitch",
  "Belt pitch",
  "Angle",
  "Bore",
  "OD",
  "Hub holes",
  "Price",
  "Currency",
  "Date",
  "In stock",
  "Pack",
  "Own",
  "Status",
  "Facing",
  "For stage",
];

describe("a cell of very many letters", () => {
  // Forty-four of them: the square of each would still take minutes.
  it.each(hostile)("%j under every head keeps its row", (text) => {
    const cells = heads.map(() => long(text, 50_000));
    const read = partsFromSheet([heads, cells, cells]);
    expect(read.rows.length + read.passed.length).toBe(text.trim() === "" ? 1 : 3);
  });

  it.each(hostile)("%j as a head, above the heads or alone", (text) => {
    const cell = long(text);
    const read = partsFromSheet([[cell], ["Name", "Teeth", "Bore (mm)", cell], ["Pinion", "15", "5", "x"], [cell]]);
    expect(read.parts[0]).toMatchObject({ is: "pinion", teeth: 15 });
  });

  it.each(hostile)("%j is a file of its own", (text) => {
    const files = [text, `${text}\n`, `"${text}\n`, `${text},"`].map((one) => long(one));
    for (const file of files.flatMap((one) => [one, `a,b\n${one}"\n"`]))
      expect(readSheet(file).rows.length).toBeGreaterThan(0);
  });
});

describe("a sheet of many", () => {
  it.each([
    ["rows with one name", () => ["Pinion"]],
    ["rows with one number", () => ["T", "pinion", "15"]],
    ["rows that are like heads", () => ["Name", "Teeth", "Bore"]],
    ["rows with one cell", (n: number) => [`Bearings ${n}`]],
    ["titles", () => ["Pinions:"]],
    ["totals", () => ["Total", "", "5"]],
    ["merged cells", () => ["", "", "15"]],
    ["unknown words", (n: number) => ["x", `word${n}`, "15"]],
    ["prices in every manner", (n: number) => [`x${n}`, "other", `${n},${n % 100} EUR`]],
  ] as const)("%s", (_what, rowOf) => {
    const rows = Array.from({ length: 30_000 }, (_, n) => rowOf(n));
    const read = partsFromSheet([["Name", "What", "Teeth"], ...rows]);
    expect(read.rows.length + read.passed.length).toBe(30_001);
    expect(new Set(read.parts.map(({ id }) => id)).size).toBe(read.parts.length);
    if (read.parts.length) expect(csvOf(sheetOf(read.parts)).length).toBeGreaterThan(30_000);
  });

  it("columns", () => {
    const wide = Array.from({ length: 20_000 }, (_, n) => `Head ${n}`);
    expect(
      partsFromSheet([
        ["Name", "Teeth", ...wide],
        ["Pinion", "15", ...wide],
      ]).columns,
    ).toHaveLength(20_002);
  });
});
