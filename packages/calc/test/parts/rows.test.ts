import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { canBeHad, partsFromRows } from "../../src/parts/index.js";
import type { Part } from "../../src/drivetrain/index.js";
import { findPairs, nearMisses } from "../../src/search/index.js";

const one = (columns: string, cells: string) => partsFromRows(columns.split("|"), [cells.split("|")]);
const part = (columns: string, cells: string) => {
  const { parts, findings } = one(`id|is|${columns}`, `x|other|${cells}`);
  expect(findings).toEqual([]);
  const { id: _id, is: _is, ...rest } = parts[0]!;
  return rest;
};

describe("partsFromRows", () => {
  it.each([
    ["Tooth count|Pitch", "15|module 0.8", { teeth: 15, module: "0.8" }],
    ["z|pitch", "15|M0.8", { teeth: 15, module: "0.8" }],
    ["Pitch", "32 DP", { diametralPitch: "32" }],
    ["Pitch", "dp 48", { diametralPitch: "48" }],
    ["Pitch", "2 mm", { pitch: "2 mm" }],
    ["Pitch (mm)", "2", { pitch: "2 mm" }],
    ["DP|Pressure angle", "32|20", { diametralPitch: "32", pressureAngle: "20" }],
    ["BORE [IN]", "1/8", { bore: "1/8 in" }],
    ["Width, mm", "8.5", { width: "8.5 mm" }],
    ["Width, mm", "1 cm", { width: "1 cm" }],
    [
      "Hub holes (mm)",
      "3 x 24; 4×20.5",
      {
        circles: [
          { count: 3, diameter: "24 mm" },
          { count: 4, diameter: "20.5 mm" },
        ],
      },
    ],
    [
      "Price|Price checked",
      "4.20 EUR|2026-10-01",
      { price: { amount: "4.20", currency: "EUR", checked: "2026-10-01" } },
    ],
    ["cost|currency", "4|GBP", { price: { amount: "4", currency: "GBP" } }],
    ["In stock", "yes", { available: true }],
    ["Stock", "Out of stock", { available: false }],
    ["Status|Facing", "Spare|Hub out", { status: "spare", facing: "hub out" }],
    [
      "Own|Pack size|Shop|Brand",
      "3|2|the pier|Wrackline",
      { owned: 3, pack: 2, source: "the pier", maker: "Wrackline" },
    ],
    ["Printed ratio|For stage", "2.74|primary", { value: "2.74", stage: "primary" }],
  ])("understands %s: %s", (columns, cells, expected) => {
    expect(part(columns, cells)).toEqual(expected);
  });

  it.each([
    ["Ring and pinion set", "set"],
    ["hub gear set", "hub"],
    ["Gear box", "gearbox"],
    ["Gearbox", "gearbox"],
    ["Spur gear", "spur"],
    ["Idler", "gear"],
    ["Tyre", "wheel"],
    ["adapter sleeve", "sleeve"],
    ["Adapter plate", "plate"],
    ["Sprocket", "pulley"],
    ["chain", "belt"],
    ["Brushless motor", "motor"],
    ["battery", "battery"],
    ["Other", "other"],
  ])("takes %s for a %s", (text, kind) => {
    const rest = ["driver|driven|teeth|diameter|bore|outside|holes", "10|30|20|99 mm|2 mm|3 mm|3 x 20 mm"];
    expect(one(`Name|Type|${rest[0]}`, `A part|${text}|${rest[1]}`).parts[0]!.is).toBe(kind);
  });

  it("makes ids of part numbers and of names", () => {
    expect(one("Code|Is", "TERN 15/a_|other").parts[0]!.id).toBe("tern-15-a");
    expect(one("Code|Is", "48-15|other").parts[0]!.id).toBe("part-48-15");
    expect(one("Name|Is", "Steel pinion 15|other").parts[0]!.id).toBe("steel-pinion-15");
  });

  const findingsOf = (columns: string, cells: string) =>
    one(columns, cells).findings.map(({ severity, code, at }) => `${severity} ${code} ${at}`);

  it.each([
    ["Code|Is|Teeth", "a|spur|fifteen", ["error not-count /0/2"]],
    ["Code|Is|Teeth", "a|spur|", ["error part-incomplete /0"]],
    ["Code|Is", "a|bogie", ["error not-a-choice /0/1"]],
    ["Code|Is|Bore", "a|other|5", ["error not-size /0/2"]],
    ["Code|Is|Pitch", "a|other|0.8", ["error not-size /0/2"]],
    ["Code|Is|Price", "a|other|4.20", ["error missing /0/2"]],
    ["Code|Is|Price|Currency", "a|other|4,20|EUR", ["error not-amount /0/2"]],
    ["Code|Is|Price|Currency", "a|other|4.20|euro", ["error not-currency /0/3"]],
    ["Code|Is|Holes", "a|other|four", ["error not-an-object /0/2"]],
    ["Code|Is|Available", "a|other|perhaps", ["error not-a-flag /0/2"]],
    ["Code|Is|Module|DP", "a|other|0.8|32", ["error pitch-twice /0/3"]],
    ["Is", "other", ["error missing /0"]],
    ["Code|Is", "a|other|more", ["error row-length /0"]],
    ["Code|Is|Colour", "a|other|grey", ["warning column-unknown /-/2"]],
    ["Code|Is|Type", "a|other|spur", ["warning column-twice /-/2"]],
  ])("names what is wrong: %s: %s", (columns, cells, expected) => {
    expect(findingsOf(columns, cells)).toEqual(expected);
  });

  it("drops no row in silence: each is a part, empty, or named", () => {
    const { parts, findings } = partsFromRows(
      ["Code", "Is", "Teeth"],
      [["a", "spur", "60"], ["", " ", ""], ["b", "spur", "x"], ["A", "spur", "62"], ["c"], ["d", "pinion", "15"]],
    );
    expect(parts.map(({ id }) => id)).toEqual(["a", "d"]);
    expect(findings.map(({ code, at }) => `${code} ${at}`)).toEqual([
      "not-count /2/2",
      "id-repeated /3",
      "row-length /4",
    ]);
  });
});

