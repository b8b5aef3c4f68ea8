import fc from "fast-check";
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { applyChanges, readBuild } from "../../src/document/index.js";
import { valueAt, type Build, type Change } from "../../src/drivetrain/index.js";
import type { Stage } from "../../src/stages/index.js";
import { document, pair, read, told } from "../make.js";

const limpet = read(readFileSync(new URL("../../../../seeds/limpet.json", import.meta.url), "utf8"));

const box = (more: object = {}) => ({
  id: "box",
  kind: "selectable",
  selected: "low",
  positions: [
    { id: "low", stages: [pair("low-pair", 17, 31)] },
    { id: "mid", released: "free" },
    { id: "high", stages: [pair("high-a", 22, 26), pair("high-b", 20, 20)] },
  ],
  ...more,
});
const build = read(
  document(
    [pair("first", 15, 62), box()],
    {
      front: { from: "shaft", stages: [pair("front-ring", 13, 38, { set: true })], wheel: { diameter: "124 mm" } },
      rear: [pair("rear-ring", 12, 35)],
    },
    { branches: [{ id: "shaft", stages: [pair("transfer", 20, 22)] }], wheelbase: "310 mm" },
  ),
);

const apply = (changes: Parameters<typeof applyChanges>[1], on: Build = build): Build => {
  const before = structuredClone(on);
  const result = applyChanges(on, changes);
  expect(result.findings.filter((one) => one.severity === "error")).toEqual([]);
  expect(on).toEqual(before);
  return result.build!;
};
const refused = (changes: unknown, on: Build = build): string[] => {
  const before = structuredClone(on);
  const { build: changed, findings } = applyChanges(on, changes as readonly Change[]);
  expect(changed).toBeUndefined();
  expect(on).toEqual(before);
  return told(findings);
};
const ids = (stages: readonly Stage[]) => stages.map((stage) => stage.id);

/** Frozen through and through: whoever writes into it throws. */
function frozen<T>(value: T): T {
  if (typeof value === "object" && value) Object.values(Object.freeze(value)).forEach(frozen);
  return value;
}

describe("what is not changed", () => {
  const parts = [{ id: "p15", name: "Pinion 15", is: "pinion", teeth: 15 }];

  it("stays the same object, which nobody can change: what was worked out of it is known by it", () => {
    const whole = read({ ...structuredClone(limpet), parts } as never);
    const now = apply({ "primary.driver": 17 }, whole);
    expect(now.stages[0]).toMatchObject({ id: "primary", driver: 17 });
    expect(now.stages[1]).toBe(whole.stages[1]);
    expect(now.outputs.map(({ stages }) => stages)).toEqual(whole.outputs.map(({ stages }) => stages));
    now.outputs.forEach(({ stages }, n) => expect(stages).toBe(whole.outputs[n]!.stages));
    expect([now.parts, now.mounts]).toEqual([whole.parts, whole.mounts]);
    expect(now.parts).toBe(whole.parts);
    expect(now.mounts).toBe(whole.mounts);
    expect(() => ((now.stages[1] as { label?: string }).label = "x")).toThrow(TypeError);
  });

  it("is read again where it is to be something else, or stands deeper", () => {
    const whole = read({ ...structuredClone(limpet), parts } as never);
    expect(refused([{ set: "stages", to: whole.parts }], whole)).not.toEqual([]);
    expect(readBuild({ ...whole, stages: whole.parts }).ok).toBe(false);
    expect(readBuild({ ...whole, parts: whole.stages }).ok).toBe(false);
    // A box that holds a box, and so on: each is taken out of what was read before.
    let inner: unknown = pair("deepest", 15, 62);
    const deep: boolean[] = [];
    for (let n = 0; n < 60; n++) {
      const next = readBuild(
        document([{ id: `box-${n}`, kind: "selectable", selected: "a", positions: [{ id: "a", stages: [inner] }] }], {
          rear: [],
        }),
      );
      deep.push(next.ok);
      if (!next.ok) break;
      [inner] = next.build.stages;
    }
    // Fifty deep, whichever way it came together.
    expect(deep).toEqual([...Array.from({ length: 49 }, () => true), false]);
  });
});

