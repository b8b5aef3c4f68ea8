// Heads that stand for one thing or another, names that say more than their kind, rows that are no parts, and back again.
import { describe, expect, it } from "vitest";
import { partsFromSheet, readSheet, sheetOf } from "../../../src/parts/index.js";
import type { Part } from "../../../src/drivetrain/index.js";
import { needsOf } from "../../../src/parts/index.js";
import { parseBuild } from "../../../src/document/index.js";
import { asked, sheet } from "./make.js";

const values = (lines: readonly string[], field: keyof Part) => sheet(lines).parts.map((part) => part[field]);
const questions = (lines: readonly string[]) =>
  sheet(lines).questions.map(({ key, code, guess }) => [key, code, guess]);

describe("a head that can be two things", () => {
  it("of a quantity is teeth where its cells say so, and else is asked about", () => {
    expect(values(["What|Qty", "pinion|15T", "spur|62 teeth"], "teeth")).toEqual([15, 62]);
    expect(questions(["What|Teeth|Qty", "pinion|15|2", "spur|62|1"])).toEqual([
      ["column.2", "quantity-unclear", "owned"],
    ]);
  });

  it("of a stock is how many there are where most of its cells are numbers, and whether there are any else", () => {
    expect(questions(["What|Teeth|Stock", "pinion|15|2", "spur|62|0"])).toEqual([
      ["column.2", "stock-unclear", "available"],
    ]);
    expect(values(["What|Teeth|Stock", "pinion|15|yes", "spur|62|no"], "available")).toEqual([true, false]);
  });

  it("of an item is its name where there are words, a number where there are none or another column names it", () => {
    expect(values(["Item|What|Teeth", "Long one|pinion|15"], "name")).toEqual(["Long one"]);
    expect(values(["Item|What|Teeth", "A-15|pinion|15"], "number")).toEqual(["A-15"]);
    expect(values(["Item|Name|What|Teeth", "Tern|Long one|pinion|15"], "number")).toEqual(["Tern"]);
  });

  it("of a number above 1, 2, 3 counts the rows, and names no part", () => {
    const rows = [15, 16, 17].map((teeth, n) => `${n + 1}|pinion|${teeth}`);
    expect(values(["No.|What|Teeth", ...rows], "number")).toEqual([undefined, undefined, undefined]);
    expect(values(["No.|What|Teeth", ...rows.slice(1)], "number")).toEqual(["2", "3"]);
  });

  it("of any diameter whose cell cannot be read is asked about, and nothing is taken", () => {
    const [diameter] = sheet(["What|Teeth|Diameter", "gear|20|about an inch"]).questions;
    expect(diameter).toMatchObject({ code: "length-unclear", taken: false });
  });
});

describe("a name", () => {
  const named = (name: string) => sheet(["Name|Maker", `${name}|Wrackline`]);
  const part = (name: string) => {
    const { id: _, name: __, maker: ___, ...rest } = named(name).parts[0]!;
    return rest;
  };

  it("with two modules has none", () => {
    expect(part("Pinion 15T 0.5M")).toEqual({ is: "pinion", teeth: 15, module: "0.5" });
    expect(part("Pinion 15T 0.5M 0.8M")).toEqual({ is: "pinion", teeth: 15 });
  });

  it("of a gearbox with a turned ratio, or of a set with its large count first, is asked about", () => {
    expect(part("Gearbox 1:27")).toEqual({ is: "gearbox", value: "27:1" });
    expect(asked(named("Gearbox 1:27")).join()).toMatch(/of value/);
    expect(part("Ring and pinion 38/13")).toEqual({ is: "set", driver: 13, driven: 38 });
    expect(asked(named("Ring and pinion 38/13"))).toEqual(["pair-order of teeth = 13/38"]);
    expect(asked(named("Ring and pinion 38/0"))).toEqual(["missing of teeth"]);
  });

  it("is written back so that what it says and the part does not stays unsaid", () => {
    const parts: readonly Part[] = [
      { id: "a", is: "pinion", name: "16T pinion 48 pitch" },
      { id: "b", is: "gearbox", name: "Gearbox 27:1" },
      { id: "c", is: "set", name: "Ring and pinion 13/38" },
      { id: "d", is: "pinion", name: "16T pinion 48 pitch", teeth: 17, module: "0.8" },
    ];
    const rows = sheetOf(parts);
    const at = (n: number, head: string) => rows[n + 1]![rows[0]!.indexOf(head)];
    expect([at(0, "Teeth"), at(0, "Module"), at(1, "Printed ratio"), at(2, "Driver")]).toEqual(["-", "-", "-", "-"]);
    expect([at(3, "Teeth"), at(3, "Module")]).toEqual(["17", "0.8"]);
    expect(partsFromSheet(rows).parts).toEqual(parts);
  });
});

