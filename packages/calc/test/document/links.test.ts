import fc from "fast-check";
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import {
  applyChanges,
  asPublished,
  buildFromLink,
  changesFrom,
  edited,
  layOver,
  linkCarries,
  linkOf,
  linkOfBuild,
  type Edited,
} from "../../src/document/index.js";
import { stagesOf, valueAt, type Build, type Change, type ChangeSet } from "../../src/drivetrain/index.js";
import type { Stage } from "../../src/stages/index.js";
import { document, pair, read, told } from "../make.js";
import { alphabet, checkAt as checkOf, forged, withSeal } from "./forge.js";

const limpet = read(readFileSync(new URL("../../../../seeds/limpet.json", import.meta.url), "utf8"));
const back = (changes: ChangeSet, build: Build = limpet, later: Build = build) =>
  changesFrom(linkOf(build, changes), later);
const plain = (changes: ChangeSet) => ({ changes, structure: [], findings: [] });
const applied = (build: Build, changes: ChangeSet): Build => {
  const result = applyChanges(build, changes);
  expect(result.findings.filter((one) => one.severity === "error")).toEqual([]);
  return result.build!;
};
/** What somebody made of a build, step by step. */
const edit = (build: Build, ...requests: (ChangeSet | Change)[]): Edited =>
  requests.reduce<Edited>((state, request) => {
    const next = edited(build, state, request);
    expect(next).toMatchObject({ ok: true });
    return next as Edited;
  }, asPublished(build));
/** What somebody else sees who opens the link to it. */
const sent = ({ layer }: Edited, build: Build, later: Build = build) => {
  const link = linkOf(build, layer.sets, layer.structure);
  const { changes, structure, findings } = changesFrom(link, later);
  return { link, findings, build: layOver(later, { structure, sets: changes }).build, structure };
};
const checkAt = (address: string, to: unknown): string => checkOf(limpet, address, to);

describe("a link for changed values", () => {
  it("carries three changed counts in forty characters at most", () => {
    const changes = { "primary.driver": 17, "primary.driven": 66, "row.teeth.1": 30 };
    expect(linkOf(limpet, changes).length).toBeLessThanOrEqual(40);
    expect(back(changes)).toEqual(plain(changes));
    const largest = { "primary.driver": 1_000_000, "row.teeth.0": 300_000, "front-hub.driven": 999_999 };
    expect(linkOf(limpet, largest).length).toBeLessThanOrEqual(40);
    expect(back(largest)).toEqual(plain(largest));
  });

  it("is made of letters, digits, - and _, says its version first and ends in a letter", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), fc.integer({ min: 1, max: 999 }), (count, length) => {
        const link = linkOf(limpet, { "primary.driver": count, "front.wheel.diameter": `${length} mm` });
        expect(link).toMatch(/^1[\w-]*[A-Za-z]$/);
      }),
    );
  });

  it("carries numbers, lengths, flags, words of closed lists, lists of counts, and nothing", () => {
    const changes = {
      "front.wheel.diameter": "118 mm",
      "front.wheels": 4,
      "rear.axle": "differential",
      "primary.reverses": false,
      "primary.module": null,
      "front-ring.ringSide": "right",
      "row.teeth": [18, 45],
      "battery.cells": 4,
      "battery.chemistry": "lipo-high-voltage",
      "centre.kind": "differential",
      "mounts.0.farther": "1.5 mm",
      "target.from": "38.5",
      "motor.kv": 2000,
      wheelbase: "300 mm",
    };
    expect(back(changes)).toEqual(plain(changes));
  });

  it("carries a stage as another kind, under the author's words", () => {
    const hub = { id: "front-hub", label: "Hub", kind: "published", value: "1.5", group: "axle", per: "wheel" };
    expect(back({ "front-hub": { ...hub, label: "Buy this hub" } })).toEqual(plain({ "front-hub": hub }));
  });

  it("takes a set whole, though one of its counts is the author's", () => {
    for (const [driver, driven] of [
      [12, 38],
      [13, 40],
      [11, 36],
    ]) {
      const changes = { "front-ring.driver": driver, "front-ring.driven": driven };
      expect(back(changes)).toEqual(plain(changes));
      expect(back({ ...changes, "rear-ring.driver": 12, "rear-ring.driven": 36 }).findings).toEqual([]);
    }
  });

  it("leaves out what changes nothing", () => {
    const same = { "primary.driver": "15", "primary.reverses": null, "row.teeth": [18, 31, 45] };
    const link = linkOf(limpet, { ...same, "front-ring.driver": 13, "front-ring.driven": 38 });
    expect(link).toHaveLength(7);
    expect(changesFrom(link, limpet)).toEqual(plain({}));
  });

  it("is refused its making where an address leads nowhere", () => {
    expect(() => linkOf(limpet, { "primry.driver": 16 })).toThrow(
      expect.objectContaining({ code: "missing-address", at: "primry.driver" }),
    );
  });
});

