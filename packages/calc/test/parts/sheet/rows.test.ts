import { csvParseRows, dsvFormat, tsvParseRows } from "d3-dsv";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { csvOf, readSheet } from "../../../src/parts/index.js";

const cellsOf = (source: string | Uint8Array) => readSheet(source).rows.map(({ cells }) => cells);
const lines = (source: string) => readSheet(source).rows.map(({ line }) => line);
const bytesOf = (text: string, encoding: BufferEncoding) => Uint8Array.from(Buffer.from(text, encoding));

describe("bytes", () => {
  const text = "Zähne;Preis €\n15;6,40\n";
  const expected = [
    ["Zähne", "Preis €"],
    ["15", "6,40"],
  ];
  const cp1252 = Uint8Array.from(Buffer.from(text.replace("€", "\u0080"), "latin1"));

  it.each([
    ["UTF-8", bytesOf(text, "utf8"), "utf-8"],
    ["UTF-8 with its mark", bytesOf(`\uFEFF${text}`, "utf8"), "utf-8"],
    ["UTF-16, little end first", bytesOf(`\uFEFF${text}`, "utf16le"), "utf-16le"],
    ["UTF-16, big end first", Uint8Array.from(Buffer.from(`\uFEFF${text}`, "utf16le").swap16()), "utf-16be"],
    ["UTF-16 without its mark", bytesOf(text, "utf16le"), "utf-16le"],
    ["UTF-16 without its mark, big end first", Uint8Array.from(Buffer.from(text, "utf16le").swap16()), "utf-16be"],
    ["Windows-1252", cp1252, "windows-1252"],
  ])("%s", (_what, bytes, encoding) => {
    expect(cellsOf(bytes)).toEqual(expected);
    expect(readSheet(bytes).encoding).toBe(encoding);
    expect(readSheet(bytes.slice().buffer).encoding).toBe(encoding);
  });

  it("in an encoding that is said, or said wrongly", () => {
    const shiftJis = Uint8Array.from([0x8e, 0x95, 0x90, 0x94, 0x2c, 0x31, 0x0a]);
    expect(readSheet(shiftJis, { encoding: "shift_jis" }).rows[0]!.cells).toEqual(["歯数", "1"]);
    expect(readSheet(cp1252, { encoding: "windows-1252" }).rows[0]!.cells[1]).toBe("Preis €");
    expect(() => readSheet(cp1252, { encoding: "carrier-pigeon" })).toThrow(
      expect.objectContaining({ code: "encoding-unknown" }) as Error,
    );
  });

  it("are no sheet at all, and nothing is thrown", () => {
    expect(readSheet(new Uint8Array()).rows).toEqual([]);
    expect(readSheet(Uint8Array.from([0, 255, 254, 1, 10, 34])).rows.length).toBeGreaterThan(0);
  });
});

describe("separators", () => {
  it.each([
    ["commas", "Part,Teeth\nPinion,15\n", ","],
    ["semicolons, and commas in numbers", "Part;Bore;Price\nPinion;5,0;6,40\nSpur;8,0;12,80\n", ";"],
    ["semicolons, and more commas than those", "a;b\n1,2,3;4,5,6\n1,2;4\n", ";"],
    ["semicolons, each cell with a comma", "a;b;c\n1,5;2,5;3,5\n1,5;2,5;3,5\n", ";"],
    ["tabs, and commas in words", "Part\tTeeth\nPinion, steel\t15\nSpur, black\t62\n", "\t"],
    ["commas, and semicolons in a cell", "Part,Holes\nSpur,3 x 24; 4 x 20\nHub,4 x 20\n", ","],
    ["commas, and a quoted cell full of semicolons", 'a,b\n"x;y;z;w",1\n"x;y;z;w",2\n', ","],
    ["semicolons under a title with commas", "Parts, sorted, of the shed\n\nPart;Teeth\nPinion;15\nSpur;62\n", ";"],
    ["what the first line says", "sep=;\na,b;c\n1,2;3\n", ";"],
  ])("%s", (_what, text, separator) => {
    expect(readSheet(text).separator).toBe(separator);
  });

  it("are bars: of a table as Markdown writes it too, without its edges and its line of dashes", () => {
    const cells = (text: string) =>
      readSheet(text).rows.map((row) => [row.line, ...row.cells.map((cell) => cell.trim())]);
    expect(cells("Part|Teeth\nPinion|15\n")).toEqual([
      [1, "Part", "Teeth"],
      [2, "Pinion", "15"],
    ]);
    expect(cells("| Part | Teeth |\n| :--- | ---: |\n| Pinion | 15 |\n| - | 62 |\n")).toEqual([
      [1, "Part", "Teeth"],
      [3, "Pinion", "15"],
      [4, "-", "62"],
    ]);
  });

  it("are blanks, two and more, where there is nothing else", () => {
    expect(readSheet("  Part        Teeth\n  Long one    15\n\n  Spur        62\n").rows).toEqual([
      { line: 1, cells: ["Part", "Teeth"] },
      { line: 2, cells: ["Long one", "15"] },
      { line: 3, cells: [""] },
      { line: 4, cells: ["Spur", "62"] },
    ]);
    expect(readSheet("Part;Note\nPinion;two  blanks\n").separator).toBe(";");
    expect(readSheet("A  part  alone\n", { separator: "," }).rows[0]!.cells).toEqual(["A  part  alone"]);
  });

  it("can be set, and a first line that says one is no row, but a line", () => {
    expect(readSheet("a|b\n1|2\n", { separator: "|" }).rows[1]!.cells).toEqual(["1", "2"]);
    expect(lines("sep=;\na;b\n1;2\n")).toEqual([2, 3]);
  });
});

