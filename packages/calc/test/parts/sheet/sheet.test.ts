import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  canBeHad,
  partsFromSheet,
  questionText,
  readParts,
  readSheet,
  sheetKey,
  sheetWords,
} from "../../../src/parts/index.js";
import { asked, one, sheet } from "./make.js";

describe("rows of a sheet", () => {
  it("are told by the line of the file", () => {
    const { rows } = readSheet('Part,Teeth\n"Pinion\n(bent)",15\nSpur,sixty\n');
    const read = partsFromSheet(rows);
    expect(read.rows.map(({ row, line }) => [row, line])).toEqual([
      [1, 2],
      [2, 4],
    ]);
    expect(read.questions.map(({ line, code }) => [line, code])).toEqual([[4, "count-unclear"]]);
  });

  const untidy: readonly (readonly [string, string])[] = [
    ["€4,20", "Price"],
    ["4,20 EUR", "Price"],
    ["03/10/2026", "Date"],
    ['1/8"', "Bore"],
    ["17T", "Teeth"],
    [".8", "Module"],
    ["58.0", "Teeth"],
    ["yes", "In stock"],
    ["0.8 m", "Pitch"],
    ["20/41", "Teeth"],
    ["\u0000", "Price"],
    ["#NAME?", "Bore"],
    ["see above", "Module"],
    ["4,20 groats", "Price"],
  ];
  it.each(untidy)("are not lost to %s under %s", (text, head) => {
    expect(one(head, text, "pinion").parts).toHaveLength(1);
  });

  it("keep shop numbers, repeated, odd or missing, and get ids of their own", () => {
    const { parts, questions } = sheet([
      "Part no.|What|Teeth",
      "TERN 15/a_|pinion|15",
      "TERN 15/a_|pinion|16",
      "TERN 15/a_|pinion|16",
      "48-15|pinion|15",
      "歯-1|pinion|15",
      "|pinion|15",
      "n/a|pinion|15",
      "***|pinion|17",
    ]);
    expect(questions).toEqual([]);
    expect(parts.map(({ number }) => number)).toEqual([
      "TERN 15/a_",
      "TERN 15/a_",
      "TERN 15/a_",
      "48-15",
      "歯-1",
      undefined,
      undefined,
      "***",
    ]);
    expect(parts.map(({ id }) => id)).toEqual([
      "tern-15-a-15",
      "tern-15-a-16",
      "tern-15-a-16-2",
      "part-48-15",
      "part-1",
      "pinion-15",
      "pinion-15-2",
      "pinion-17",
    ]);
  });

  it("keep the ids that they have, where those are ids and stand once", () => {
    const { parts, rows } = sheet(["Id|Name|What", "a-b|x|other", "dup|y|other", "dup|z|other", "Big One|w|other"]);
    expect(rows.map(({ hasOwnId }) => hasOwnId)).toEqual([true, true, false, false]);
    expect(parts.map(({ id, number }) => [id, number])).toEqual([
      ["a-b", undefined],
      ["dup", undefined],
      ["dup-2", "dup"],
      ["big-one", "Big One"],
    ]);
  });

  it("under the same heads again, as under sections, are rows of one table, however few the heads are", () => {
    const rows = ["Pinions", "Teeth|Module", "15|0.8", "", "Spurs", "Teeth|Module", "62|0.8"];
    const { parts, questions, passed } = sheet(rows);
    expect(questions).toEqual([]);
    expect(parts.map(({ is, teeth }) => [is, teeth])).toEqual([
      ["pinion", 15],
      ["spur", 62],
    ]);
    expect(passed.map(({ code, row }) => [code, row])).toEqual([
      ["section", 0],
      ["head", 1],
      ["section", 4],
      ["head", 5],
    ]);
  });

  it("have ids that a list of parts takes, whatever stands in their column, and however often", () => {
    const long = `${"l".repeat(97)}-x`;
    const { parts } = sheet(["Id|Name|What|Teeth", "a--b|x|pinion|9", `${long}|y|pinion|10`, `${long}|z|pinion|11`]);
    expect(parts.map(({ id }) => id)).toEqual(["a-b", long, `${"l".repeat(60)}-11`]);
    expect(readParts(parts).findings).toEqual([]);
  });

  it("that lack what their kind needs are there, and are asked for it", () => {
    const read = sheet([
      "Name|What|Teeth|Bore",
      "A|spur||5 mm",
      "B|ring and pinion|13/38|",
      "C|wheel||",
      "D|sleeve||5 mm",
    ]);
    expect(read.parts.map(({ is }) => is)).toEqual(["spur", "set", "wheel", "sleeve"]);
    expect(read.rows.map(({ isComplete }) => isComplete)).toEqual([false, true, false, false]);
    expect(asked(read)).toEqual(["missing of teeth", "missing of diameter", "missing of outside"]);
  });

  it("of any sheet at all are parts or passed over, each once, and nothing is thrown", () => {
    const word = fc.constantFrom(
      "",
      "",
      " ",
      "Teeth",
      "Name",
      "What",
      "Price (EUR)",
      "Pitch",
      "Total",
      "pinion",
      "Pinion 15T",
      "ring and pinion",
      "15",
      "15T",
      "4,20 €",
      "M0.8",
      "2026-10-03",
      "03/10/2026",
      "mm",
      "yes",
      "x",
      "歯数",
      "Summe",
      "#REF!",
      "a b c",
      "Bore",
      "5 mm",
      '1/8"',
      "-",
      "Ids",
      "Owned",
      "gearbox",
      "27:1",
    );
    const cell = fc.oneof({ weight: 5, arbitrary: word }, fc.string({ unit: "binary", maxLength: 8 }));
    const rows = fc.array(fc.array(cell, { maxLength: 6 }), { maxLength: 12 });
    fc.assert(
      fc.property(rows, (cells) => {
        const read = partsFromSheet(cells);
        const told = [...read.rows, ...read.passed].map(({ row }) => row).sort((a, b) => a - b);
        const filled = cells.flatMap((row, n) => (row.some((text) => text.trim() !== "") ? [n] : []));
        expect(told).toEqual(filled);
        expect(read.parts).toHaveLength(read.rows.length);
        expect(new Set(read.parts.map(({ id }) => id)).size).toBe(read.parts.length);
        for (const question of read.questions) expect(questionText(question)).not.toMatch(/[{}]|undefined/);
        sheetKey(cells);
      }),
      { numRuns: 500 },
    );
  });
});

