import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { partKinds, type Part } from "../../../src/drivetrain/index.js";
import { csvOf, partsFromSheet, readParts, readSheet, sheetOf } from "../../../src/parts/index.js";

const decimal = fc
  .tuple(fc.integer({ min: 0, max: 9999 }), fc.constantFrom("", ".5", ".75", ".125", ".0625"))
  .map(([whole, rest]) => `${whole}${rest}`)
  .filter((text) => Number(text) > 0);
const positive = fc.oneof(decimal, fc.constantFrom("127/160", "0.8", "48", "1", "3.175"));
const size = fc
  .tuple(fc.oneof(decimal, fc.constantFrom("1/8", "5/16", "19/4")), fc.constantFrom("mm", "in", "cm", "m", "ft"))
  .map(([number, unit]) => `${number} ${unit}`);
const count = fc.integer({ min: 1, max: 1_000_000 });
const words = fc
  .oneof(
    fc.string({ unit: "grapheme", maxLength: 30 }),
    // What a spreadsheet would reckon with, what says nothing, what looks like counts, kinds, heads or totals.
    fc.constantFrom(
      "=1+1",
      "+49 30",
      "-",
      "--",
      "@home",
      "'quoted'",
      "n/a",
      "?",
      "#REF!",
      "none",
      "Total",
      "Pinion 15T M0.8",
      "Gearmotor 27:1",
      "ring and pinion 13/38",
      "Name",
      "Teeth",
      'a "quoted", cell',
      "two\nlines",
      "semi;colon\ttab",
      "Summe",
      "bearing",
      "x",
      "=",
      "'",
      "''",
      "'-",
      "12",
      "0,8",
      "３",
      "gear",
      "16T 48 pitch",
    ),
  )
  .map((text) => text.trim())
  .filter((text) => text !== "" && text.normalize() !== "" && !/\p{Surrogate}/u.test(text));
const id = fc.oneof(
  fc.stringMatching(/^[a-z](-?[a-z0-9]){0,12}-?$/),
  fc.constantFrom("na", "none", "total", "name", "teeth", "null", "a-b", "x"),
);
const date = fc
  .tuple(fc.integer({ min: 1990, max: 2099 }), fc.integer({ min: 1, max: 12 }), fc.integer({ min: 1, max: 28 }))
  .map(([year, month, day]) => [year, String(month).padStart(2, "0"), String(day).padStart(2, "0")].join("-"));
const price = fc.record(
  {
    amount: fc
      .tuple(fc.integer({ min: 0, max: 999_999 }), fc.constantFrom(".01", ".5", ".20", ".125", ".999"))
      .map((parts) => parts.join("")),
    currency: fc.constantFrom("EUR", "GBP", "JPY", "USD", "XAU"),
    checked: date,
  },
  { requiredKeys: ["amount", "currency"] },
);

const part = fc
  .record(
    {
      id,
      number: words,
      name: words,
      is: fc.constantFrom(...partKinds),
      stage: id,
      teeth: count,
      driver: count,
      driven: count,
      value: fc.constantFrom("2.74", "27:1", "27 : 1", "52/19", "1/27", "0.5", "1", "1:1", "1000.125"),
      module: positive,
      diametralPitch: positive,
      pitch: size,
      pressureAngle: positive,
      form: fc.constantFrom("spur" as const, "helical" as const, "internal" as const, "worm" as const),
      shift: fc.constantFrom("0", "-0.25", "0.125", "-1/8", "3"),
      tipDiameter: size,
      bore: size,
      outside: size,
      diameter: size,
      width: size,
      hub: fc.oneof(size, fc.constant("0 mm")),
      facing: fc.constantFrom("hub in" as const, "hub out" as const),
      circles: fc.array(fc.record({ count, diameter: size }), { minLength: 1, maxLength: 20 }),
      maker: words,
      price,
      source: words,
      available: fc.boolean(),
      pack: count,
      pieces: count,
      per: fc.constantFrom("vehicle" as const, "axle" as const, "wheel" as const),
      owned: fc.integer({ min: 0, max: 999_999 }),
      status: fc.constantFrom("fitted" as const, "owned" as const, "ordered" as const, "spare" as const),
    },
    { requiredKeys: ["id", "is"] },
  )
  .map((one): Part => {
    const { diametralPitch, ...rest } = one;
    return one.module === undefined && diametralPitch !== undefined ? { ...rest, diametralPitch } : rest;
  });

/** Lists that are lists of parts: what kinds need is there, ids are their own. */
const parts = fc
  .uniqueArray(part, { selector: ({ id }) => id, maxLength: 12 })
  .map((list) => list.filter((one) => readParts([one]).parts));

const separators = [",", ";", "\t"];

describe("parts written as a sheet", () => {
  it("read back to the same parts without a question, by rows and as text with any separator", () => {
    fc.assert(
      fc.property(parts, fc.constantFrom(...separators), (list, separator) => {
        const rows = sheetOf(list);
        for (const sheet of [rows, readSheet(csvOf(rows, separator)).rows]) {
          const read = partsFromSheet(sheet);
          expect(read.questions).toEqual([]);
          expect(read.parts).toEqual(list);
        }
      }),
      { numRuns: 150 },
    );
  });

  it("are lines that a spreadsheet does not reckon with", () => {
    const cells = sheetOf([
      { id: "a", is: "other", name: "=HYPERLINK(1)", maker: "@cmd", source: "+1", number: "-2" },
    ]).flat();
    expect(cells.filter((cell) => /^[=+\-@]/.test(cell))).toEqual([]);
  });

  it("take zero and money to the thousandth and below as they are", () => {
    const list: readonly Part[] = [
      { id: "a", is: "other", price: { amount: "1.234", currency: "KWD" }, owned: 0 },
      { id: "b", is: "other", price: { amount: "999.999", currency: "EUR" } },
      { id: "c", is: "other", price: { amount: "0.0425", currency: "EUR" } },
    ];
    expect(partsFromSheet(sheetOf(list)).parts).toEqual(list);
  });
});