describe("setting", () => {
  it("says of one change what it says of it among others, and writes into nothing that it was given", () => {
    const whole = frozen(
      read({ ...structuredClone(limpet), "x-a/b": { c: 1, "~1": [{ d: 2 }] }, "x-list": [[1], [2]] } as never),
    );
    const addresses: string[] = [
      "x-a/b",
      "x-a/b.c",
      "x-a/b.~1",
      "x-list.1",
      "x-list.1.0",
      "nobody.driver",
      "stages",
      "",
    ];
    const visit = (value: unknown, path: readonly string[]): void => {
      if (path.length > 3 || typeof value !== "object" || !value) return;
      const { id } = value as { id?: string };
      for (const [key, one] of Object.entries(value)) {
        for (const at of [[...path, key], ...(id ? [[id, key]] : [])]) {
          addresses.push(at.join("."));
          visit(one, at);
        }
      }
    };
    visit(whole, []);
    expect(addresses.length).toBeGreaterThan(100);
    for (const address of addresses)
      for (const to of [17, "118 mm", null, { id: "pair" }, [1, 2], () => 1])
        expect([address, applyChanges(whole, { [address]: to })]).toEqual([
          address,
          applyChanges(whole, [{ set: "title", to: whole.title }, { set: address, to } as Change]),
        ]);
  });

  it("tells of what is no build", () => {
    for (const nothing of [{}, [], "build", { stages: 5 }, { format: "meshwright-build/1", outputs: [null] }])
      expect(applyChanges(nothing as unknown as Build, { "first.driver": 17 }).findings).not.toEqual([]);
  });

  it("reaches every address: of stages anywhere, outputs, branches, and the document's own", () => {
    const changes = {
      "first.driver": 17,
      "low-pair.driven": 30,
      "high-b.label": "High",
      "transfer.driver": 21,
      "front.wheel.diameter": "118 mm",
      "front.wheels": 2,
      "shaft.label": "Shaft",
      "box.selected": "high",
      "box.positions.1": { id: "mid", released: "held" },
      wheelbase: "320 mm",
      title: "New",
      "rear-ring": { id: "rear-ring", kind: "published", value: "2.92" },
      battery: { cells: 3 },
    };
    const changed = apply(changes);
    for (const [address, to] of Object.entries(changes)) expect(valueAt(changed, address), address).toEqual(to);
    expect(changed.outputs[1]!.stages[0]!.kind).toBe("published");
  });

  it("takes one value after another, in the order given", () => {
    const changed = apply([
      { set: "battery", to: { cells: 3 } },
      { set: "battery.cells", to: 4 },
      { set: "first", to: { id: "first", kind: "train", teeth: [15, 20, 62] } },
      { set: "first.teeth.1", to: 25 },
      { set: "first.id", to: "renamed" },
      { set: "renamed.label", to: "Row" },
    ]);
    expect(changed.battery).toEqual({ cells: 4 });
    expect(changed.stages[0]).toEqual({ id: "renamed", kind: "train", teeth: [15, 25, 62], label: "Row" });
  });

  it("of nothing takes an optional field away, and nothing else", () => {
    expect(apply({ wheelbase: null })).not.toHaveProperty("wheelbase");
    expect(apply({ "front.wheel": null }).outputs[0]).not.toHaveProperty("wheel");
    expect(apply({ title: null })).toEqual(build);
    expect(refused({ first: null })).toEqual(["not-optional at first"]);
    expect(refused({ front: null })).toEqual(["not-optional at front"]);
    expect(refused({ "first.driver": null })).toEqual(["missing at /stages/0"]);
    expect(refused({ outputs: null, "first.driver": 16 })).toEqual(["missing at "]);
    expect(refused({ "first.driver": 16, outputs: null })).toEqual(["missing at "]);
  });

  it("does not share what it was given", () => {
    const to = { id: "first", kind: "train", teeth: [15, 20, 62] };
    const changed = apply([
      { set: "first", to },
      { set: "first.teeth.0", to: 16 },
    ]);
    expect(to.teeth).toEqual([15, 20, 62]);
    to.teeth[0] = 99;
    expect(valueAt(changed, "first.teeth")).toEqual([16, 20, 62]);
  });

  it.each<[Record<string, unknown>, string]>([
    [{ "nowhere.driver": 1 }, "missing-address at nowhere.driver"],
    [{ nowhere: 1 }, "missing-address at nowhere"],
    [{ "first.label.0": "S" }, "missing-address at first.label.0"],
    [{ "first.driver.0": 1 }, "missing-address at first.driver.0"],
    [{ "first.none.0": 1 }, "missing-address at first.none.0"],
    [{ "box.positions.3": {} }, "missing-address at box.positions.3"],
    [{ "box.positions.x": {} }, "missing-address at box.positions.x"],
    [{ "box.positions.-1": {} }, "missing-address at box.positions.-1"],
    [{ "box.positions.0.id": "a" }, "missing-address at box.positions.0.id"],
    [{ "": 1 }, "missing-address at "],
    [{ "first.": 1 }, "missing-address at first."],
    [{ ".driver": 1 }, "missing-address at .driver"],
    [{ ["__proto__.driver"]: 1 }, "missing-address at __proto__.driver"],
    [{ "first.__proto__": {} }, "missing-address at first.__proto__"],
    [{ "first.__proto__.x": 1 }, "missing-address at first.__proto__.x"],
    [{ "first.constructor.prototype": 1 }, "missing-address at first.constructor.prototype"],
    [{ constructor: 1 }, "missing-address at constructor"],
    [{ "first.driver": 0 }, "not-count at /stages/0/driver"],
    [{ "first.drivr": 10 }, "unknown-key at /stages/0/drivr"],
    [{ "first.constructor": 10 }, "unknown-key at /stages/0/constructor"],
    [{ "first.id": "box" }, "id-repeated at /stages/1/id"],
    [{ "box.selected": "none" }, "position-missing at /stages/1/selected"],
    [{ format: "meshwright-build/2" }, "newer-format at /format"],
    [{ stages: 5, "first.driver": 10 }, "missing-address at first.driver"],
    [{ stages: [null], "first.driver": 10 }, "unknown-kind at /stages/0/kind"],
    [{ first: { id: "first" }, "box.selected": "high" }, "unknown-kind at /stages/0/kind"],
    [{ "first.label": () => 1 }, "not-data at "],
  ])("%j is refused", (changes, place) => expect(refused(changes)).toEqual([place]));

  it.each([null, undefined, 7, "first.driver", true])("%j is no changes at all", (changes) =>
    expect(refused(changes)).toEqual(["not-an-object at "]),
  );

  it.each([[[null]], [[7]], [[{}]], [[undefined]]])("a list %j makes none", (changes) =>
    expect(refused(changes)).toHaveLength(1),
  );

  it("tells every address that leads nowhere", () => {
    expect(refused({ "a.b": 1, "first.driver": 16, "c.d": 2 })).toEqual([
      "missing-address at a.b",
      "missing-address at c.d",
    ]);
  });

  it("never pollutes", () => {
    applyChanges(
      build,
      JSON.parse('{"__proto__":{"polluted":1},"__proto__.polluted":1,"first.__proto__.polluted":1}') as never,
    );
    expect(({} as { polluted?: number }).polluted).toBeUndefined();
  });
});