describe("rows", () => {
  it("keep the line that they begin on", () => {
    expect(lines('a,b\n"one\ntwo\nthree",1\n\nc,d\n')).toEqual([1, 2, 5, 6]);
    expect(lines('a,b\r\n"one\r\ntwo",1\r\nc,d\r\n')).toEqual([1, 2, 4]);
    expect(lines("a,b\rc,d\r")).toEqual([1, 2]);
  });

  it("are what any reader of RFC 4180 makes of them", () => {
    const cell = fc.string({ unit: fc.constantFrom("a", "ß", "歯", " ", ",", ";", "\t", '"', "\n", "\r\n", "1") });
    const table = fc
      .tuple(fc.integer({ min: 2, max: 5 }), fc.integer({ min: 1, max: 6 }))
      .chain(([width, height]) =>
        fc.array(fc.array(cell, { minLength: width, maxLength: width }), { minLength: height, maxLength: height }),
      );
    fc.assert(
      fc.property(table, fc.constantFrom(",", ";", "\t"), (rows, separator) => {
        const text = csvOf(rows, separator);
        const read = readSheet(text, { separator }).rows.map(({ cells }) => cells);
        expect(read).toEqual(rows);
        expect(read).toEqual(dsvFormat(separator).parseRows(text));
      }),
    );
    expect(csvParseRows('a,"b""c"\n')).toEqual(cellsOf('a,"b""c"\n'));
    expect(tsvParseRows("a\tb\n")).toEqual(cellsOf("a\tb\n"));
  });

  it.each([
    [
      "an inch in the middle of a cell",
      'Part,Bore\nPinion,1/8"\nSpur,1/4"\n',
      [
        ["Pinion", '1/8"'],
        ["Spur", '1/4"'],
      ],
    ],
    [
      "an inch in a quoted cell",
      'Part,Bore\n"Pinion, 1/8" bore",x\nSpur,y\n',
      [
        ['Pinion, 1/8" bore', "x"],
        ["Spur", "y"],
      ],
    ],
    [
      "a mark that nobody closes",
      'Part,Bore\nBolt,"3/8\nNut,5 mm\nPin,6 mm\n',
      [
        ["Bolt", '"3/8'],
        ["Nut", "5 mm"],
        ["Pin", "6 mm"],
      ],
    ],
    ["blanks around quotation marks", 'Part,Bore\n "Pinion" , "5 mm" \n', [["Pinion", "5 mm"]]],
    ["empty quoted cells", 'Part,Bore\n"",""\n', [["", ""]]],
    [
      "a mark that seems to close rows further on",
      'Part,Bore,Teeth\nBolt,"3/8,4\nNut,6 mm,5\nPin,"2, hard",6\n',
      [
        ["Bolt", '"3/8', "4"],
        ["Nut", "6 mm", "5"],
        ["Pin", "2, hard", "6"],
      ],
    ],
  ])("lose nothing to %s", (_what, text, rows) => {
    expect(cellsOf(text).slice(1)).toEqual(rows);
  });

  it("that may lie within a cell are told", () => {
    const { rows } = readSheet('Part,Bore,Teeth\nBolt,"3/8,4\nNut,6 mm,5\nPin,2",6\nRod,4 mm,7\n');
    expect(rows.map(({ line, doubtful }) => [line, doubtful])).toEqual([
      [1, undefined],
      [2, true],
      [5, undefined],
    ]);
  });
});
