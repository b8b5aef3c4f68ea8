// Cells and heads as they stand in few sheets: each is read as what it plainly says, or asked about.
import { describe, expect, it } from "vitest";
import { partsFromSheet, questionText } from "../../../src/parts/index.js";
import { asked, one, plainly, sheet } from "./make.js";

const of = (amount: string, currency: string) => ({ price: { amount, currency } });

describe("cells that few write so", () => {
  it.each([
    ["Preis", "CHF 1'234", of("1234", "CHF")],
    ["Prix", "1 234 €", of("1234", "EUR")],
    ["Preis", "1.234.567 €", of("1234567", "EUR")],
    ["Price", "£1,234,567", of("1234567", "GBP")],
    ["Preis (EUR)|Datum", "4|3.10.85", { price: { amount: "4", currency: "EUR", checked: "1985-10-03" } }],
    ["Profile shift", "1/4", { shift: "1/4" }],
    ["Profile shift", "+0,25", { shift: "0.25" }],
    ["In stock", "3 left in stock", { available: true }],
    ["Price|Currency", "4.20|VUV", of("4.20", "VUV")],
  ])("under %s: %s", (heads, cells, expected) => {
    expect(plainly(heads, cells)).toEqual(expected);
  });

  it.each([
    ["wheel", "Outside diameter", "70 mm", { diameter: "70 mm" }],
    ["wheel", "Diameter", "70 mm", { diameter: "70 mm" }],
    ["sleeve", "Diameter|Bore", "5 mm|3 mm", { outside: "5 mm", bore: "3 mm" }],
    ["gear", "Teeth|Outside diameter", "20|17.6 mm", { teeth: 20, tipDiameter: "17.6 mm" }],
    ["gear", "Teeth|Pitch", "20|127/4 dp", { teeth: 20, diametralPitch: "127/4" }],
  ])("of a %s under %s: %s", (kind, heads, cells, expected) => {
    expect(plainly(heads, cells, kind)).toEqual(expected);
  });

  it.each([
    ["other", "Preis", "1,2.4,567 €", "price-unclear of price"],
    ["other", "Preis", "12,3.50 €", "price-unclear of price"],
    ["other", "Price (EUR)", "1234567890", "price-unclear of price"],
    ["other", "Price (EUR)|Date", "4|. / .", "date-unclear of checked"],
    ["other", "Price (EUR)|Date", "4|3 Oct 4 2026", "date-partial of checked"],
    ["gear", "Teeth", "15,16,17", "count-unclear of teeth"],
    ["gear", "Teeth", "1".repeat(45), "count-unclear of teeth"],
    ["other", "Angle", "20 1/2", "number-unclear of pressureAngle"],
    ["other", "Angle", "0", "number-unclear of pressureAngle"],
    ["other", "Profile shift", "1234567890123", "number-unclear of shift"],
    ["gear", "Teeth|Pitch", "20|0/3", "pitch-unclear of toothPitch"],
    ["gear", "Teeth|Pitch", "20|M0.8 x", "pitch-unclear of toothPitch"],
    ["gear", "Teeth|Pitch", "20|dp 48 x", "pitch-unclear of toothPitch"],
    ["gear", "Teeth|Pitch", "20|0.8P", "pitch-unclear of toothPitch"],
    ["gear", "Teeth|Pitch", "20|1/8 in", "pitch-unclear of toothPitch"],
    ["gearbox", "Ratio", "2,7:1,3", "ratio-unclear of value"],
    ["gearbox", "Ratio", "1:2.7", "ratio-turned of value = 2.7:1"],
    ["belt", "Teeth|Pitch", "90|2", "pitch-unsaid of toothPitch = 2 mm"],
    ["other", "In stock", "3 weeks", "yes-or-no of available ? yes"],
    ["other", "In stock", "0 weeks", "yes-or-no of available ? no"],
    ["other", "Hub holes", "4x16", "unit-missing of circles"],
    ["other", "Hub holes", "4x0 mm", "circles-unclear of circles"],
    ["other", "Hub holes", Array.from({ length: 21 }, () => "4x16 mm").join("; "), "circles-unclear of circles"],
    ["other", "Bore", "1/0", "length-unclear of bore"],
  ])("are asked about, of a %s under %s: %s", (kind, heads, cells, question) => {
    expect(asked(one(heads, cells, kind))).toEqual([question]);
  });

  it("offer a turned ratio's fraction only where it is one of whole numbers", () => {
    const answers = (cell: string) => one("Ratio", cell, "gearbox").questions[0]!.choices!.map(({ answer }) => answer);
    expect(answers("1:27")).toEqual(["27:1", "i=1/27"]);
    expect(answers("1:2.7")).toEqual(["2.7:1"]);
  });

  it("of several circles without a unit are offered in either, each circle", () => {
    const { questions } = one("Hub holes", "4x16; 3x20", "other");
    expect(questions[0]!.choices!.map(({ answer }) => answer)).toEqual(["4x16 mm; 3x20 mm", "4x16 in; 3x20 in"]);
  });

  it("are cut short in the sentence that asks", () => {
    const text = "a very long way to say that nobody has counted the teeth of it so far, sorry";
    expect(questionText(one("Teeth", text, "gear").questions[0]!)).toBe(
      "“a very long way to say that nobody has counted the teeth of …” is no plain whole number.",
    );
  });
});

