import { describe, expect, it } from "vitest";
import { parseBuild } from "../../src/document/index.js";
import type { Build, Part } from "../../src/drivetrain/index.js";
import { currencyOf, needsOf, orderOf, type Need, ownedOf, stockFor } from "../../src/parts/index.js";

const price = (amount: string, currency = "EUR") => ({ amount, currency });
const pitch = { module: "0.8" };
const pair = (id: string, driver: number, driven: number, more: object = {}) => ({
  id,
  kind: "pair",
  driver,
  driven,
  ...more,
});
const build = (data: object): Build =>
  parseBuild({ format: "meshwright-build/1", outputs: [{ id: "rear", stages: [] }], ...data });
/** The build with parts named on a stage, as a document that knows the field would say it. */
const fitted = (one: Build, stage: string, ids: readonly string[]): Build => ({
  ...one,
  stages: one.stages.map((other) => (other.id === stage ? { ...other, fitted: ids } : other)),
});
const shown = (needs: readonly Need[]) =>
  needs.map(({ stage, is, pieces, part }) => `${pieces} ${is[0]} at ${stage || "vehicle"}: ${part?.id ?? "none"}`);
const sums = ({ sums: list }: ReturnType<typeof orderOf>) =>
  list.map(({ amount, currency }) => `${currency} ${amount}`);
const circles = (...sizes: readonly string[]) => sizes.map((diameter) => ({ count: 4, diameter }));

describe("ownedOf", () => {
  const part = (more: object): Part => ({ id: "a", is: "pinion", ...more });

  it("goes by the count, else by the status, in whole pieces, less what is held elsewhere", () => {
    expect(ownedOf(part({ owned: 3, status: "fitted" }), { fitted: 9 })).toBe(3);
    expect(ownedOf(part({ owned: 0, status: "owned" }))).toBe(0);
    expect(["owned", "ordered", "spare", "fitted"].map((status) => ownedOf(part({ status })))).toEqual([1, 1, 1, 1]);
    expect(ownedOf(part({ status: "fitted" }), { fitted: 4, elsewhere: 1 })).toBe(3);
    expect(ownedOf(part({ owned: 1 }), { elsewhere: 3 })).toBe(0);
    expect(ownedOf(part({ available: true, price: price("1") }))).toBe(0);
  });
});