describe("what stands around the parts", () => {
  it("is passed over and told: titles, totals, remarks", () => {
    const read = sheet([
      "Gear stock 2026||",
      "|(all of the shed)|",
      "||",
      "Name|What|Price (EUR)",
      "A|other|4.00",
      "B|other|5.00",
      "||",
      "Total:||9.00",
      "||9.00",
      "checked in October||",
    ]);
    expect(read.parts).toHaveLength(2);
    expect(read.passed.map(({ line, code }) => `${line} ${code}`)).toEqual([
      "1 above",
      "2 above",
      "4 head",
      "8 total",
      "9 total",
      "10 below",
    ]);
    expect(read.questions).toEqual([]);
  });

  it.each([
    "Total",
    "TOTAL:",
    "Sum",
    "Summe",
    "Gesamtsumme",
    "Zwischensumme",
    "Total (EUR)",
    "Summe EUR",
    "Total général",
    "Sous-total",
    "合計",
    "小計",
    "المجموع",
  ])("total: %s", (word) => {
    const read = sheet(["Name|What|Price (EUR)", "A|other|4.00", `${word}||4.00`]);
    expect(read.passed.at(-1)).toMatchObject({ line: 3, code: "total" });
  });

  it("is no total where it is a part", () => {
    expect(sheet(["Name|What|Price (EUR)", "Total|other|4.00", "Totalisator|other|4.00"]).parts).toHaveLength(2);
  });

  it("heads rows that do not say what they are", () => {
    const read = sheet([
      "Code|Teeth|Module",
      "Pinions||",
      "P1|15|0.8",
      "P2|16|0.8",
      "||",
      "Spurs:||",
      "S1|62|0.8",
      "Code|Teeth|Module",
      "S2|66|0.8",
    ]);
    expect(read.parts.map(({ is, teeth }) => `${is} ${teeth}`)).toEqual([
      "pinion 15",
      "pinion 16",
      "spur 62",
      "spur 66",
    ]);
    expect(read.passed.map(({ code }) => code)).toEqual(["head", "section", "section", "head"]);
    expect(read.questions).toEqual([]);
  });

  it("that says where parts are, says not what they are", () => {
    const read = sheet(["Code|Teeth", "Rear axle|", "R1|12", "Front:|", "F1|13"]);
    expect(read.parts.map(({ number, is }) => `${number} ${is}`)).toEqual(["R1 other", "F1 other"]);
    expect(asked(read)).toEqual(["kind-unknown of is", "kind-unknown of is"]);
  });

  it("says of all prices and lengths what they are in", () => {
    const read = sheet(["Prices in EUR, dimensions in mm||", "||", "Name|Bore|Price", "Bearing|5|4.20"]);
    expect(read.parts[0]).toMatchObject({ bore: "5 mm", price: { amount: "4.20", currency: "EUR" } });
    expect(read.questions).toEqual([]);
  });

  it("may be parts all the same: that is asked, and can be answered", () => {
    const lines = ["P1|pinion|14", "Name|What|Teeth", "P2|pinion|15", "P3||"];
    const read = sheet(lines);
    expect(read.questions.map(({ key, code }) => `${key} ${code}`)).toEqual([
      "0.row row-above",
      "3.row row-alone",
      "3.is blanks",
      "3.teeth missing",
    ]);
    const answered = sheet(lines, { answers: { "0.row": "part", "3.row": "pass" } });
    expect(answered.parts.map(({ name, teeth }) => `${name} ${teeth}`)).toEqual(["P1 14", "P2 15"]);
    expect(answered.passed.map(({ row, code }) => `${row} ${code}`)).toEqual(["1 head", "3 set"]);
    expect(answered.questions).toEqual([]);
  });

  it("may be cells of a row that was cut in two", () => {
    const read = sheet(["Name|What|Price (EUR)", "A|other|4|20"]);
    expect(asked(read)).toEqual(["beyond-head"]);
    expect(read.questions[0]).toMatchObject({ row: 1, column: 3, text: "20" });
  });

  it("is two rows of heads, or units below them", () => {
    const read = sheet([
      "Part||Teeth||Fit|",
      "Code|Kind|Count|Module|Bore|Width",
      "|||mm|mm|in",
      "P1|pinion|15|0.8|5|1/4",
    ]);
    expect(read.parts[0]).toMatchObject({ number: "P1", teeth: 15, module: "0.8", bore: "5 mm", width: "1/4 in" });
    expect(read.questions).toEqual([]);
  });

  it("can be missing: columns are then what their cells look like, each asked about", () => {
    const read = sheet(["Steel pinion|15T|M0.8|4,20 €", "Steel pinion|17T|M0.8|4,20 €", "Black spur|62T|M0.8|9,20 €"]);
    expect(read.parts).toHaveLength(3);
    expect(read.parts[2]).toMatchObject({
      is: "spur",
      teeth: 62,
      module: "0.8",
      price: { amount: "9.20", currency: "EUR" },
    });
    expect(asked(read)).toEqual([
      "column-by-cells = is",
      "column-by-cells = teeth",
      "column-by-cells = toothPitch",
      "column-by-cells = price",
    ]);
  });

  it("can be merged cells: what is empty is perhaps the same as above, or that can be said", () => {
    const lines = ["Kind|Maker|Teeth", "Pinion|Dulse|14", "||18", "Spur|Saltpan|60"];
    const read = sheet(lines);
    expect(read.parts[1]).toMatchObject({ is: "pinion", maker: "Dulse", teeth: 18 });
    expect(asked(read)).toEqual(["blanks of is = Pinion", "blanks of maker = Dulse"]);
    const same = sheet(lines, {
      columns: { 0: { field: "is", blanks: "as-above" }, 1: { field: "maker", blanks: "as-above" } },
    });
    expect([same.parts, same.questions]).toEqual([read.parts, []]);
    const empty = sheet(lines, { columns: { 0: { field: "is", blanks: "empty" } } });
    expect(empty.parts[1]).toMatchObject({ is: "other", teeth: 18 });
  });
});