describe("words", () => {
  const words: Record<string, unknown> = {
    title: "Mine",
    "primary.label": "Mine",
    "primary.label.0": "M",
    "primary.driverLabel": "mine",
    "primary.group": "mine",
    "front.label": null,
    "revision.note": "mine",
    "revision.number": 9,
    "revision.date": "2026-12-24",
    "rounding.maximumFractionDigits": 0,
    rounding: { maximumFractionDigits: 0 },
    "motor.label": "Mine",
    headline: "front",
    compare: { of: "rear", with: "front" },
    "alternatives.0.label": "Mine",
    alternatives: null,
    "parts.0.price": null,
    "parts.0.teeth": 99,
    "measurements.0.motorTurns": 50,
    "primary.id": "mine",
    "primary.kind": "train",
    "front.stages": [],
    stages: [],
    outputs: [],
    front: { id: "front", stages: [] },
    format: "meshwright-build/1.0",
  };

  it.each(Object.keys(words))("at %s are in no link: neither made nor read", (address) => {
    expect(linkCarries(limpet, address)).toBe(false);
    expect(() => linkOf(limpet, { [address]: words[address] })).toThrow(
      expect.objectContaining({ code: expect.stringMatching(/^(link-words|missing-address)$/) as string }),
    );
    const { changes, structure, findings } = changesFrom(forged([["AAAA", address, words[address]]]), limpet);
    expect([changes, structure]).toEqual([{}, []]);
    expect(findings).toHaveLength(1);
    // Whatever somebody wrote into the link is not said again.
    expect(JSON.stringify(findings)).not.toMatch(/mine/i);
  });

  it.each<[string, unknown]>([
    ["battery", { cells: 4, label: "BUY" }],
    ["front.wheel.diameter", "BUY mm"],
    ["rear.axle", "BUY"],
    ["primary.reverses", "BUY"],
    ["row.teeth", [18, "BUY"]],
    ["front.wheel", { diameter: "BUY" }],
    ["front-hub", { kind: "published", value: "BUY" }],
    ["front-hub", { kind: "published", value: "1.5", label: "BUY" }],
    ["front-hub", { kind: "published", value: "1.5", label: null }],
    ["front-hub", { kind: "published", value: "1.5", "x-buy": 1 }],
    ["front-hub", { kind: "BUY" }],
    ["front-hub", { id: "buy", kind: "published", value: "1.5" }],
    ["front-hub", { kind: "selectable", selected: 0, positions: [{ id: "buy", stages: [] }] }],
    ["front-hub", { kind: "selectable", selected: 0, positions: [{ label: "BUY", released: "BUY" }] }],
    [
      "front-hub",
      { kind: "selectable", selected: 0, positions: [{ stages: [{ id: "buy", kind: "worm", starts: 1, teeth: 2 }] }] },
    ],
  ])("are not brought in at %s as %j", (address, to) => {
    const sample = {
      battery: { cells: 4 },
      "front.wheel": { diameter: "1 mm" },
      "front-hub": { id: "front-hub", kind: "published", value: "2.5" },
    };
    const right =
      (sample as Record<string, unknown>)[address] ??
      (address === "rear.axle"
        ? "differential"
        : address === "primary.reverses"
          ? true
          : address === "row.teeth"
            ? [9, 9]
            : "1 mm");
    const link = forged([[checkAt(address, right), address, to]]);
    const { changes, structure, findings } = changesFrom(link, limpet);
    const build = layOver(limpet, { structure, sets: changes }).build;
    expect(JSON.stringify([build, findings])).not.toMatch(/buy/i);
    if (address !== "battery") expect(findings).not.toEqual([]);
  });

  it("of a new stage are left behind: who opens the link gives it an id", () => {
    const insert = { id: "buy-this", label: "Buy this", kind: "worm", starts: 1, teeth: 30 } as Stage;
    const { build } = sent(edit(limpet, { insert, into: "rear", at: 1 }), limpet);
    expect(build.outputs[1]!.stages[1]).toEqual({ id: "worm-1", kind: "worm", starts: 1, teeth: 30 });
  });

  it("that the author has stay where a link sets numbers beside them", () => {
    const motor = read({ ...limpet, motor: { label: "Turnstone 540", kv: 1850 } });
    const { changes } = back({ motor: { label: "x", kv: 2000, maxVolts: "12.6" } }, motor);
    expect(applied(motor, changes).motor).toEqual({ label: "Turnstone 540", kv: 2000, maxVolts: "12.6" });
  });
});