describe("a gear off the shelf", () => {
  const p15 = (more: object = {}): Part => ({ id: "p", is: "pinion", teeth: 15, ...pitch, ...more });
  const s62: Part = { id: "s", is: "spur", teeth: 62, ...pitch };
  const found = (stage: object, ...parts: readonly Part[]) =>
    shown(needsOf(build({ stages: [pair("primary", 15, 62, stage)] }), parts)).map((line) => line.split(": ")[1]);

  it("is the one only where it is shifted and turned as the stage has it", () => {
    expect(found(pitch, p15(), s62)).toEqual(["p", "s"]);
    expect(found(pitch, p15({ shift: "0.5" }), s62)).toEqual(["none", "s"]);
    expect(found({ ...pitch, driverShift: "0.50", drivenShift: "-1/2" }, p15({ shift: 0.5 }), s62)).toEqual([
      "p",
      "none",
    ]);
    // What is not marked is not shifted.
    expect(found({ ...pitch, driverShift: "0.5" }, p15(), s62)).toEqual(["none", "s"]);
    // 0.8 · (15 + 2) = 13.6; another 0.8 further out is that of a shift.
    for (const [tip, name] of [
      ["13.6 mm", "p"],
      ["13.5 mm", "p"],
      ["14.4 mm", "none"],
    ])
      expect(found(pitch, p15({ tipDiameter: tip }), s62)).toEqual([name, "s"]);
    expect(found({ ...pitch, driverTip: "14.4 mm" }, p15({ tipDiameter: "14.4 mm" }), s62)).toEqual(["p", "s"]);
    // The tips of a ring stand inside.
    const ring: Part = { ...s62, tipDiameter: "48 mm", form: "internal" };
    expect(found({ ...pitch, internal: true }, p15(), ring)).toEqual(["p", "s"]);
    // Nor does that of a worm, or of wound teeth, follow from the count alone.
    const worm = { id: "primary", kind: "worm", starts: 1, teeth: 30, module: 1 };
    const screw: Part = { id: "w", is: "worm", teeth: 1, module: "1", tipDiameter: "12 mm" };
    expect(shown(needsOf(build({ stages: [worm] }), [screw]))[0]).toBe("1 worm at primary: w");
    const wound = p15({ tipDiameter: "14.37 mm" });
    expect(found({ ...pitch, helixAngle: 20 }, wound, s62)).toEqual(["p", "s"]);
    expect(found({ ...pitch, driverShift: "0.5", driverTip: "14.4 mm" }, p15({ tipDiameter: "14.4 mm" }), s62)).toEqual(
      ["p", "s"],
    );
    // Whoever says that it stands there knows.
    expect(found(pitch, p15({ shift: "0.5", stage: "primary" }), s62)).toEqual(["p", "s"]);
  });

  it("has no other pressure angle, also where its pitch is not known", () => {
    const stage = { ...pitch, pressureAngle: 20 };
    const bare: Part = { id: "p", is: "pinion", teeth: 15, pressureAngle: "14.5" };
    expect(found(stage, bare, s62)).toEqual(["none", "s"]);
    expect(found(stage, { ...bare, pressureAngle: "20.0" }, s62)).toEqual(["p", "s"]);
    expect(found(stage, { ...bare, stage: "primary" }, s62)).toEqual(["none", "s"]);
  });

  it("is of one pitch with those that it runs with, also where the stage does not say which", () => {
    const inch = p15({ id: "inch", module: undefined, diametralPitch: 32, owned: 1 });
    expect(found({}, inch, s62)).toEqual(["inch", "none"]);
    // What leaves the other gear without one comes after what does not.
    expect(found({}, inch, p15({ id: "late" }), s62)).toEqual(["late", "s"]);
    expect(found({}, inch, p15({ id: "late" }), s62, { ...s62, id: "t", module: "127/160" })).toEqual(["inch", "t"]);
    const many = Array.from({ length: 30 }, (_, n) => p15({ id: `a${String(n).padStart(2, "0")}`, module: "1" }));
    expect(found({}, ...many, p15({ id: "z" }), s62)).toEqual(["z", "s"]);
    const gone = p15({ id: "gone", available: false });
    expect(found({}, p15({ id: "own", module: "1", owned: 1 }), gone, s62)).toEqual(["own", "none"]);
    const belts = build({ stages: [{ id: "belt", kind: "belt", driver: 15, driven: 30 }] });
    const pulley = (id: string, teeth: number, size: string): Part => ({ id, is: "pulley", teeth, pitch: size });
    expect(shown(needsOf(belts, [pulley("a", 15, "5 mm"), pulley("b", 30, "3 mm")])).slice(0, 2)).toEqual([
      "1 pulley at belt: a",
      "1 pulley at belt: none",
    ]);
    expect(shown(needsOf(belts, [pulley("a", 15, "5 mm"), pulley("b", 30, "5.0 mm")])).slice(0, 2)).toEqual([
      "1 pulley at belt: a",
      "1 pulley at belt: b",
    ]);
  });
});

