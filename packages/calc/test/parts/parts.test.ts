import { describe, expect, it } from "vitest";
import { readBuild } from "../../src/document/index.js";
import { shapes, type Part } from "../../src/drivetrain/index.js";
import { canBeHad, costOfLine, emptyStock, needsOf, orderOf, readParts, type Need } from "../../src/parts/index.js";
import type { Finding } from "../../src/stages/index.js";
import { document } from "../make.js";

const codes = (json: unknown) => readParts(json).findings.map(({ code, at }) => `${code} ${at}`);

describe("readParts", () => {
  it("reads a list, or its text, into a copy", () => {
    const list = [
      { id: "p15", is: "pinion", teeth: "15", module: 0.8, circles: [{ count: 3, diameter: "24 mm" }], "x-note": [1] },
    ];
    const { parts, findings } = readParts(list);
    expect(findings).toEqual([]);
    expect(parts).toEqual([{ ...list[0], teeth: 15 }]);
    expect(parts).not.toBe(list);
    expect(readParts(JSON.stringify(list)).parts).toEqual(parts);
  });

  it("names what is wrong and where", () => {
    expect(readParts('[{ "id": "a", "is": "other" },\n { "id": "b" "is": "other" }]').findings).toMatchObject([
      { code: "not-json", message: expect.stringMatching(/^Line 2:/) as string },
    ]);
    expect(codes('[{ "id": "a", "is": "pinion", "teeth": 9, "teeth": 19 }]')).toEqual(["key-repeated /0/teeth"]);
    expect(codes({})).toEqual(["not-a-list "]);
    expect(codes([{ id: "a", is: "spur", teeth: 0, colour: "grey" }])).toEqual([
      "not-count /0/teeth",
      "unknown-key /0/colour",
    ]);
    const costs = (amount: unknown) => codes([{ id: "a", is: "other", price: { amount, currency: "EUR" } }]);
    for (const amount of ["4,20", "-1", -1, "4.2.0", "1e3"])
      expect(costs(amount)).toEqual(["not-amount /0/price/amount"]);
    // A number and its text are taken alike.
    for (const amount of [4.20055, 0.0425, 1e-4]) expect([costs(amount), costs(String(amount))]).toEqual([[], []]);
    expect(
      codes([
        { id: "a", is: "other" },
        { id: "a", is: "other" },
      ]),
    ).toEqual(["id-repeated /1/id"]);
    expect(codes([{ id: "a", is: "set", driver: 13 }])).toEqual(["part-incomplete /0/driven"]);
    expect(
      codes([
        { id: "a", is: "wheel" },
        { id: "b", is: "sleeve", bore: "2 mm" },
      ]),
    ).toEqual(["part-incomplete /0/diameter", "part-incomplete /1/outside"]);
    expect(codes([{ id: "a", is: "gear", teeth: 20, module: 1, diametralPitch: 32 }])).toEqual([
      "pitch-twice /0/diametralPitch",
    ]);
  });

  it("is of one mind with a build, whose figures do not depend on its parts", () => {
    const parts = [
      { id: "a", is: "set", driver: 13 },
      { id: "b", is: "wheel" },
      { id: "c", is: "gear", teeth: 20, module: 1, diametralPitch: 32 },
    ];
    const told = (findings: readonly Finding[]) =>
      findings.map(({ code, at }) => `${code} ${at.replace("/parts", "")}`);
    const bent = [{ id: "d", is: "pinion", teeth: 15, pressureAngle: "200" }];
    expect(codes(bent)).toEqual(["angle-out-of-range /0/pressureAngle"]);
    // No figure can be worked out with it.
    expect(readBuild(document([], { rear: [] }, { parts: bent }))).toMatchObject({
      ok: false,
      findings: [
        { code: "angle-out-of-range", at: "/parts/0/pressureAngle", values: { found: "200", from: 0, to: 45 } },
      ],
    });
    const reading = readBuild(document([], { rear: [] }, { parts }));
    expect(told(reading.findings)).toEqual(codes(parts));
    expect(reading.findings.map(({ severity }) => severity)).toEqual(["warning", "warning", "warning"]);
    expect(reading.build?.parts).toEqual(parts);
    // And again, of a list that is known already.
    expect(readBuild(reading.build).findings).toEqual(reading.findings);
  });

  it("takes any field of the shape, so that Schema and reader are of one mind", () => {
    expect(Object.keys(shapes.part!)).toEqual(expect.arrayContaining(["id", "is", "circles", "price", "owned"]));
  });
});

const price = (amount: string, currency = "EUR") => ({ amount, currency, checked: "2026-10-01" });