describe("a set, sold as a set", () => {
  it("is changed whole, or replaced, or broken up in so many words", () => {
    expect(valueAt(apply({ "front-ring.driver": 11, "front-ring.driven": 43 }), "front-ring")).toMatchObject({
      driver: 11,
      driven: 43,
    });
    expect(valueAt(apply({ "front-ring": pair("front-ring", 11, 43) }), "front-ring.driver")).toBe(11);
    expect(valueAt(apply({ "front-ring.driver": 11, "front-ring.set": false }), "front-ring.driver")).toBe(11);
    expect(valueAt(apply({ "front-ring.label": "Ring" }), "front-ring.label")).toBe("Ring");
    // Both are named, though one stays what it was.
    expect(valueAt(apply({ "front-ring.driver": 11, "front-ring.driven": 38 }), "front-ring.driver")).toBe(11);
  });

  it("is not torn", () => {
    for (const key of ["driver", "driven"]) {
      const { findings } = applyChanges(build, { [`front-ring.${key}`]: 40 });
      expect(told(findings)).toEqual(["set-in-part at front-ring"]);
      expect(findings[0]!.message).toBe("front-ring is sold as a set; change all its counts together.");
    }
    expect(valueAt(apply({ "rear-ring.driver": 11 }), "rear-ring.driver")).toBe(11);
  });
});