describe("adapters", () => {
  const mounts = [{ stage: "primary", shaft: "1/8 in", hubHoles: circles("24 mm") }];
  const stages = [pair("primary", 15, 62, pitch)];
  const gears: readonly Part[] = [
    { id: "p15", is: "pinion", teeth: 15, ...pitch, bore: "5 mm" },
    { id: "s62", is: "spur", teeth: 62, ...pitch, circles: circles("20 mm") },
  ];
  const adapters: readonly Part[] = [
    { id: "a-dear", is: "sleeve", bore: "1/8 in", outside: "5 mm", price: price("9") },
    { id: "sleeve", is: "sleeve", bore: "3.175 mm", outside: "5 mm", price: price("1.20") },
    { id: "thin", is: "sleeve", bore: "2 mm", outside: "5 mm", price: price("0.10") },
    { id: "gone", is: "sleeve", bore: "1/8 in", outside: "5 mm", price: price("0.10"), available: false },
    { id: "plate", is: "plate", circles: circles("20 mm", "24 mm"), price: price("2.30") },
  ];

  it("that fitted gears need are needs of the stage, the cheapest that do, and stand in its price", () => {
    const needs = needsOf(build({ stages, mounts, parts: [...gears, ...adapters] }));
    expect(shown(needs)).toEqual([
      "1 pinion at primary: p15",
      "1 gear at primary: s62",
      "1 sleeve at primary: sleeve",
      "1 plate at primary: plate",
    ]);
    expect(sums(orderOf([], needs))).toEqual(["EUR 7/2"]);
  });

  it("that are owned are taken before those that cost, unless another stage holds them", () => {
    const owned: Part = { id: "z-owned", is: "sleeve", bore: "1/8 in", outside: "5 mm", owned: 1 };
    const sleeveOf = (data: object, ids?: readonly string[]) => {
      const one = build({ stages, mounts, parts: [...gears, ...adapters, owned], ...data });
      return needsOf(ids ? fitted(one, "primary", ids) : one).find(
        ({ is, stage }) => is[0] === "sleeve" && stage === "primary",
      )?.part?.id;
    };
    expect(sleeveOf({})).toBe("z-owned");
    expect(sleeveOf({}, ["p15", "s62", "a-dear"])).toBe("a-dear");
    const two = [...stages, pair("other", 15, 40, pitch)];
    const held = [...gears, ...adapters, { ...owned, stage: "other", status: "fitted" }];
    // The other stage has no mount that says it needs one, but names it.
    const one = build({ stages: two, mounts, parts: held });
    const named = fitted(one, "other", ["z-owned"]);
    expect(
      needsOf(named)
        .filter(({ is }) => is[0] === "sleeve")
        .map(({ stage, part }) => [stage, part!.id]),
    ).toEqual([
      ["primary", "sleeve"],
      ["other", "z-owned"],
    ]);
  });

  it("that no part is named for are needs all the same", () => {
    const list = orderOf([], needsOf(build({ stages, mounts, parts: gears })));
    expect(list.missing.map(({ is, bore, outside }) => [is[0], bore, outside])).toEqual([
      ["sleeve", "1/8 in", "5 mm"],
      ["plate", undefined, undefined],
    ]);
    // A bore that is too small is no matter of sleeves: another pinion is needed.
    const small = [{ ...gears[0]!, bore: "2 mm" }, gears[1]!];
    expect(orderOf([], needsOf(build({ stages, mounts, parts: small }))).missing.map(({ is }) => is[0])).toEqual([
      "pinion",
      "plate",
    ]);
  });

  it("are for the driven gear's shaft as well, where it is not screwed to a hub", () => {
    const own = [{ stage: "primary", shaft: "5 mm", drivenShaft: "1/8 in" }];
    const [p15, s62] = gears as [Part, Part];
    const bored = [p15, { ...s62, circles: undefined, bore: "5 mm" }] as Part[];
    expect(shown(needsOf(build({ stages, mounts: own, parts: [...bored, ...adapters] })))).toEqual([
      "1 pinion at primary: p15",
      "1 gear at primary: s62",
      "1 sleeve at primary: sleeve",
    ]);
    const screwed = [p15, { ...s62, bore: "5 mm" }];
    expect(needsOf(build({ stages, mounts: own, parts: [...screwed, ...adapters] }))).toHaveLength(2);
  });
});