describe("a build that its author has changed since", () => {
  it("refuses what belongs to a changed stage, by its name, and applies the rest", () => {
    const later = applied(limpet, { "primary.driver": 16 });
    const { changes, findings } = back(
      { "primary.driver": 17, "primary.driven": 66, "row.teeth.1": 30, "battery.cells": 4 },
      limpet,
      later,
    );
    expect(changes).toEqual({ "row.teeth.1": 30, "battery.cells": 4 });
    expect(findings).toMatchObject([
      {
        severity: "error",
        about: "meaning",
        code: "change-stale",
        at: "primary",
        message: "Spur and pinion: the author has changed this since the link was made.",
      },
    ]);
    expect(told(back({ "target.to": 50 }, limpet, applied(limpet, { "target.from": 30 })).findings)).toEqual([
      "change-stale at target.to",
    ]);
    expect(
      told(
        back({ "front.wheel.diameter": "90 mm" }, limpet, applied(limpet, { "front.wheel.diameter": "99 mm" }))
          .findings,
      ),
    ).toEqual(["change-stale at front.wheel.diameter"]);
  });

  it("is not changed by new words, other key orders and other ways to write a number", () => {
    const { module, ...primary } = limpet.stages[0] as Stage & { module?: string };
    const later = read({
      ...limpet,
      title: "Again",
      stages: [{ module: Number(module), ...primary, label: "Reworded" }, ...limpet.stages.slice(1)],
    });
    const changes = { "primary.driver": 17, "primary.pressureAngle": "14.5" };
    expect(back(changes, limpet, later)).toEqual(plain(changes));
  });

  it("takes no other count of any size for the one that was replaced", () => {
    const link = linkOf(limpet, { "primary.driver": 17 });
    for (let count = 1; count < 3000; count++)
      if (count !== 15) {
        const [primary, ...rest] = limpet.stages;
        const later = { ...limpet, stages: [{ ...primary!, driver: count } as Stage, ...rest] };
        expect(changesFrom(link, later).changes).toEqual({});
      }
  });

  it("refuses a stage that is gone, and what the build cannot take any more", () => {
    const link = linkOf(limpet, { "row.teeth.0": 20, "front-hub.driver": 16 });
    const without = read({ ...limpet, stages: limpet.stages.slice(0, 1), mounts: [], alternatives: [], parts: [] });
    const { changes, findings } = changesFrom(link, without);
    expect(changes).toEqual({ "front-hub.driver": 16 });
    expect(told(findings)).toEqual(["change-stale at "]);
  });

  it("is found again by addresses, wherever the stage has moved", () => {
    const [primary, row] = limpet.stages;
    const moved = read({ ...limpet, stages: [row, primary] });
    expect(back({ "primary.driver": 17 }, limpet, moved)).toEqual(plain({ "primary.driver": 17 }));
  });

  it("has a set whole or not at all", () => {
    const later = applied(limpet, { "front-ring.driver": 12, "front-ring.driven": 38 });
    const changes = { "front-ring.driver": 11, "front-ring.driven": 36, "primary.driver": 17 };
    const { changes: kept, findings } = back(changes, limpet, later);
    expect(kept).toEqual({ "primary.driver": 17 });
    expect(findings.map(({ message }) => message)).toEqual([
      "Front: Ring and pinion: the author has changed this since the link was made.",
    ]);
  });
});