describe("inserting, removing and moving", () => {
  const added = pair("added", 30, 40) as unknown as Stage;

  it("puts a stage into any list, at any place of it", () => {
    for (const at of [0, 1, 2])
      expect(ids(apply([{ insert: added, at }]).stages)).toEqual(["first", "box"].toSpliced(at, 0, "added"));
    expect(ids(apply([{ insert: added, into: "front", at: 1 }]).outputs[0]!.stages)).toEqual(["front-ring", "added"]);
    expect(ids(apply([{ insert: added, into: "shaft", at: 0 }]).branches![0]!.stages)).toEqual(["added", "transfer"]);
    const into = apply([{ insert: added, into: "box.high", at: 1 }]).stages[1] as never as {
      positions: { stages: Stage[] }[];
    };
    expect(ids(into.positions[2]!.stages)).toEqual(["high-a", "added", "high-b"]);
  });

  it("takes a stage out wherever it is", () => {
    expect(ids(apply([{ remove: "first" }]).stages)).toEqual(["box"]);
    expect(apply([{ remove: "transfer" }]).branches![0]!.stages).toEqual([]);
    expect(valueAt(apply([{ remove: "high-a" }]), "high-a")).toBeUndefined();
    expect(apply([{ remove: "box" }, { remove: "first" }]).stages).toEqual([]);
  });

  it("moves a stage within its list, or to another", () => {
    expect(ids(apply([{ move: "first", at: 1 }]).stages)).toEqual(["box", "first"]);
    expect(ids(apply([{ move: "first", at: 0 }]).stages)).toEqual(["first", "box"]);
    const moved = apply([{ move: "first", into: "rear", at: 0 }]);
    expect([ids(moved.stages), ids(moved.outputs[1]!.stages)]).toEqual([["box"], ["first", "rear-ring"]]);
    expect(moved.outputs[1]!.stages[0]).toEqual(build.stages[0]);
    expect(
      ids(
        (
          apply([{ move: "low-pair", into: "box.high", at: 0 }]).stages[1] as never as {
            positions: { stages: Stage[] }[];
          }
        ).positions[2]!.stages,
      ),
    ).toEqual(["low-pair", "high-a", "high-b"]);
  });

  it("goes by where things are by then", () => {
    const changed = apply(
      [
        { insert: added, at: 0 },
        { set: "added.driver", to: 31 },
        { move: "added", into: "box.low", at: 1 },
        { set: "added.driven", to: 41 },
        { remove: "low-pair" },
        { set: "box.positions.0.stages" as never, to: null as never },
      ].slice(0, 5) as Change[],
    );
    expect(valueAt(changed, "added")).toEqual({ ...added, driver: 31, driven: 41 });
    expect(valueAt(changed, "low-pair")).toBeUndefined();
  });

  it.each<[Change, string]>([
    [{ insert: added, into: "nowhere", at: 0 }, "missing-address at nowhere"],
    [{ insert: added, into: "first", at: 0 }, "missing-address at first"],
    [{ insert: added, into: "box.none", at: 0 }, "missing-address at box.none"],
    [{ insert: added, into: "box.mid", at: 0 }, "missing-address at box.mid"],
    [{ insert: added, into: "first.low", at: 0 }, "missing-address at first.low"],
    [{ insert: added, at: 3 }, "not-a-place at "],
    [{ insert: added, at: -1 }, "not-a-place at "],
    [{ insert: added, at: 0.5 }, "not-a-place at "],
    [{ insert: pair("first", 1, 2) as never, at: 0 }, "id-repeated at /stages/1/id"],
    [{ insert: { id: "x" } as never, at: 0 }, "unknown-kind at /stages/0/kind"],
    [{ insert: { id: "x", knid: "pair", driver: 1, driven: 2 } as never, at: 0 }, "unknown-key at /stages/0/knid"],
    [{ remove: "nowhere" }, "not-a-stage at nowhere"],
    [{ remove: "front" }, "not-a-stage at front"],
    [{ remove: "first.driver" }, "not-a-stage at first.driver"],
    [{ remove: "wheelbase" }, "not-a-stage at wheelbase"],
    [{ move: "nowhere", at: 0 }, "not-a-stage at nowhere"],
    [{ move: "first", into: "nowhere", at: 0 }, "missing-address at nowhere"],
    [{ move: "first", at: 2 }, "not-a-place at first"],
    [{ move: "box", into: "box.low", at: 0 }, "into-itself at box"],
  ])("%j is refused", (change, place) => expect(refused([change])).toEqual([place]));

  it("what is no change at all is refused too", () => {
    for (const change of [null, undefined, 5, {}]) expect(refused([change])).toHaveLength(1);
  });
});

describe("changes", () => {
  const addresses = [
    "primary.driver",
    "primary.driven",
    "row.teeth.1",
    "front-hub.driver",
    "rear-hub.driven",
    "battery.cells",
  ];
  const sets = fc.dictionary(fc.constantFrom(...addresses), fc.integer({ min: 1, max: 200 }), { maxKeys: 6 });

  it("compose: one after the other is both at once, the later winning", () => {
    fc.assert(
      fc.property(sets, sets, (first, second) => {
        expect(apply(second, apply(first, limpet))).toEqual(apply({ ...first, ...second }, limpet));
      }),
    );
  });

  it("undo: what was there before, set again, gives the build back", () => {
    fc.assert(
      fc.property(sets, (changes) => {
        const undo = Object.fromEntries(Object.keys(changes).map((address) => [address, valueAt(limpet, address)]));
        expect(apply(undo, apply(changes, limpet))).toEqual(limpet);
        expect(apply({}, limpet)).toEqual(limpet);
      }),
    );
  });

  it("moved there and back again is where it was", () => {
    fc.assert(
      fc.property(fc.constantFrom("", "front", "rear", "shaft", "box.low", "box.high"), (into) => {
        const there: Change = { move: "first", at: 0, ...(into && { into }) };
        const back: Change[] = [there, { move: "first", into: "rear", at: 0 }];
        const home = apply([...back, { set: "rear-ring.label", to: "x" }]);
        expect(ids(home.outputs[1]!.stages)).toEqual(["first", "rear-ring"]);
        expect(apply([{ insert: build.stages[0]!, at: 0 }], apply([{ remove: "first" }]))).toEqual(build);
      }),
    );
  });
});