describe("a gear that a mount cannot hold", () => {
  const stages = [pair("primary", 15, 62, pitch)];
  const mounts = [{ stage: "primary", shaft: "5 mm", drivenShaft: "8 mm", hubHoles: circles("24 mm"), reach: "20 mm" }];
  const pinion = (id: string, more: object): Part => ({ id, is: "pinion", teeth: 15, ...pitch, ...more });
  const taken = (...parts: Part[]) => needsOf(build({ stages, mounts, parts }))[0]!.part?.id;

  it("answers for nothing, and stands behind all others where only a sleeve or a plate is lacking", () => {
    expect(taken(pinion("a-thin", { bore: "3 mm", owned: 1 }))).toBeUndefined();
    expect(taken(pinion("a-wide", { bore: "5 mm", width: "21 mm", owned: 1 }))).toBeUndefined();
    expect(taken(pinion("a-thin", { bore: "3 mm", owned: 1 }), pinion("b", { bore: "5 mm" }))).toBe("b");
    expect(taken(pinion("a-thick", { bore: "6 mm", owned: 1 }), pinion("b", { bore: "5 mm" }))).toBe("b");
    expect(taken(pinion("a-thick", { bore: "6 mm", owned: 1 }))).toBe("a-thick");
    const sleeve: Part = { id: "sleeve", is: "sleeve", bore: "5 mm", outside: "6 mm", available: true };
    expect(taken(pinion("a-thick", { bore: "6 mm", owned: 1 }), pinion("b", { bore: "5 mm" }), sleeve)).toBe("a-thick");
    expect(taken(pinion("a-thick", { bore: "6 mm", owned: 1 }), pinion("b", { owned: 1 }), sleeve)).toBe("b");
  });

  it("is taken where the stage names it: that is what stands there", () => {
    const thin = pinion("a-thin", { bore: "3 mm", owned: 1 });
    const one = build({ stages, mounts, parts: [thin, pinion("b", { bore: "5 mm" })] });
    expect(needsOf(fitted(one, "primary", ["a-thin"]))[0]!.part!.id).toBe("a-thin");
  });
});

describe("every piece that a build needs", () => {
  const data = {
    motor: { label: "Turnstone 540" },
    battery: { cells: 3 },
    controller: { label: "Sanderling 60" },
    stages: [pair("primary", 15, 62, pitch)],
    outputs: [
      { id: "front", wheel: { loadedDiameter: "116 mm" }, stages: [pair("front-hub", 15, 22, { per: "wheel" })] },
      { id: "rear", wheel: { travel: { turns: 10, length: "3.6 m" } }, stages: [] },
      { id: "winch", motor: { label: "Winch motor" }, wheel: { diameter: "40 mm" }, wheels: 1, stages: [] },
    ],
  };

  it("is asked for, and is a need where no part is named for it", () => {
    const needs = needsOf(build(data));
    expect(shown(needs)).toEqual([
      "1 pinion at primary: none",
      "1 gear at primary: none",
      "2 pinion at front-hub: none",
      "2 gear at front-hub: none",
      "2 wheel at front: none",
      "2 wheel at rear: none",
      "1 wheel at winch: none",
      "1 motor at winch: none",
      "1 motor at motor: none",
      "1 battery at battery: none",
      "1 other at controller: none",
    ]);
    const { buy, missing } = orderOf([], needs);
    expect([buy, missing.length]).toEqual([[], needs.length]);
    expect(missing.find(({ stage }) => stage === "rear")!.travel).toEqual({ turns: 10, length: "3.6 m" });
    expect(missing.find(({ stage }) => stage === "front")!.loadedDiameter).toBe("116 mm");
  });

  const parts: readonly Part[] = [
    { id: "tyre-front", is: "wheel", diameter: "118 mm", stage: "front", price: price("3") },
    { id: "tyre-rear", is: "wheel", diameter: "118 mm", stage: "rear" },
    { id: "tyre-loose", is: "wheel", diameter: "116 mm" },
    { id: "motor", is: "motor", name: "Turnstone 540", price: price("24.90") },
    { id: "another", is: "motor", owned: 3 },
    { id: "winch-motor", is: "motor", stage: "winch", status: "owned" },
    { id: "pack", is: "battery", stage: "battery", price: price("31.00", "GBP") },
    { id: "esc", is: "other", name: "Sanderling 60" },
    { id: "bearing", is: "other", stage: "front-hub", per: "wheel", pieces: 2, pack: 10, price: price("6.50") },
    { id: "screw", is: "other", stage: "rear", pieces: 3 },
    { id: "grub", is: "other", stage: "primary", pieces: 2 },
    { id: "strap", is: "other", per: "axle" },
    { id: "tape", is: "other", status: "fitted" },
    { id: "shelf", is: "other" },
    { id: "gone", is: "other", stage: "nowhere" },
  ];

  it("is answered by parts of its place or name: tyres however they were measured, motors, pack, bearings and screws", () => {
    const needs = needsOf(build({ ...data, parts }));
    expect(shown(needs).filter((line) => !line.endsWith("none"))).toEqual([
      "2 other at primary: grub",
      "4 other at front-hub: bearing",
      "2 wheel at front: tyre-front",
      "2 wheel at rear: tyre-rear",
      "3 other at rear: screw",
      "1 motor at winch: winch-motor",
      "1 motor at motor: motor",
      "1 battery at battery: pack",
      "1 other at controller: esc",
      "3 other at vehicle: strap",
      "1 other at vehicle: tape",
    ]);
    const list = orderOf([], needs);
    expect(list.buy.map(({ part, packs }) => `${packs} ${part.id}`)).toEqual([
      "2 grub",
      "1 bearing",
      "2 tyre-front",
      "2 tyre-rear",
      "3 screw",
      "1 motor",
      "1 pack",
      "1 esc",
      "3 strap",
    ]);
    expect(list.owned.map(({ part }) => part.id)).toEqual(["winch-motor", "tape"]);
    expect(sums(list)).toEqual(["EUR 187/5", "GBP 31/1"]);
    expect(list.missing).toHaveLength(5);
  });

  it("stands with its stage, wherever a lever has it", () => {
    const positions = [
      { id: "low", stages: [pair("low-pair", 12, 40, pitch)] },
      { id: "high", stages: [pair("high-pair", 20, 32, pitch)] },
    ];
    const box = { id: "box", kind: "selectable", selected: "low", positions };
    expect(shown(needsOf(build({ stages: [box] })))).toEqual([
      "1 pinion at low-pair: none",
      "1 gear at low-pair: none",
      "1 pinion at high-pair: none",
      "1 gear at high-pair: none",
    ]);
  });
});

