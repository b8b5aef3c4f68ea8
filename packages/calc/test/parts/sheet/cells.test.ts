import { describe, expect, it } from "vitest";
import { asked, one, plainly } from "./make.js";

const eur = (amount: string) => ({ price: { amount, currency: "EUR" } });

describe("cells that are plain", () => {
  it.each([
    ["17T", 17],
    ["17 t", 17],
    ["17t.", 17],
    ["z17", 17],
    ["Z = 17", 17],
    ["58.0", 58],
    ["58,0", 58],
    ["58", 58],
    ["058", 58],
    ["17 teeth", 17],
    ["17-tooth", 17],
    ["17 Zähne", 17],
    ["17 dents", 17],
    ["17 dientes", 17],
    ["17枚", 17],
    ["１７", 17],
    ["١٧", 17],
    ["17 سن", 17],
    ["1,200", 1200],
  ])("a count: %s", (text, teeth) => {
    expect(plainly("Teeth", text, "spur")).toEqual({ teeth });
  });

  it.each([
    ["20/41", 20, 41],
    ["20 to 41", 20, 41],
    ["20-41", 20, 41],
    ["20 – 41", 20, 41],
    ["20:41", 20, 41],
    ["20T/41T", 20, 41],
    ["20 zu 41", 20, 41],
    ["20 → 41".replace("→", "->"), 20, 41],
    ["20／41", 20, 41],
    ["20 auf 41", 20, 41],
  ])("both counts of a set: %s", (text, driver, driven) => {
    expect(plainly("Teeth", text, "ring and pinion")).toEqual({ driver, driven });
    expect(plainly("Teeth", text, "hub gears")).toEqual({ driver, driven });
  });

  it.each([
    ["Ring/Pinion", "38/13", 13, 38],
    ["Pinion / Ring", "13/38", 13, 38],
    ["Tellerrad/Ritzel", "38/13", 13, 38],
    ["Couronne / Pignon", "38/13", 13, 38],
  ])("both counts in the order of their head: %s %s", (head, text, driver, driven) => {
    expect(plainly(head, text, "gear set")).toEqual({ driver, driven });
  });

  it.each([
    ["27:1", "27:1"],
    ["27 : 1", "27 : 1"],
    ["2.74", "2.74"],
    ["2,74", "2.74"],
    ["2,74:1", "2.74:1"],
    ["i = 2.74", "2.74"],
    ["52/19", "52/19"],
    ["52:19", "52/19"],
  ])("a ratio: %s", (text, value) => {
    expect(plainly("Ratio", text, "gearbox")).toEqual({ value });
    expect(plainly("Teeth", text, "gearbox")).toEqual({ value });
  });

  it.each([
    ['1/8"', "1/8 in"],
    ["1/8″", "1/8 in"],
    ["1/8 in", "1/8 in"],
    ['⅛"', "1/8 in"],
    ['1 1/4"', "5/4 in"],
    ['1-1/4"', "5/4 in"],
    ['1½"', "3/2 in"],
    [".125 in", "0.125 in"],
    ["1/8 Zoll", "1/8 in"],
    ["1/8 pouce", "1/8 in"],
    ["5mm", "5 mm"],
    ["5,0 mm", "5.0 mm"],
    ["5 mm.", "5 mm"],
    ["ø5 mm", "5 mm"],
    ["Ø 5mm", "5 mm"],
    ["⌀5mm", "5 mm"],
    ["3,17 mm", "3.17 mm"],
    ["3.175mm", "3.175 mm"],
    ["５㎜", "5 mm"],
    ["1 cm", "1 cm"],
  ])("a length: %s", (text, bore) => {
    expect(plainly("Bore", text)).toEqual({ bore });
  });

  it.each([
    ["Bore (mm)", "3.17", "3.17 mm"],
    ["Bohrung [mm]", "3,17", "3.17 mm"],
    ["Bore, in", "1/8", "1/8 in"],
    ["BORE [IN]", ".125", "0.125 in"],
    ["Bore mm", "ø5", "5 mm"],
    ["Bore (mm)", "1/8 in", "1/8 in"],
    ['Bore "', "1/8", "1/8 in"],
    ["Bohrung in mm", "5", "5 mm"],
    ["Alésage (mm)", "3,175", "3.175 mm"],
  ])("a length under %s: %s", (head, text, bore) => {
    expect(plainly(head, text)).toEqual({ bore });
  });

  it.each([
    ["Module", ".8", { module: "0.8" }],
    ["Modul", "0,8", { module: "0.8" }],
    ["m", "0.8", { module: "0.8" }],
    ["Pitch", "M0.8", { module: "0.8" }],
    ["Pitch", "M 0,8", { module: "0.8" }],
    ["Pitch", "mod 0.8", { module: "0.8" }],
    ["Pitch", "0.8 mod", { module: "0.8" }],
    ["Pitch", "Modul 0,8", { module: "0.8" }],
    ["Module (mm)", "0.8 mm", { module: "0.8" }],
    ["Pitch", "0.8M", { module: "0.8" }],
    ["ピッチ", "モジュール0.8", { module: "0.8" }],
    ["Pitch", "48DP", { diametralPitch: "48" }],
    ["Pitch", "48 dp", { diametralPitch: "48" }],
    ["Pitch", "dp 48", { diametralPitch: "48" }],
    ["Pitch", "48P", { diametralPitch: "48" }],
    ["Pitch", "32p", { diametralPitch: "32" }],
    ["Pitch", "48 pitch", { diametralPitch: "48" }],
    ["DP", "48", { diametralPitch: "48" }],
    ["Module", "48 DP", { diametralPitch: "48" }],
    ["Module / DP", "0.8", { module: "0.8" }],
    ["Module / DP", "48", { diametralPitch: "48" }],
  ])("a pitch under %s: %s", (head, text, expected) => {
    expect(plainly(`Teeth|${head}`, `20|${text}`, "gear")).toEqual({ teeth: 20, ...expected });
  });

  it("a belt's pitch is a length", () => {
    expect(plainly("Teeth|Pitch", "90|2 mm", "belt")).toEqual({ teeth: 90, pitch: "2 mm" });
    expect(plainly("Teeth|Pitch (mm)", "90|2", "pulley")).toEqual({ teeth: 90, pitch: "2 mm" });
    // In a column that speaks of the gears beside it as well.
    expect(plainly("Teeth|Module", "90|3 mm", "belt")).toEqual({ teeth: 90, pitch: "3 mm" });
    expect(plainly("Teeth|Chain pitch", '20|1/4"', "sprocket")).toEqual({ teeth: 20, pitch: "1/4 in" });
  });

  it.each([
    ["Price", "€4,20", eur("4.20")],
    ["Price", "4,20 EUR", eur("4.20")],
    ["Price", "EUR 4.20", eur("4.20")],
    ["Price", "4,20€", eur("4.20")],
    ["Preis", "1.234,50 €", eur("1234.50")],
    ["Price", "€1,234.50", eur("1234.50")],
    ["Prix", "1 234,50 €", eur("1234.50")],
    ["Prix", "1 234,50 €", eur("1234.50")],
    ["Price", "£3", { price: { amount: "3", currency: "GBP" } }],
    ["Price", "4.- CHF", { price: { amount: "4", currency: "CHF" } }],
    ["Preis", "CHF 4.–", { price: { amount: "4", currency: "CHF" } }],
    ["Preis", "1'234.50 CHF", { price: { amount: "1234.50", currency: "CHF" } }],
    ["Preis (€)", "4,-", eur("4")],
    ["Prix", "4€20", eur("4.20")],
    ["Preis", "6,40 €/Stk", eur("6.40")],
    ["Price (EUR)", "4.20", eur("4.20")],
    ["Price EUR", "4.2", eur("4.2")],
    ["EUR", "4.2", eur("4.2")],
    ["Price (USD)", "$4.20", { price: { amount: "4.20", currency: "USD" } }],
    ["Price", "US$4.20", { price: { amount: "4.20", currency: "USD" } }],
    ["Price|Currency", "4.20|GBP", { price: { amount: "4.20", currency: "GBP" } }],
    ["Price|Currency", "4.20|€", eur("4.20")],
    ["価格(円)", "1,280", { price: { amount: "1280", currency: "JPY" } }],
    ["価格", "1,280円", { price: { amount: "1280", currency: "JPY" } }],
    ["السعر (EUR)", "٤٫٢٠", eur("4.20")],
    ["Price excl. VAT (EUR)", "4.20", eur("4.20")],
  ])("a price under %s: %s", (heads, cells, expected) => {
    expect(plainly(heads, cells)).toEqual(expected);
  });

  it.each([
    ["2026-10-03", "2026-10-03"],
    ["2026/10/03", "2026-10-03"],
    ["20261003", "2026-10-03"],
    ["2026-10-03 14:20", "2026-10-03"],
    ["2026-10-03T14:20:00Z", "2026-10-03"],
    ["3.10.2026", "2026-10-03"],
    ["03.10.26", "2026-10-03"],
    ["13/10/2026", "2026-10-13"],
    ["10/13/2026", "2026-10-13"],
    ["10/10/2026", "2026-10-10"],
    ["Oct 3, 2026", "2026-10-03"],
    ["3 October 2026", "2026-10-03"],
    ["October 3rd, 2026", "2026-10-03"],
    ["3-Oct-26", "2026-10-03"],
    ["3. Oktober 2026", "2026-10-03"],
    ["3. März 2026", "2026-03-03"],
    ["5. Mai 2026", "2026-05-05"],
    ["3 oct. 2026", "2026-10-03"],
    ["1er août 2026", "2026-08-01"],
    ["3 févr. 2026", "2026-02-03"],
    ["3 de enero de 2026", "2026-01-03"],
    ["3 dic 2026", "2026-12-03"],
    ["2026年10月3日", "2026-10-03"],
    ["3 أكتوبر 2026", "2026-10-03"],
    ["٣ مارس ٢٠٢٦", "2026-03-03"],
    ["29.02.2028", "2028-02-29"],
  ])("a date: %s", (text, checked) => {
    expect(plainly("Price (EUR)|Date", `4.20|${text}`)).toEqual({
      price: { amount: "4.20", currency: "EUR", checked },
    });
  });

  it.each([
    ["yes", true],
    ["Y", true],
    ["✓", true],
    ["in stock", true],
    ["auf Lager", true],
    ["ja", true],
    ["oui", true],
    ["sí", true],
    ["あり", true],
    ["نعم", true],
    ["x", true],
    ["3", true],
    ["12 pcs", true],
    [">10", true],
    ["true", true],
    ["no", false],
    ["nein", false],
    ["Out of stock", false],
    ["ausverkauft", false],
    ["épuisé", false],
    ["agotado", false],
    ["なし", false],
    ["在庫切れ", false],
    ["لا", false],
    ["0", false],
    ["✗", false],
  ])("whether it can be had: %s", (text, available) => {
    expect(plainly("In stock", text)).toEqual({ available });
  });

  it.each([
    ["4x16 mm", [{ count: 4, diameter: "16 mm" }]],
    ["4 × 16 mm", [{ count: 4, diameter: "16 mm" }]],
    ["4×ø16mm", [{ count: 4, diameter: "16 mm" }]],
    [
      "3x20 mm; 4x24 mm",
      [
        { count: 3, diameter: "20 mm" },
        { count: 4, diameter: "24 mm" },
      ],
    ],
    [
      "3x20,5 mm, 4x24 mm",
      [
        { count: 3, diameter: "20.5 mm" },
        { count: 4, diameter: "24 mm" },
      ],
    ],
  ])("circles of holes: %s", (text, circles) => {
    expect(plainly("Hub holes", text)).toEqual({ circles });
    expect(plainly("Lochkreis (mm)", text.replaceAll("mm", ""))).toEqual({ circles });
  });

  it.each([
    ["Own", "3", { owned: 3 }],
    ["Bestand", "2 Stk", { owned: 2 }],
    ["Owned", "no", { owned: 0 }],
    ["Pack size", "2er Pack", { pack: 2 }],
    ["入数", "2個入り", { pack: 2 }],
    ["Form|Module", "bevel|0.8", { form: "bevel", module: "0.8" }],
    ["Verzahnung|Modul", "Schrägverzahnt|0,8", { form: "helical", module: "0.8" }],
    ["Status|Facing", "Spare|Hub out", { status: "spare", facing: "hub out" }],
    ["Status", "bestellt", { status: "ordered" }],
    ["État", "monté", { status: "fitted" }],
    ["Pressure angle", "20°", { pressureAngle: "20" }],
    ["Profile shift", "-0,25", { shift: "-0.25" }],
    ["For stage", "Front ring", { stage: "front-ring" }],
    ["Shop|Brand", "the pier|Wrackline", { source: "the pier", maker: "Wrackline" }],
    ["Boss (mm)", "0", { hub: "0 mm" }],
  ])("%s: %s", (heads, cells, expected) => {
    expect(plainly(heads, cells)).toEqual(expected);
  });

  it.each(["-", "—", "n/a", "k. A.", "?", "なし", "s/o", "TBC"])("says nothing: %s", (text) => {
    expect(plainly("Bore (mm)|Price (EUR)|Maker", `${text}|${text}|${text}`)).toEqual({});
  });
});