describe("columns decide for their cells", () => {
  const prices = (...cells: string[]) => {
    const read = sheet(["Name|Price (EUR)", ...cells.map((cell, n) => `Bearing ${n}|${cell}`)]);
    return [read.parts.map(({ price }) => price?.amount), read.questions.map(({ line, code }) => `${line} ${code}`)];
  };

  it("which sign is the decimal one", () => {
    expect(prices("4,20", "1.234", "7")).toEqual([["4.20", "1234", "7"], []]);
    expect(prices("4.20", "1,234", "7")).toEqual([["4.20", "1234", "7"], []]);
    expect(prices("1.234,50", "1.234")).toEqual([["1234.50", "1234"], []]);
    expect(prices("4,20", "4.20", "1.234")).toEqual([["4.20", "4.20", "1234"], ["4 number-ambiguous"]]);
    expect(prices("1.234", "5")).toEqual([["1234", "5"], ["2 number-ambiguous"]]);
  });

  const dates = (...cells: string[]) => {
    const read = sheet(["Name|Price (EUR)|Date", ...cells.map((cell, n) => `Bearing ${n}|4|${cell}`)]);
    return [read.parts.map(({ price }) => price?.checked), read.questions.map(({ line, code }) => `${line} ${code}`)];
  };

  it("which comes first, the day or the month", () => {
    expect(dates("03/10/2026", "21/09/2026")).toEqual([["2026-10-03", "2026-09-21"], []]);
    expect(dates("03/10/2026", "09/21/2026")).toEqual([["2026-03-10", "2026-09-21"], []]);
    expect(dates("03/10/2026", "21/09/2026", "09/21/2026")).toEqual([
      [undefined, "2026-09-21", "2026-09-21"],
      ["2 date-ambiguous"],
    ]);
    expect(dates("03/10/2026")).toEqual([[undefined], ["2 date-ambiguous"]]);
  });

  it("which currency the ones without a sign are perhaps in", () => {
    const read = sheet(["Name|Price", "Bearing|4,20 €", "Bearing|4,20"]);
    expect(read.parts[1]!.price).toEqual({ amount: "4.20", currency: "EUR" });
    expect(asked(read)).toEqual(["currency-missing of price = 4.20 EUR"]);
  });

  it("which of two units a length is given in", () => {
    const read = sheet(["Name|Bore (mm)|Bore (in)", "Bearing|5|", "Bearing||1/8", "Bearing|3.175|1/8"]);
    expect(read.parts.map(({ bore }) => bore)).toEqual(["5 mm", "1/8 in", "3.175 mm"]);
    expect(read.questions).toEqual([]);
  });

  it("what a cross means", () => {
    const crosses = (...cells: string[]) =>
      sheet(["Name|In stock", ...cells.map((cell) => `Bearing|${cell}`)]).parts.map(({ available }) => available);
    expect(crosses("x", "")).toEqual([true, undefined]);
    expect(crosses("✓", "x")).toEqual([true, false]);
    expect(crosses("○", "×")).toEqual([true, false]);
    expect(crosses("x", "no")).toEqual([true, false]);
    expect(crosses("x", "no", "yes")).toEqual([undefined, false, true]);
  });

  it("in which order the counts of sets stand, where that is said", () => {
    const lines = ["Name|Teeth", "ring and pinion|38/13"];
    const read = sheet(lines);
    expect(asked(read)).toEqual(["pair-order of teeth = 13/38"]);
    const [choice] = read.questions[0]!.choices!;
    expect(sheet(lines, { columns: { 1: choice!.column! } }).questions).toEqual([]);
  });
});