describe("a link for changes of structure", () => {
  const worm = { id: "worm-1", kind: "worm", starts: 1, teeth: 30 } as Stage;

  it("that moves one stage takes no more than a line", () => {
    for (const move of [
      { move: "row", at: 0 },
      { move: "primary", into: "rear", at: 1 },
    ]) {
      const state = edit(limpet, move);
      const { link, build, findings } = sent(state, limpet);
      expect(link.length).toBeLessThanOrEqual(200);
      expect(link).toMatch(/^1[\w-]*[A-Za-z]$/);
      expect(findings).toEqual([]);
      expect(build).toEqual(state.build);
    }
  });

  it("carries stages put in, moved, taken out and changed, with what went along", () => {
    const lever = {
      id: "selectable-1",
      kind: "selectable",
      positions: [
        { id: "position-1", stages: [{ id: "pair-1", kind: "pair", driver: 20, driven: 30 }] },
        { id: "position-2", released: "free" },
      ],
      selected: "position-2",
    } as Stage;
    const state = edit(
      limpet,
      { insert: worm, into: "rear", at: 0 },
      { "worm-1.starts": 2 },
      { insert: lever, at: 1 },
      { move: "row", into: "selectable-1.position-1", at: 0 },
      { "selectable-1.selected": "position-1" },
      { remove: "primary" },
      { "front-hub.driven": 23, "row.teeth.0": 20 },
    );
    const { build, findings } = sent(state, limpet);
    expect(findings).toEqual([]);
    expect(build).toEqual(state.build);
  });

  it("carries a box that was counted, with the stages that were turned along with it", () => {
    const box = {
      id: "measured-1",
      kind: "measured",
      turnsIn: 40,
      turnsOut: { from: "5.4", to: "5.6" },
      held: true,
      spans: [limpet.stages[0], { id: "other", kind: "pair", driver: 12, driven: 35 }],
    } as unknown as Stage;
    const state = edit(limpet, { insert: box, at: 2 });
    const { build, findings } = sent(state, limpet);
    expect(findings).toEqual([]);
    const [first, second] = (build.stages[2] as unknown as { spans: Stage[] }).spans;
    expect(first).toEqual(limpet.stages[0]);
    expect(second).toMatchObject({ kind: "pair", driver: 12, driven: 35 });
    expect(build.stages[2]).toMatchObject({ turnsIn: 40, turnsOut: { from: "5.4", to: "5.6" }, held: true });
  });

  it("is refused where the author has changed the stage or the order since; the rest applies", () => {
    const state = edit(limpet, { remove: "front-hub" }, { move: "row", at: 0 }, { insert: worm, into: "rear", at: 1 });
    const titles = (later: Build) => {
      const { build, findings } = sent(state, limpet, later);
      return [
        findings.map(({ message }) => message),
        stagesOf(build)
          .map(({ stage }) => stage.id)
          .join(" "),
      ];
    };
    const hub = applied(limpet, { "front-hub.driven": 24 });
    expect(titles(hub)).toEqual([
      ["Front: Hub: the author has changed this since the link was made."],
      "row primary front-ring front-hub rear-ring worm-1 rear-hub",
    ]);
    const [primary, row] = limpet.stages;
    const turned = read({ ...limpet, stages: [row, primary] });
    expect(titles(turned)).toEqual([
      ["Gear row: the author has changed this since the link was made."],
      "row primary front-ring rear-ring worm-1 rear-hub",
    ]);
    const longer = applyChanges(limpet, [{ insert: { ...worm, id: "x" } as Stage, into: "rear", at: 0 }]).build!;
    expect(titles(longer)[1]).toBe("row primary front-ring x rear-ring rear-hub");
  });

  it("does not go on in a list that is not as it was thought to be", () => {
    const state = edit(limpet, { insert: worm, at: 0 }, { insert: { ...worm, id: "worm-2" } as Stage, at: 3 });
    const longer = applyChanges(limpet, [{ insert: { ...worm, id: "x" } as Stage, at: 0 }]).build!;
    const { build, findings } = sent(state, limpet, longer);
    expect(build).toEqual(longer);
    expect(told(findings)).toEqual(["change-stale at "]);
  });

  it("is not made of values, nor of more than anybody does by hand", () => {
    expect(() => linkOf(limpet, {}, [{ set: "title", to: "Mine" }])).toThrow(
      expect.objectContaining({ code: "link-words" }),
    );
    const many = Array.from({ length: 201 }, (_, n): Change => ({ insert: { ...worm, id: `w${n}` } as Stage, at: 0 }));
    expect(() => linkOf(limpet, {}, many)).toThrow(expect.objectContaining({ code: "too-long" }));
  });
});