describe("a row", () => {
  it("with a cell that a spreadsheet was told to leave alone is read without its mark", () => {
    expect(values(["Name|What|Teeth", "A|pinion|'15"], "teeth")).toEqual([15]);
    expect(values(["Name|What|Teeth", "'A|pinion|15"], "name")).toEqual(["'A"]);
  });

  it("that a stray quotation mark may have swallowed is asked about, once", () => {
    const text = 'Name,What,Teeth\n"Long one,pinion,15\nShort,pinion,16",pinion,17\nOther,pinion,18\n';
    const { rows } = readSheet(text);
    const read = partsFromSheet(rows);
    const [question] = read.questions.filter(({ code }) => code === "quote-doubtful");
    expect(question).toMatchObject({ row: 1, line: 2, taken: true });
    const again = partsFromSheet(rows, { answers: { [question!.key]: "part" } });
    expect(again.questions.filter(({ code }) => code === "quote-doubtful")).toEqual([]);
    expect(again.parts.map(({ teeth }) => teeth)).toEqual(read.parts.map(({ teeth }) => teeth));
  });

  it("beyond the heads is asked about, and one that stands alone is a remark or a part", () => {
    const read = partsFromSheet([
      ["Name", "What", "Teeth"],
      ["A", "pinion", "15"],
      ["", "", "", "see the box under the bench"],
      ["B", "pinion", "16", "", "loose"],
    ]);
    expect(
      read.questions.filter(({ key }) => key.endsWith(".row")).map(({ key, code, column }) => [key, code, column]),
    ).toEqual([
      ["2.row", "row-alone", undefined],
      ["2.row", "beyond-head", 3],
      ["3.row", "beyond-head", 4],
    ]);
  });
});

describe("a sleeve or plate", () => {
  const circles = (...sizes: readonly string[]) => sizes.map((diameter) => ({ count: 4, diameter }));
  const pitch = { module: "0.8" };
  const needed = (adapters: readonly object[]) =>
    needsOf(
      parseBuild({
        format: "meshwright-build/1",
        stages: [{ id: "primary", kind: "pair", driver: 15, driven: 62, ...pitch }],
        outputs: [{ id: "rear", stages: [] }],
        mounts: [{ stage: "primary", shaft: "3 mm", hubHoles: circles("24 mm") }],
        parts: [
          { id: "p15", is: "pinion", teeth: 15, ...pitch, bore: "5 mm" },
          { id: "s62", is: "spur", teeth: 62, ...pitch, circles: circles("20 mm") },
          ...adapters,
        ],
      }),
    ).map(({ part, is }) => part?.id ?? `no ${is[0]}`);

  it("that does not say its sizes is passed by for one that does", () => {
    const cheap = { price: { amount: "0.10", currency: "EUR" } };
    const dear = { price: { amount: "3", currency: "EUR" } };
    expect(
      needed([
        { id: "some-sleeve", is: "sleeve", bore: "3 mm", ...cheap },
        { id: "sleeve", is: "sleeve", bore: "3 mm", outside: "5 mm", ...dear },
        { id: "some-plate", is: "plate", ...cheap },
        { id: "plate", is: "plate", circles: circles("20 mm", "24 mm"), ...dear },
      ]),
    ).toEqual(["p15", "s62", "sleeve", "plate"]);
  });

  it("of two that cost the same is the first by its id", () => {
    const sleeve = (id: string) => ({ id, is: "sleeve", bore: "3 mm", outside: "5 mm" });
    const plate = (id: string) => ({ id, is: "plate", circles: circles("20 mm", "24 mm") });
    for (const ids of [
      ["a", "b"],
      ["b", "a"],
    ])
      expect(needed([...ids.map((id) => sleeve(`s-${id}`)), ...ids.map((id) => plate(`p-${id}`))])).toEqual([
        ...["p15", "s62", "s-a", "p-a"],
      ]);
  });
});