describe("questions", () => {
  const lines = [
    "Part no.|What|Teeth|Pitch|Bore|Price|Seen|Own|In stock|Holes (mm)|Diameter (mm)|Ratio",
    "T1|gear|~17|0.8|5|$4.20|03/10/2026|yes|x|3x20|17.6|",
    "T2|thingummy|fifteen|0.8 m|1/8|4.20|Oct 2026|3|no|four||",
    "T3|ring and pinion|38/13|0.8 mm|6 H7|0 EUR|last week|some|yes|4x16|20|",
    "T4|gearbox|||5|1,234 EUR||||||1:27",
    "T5|bush||48 DP|5|free||||||",
    "T6|spur|||||||||8|",
  ];

  it("offer answers: given back, they settle what was asked", () => {
    const { questions } = sheet(lines);
    expect(questions.length).toBeGreaterThan(25);
    for (const { key, choices = [] } of questions)
      for (const { answer } of choices) {
        const left = sheet(lines, { answers: { [key]: answer } }).questions.filter((open) => open.key === key);
        expect([key, answer, left.map(({ code }) => code)]).toEqual([key, answer, []]);
      }
  });

  it("offer what the column means: set so, none of its cells is asked that again", () => {
    const { questions } = sheet(lines);
    for (const { code, columnKey, choices = [] } of questions)
      for (const { column } of choices) {
        if (!column) continue;
        const left = sheet(lines, { columns: { [columnKey!]: column } }).questions.filter(
          (open) =>
            open.columnKey === columnKey &&
            open.code === code &&
            open.text === questions.find((one) => one.columnKey === columnKey && one.code === code)!.text,
        );
        expect([column, left.map(({ key }) => key)]).toEqual([column, []]);
      }
  });

  it("are answered as a cell would say it, or with nothing", () => {
    const answers = {
      "1.teeth": "17",
      "1.toothPitch": "module 0.8",
      "1.bore": "5 mm",
      "1.price": "4.20 CAD",
      "1.checked": "2026-10-03",
      "1.owned": "2",
      "1.available": "no",
      "1.across": "",
      "2.is": "wheel",
      "2.diameter": "124 mm",
      "2.teeth": "",
    };
    const { parts } = sheet(lines, { answers });
    expect(parts[0]).toEqual({
      id: "t1",
      number: "T1",
      is: "gear",
      teeth: 17,
      module: "0.8",
      bore: "5 mm",
      owned: 2,
      available: false,
      circles: [{ count: 3, diameter: "20 mm" }],
      price: { amount: "4.20", currency: "CAD", checked: "2026-10-03" },
    });
    expect(parts[1]).toMatchObject({ is: "wheel", diameter: "124 mm" });
    expect(parts[1]).not.toHaveProperty("teeth");
  });

  it("stay where an answer is unclear itself", () => {
    const { questions } = sheet(["Name|What|Teeth", "A|gear|~17"], { answers: { "1.teeth": "about 18" } });
    expect(questions.map(({ key, text, guess }) => [key, text, guess])).toEqual([["1.teeth", "about 18", "18"]]);
  });

  it("are sentences of one table, which another language gives in its own words", () => {
    const { questions } = sheet(lines);
    for (const question of questions) expect(questionText(question)).toMatch(/^[^{}]+[.?]$/);
    const questionsIn = { ...sheetWords.questions, "count-unclear": "„{text}“ ist keine ganze Zahl." };
    const german = {
      ...sheetWords,
      questions: questionsIn,
      guesses: { taken: "Genommen: {guess}.", offered: "Vielleicht {guess}." },
    };
    expect(
      questionText(
        questions.find(({ key }) => key === "1.teeth")!,
        german,
      ),
    ).toBe("„~17“ ist keine ganze Zahl. Genommen: 17.");
  });

  it("can be settled for a word wherever it stands", () => {
    const many = ["Name|Kind|Teeth", "A|Zwiebel|15", "B|Zwiebel|16"];
    const { choices } = sheet(many).questions[0]!;
    const { column } = choices!.find(({ answer }) => answer === "gear")!;
    const read = sheet(many, { columns: { 1: column! } });
    expect(read.parts.map(({ is }) => is)).toEqual(["gear", "gear"]);
    expect(read.questions).toEqual([]);
  });
});