describe("the seed parts", () => {
  const [columns, ...rows] = readFileSync(new URL("../../../../seeds/parts.csv", import.meta.url), "utf8")
    .trim()
    .split("\n")
    .map((line) => line.split(","));
  const { parts, understood, findings } = partsFromRows(columns!, rows);

  it("are at least 60, all understood", () => {
    expect(findings).toEqual([]);
    expect(understood.filter(({ field }) => !field)).toEqual([]);
    expect(parts).toHaveLength(rows.length);
    expect(parts.length).toBeGreaterThanOrEqual(60);
    expect(new Set(parts.map(({ maker }) => maker)).size).toBeGreaterThanOrEqual(4);
    expect(new Set(parts.flatMap(({ price }) => price?.currency ?? [])).size).toBe(2);
    expect(parts.some(({ available }) => available === false)).toBe(true);
    expect(parts.some(({ price }) => !price)).toBe(true);
    expect(parts.every(({ price }) => !price || price.checked)).toBe(true);
  });

  const limpet = JSON.parse(readFileSync(new URL("../../../../seeds/limpet.json", import.meta.url), "utf8"));
  const toothed = (kind: Part["is"]) =>
    parts.flatMap((one) => (one.is === kind && one.teeth ? [{ ...one, teeth: one.teeth }] : []));

  it("hold one pair alone that brings Limpet into its range and fits its slot", () => {
    const mount = { ...limpet.mounts[0], module: "0.8" };
    const rest = [
      { id: "front", rest: "1672/156" },
      { id: "rear", rest: "4025/384" },
    ];
    const question = {
      drivers: toothed("pinion"),
      drivens: toothed("spur"),
      outputs: rest.map((one) => ({ ...one, ...limpet.target })),
      adapters: parts.filter(({ is }) => is === "sleeve" || is === "plate"),
      mount: { ...mount, shaft: "5 mm" },
    };
    const found = [...findPairs(question)].flatMap((batch) => batch.found);
    expect(found.map(({ counts }) => counts)).toEqual([[15, 62]]);
    expect(found.every(({ driver, driven }) => canBeHad(driver) && canBeHad(driven))).toBe(true);
    const missed = [...nearMisses(question)].flatMap((batch) => batch.found);
    const reason = (driver: number, driven: number) =>
      missed
        .find(({ counts }) => counts.join() === `${driver},${driven}`)!
        .reasons.find(({ weight }) => weight === "refusal")!;
    // What differs in pitch is never near, however alike 32 DP and module 0.8 are.
    const pitchOf = ({ module, diametralPitch }: Part) => `${module} ${diametralPitch}`;
    expect(missed.filter(({ driver, driven }) => pitchOf(driver) !== pitchOf(driven))).toEqual([]);
    expect([reason(17, 66).code, String(reason(17, 66).short!.low)]).toEqual(["too-far", "19/10"]);
    expect(
      toothed("pinion")
        .filter(({ teeth }) => teeth === 16)
        .map((one) => one.diametralPitch ?? one.module),
    ).toEqual(["32"]);
  });
});