// Requests as readers make them, of any kind, in any order: whatever the store accepts comes back from the link to it.
const build = read(
  document(
    [pair("first", 15, 62, { module: "0.8" }), { id: "row", label: "Row", kind: "train", teeth: [18, 31, 45] }],
    {
      front: { stages: [pair("front-ring", 13, 38, { set: true, label: "Ring" })], wheel: { diameter: "124 mm" } },
      rear: [pair("rear-ring", 12, 35, { set: true }), { id: "hub", kind: "published", value: "1.5" }],
    },
    { battery: { cells: 3 }, target: { from: 30, to: 50 }, mounts: [{ stage: "first", from: "20 mm", to: "40 mm" }] },
  ),
);
const whole = fc.integer({ min: 1, max: 90 });
const stageIds = ["first", "row", "front-ring", "rear-ring", "hub", "pair-1", "worm-1"];
const lists = [undefined, "front", "rear"];
const request: fc.Arbitrary<ChangeSet | Change> = fc.oneof(
  fc
    .tuple(fc.constantFrom("first.driver", "first.driven", "row.teeth.1", "battery.cells", "pair-1.driver"), whole)
    .map(([at, to]) => ({ [at]: to })),
  fc
    .tuple(fc.constantFrom("front-ring", "rear-ring"), whole, whole)
    .map(([id, driver, driven]) => ({ [`${id}.driver`]: driver, [`${id}.driven`]: driven })),
  fc
    .tuple(fc.constantFrom("front-ring", "rear-ring"), fc.constantFrom(12, 13, 35, 38), fc.constantFrom(35, 38))
    .map(([id, driver, driven]) => ({ [`${id}.driver`]: driver, [`${id}.driven`]: driven })),
  whole.map((n) => ({ "front.wheel.diameter": `${n} mm` })),
  whole.map((n) => ({ hub: { id: "hub", kind: "pair", driver: n, driven: 20 } })),
  fc.constantFrom("1.5", "2.61").map((value) => ({ hub: { id: "hub", kind: "published", value } })),
  fc.tuple(fc.array(whole, { minLength: 2, maxLength: 4 })).map(([teeth]) => ({ "row.teeth": teeth })),
  fc.constantFrom<ChangeSet>(
    { "mounts.0.to": "41 mm" },
    { "target.to": 55 },
    { "first.reverses": true },
    { "first.module": null },
  ),
  fc
    .tuple(fc.constantFrom(...stageIds), fc.constantFrom(...lists), fc.nat(3))
    .map(([move, into, at]): Change => ({ move, at, ...(into && { into }) })),
  fc.constantFrom(...stageIds).map((remove): Change => ({ remove })),
  fc
    .tuple(fc.constantFrom("pair-1", "worm-1"), whole, fc.constantFrom(...lists), fc.nat(2))
    .map(([id, n, into, at]): Change => {
      const insert = (id === "pair-1"
        ? pair(id, n, 40)
        : { id, kind: "worm", starts: 1, teeth: n }) as unknown as Stage;
      return { insert, at, ...(into && { into }) };
    }),
);
/** The build that requests lead to; what is refused is as if it had not been asked for. */
const after = (requests: readonly (ChangeSet | Change)[]): Edited =>
  requests.reduce<Edited>((state, one) => {
    const next = edited(build, state, one);
    return next.ok ? next : state;
  }, asPublished(build));