describe("one sign before three digits", () => {
  const amounts = (head: string, ...cells: readonly string[]) => {
    const { parts, questions } = sheet([`Name|What|${head}`, ...cells.map((cell, n) => `Part ${n}|other|${cell}`)]);
    return [parts.map(({ price }) => price?.amount), questions.map(({ code }) => code)];
  };

  it("is what the other prices of the column make it", () => {
    expect(amounts("Preis (EUR)", "4,20", "1.234")).toEqual([["4.20", "1234"], []]);
    expect(amounts("Preis (EUR)", "4,20", "1,234")).toEqual([["4.20", "1.234"], []]);
    expect(amounts("Preis (EUR)", "1.234.567", "1.234")).toEqual([["1234567", "1234"], []]);
    expect(amounts("Preis (EUR)", "1,234.50", "1,234")).toEqual([["1234.50", "1234"], []]);
    expect(amounts("Preis (EUR)", "4,20", "4.20", "1.234")[1]).toEqual(["number-ambiguous"]);
  });

  it("of the answer says what the sign means in the whole column", () => {
    const [first] = one("Price (EUR)", "1,234").questions;
    expect(first!.choices).toEqual([
      { answer: "1.234 EUR", column: { decimal: "," } },
      { answer: "1234 EUR", column: { decimal: "." } },
    ]);
  });

  it("in a length against the sign of its column is asked about", () => {
    const rows = [["What", "Bore (mm)"], ...["3,5", "4,5", "3.175"].map((bore) => ["other", bore])];
    const { parts, questions } = partsFromSheet(rows);
    expect(parts.map(({ bore }) => bore)).toEqual(["3.5 mm", "4.5 mm", undefined]);
    expect(questions.map(({ code, text }) => [code, text])).toEqual([["number-ambiguous", "3.175"]]);
  });
});

describe("a date of six digits in a Japanese sheet", () => {
  const dates = (...cells: readonly string[]) =>
    sheet(["品名|種類|価格(円)|確認日", ...cells.map((cell, n) => `ねじ ${n}|その他|100|${cell}`)]);
  const read = (...cells: readonly string[]) => dates(...cells).parts.map(({ price }) => price?.checked);

  it("has the year first where it is nothing else", () => {
    expect(read("85/10/03", "00/10/03")).toEqual(["1985-10-03", "2000-10-03"]);
    expect(dates("85/10/03").questions.filter(({ field }) => field === "checked")).toEqual([]);
  });

  it("is asked about where it has two readings, and an answer for the column gives what it says", () => {
    const { questions } = dates("26/10/03");
    const [question] = questions.filter(({ field }) => field === "checked");
    expect(question!.code).toBe("date-ambiguous");
    expect(question!.choices!.map(({ answer }) => answer)).toEqual(["2026-10-03", "2003-10-26"]);
    for (const { answer, column } of question!.choices!)
      if (column) {
        const said = partsFromSheet(
          [
            ["品名", "種類", "価格(円)", "確認日"],
            ["ねじ", "その他", "100", "26/10/03"],
          ],
          { columns: { [question!.columnKey!]: column } },
        );
        expect(said.parts[0]!.price?.checked).toBe(answer);
      }
  });

  it("has the year last where a date of the column writes that year in full", () => {
    expect(read("2003/10/26", "26/10/03")).toEqual(["2003-10-26", "2003-10-26"]);
  });
});

describe("a head in two pieces", () => {
  it.each([
    ["Modul (Diametral Pitch)", "0.8", { module: "0.8" }],
    ["Modul (Diametral Pitch)", "48", { diametralPitch: "48" }],
    ["Pitch, DP", "48", { diametralPitch: "48" }],
    ["Teeth (qty)", "20", { teeth: 20 }],
  ])("is the pitch or count that both speak of: %s, %s", (head, cell, expected) => {
    const heads = head.startsWith("Teeth") ? head : `Teeth|${head}`;
    const cells = head.startsWith("Teeth") ? cell : `20|${cell}`;
    expect(plainly(heads, cells, "gear")).toEqual({ teeth: 20, ...expected });
  });

  it.each([
    ["Dents (menant)|Dents (mené)", "13|38", "gear set", { driver: 13, driven: 38 }],
    ["Diameter (hole)", "5 mm", "other", { bore: "5 mm" }],
    ["Durchmesser (außen)|Bore", "5 mm|3 mm", "sleeve", { outside: "5 mm", bore: "3 mm" }],
    [
      "Preis (EUR)|Price (checked)",
      "4|2026-10-03",
      "other",
      { price: { amount: "4", currency: "EUR", checked: "2026-10-03" } },
    ],
    ["Preis|Price (currency)", "4|EUR", "other", of("4", "EUR")],
    ["Price (name)", "4 EUR", "other", of("4", "EUR")],
  ])("is the more exact of the two: %s", (heads, cells, kind, expected) => {
    expect(plainly(heads, cells, kind)).toEqual(expected);
  });
});