describe("cells that are asked about", () => {
  it.each([
    ["gear", "Teeth", "fifteen", ["count-unclear of teeth"], {}],
    ["gear", "Teeth", "~17", ["count-unclear of teeth = 17"], { teeth: 17 }],
    ["gear", "Teeth", "17?", ["count-unclear of teeth = 17"], { teeth: 17 }],
    ["gear", "Teeth", "1 7", ["count-unclear of teeth"], {}],
    ["gear", "Teeth", "-17", ["count-unclear of teeth = 17"], { teeth: 17 }],
    ["gear", "Teeth", "17.5", ["count-unclear of teeth"], {}],
    ["gear", "Teeth", "0", ["count-unclear of teeth"], {}],
    ["gear", "Teeth|Bore (mm)", "20|5/8", ["unit-missing of bore = 5/8 in"], { teeth: 20, bore: "5/8 in" }],
    ["planetary set", "Teeth", "12/24/60", ["count-unclear of teeth = 12/60"], { driver: 12, driven: 60 }],
    ["gear", "Teeth", "20/41", ["pair-for-one of teeth"], {}],
    ["gear", "Teeth|Maker", "20|#NAME?", ["failure of maker"], { teeth: 20 }],
    ["gear", "Teeth", "#REF!", ["failure of teeth"], {}],
    ["gear", "Teeth", "", ["missing of teeth"], {}],
    ["ring and pinion", "Teeth", "41/20", ["pair-order of teeth = 20/41"], { driver: 20, driven: 41 }],
    ["ring and pinion", "Teeth", "", ["missing of teeth"], {}],
    ["gearbox", "Ratio", "1:27", ["ratio-turned of value = 27:1"], { value: "27:1" }],
    ["gearbox", "Ratio", "about 27", ["ratio-unclear of value"], {}],
    ["other", "Bore", "3.17", ["unit-missing of bore"], {}],
    ["other", "Bore", "1/8", ["unit-missing of bore = 1/8 in"], { bore: "1/8 in" }],
    ["other", "Bore (mm)", "6 H7", ["length-unclear of bore = 6 mm"], { bore: "6 mm" }],
    ["other", "Bore (mm)", "5-6", ["length-unclear of bore"], {}],
    ["other", "Bore (mm)", "0", ["length-unclear of bore"], {}],
    ["other", "Bore (mm)", "four", ["length-unclear of bore"], {}],
    ["gear", "Teeth|Module", "20|0.8 m", ["module-or-metres of module = module 0.8"], { teeth: 20, module: "0.8" }],
    ["gear", "Teeth|Pitch", "20|0.8 m", ["module-or-metres of toothPitch = module 0.8"], { teeth: 20, module: "0.8" }],
    ["gear", "Teeth|Pitch", "20|0.8", ["pitch-unsaid of toothPitch = module 0.8"], { teeth: 20, module: "0.8" }],
    ["gear", "Teeth|Pitch", "20|48", ["pitch-unsaid of toothPitch = 48 DP"], { teeth: 20, diametralPitch: "48" }],
    ["gear", "Teeth|Pitch", "20|0.8 mm", ["pitch-as-length of toothPitch = module 0.8"], { teeth: 20, module: "0.8" }],
    ["gear", "Teeth|Module", "20|48", ["pitch-unsaid of module = 48 DP"], { teeth: 20, diametralPitch: "48" }],
    ["gear", "Teeth|DP", "20|0.8", ["pitch-unsaid of diametralPitch = module 0.8"], { teeth: 20, module: "0.8" }],
    ["belt", "Teeth|Module", "90|5", ["pitch-unsaid of module = 5 mm"], { teeth: 90, pitch: "5 mm" }],
    ["pulley", "Teeth|DP", "20|5", ["pitch-unsaid of diametralPitch = 5 mm"], { teeth: 20, pitch: "5 mm" }],
    ["gear", "Teeth|Pressure angle", "20|20/25", ["number-unclear of pressureAngle"], { teeth: 20 }],
    ["gear", "Teeth|Pressure angle", "20|29/2", [], { teeth: 20, pressureAngle: "29/2" }],
    ["gear", "Teeth|Pitch", "20|fine", ["pitch-unclear of toothPitch"], { teeth: 20 }],
    ["gear", "Teeth|Module|DP", "20|0.8|32", ["pitch-twice of toothPitch = module 0.8"], { teeth: 20, module: "0.8" }],
    ["gear", "Teeth|Diameter (mm)", "20|17.6", ["which-diameter of across ? 17.6 mm"], { teeth: 20 }],
    ["other", "Price", "4.20", ["currency-missing of price"], {}],
    [
      "other",
      "Price",
      "$4.20",
      ["currency-shared of price = 4.20 USD"],
      { price: { amount: "4.20", currency: "USD" } },
    ],
    [
      "other",
      "Price (EUR)",
      "1.234",
      ["number-ambiguous of price = 1234 EUR"],
      { price: { amount: "1234", currency: "EUR" } },
    ],
    [
      "other",
      "Price (EUR)",
      "ca. 4,20",
      ["price-unclear of price = 4.20 EUR"],
      { price: { amount: "4.20", currency: "EUR" } },
    ],
    ["other", "Price (EUR)", "4.20-5.60", ["price-unclear of price"], {}],
    ["other", "Price (EUR)", "ask", ["price-unclear of price"], {}],
    ["other", "Price (EUR)", "0", ["price-zero of price = 0 EUR"], { price: { amount: "0", currency: "EUR" } }],
    ["other", "Price|Currency", "4.20|groats", ["currency-unclear of currency", "currency-missing of price"], {}],
    [
      "other",
      "Price each (EUR)|Pack",
      "4.20|2",
      ["price-each of price = 4.20 EUR"],
      { price: { amount: "4.20", currency: "EUR" }, pack: 2 },
    ],
    ["other", "In stock", "x of y", ["yes-or-no of available"], {}],
    ["other", "In stock", "in 2 weeks", ["yes-or-no of available"], {}],
    ["other", "Own", "yes", ["how-many of owned = 1"], { owned: 1 }],
    ["other", "Own", "some", ["count-unclear of owned"], {}],
    ["other", "Hub holes (mm)", "four on 16", ["circles-unclear of circles"], {}],
    ["other", "Status", "lent to Jo", ["status-unclear of status"], {}],
    ["other", "For stage", "Limpet 1:8", ["stage-unclear of stage ? limpet-1-8"], {}],
    ["other", "Angle", "steep", ["number-unclear of pressureAngle"], {}],
    ["wheel", "Width (mm)", "52", ["missing of diameter"], { width: "52 mm" }],
  ])("%s, %s: %s", (kind, heads, cells, questions, expected) => {
    const read = one(heads, cells, kind);
    expect(asked(read)).toEqual(questions);
    const { id: _id, is: _is, name: _name, ...rest } = read.parts[0]!;
    expect(rest).toEqual(expected);
  });

  it.each([
    ["03/10/2026", "date-ambiguous of checked"],
    ["3-10-26", "date-ambiguous of checked"],
    ["Oct 2026", "date-partial of checked"],
    ["10/2026", "date-partial of checked"],
    ["last week", "date-unclear of checked"],
    ["31.02.2026", "date-unclear of checked"],
    ["46298", "date-serial of checked = 2026-10-03"],
  ])("a date, and the price stays: %s", (text, question) => {
    const read = one("Price (EUR)|Checked", `4.20|${text}`);
    expect(asked(read)).toEqual([question]);
    expect(read.parts[0]!.price).toMatchObject({ amount: "4.20", currency: "EUR" });
  });
});