/** A build without ids of new stages, which who opens a link gives anew. */
const nameless = (of: Build) =>
  JSON.parse(
    JSON.stringify(of, (key, value: unknown) => (key === "id" && !valueAt(build, String(value)) ? undefined : value)),
  ) as unknown;

describe("any changes", () => {
  it("come back from the link to them, sets and structure too", () => {
    fc.assert(
      fc.property(fc.array(request, { maxLength: 12 }), (requests) => {
        const state = after(requests);
        const { build: opened, findings } = sent(state, build);
        expect(findings).toEqual([]);
        expect(nameless(opened)).toEqual(nameless(state.build));
      }),
      { numRuns: 500 },
    );
  });

  it("lie over the author's build again as they were, with nothing that changes nothing", () => {
    fc.assert(
      fc.property(fc.array(request, { maxLength: 12 }), (requests) => {
        const state = after(requests);
        const again = layOver(build, state.layer);
        expect(again.dropped).toEqual([]);
        expect(again.build).toEqual(state.build);
        expect(again.layer).toEqual(state.layer);
        for (const [address, to] of Object.entries(state.layer.sets)) {
          const isOfSet = /ring\.drive[rn]$/.test(address);
          if (!isOfSet) expect(valueAt(state.base, address) ?? null).not.toEqual(to);
        }
      }),
      { numRuns: 500 },
    );
  });

  it("that a later build of the author's takes in part are taken in part, and never throw", () => {
    fc.assert(
      fc.property(fc.array(request, { maxLength: 8 }), fc.array(request, { maxLength: 4 }), (requests, authors) => {
        const { layer } = after(requests);
        const later = after(authors).build;
        const { build: opened, dropped, layer: left } = layOver(later, layer, build);
        expect(read(JSON.parse(JSON.stringify(opened)))).toEqual(opened);
        expect(layOver(later, left).build).toEqual(opened);
        for (const { why } of dropped) expect(why.severity).toBe("error");
        const { findings } = changesFrom(linkOf(build, layer.sets, layer.structure), later);
        for (const { message } of findings) expect(message).not.toBe("");
      }),
      { numRuns: 500 },
    );
  });
});