describe("having a part", () => {
  it("is sure where it is owned or on sale, and not known where nobody says", () => {
    expect(canBeHad({ id: "a", is: "other", owned: 1, available: false })).toBe(true);
    expect(canBeHad({ id: "a", is: "other", owned: 0, available: false })).toBe(false);
    expect(canBeHad({ id: "a", is: "other", available: true })).toBe(true);
    expect(canBeHad({ id: "a", is: "other" })).toBeUndefined();
    expect(canBeHad({ id: "a", is: "other", status: "ordered" })).toBe(true);
    expect(canBeHad({ id: "a", is: "other", status: "fitted", owned: 0 })).toBeUndefined();
  });

  it("costs in whole thousandths, rounded up", () => {
    const costOf = (part: Part) => costOfLine(emptyStock.lineFor(part, 1), "EUR");
    expect(costOf({ id: "a", is: "other", price: { amount: 0.0001, currency: "EUR" } }).amount).toBe(1);
    expect(costOf({ id: "a", is: "other" })).toEqual({ fresh: 1, amount: 0, unpriced: 1 });
    expect(costOf({ id: "a", is: "other", price: { amount: 2, currency: "GBP" } }).unpriced).toBe(1);
    expect(costOf({ id: "a", is: "other", status: "spare" })).toEqual({ fresh: 0, amount: 0, unpriced: 0 });
  });
});

function build() {
  const output = (id: string, extra: object = {}) => ({
    id,
    stages: [
      { id: `${id}-ring`, kind: "pair", driver: 13, driven: 38, set: true },
      { id: `${id}-hub`, kind: "pair", driver: 15, driven: 22, per: "wheel" },
    ],
    wheel: { diameter: "12 cm" },
    ...extra,
  });
  const { build: made, findings } = readBuild({
    format: "meshwright-build/1",
    stages: [
      { id: "primary", kind: "pair", driver: 15, driven: 62, module: "0.8" },
      { id: "row", kind: "train", teeth: [18, 31, 18], module: "0.8", per: "axle" },
      { id: "box", kind: "published", value: "2.61" },
      { id: "worm", kind: "worm", starts: 1, teeth: 30 },
    ],
    outputs: [
      output("front", { from: "shaft" }),
      output("rear", { wheels: 4, stages: [{ id: "rear-belt", kind: "belt", driver: 20, driven: 60 }] }),
      { id: "winch", motor: {}, stages: [{ id: "winch-hub", kind: "pair", driver: 10, driven: 40, per: "wheel" }] },
    ],
    branches: [{ id: "shaft", stages: [{ id: "shaft-pair", kind: "pair", driver: 20, driven: 20, per: "wheel" }] }],
  });
  expect(findings).toEqual([]);
  return made!;
}

const shelf: readonly Part[] = [
  { id: "p15", is: "pinion", teeth: 15, module: "0.8" },
  { id: "p15-near", is: "pinion", teeth: 15, diametralPitch: 32, owned: 3 },
  { id: "s62-a", is: "spur", teeth: 62, module: "0.8" },
  { id: "s62-b", is: "spur", teeth: 62, module: "0.8", available: true },
  { id: "s62-c", is: "spur", teeth: 62, module: "0.8", available: false },
  { id: "s62-d", is: "spur", teeth: 62, module: "0.8", stage: "elsewhere", available: true },
  { id: "g18", is: "gear", teeth: 18, module: "0.8" },
  { id: "g31", is: "gear", teeth: 31, module: "0.8" },
  { id: "box-261", is: "gearbox", value: "2.61" },
  { id: "ring", is: "set", driver: 13, driven: 38 },
  { id: "ring-front", is: "set", driver: 13, driven: 38, stage: "front-ring" },
  { id: "hub", is: "hub", driver: 15, driven: 22 },
  { id: "w120", is: "wheel", diameter: "120 mm" },
  { id: "pulley-20", is: "pulley", teeth: 20 },
];