describe("a part that more than one place could have", () => {
  const stages = [pair("one", 15, 60, pitch), pair("two", 15, 60, pitch)];
  const p15 = (id: string, more: object = {}): Part => ({ id, is: "pinion", teeth: 15, ...pitch, ...more });
  const at = (one: Build) =>
    needsOf(one)
      .filter(({ teeth }) => teeth === 15)
      .map(({ part }) => part!.id);

  it("is given where it is named first; what is free is given once", () => {
    const parts = [p15("a", { owned: 1, available: false }), p15("b", { available: true })];
    expect(at(build({ stages, parts }))).toEqual(["a", "b"]);
    expect(at(fitted(build({ stages, parts }), "two", ["a"]))).toEqual(["b", "a"]);
    expect(
      at(
        build({
          stages,
          parts: [p15("a", { owned: 1, stage: "two", status: "fitted" }), p15("b", { available: true })],
        }),
      ),
    ).toEqual(["b", "a"]);
  });

  it("that is fitted is told before what is only meant for the place", () => {
    const parts = [
      p15("a", { stage: "one" }),
      p15("b", { stage: "one", owned: 1 }),
      p15("c", { stage: "one", status: "fitted", owned: 1 }),
    ];
    expect(at(build({ stages, parts }))[0]).toBe("c");
    expect(at(build({ stages, parts: parts.slice(0, 2) }))[0]).toBe("b");
    expect(at(fitted(build({ stages, parts }), "one", ["a"]))[0]).toBe("a");
  });

  it("moves from where it was taken off, and is not bought again", () => {
    const gear = (stage: string, part: Part): Need => ({ stage, is: ["pinion"], pieces: 1, part, named: true });
    const [a, b] = [p15("a"), p15("b", { price: price("5") })];
    const list = orderOf([gear("one", a), gear("two", b)], [gear("one", b), gear("two", a)]);
    expect([list.buy, list.left, list.stays.map(({ part }) => part.id)]).toEqual([[], [], ["b", "a"]]);
  });

  it("that was only guessed to be there is bought where it is named", () => {
    const guess: Need = { stage: "one", is: ["pinion"], pieces: 1, teeth: 15, part: p15("a", { price: price("5") }) };
    expect(orderOf([guess], [guess]).buy).toEqual([]);
    const named = orderOf([guess], [{ ...guess, named: true }]);
    expect(named.buy.map(({ part }) => part.id)).toEqual(["a"]);
    expect(named.left.map(({ part }) => part.id)).toEqual(["a"]);
  });
});