describe("a link that was damaged on its way", () => {
  const state = edit(limpet, { "primary.driver": 17, "front.wheel.diameter": "118 mm" }, { move: "row", at: 0 });
  const link = linkOf(limpet, state.layer.sets, state.layer.structure);
  const codes = (text: string) => {
    const { changes, structure, findings } = changesFrom(text, limpet);
    expect([changes, structure]).toEqual([{}, []]);
    return told(findings);
  };

  it("is refused when a letter is lost, added or changed", () => {
    for (let n = 0; n < link.length; n++) {
      expect(codes(link.slice(0, n)), `cut at ${n}`).toEqual(["link-broken at "]);
      expect(codes(link.slice(0, n) + link.slice(n + 1)), `without ${n}`).toEqual(["link-broken at "]);
      for (const other of ["x", "A", "_", link[n]!.toLowerCase(), link[n]!.toUpperCase()])
        if (other !== link[n])
          expect(codes(link.slice(0, n) + other + link.slice(n + 1)), `changed at ${n}`).toEqual(["link-broken at "]);
    }
    expect(codes(`${link}A`)).toEqual(["link-broken at "]);
  });

  it("is refused however it was damaged", () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(fc.nat(link.length), fc.nat(4), fc.string({ unit: fc.constantFrom(...alphabet), maxLength: 3 })),
          { minLength: 1, maxLength: 4 },
        ),
        (cuts) => {
          const text = cuts.reduce((one, [at, much, put]) => one.slice(0, at) + put + one.slice(at + much), link);
          if (text !== link) expect(codes(text)).toEqual(["link-broken at "]);
        },
      ),
      { numRuns: 5000 },
    );
  });

  it.each([undefined, null, 5, {}, "", "1c", "1cÄÖ", "1c%20", "a b c d", "=".repeat(1e6)])("%j is refused", (text) => {
    expect(codes(text as string)).toEqual(["link-broken at "]);
  });

  it("does no harm though its seal is right", () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(...alphabet), maxLength: 60 }), (content) => {
        const { changes, structure } = changesFrom(withSeal(`1c${content}`), limpet);
        expect([changes, structure]).toEqual([{}, []]);
      }),
      { numRuns: 5000 },
    );
    const json = fc.oneof(
      fc.jsonValue(),
      fc.tuple(
        fc.constantFrom("insert", "move", "remove"),
        fc.jsonValue(),
        fc.jsonValue(),
        fc.jsonValue(),
        fc.jsonValue(),
      ),
      fc.tuple(fc.string(), fc.constantFrom("primary.driver", "primary", "row.teeth", "front.wheel"), fc.jsonValue()),
      fc.tuple(
        fc.constantFrom("insert"),
        fc.constantFrom(null, "front", [0, 0], [9, 9]),
        fc.nat(3),
        fc.record({ kind: fc.constantFrom("pair", "selectable", "worm"), positions: fc.jsonValue() }),
        fc.string(),
      ),
    );
    fc.assert(
      fc.property(fc.array(json, { maxLength: 4 }), (content) => {
        const { changes, structure } = changesFrom(forged(content), limpet);
        expect([changes, structure]).toEqual([{}, []]);
      }),
      { numRuns: 3000 },
    );
  });

  it("is told apart from one of another version, one for the whole build, and one that is too long", () => {
    expect(codes(withSeal("2cA"))).toEqual(["newer-link at "]);
    expect(codes(withSeal("1bA"))).toEqual(["link-other at "]);
    expect(codes(withSeal(`1c${"B".repeat(540_000)}`))).toEqual(["too-long at "]);
  });
});