describe("columns can be told what they mean", () => {
  const rows = [
    ["Stuff", "Wheels", "Qty", "Colour", "Price", "Cost"],
    ["Motor pinion", "15", "3", "red", "4 EUR", "5 EUR"],
  ];

  it("each shows what it was taken for, why, and some of its cells", () => {
    const { columns } = partsFromSheet(rows);
    expect(columns.map(({ field, why }) => `${field} ${why}`)).toEqual([
      "is cells",
      "unused unknown",
      "unused head",
      "unused no-field",
      "price head",
      "unused twice",
    ]);
    expect(columns[1]).toMatchObject({ key: "1", index: 1, head: "Wheels", line: 1, sample: ["15"] });
  });

  it("by a field alone, or with all that goes with it", () => {
    const { parts, columns, questions } = partsFromSheet(rows, {
      columns: { 0: "name", 1: "teeth", 2: "owned", 4: "unused", 5: { field: "price" } },
    });
    expect(parts).toEqual([
      {
        id: "motor-pinion",
        name: "Motor pinion",
        is: "pinion",
        teeth: 15,
        owned: 3,
        price: { amount: "5", currency: "EUR" },
      },
    ]);
    expect(columns[1]!.why).toBe("set");
    expect(questions).toEqual([]);
  });

  it("and told once more, mean the same: what was understood can be kept", () => {
    const first = partsFromSheet(rows, { columns: { 0: "name" } });
    const kept = Object.fromEntries(first.columns.map((column) => [column.key, column]));
    expect(partsFromSheet(rows, { columns: kept }).parts).toEqual(first.parts);
  });

  it("in a second table by keys of its own", () => {
    const lines = ["Code|What|Teeth", "P1|pinion|15", "|| ", "Code|Stuff|Diameter mm|Pack of", "W1|Tyre|124|2"];
    const { columns } = sheet(lines);
    const key = columns.find(({ head }) => head === "Stuff")!.key;
    expect(key).toBe("1.1");
    expect(sheet(lines, { columns: { [key]: "name" } }).parts[1]).toMatchObject({
      is: "wheel",
      diameter: "124 mm",
      pack: 2,
    });
  });

  it("are remembered by their heads", () => {
    const key = sheetKey([["Gears of mine"], ["Teeth", "Bore (mm)"], ["15", "5"]]);
    expect(
      sheetKey([
        ["  teeth ", "BORE (MM)"],
        ["99", "8"],
        ["98", "8"],
      ]),
    ).toBe(key);
    expect(
      sheetKey([
        ["Bore (mm)", "Teeth"],
        ["5", "15"],
      ]),
    ).not.toBe(key);
    expect(sheetKey(readSheet("Teeth;Bore (mm)\n15;5\n").rows)).toBe(key);
  });
});

describe("the seed parts", () => {
  const { rows } = readSheet(readFileSync(new URL("../../../../../seeds/parts.csv", import.meta.url)));
  const { parts, columns, questions, passed } = partsFromSheet(rows);

  it("are at least 60, all understood", () => {
    expect(questions).toEqual([]);
    expect(passed.map(({ code }) => code)).toEqual(["head"]);
    expect(columns.filter(({ field }) => field === "unused")).toEqual([]);
    expect(parts).toHaveLength(rows.length - 1);
    expect(parts.map(({ id }) => id)).toEqual(rows.slice(1).map(({ cells }) => cells[0]));
    expect(parts.length).toBeGreaterThanOrEqual(60);
    expect(new Set(parts.map(({ maker }) => maker)).size).toBeGreaterThanOrEqual(4);
    expect(new Set(parts.flatMap(({ price }) => price?.currency ?? [])).size).toBe(2);
    expect(parts.some((part) => canBeHad(part) === false)).toBe(true);
    expect(parts.some(({ price }) => !price)).toBe(true);
    expect(parts.every(({ price }) => !price || price.checked)).toBe(true);
  });
});