describe("needsOf", () => {
  const needs = needsOf(build(), shelf);
  const of = (stage: string) =>
    needs.filter((need) => need.stage === stage).map(({ part, pieces }) => `${pieces} ${part?.id}`);

  it("asks for each stage's parts, as many as the vehicle, its axles or wheels take", () => {
    expect(of("primary")).toEqual(["1 p15", "1 s62-b"]);
    expect(of("row")).toEqual(["2 g18", "2 g31", "2 g18"]);
    expect(of("box")).toEqual(["1 box-261"]);
    expect(of("worm")).toEqual(["1 undefined", "1 undefined"]);
    expect(of("front-ring")).toEqual(["1 ring-front"]);
    expect(of("front-hub")).toEqual(["2 hub"]);
    expect(of("shaft-pair")).toEqual(["2 undefined", "2 undefined"]);
    expect(of("rear-belt")).toEqual(["1 pulley-20", "1 undefined", "1 undefined"]);
    expect(of("winch-hub")).toEqual(["2 undefined", "2 undefined"]);
    expect(of("front")).toEqual(["2 w120"]);
    expect(of("rear")).toEqual(["4 w120"]);
  });

  it("prefers what is owned to what is on sale, that to what is not known, and that to what is meant for elsewhere or sold out", () => {
    const spurs = (drop: readonly string[]) =>
      needsOf(
        build(),
        shelf.filter(({ id }) => !drop.includes(id)),
      ).find((need) => need.teeth === 62)!.part!.id;
    expect(spurs([])).toBe("s62-b");
    expect(spurs(["s62-b"])).toBe("s62-a");
    expect(spurs(["s62-a", "s62-b"])).toBe("s62-d");
    expect(spurs(["s62-a", "s62-b", "s62-d"])).toBe("s62-c");
    const owned = [...shelf, { id: "z", is: "spur", teeth: 62, owned: 1 }] as const;
    expect(needsOf(build(), owned).find((need) => need.teeth === 62)!.part!.id).toBe("z");
    const twins = [
      { id: "b", is: "gearbox", value: "2.61" },
      { id: "a", is: "gearbox", value: "2.61" },
    ] as const;
    expect(needsOf(build(), twins).find((need) => need.stage === "box")!.part!.id).toBe("a");
    const reversed = [...twins].reverse();
    expect(needsOf(build(), reversed).find((need) => need.stage === "box")!.part!.id).toBe("a");
  });
});

describe("orderOf", () => {
  const need = (part: Part | undefined, pieces = 1): Need => ({
    stage: "s",
    is: ["other"],
    pieces,
    ...(part && { part }),
  });
  const part = (id: string, extra: Partial<Part> = {}): Part => ({ id, is: "other", ...extra });
  const show = (lines: readonly { part: Part; pieces: number }[]) =>
    lines.map((line) => `${line.pieces} ${line.part.id}`);

  it("buys whole packs, uses what is owned first, and tells what stays and what is left", () => {
    const stays = part("stays", { price: price("9") });
    const off = part("off");
    const owned = part("owned", { owned: 2 });
    const packed = part("packed", { pack: 4, price: price("3.10"), owned: 1 });
    const { buy, ...list } = orderOf(
      [need(stays), need(off, 2)],
      [need(stays), need(owned, 2), need(packed, 3), need(packed, 4)],
    );
    expect(buy.map((line) => [line.part.id, line.pieces, line.packs, String(line.cost!.amount)])).toEqual([
      ["packed", 6, 2, "31/5"],
    ]);
    expect(show(list.stays)).toEqual(["1 stays"]);
    expect(show(list.owned)).toEqual(["2 owned", "1 packed"]);
    expect(show(list.left)).toEqual(["2 packed", "2 off"]);
    expect(list.unpriced).toBe(0);
  });

  it("sums exactly by currency, and invents no price", () => {
    const [a, b, c, d] = [
      part("a", { price: price("0.10") }),
      part("b", { price: price("0.20") }),
      part("c", { price: price("7", "GBP") }),
      part("d"),
    ];
    const { sums, unpriced, buy } = orderOf([], [need(a), need(b), need(c), need(d, 2)]);
    expect(sums.map(({ currency, amount }) => `${currency} ${amount}`)).toEqual(["EUR 3/10", "GBP 7/1"]);
    expect(unpriced).toBe(1);
    expect(buy.find((line) => line.part === d)!.cost).toBeUndefined();
  });

  it("counts one as owned where a status says so, and none where it is only fitted", () => {
    const ordered = part("ordered", { status: "ordered" });
    const fitted = part("fitted", { status: "fitted" });
    const { owned, buy, stays } = orderOf([need(fitted)], [need(ordered), need(fitted, 2)]);
    expect(show(owned)).toEqual(["1 ordered"]);
    expect(show(stays)).toEqual(["1 fitted"]);
    expect(show(buy)).toEqual(["1 fitted"]);
  });

  it("keeps what no part answers, as far as it is new", () => {
    const open = need(undefined);
    expect(orderOf([], [open])).toMatchObject({ buy: [], left: [], missing: [open] });
    expect(orderOf([open], [open]).missing).toEqual([]);
    expect(orderOf([open], [need(undefined, 3)]).missing).toEqual([need(undefined, 2)]);
    expect(orderOf([open], [open, open]).missing).toEqual([open]);
    expect(orderOf([need(part("had"))], [open]).missing).toEqual([open]);
    expect(orderOf([{ ...open, teeth: 20 }], [{ ...open, teeth: 21 }]).missing).toEqual([{ ...open, teeth: 21 }]);
  });
});