describe("a change that the build cannot take", () => {
  const rings = (count: number) =>
    read(document([], { rear: Array.from({ length: count }, (_, n) => pair(`s${n}`, 20, 60, { internal: true })) }));
  const linked = (of: Build, sizes: readonly number[]) =>
    changesFrom(linkOf(of, Object.fromEntries(sizes.map((size, n) => [`s${n}.driver`, size]))), of);

  it("is refused alone, and what depends on another change is not", () => {
    const { changes, findings } = linked(rings(4), [19, 60, 21, 70]);
    expect(changes).toEqual({ "s0.driver": 19, "s2.driver": 21 });
    expect(findings.map(({ code, at, message }) => [code, at, message])).toEqual([
      [
        "change-refused",
        "s1.driver",
        "The link's change of s1.driver cannot be made: A ring of 60 cannot hold a gear of 60.",
      ],
      [
        "change-refused",
        "s3.driver",
        "The link's change of s3.driver cannot be made: A ring of 60 cannot hold a gear of 70.",
      ],
    ]);
    // Each alone makes the ring too small, or the gear too large; both together do not.
    const both = { "s0.driver": 70, "s0.driven": 90, "s1.driver": 80 };
    const { changes: kept } = changesFrom(linkOf(rings(2), both), rings(2));
    expect(kept).toEqual({ "s0.driver": 70, "s0.driven": 90 });
  });

  it("is found among thousands, without the others being lost", () => {
    const sizes = Array.from({ length: 4000 }, (_, n) => (n % 1000 === 7 ? 99 : 10 + (n % 40)));
    const { changes, findings } = linked(rings(4000), sizes);
    expect(findings.map(({ at }) => at)).toEqual(["s7.driver", "s1007.driver", "s2007.driver", "s3007.driver"]);
    expect(Object.keys(changes)).toHaveLength(sizes.filter((size) => size !== 20 && size !== 99).length);
  });
});

describe("two addresses that look alike to a link", () => {
  // Out of many addresses with one count each, some share the 18 bits that the link keeps of an address.
  const stages = Array.from({ length: 9000 }, (_, n) => pair(`s${n}`, 7, 7));
  const many = read(document([], { rear: stages }));

  it("come back each in its own place", () => {
    const changes = Object.fromEntries(stages.map(({ id }, n) => [`${id}.driver`, 10 + (n % 50)]));
    const link = linkOf(many, changes);
    expect(changesFrom(link, many)).toEqual(plain(changes));
    const other = read(document([], { rear: stages.map((one) => ({ ...one, driver: 8 })) }));
    const { findings, changes: none } = changesFrom(link, other);
    expect(none).toEqual({});
    expect(findings).toHaveLength(20);
  });
});

describe("the link that holds the whole build", () => {
  it("gives it back, in a third of its length", async () => {
    const link = await linkOfBuild(limpet);
    expect(link).toMatch(/^1b[\w-]*[A-Za-z]$/);
    expect(link.length).toBeLessThan(JSON.stringify(limpet).length / 3);
    expect(await buildFromLink(link)).toMatchObject({ ok: true, build: limpet });
    const odd = read({
      ...limpet,
      title: "Krabbe № 7 – “écume” 🦀 \ud800",
      "x-a": { __proto__: null, b: ["\0", "\u007f", "\u0080"] },
    });
    expect((await buildFromLink(await linkOfBuild(odd))).build).toEqual(odd);
  });

  it("is not mistaken for changes, nor the other way round", async () => {
    expect(changesFrom(await linkOfBuild(limpet), limpet)).toMatchObject({
      changes: {},
      findings: [{ code: "link-other" }],
    });
    const { build: none, findings } = await buildFromLink(linkOf(limpet, { "primary.driver": 17 }));
    expect([none, told(findings)]).toEqual([undefined, ["link-other at "]]);
    expect(findings[0]!.message).toBe("The link holds changes, expected a whole build.");
  });

  it("is checked like any other document", async () => {
    expect(told((await buildFromLink(await linkOfBuild({ ...limpet, outputs: [] }))).findings)).toEqual([
      "not-a-list at /outputs",
    ]);
  });

  it("is refused when it is damaged, and when it unpacks into more than a document may be", async () => {
    const link = await linkOfBuild(limpet);
    for (const text of [
      link.slice(1),
      link.slice(0, -3),
      `${link.slice(0, 99)}x${link.slice(100)}`,
      withSeal("1b"),
      withSeal("1bA"),
      withSeal(`1b${"_".repeat(999)}`),
    ])
      expect(told((await buildFromLink(text)).findings)).toEqual(["link-broken at "]);
    const bomb = await linkOfBuild({ ...limpet, title: "x".repeat(6e6) });
    expect(bomb.length).toBeLessThan(20_000);
    expect(told((await buildFromLink(bomb)).findings)).toEqual(["link-broken at "]);
  });
});