describe("stockFor", () => {
  const part: Part = { id: "a", is: "pinion", teeth: 15, pack: 4, owned: 2, price: price("3.10") };
  const need = (stage: string, pieces: number, named = true): Need => ({ stage, is: ["pinion"], pieces, part, named });
  const packs = (before: readonly Need[], after: readonly Need[], pieces: number) => {
    const { packs: count, pieces: short, cost } = stockFor(before, after, ["it"]).lineFor(part, pieces);
    return [count, short, cost!.amount.toFraction()];
  };

  it("comes to what an order comes to with the part in place, less what it comes to without", () => {
    const cases: readonly (readonly [Need[], Need[]])[] = [
      [[], []],
      [[need("it", 1)], [need("it", 1)]],
      [[need("other", 1)], [need("other", 1)]],
      [[need("other", 2)], [need("other", 2)]],
      [[], [need("other", 3)]],
      [[need("other", 3)], []],
      [[need("other", 1, false)], [need("other", 1, false)]],
      [[need("it", 2), need("other", 1)], [need("other", 4)]],
    ];
    for (const [before, after] of cases)
      for (let pieces = 1; pieces < 9; pieces++) {
        const others = after.filter(({ stage }) => stage !== "it");
        const cents = (list: readonly Need[]) => orderOf(before, list).sums[0]?.amount.times(100).toNumber() ?? 0;
        const more = cents([...others, need("it", pieces)]) - cents(others);
        const { cost } = stockFor(before, after, ["it"]).lineFor(part, pieces);
        expect(cost!.amount.times(100).toNumber(), JSON.stringify([before, after, pieces])).toBe(more);
      }
  });

  it("gives what is left in packs that are bought anyway", () => {
    expect(packs([], [], 2)).toEqual([0, 0, "0/1"]);
    expect(packs([], [], 3)).toEqual([1, 1, "31/10"]);
    // Three for the other place: one more than is owned, so a pack of four, of which three are left.
    expect(packs([], [need("other", 3)], 3)).toEqual([0, 3, "0/1"]);
    expect(packs([], [need("other", 3)], 4)).toEqual([1, 4, "31/10"]);
  });
});

describe("of several parts that answer a place", () => {
  const at = (id: string, more: object): Part => ({ id, is: "pinion", teeth: 15, ...pitch, stage: "primary", ...more });
  const meant = [
    at("a-gone", { available: false }),
    at("b-sale", { price: price("4.20") }),
    at("c-have", { owned: 1 }),
    at("d-there", { status: "fitted" }),
  ];
  const first = (parts: readonly Part[], stage: object = {}) =>
    needsOf(build({ stages: [pair("primary", 15, 62, { ...pitch, ...stage })], parts }))[0]!.part?.id;

  it("it is the one that is there, else owned, else on sale, else not to be had now", () => {
    expect([4, 3, 2, 1, 0].map((count) => first(meant.slice(0, count)))).toEqual([
      ...["d-there", "c-have", "b-sale", "a-gone", undefined],
    ]);
  });

  it("it is the one that the stage names, whatever else is there", () => {
    expect(first(meant, { fitted: ["b-sale"] })).toBe("b-sale");
  });

  it("sums are in the currency that most prices are in, of equally many the first by its letters", () => {
    const parts = ["GBP", "EUR"].map((currency, n) => at(`p${n}`, { price: price("1", currency) }));
    expect([currencyOf(parts), currencyOf([...parts].reverse()), currencyOf([])]).toEqual(["EUR", "EUR", ""]);
    expect(currencyOf([...parts, at("p2", { price: price("1", "GBP") })])).toBe("GBP");
  });
});
