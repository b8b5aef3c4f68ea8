import { describe, expect, it } from "vitest";
import { changesFrom, edited, asPublished, layOver, linkCarries, linkOf } from "../../src/document/index.js";
import type { Build, Change, ChangeSet } from "../../src/drivetrain/index.js";
import type { Stage } from "../../src/stages/index.js";
import { document, pair, read, told } from "../make.js";
import { checkAt, forged, forgedText, packedIn } from "./forge.js";

const low = { id: "low", label: "Low", stages: [pair("slow", 10, 30)] };
const box = { id: "box", kind: "selectable", positions: [low, { id: "free", released: "free" }], selected: "low" };
const counted = { id: "counted", kind: "measured", turnsIn: 40, turnsOut: { from: "5.4", to: "5.6" } };
const build = read(
  document(
    [pair("first", 15, 62), { id: "row", kind: "train", teeth: [18, 31, 45] }, box, counted],
    { front: { wheel: { diameter: "124 mm", "x-tread": 4 } }, rear: [] },
    { centre: { kind: "differential", share: { front: 1, rear: 1 } }, motor: { label: "Turnstone 540" } },
  ),
);
const plain = (changes: ChangeSet) => ({ changes, structure: [], findings: [] });
const back = (changes: ChangeSet, structure: readonly Change[] = [], later: Build = build) =>
  changesFrom(linkOf(build, changes, structure), later);
const codes = (link: string) => {
  const { changes, structure, findings } = changesFrom(link, build);
  expect([changes, structure]).toEqual([{}, []]);
  return told(findings);
};

describe("a link", () => {
  it("carries shares by axle, one number for a span, and which position of a lever is selected", () => {
    for (const changes of [{ "counted.turnsOut": "5.5" }, { "box.selected": "free" }])
      expect(back(changes)).toEqual(plain(changes));
    expect(back({ "centre.share": { front: 2, rear: 3 } })).toEqual(
      plain({ "centre.share.front": 2, "centre.share.rear": 3 }),
    );
  });

  it("leaves the author's words beside numbers that come new", () => {
    expect(back({ motor: { label: "Mine", kv: 2000 } })).toEqual(plain({ "motor.kv": 2000 }));
  });

  it("carries a lever with a new position: the author's keep their names, the new one gets one", () => {
    const fast = { id: "mine", label: "Mine", stages: [pair("mine-too", 20, 30)] };
    const { changes, findings } = back({ box: { ...box, positions: [low, fast] } });
    expect(findings).toEqual([]);
    const now = layOver(build, { structure: [], sets: changes }).build.stages[2];
    expect(now).toEqual({
      ...box,
      positions: [low, { id: "position-1", stages: [{ id: "pair-1", kind: "pair", driver: 20, driven: 30 }] }],
    });
  });

  it("carries a counted box, and what was put in and then moved", () => {
    const made = { ...counted, id: "mine", turnsIn: 20 } as unknown as Stage;
    const { structure, findings } = back({}, [
      { insert: made, at: 0 },
      { move: "mine", into: "rear", at: 0 },
    ]);
    expect(findings).toEqual([]);
    expect(structure).toEqual([
      { insert: { ...made, id: "measured-1" }, at: 0 },
      { move: "measured-1", into: "rear", at: 0 },
    ]);
  });

  it("to take out a lever is refused where anything in its positions is another", () => {
    const gone: Change = { remove: "box" };
    expect(back({}, [gone])).toEqual({ changes: {}, structure: [gone], findings: [] });
    const [first, row, , last] = build.stages;
    const other = { ...box, positions: [{ ...low, stages: [pair("slow", 10, 31)] }, box.positions[1]] };
    const later = read({ ...build, stages: [first, row, other, last] });
    expect(told(back({}, [gone], later).findings)).toEqual(["change-stale at box"]);
  });

  it("carries no key of the author's own, and no number that is none", () => {
    expect(linkCarries(build, "front.wheel.x-tread")).toBe(false);
    for (const [address, to] of [
      ["front.wheel.x-tread", 5],
      ["first.driver", Infinity],
      ["row.teeth", "18"],
      ["row.teeth", Array.from({ length: 1001 }, () => 9)],
      ["centre.share", 2],
      ["centre.share", { nobody: 2 }],
      ["box.selected", "nobody"],
    ] as const)
      expect(() => linkOf(build, { [address]: to }), address).toThrow(expect.objectContaining({ code: "link-words" }));
  });

  it("is refused its making where it would be too long to be read", () => {
    const many = read(document([], { rear: Array.from({ length: 10_000 }, (_, n) => pair(`stage-${n}`, 9, 9)) }));
    const changes = Object.fromEntries(many.outputs[0]!.stages.map(({ id }) => [`${id}.driver`, "12"]));
    expect(() => linkOf(many, changes)).toThrow(expect.objectContaining({ code: "too-long" }));
  });
});

describe("a link that was tampered with", () => {
  it("is refused where it holds no list of changes", () => {
    for (const content of [{}, 5, null, [5], [null], ["x"], [{}]])
      expect(codes(forged(content))).toEqual(["link-broken at "]);
  });

  it("is refused where a value has not the shape of its place", () => {
    const forge = (address: string, right: unknown, to: unknown) =>
      codes(forged([[checkAt(build, address, right), address, to]]));
    expect(forge("row.teeth", [9, 9], 5)).toEqual(["link-broken at "]);
    expect(forge("centre.share", { front: 2 }, 5)).toEqual(["link-broken at "]);
    expect(forge("centre.share", { front: 2 }, { buy: 5 })).toEqual(["link-broken at "]);
    expect(forge("counted.turnsOut", "5.5", "BUY")).toEqual(["link-broken at "]);
    expect(forge("box.selected", "free", "slow")).toEqual(["link-broken at "]);
    const check = checkAt(build, "first.driver", "16");
    expect(codes(forgedText(`[["${check}","first.driver",1e999]]`))).toEqual(["link-broken at "]);
  });

  it("puts in no box whose stages are no list, nor more stages than anybody does by hand", () => {
    const insert = (stage: unknown) => codes(forged([["insert", null, 0, stage, ""]]));
    const { id: _, ...whole } = counted;
    expect(insert({ ...whole, spans: "all" })).toEqual(["link-broken at "]);
    expect(insert({ ...whole, spans: Array.from({ length: 201 }, () => pair("first", 1, 2)) })).toEqual([
      "link-broken at ",
    ]);
    const worm = { kind: "worm", starts: 1, teeth: 30 };
    const full = (count: number) => ({
      kind: "selectable",
      positions: [{ stages: Array.from({ length: count }, () => worm) }],
      selected: 0,
    });
    expect(insert(full(200))).toEqual(["link-broken at "]);
    // One fewer, and nothing is wrong but the check of the list.
    expect(insert(full(199))).toEqual(["change-stale at "]);
  });

  it("finds no list to put anything in under another name", () => {
    const worm = { kind: "worm", starts: 1, teeth: 30 };
    for (const into of [5, {}, "nobody", "box.nobody", "box.free"])
      expect(codes(forged([["insert", into, 0, worm, ""]])), JSON.stringify(into)).toHaveLength(1);
  });

  it("with thousands of changes is read as far as anybody goes by hand", () => {
    const [move] = packedIn(linkOf(build, {}, [{ move: "row", at: 0 }]));
    const { structure, findings } = changesFrom(forged(Array.from({ length: 5000 }, () => move)), build);
    expect(findings).toEqual([]);
    expect(structure.length).toBeLessThanOrEqual(200);
    expect(layOver(build, { structure, sets: {} }).build.stages.map(({ id }) => id)).toEqual([
      ...["row", "first", "box", "counted"],
    ]);
  });
});

describe("two counts of one stage that a link would tell apart by nothing", () => {
  /** The 18 bits that a link keeps of an address, by the rule: FNV-1a, mixed, the upper 18 bits. */
  const bitsOf = (text: string): number => {
    let hash = 0x811c9dc5;
    for (const one of text) hash = Math.imul(hash ^ one.charCodeAt(0), 0x01000193);
    hash = Math.imul(hash ^ (hash >>> 15), 0x2c1b3c6d);
    return (hash ^ (hash >>> 13)) >>> 14;
  };
  const places = Array.from({ length: 100 }, (_, n) => n);
  const alike = Array.from({ length: 2000 }, (_, n) => `row-${n}`).find(
    (id) => new Set(places.map((n) => bitsOf(`${id}.teeth.${n}`))).size < places.length,
  )!;

  it("come back each in its own place", () => {
    const teeth = places.map(() => 20);
    const row = read(document([{ id: alike, kind: "train", teeth }], { rear: [] }));
    for (const n of places) {
      const changes = { [`${alike}.teeth.${n}`]: 21 };
      expect(changesFrom(linkOf(row, changes), row)).toEqual(plain(changes));
    }
  });
});

describe("a layer", () => {
  const edit = (of: Build, ...requests: (ChangeSet | Change)[]) =>
    requests.reduce<ReturnType<typeof asPublished>>((state, request) => {
      const next = edited(of, state, request);
      expect(next).toMatchObject({ ok: true });
      return next as ReturnType<typeof asPublished>;
    }, asPublished(of));
  const worm = { id: "worm-1", kind: "worm", starts: 1, teeth: 30 } as Stage;

  it("holds a stage that was put in where it stands at the end, inside a lever or not", () => {
    const inside = edit(build, { insert: worm, into: "box.low", at: 0 }, { move: "worm-1", at: 1 });
    expect(inside.layer).toEqual({ structure: [{ insert: worm, into: "box.low", at: 1 }], sets: {} });
    const shared = edit(build, { insert: worm, at: 0 }, { move: "worm-1", at: 2 });
    expect(shared.layer).toEqual({ structure: [{ insert: worm, at: 2 }], sets: {} });
  });

  it("with a stage that got another id keeps its changes in their order, and lies over the build again", () => {
    const values = edit(build, { "first.id": "primary" }, { "primary.driver": 20 });
    expect(Object.entries(values.layer.sets)).toEqual([
      ["first.id", "primary"],
      ["primary.driver", 20],
    ]);
    const moved = edit(build, { "row.id": "cogs" }, { move: "cogs", at: 0 });
    expect(moved.layer).toEqual({
      structure: [
        { set: "row.id", to: "cogs" },
        { move: "cogs", at: 0 },
      ],
      sets: {},
    });
    for (const { layer, build: now } of [values, moved]) {
      const again = layOver(build, layer);
      expect([again.dropped, again.build]).toEqual([[], now]);
    }
    const [first, , ...rest] = build.stages;
    const { dropped, build: left } = layOver(read({ ...build, stages: [first, ...rest] }), moved.layer);
    expect(dropped.map(({ address }) => address)).toEqual(["row.id", "cogs"]);
    expect(left.stages.map(({ id }) => id)).toEqual(["first", "box", "counted"]);
  });

  it("whose new stages have ids that the author has given since is renamed throughout", () => {
    const mine = {
      ...box,
      id: "lever",
      positions: [{ id: "low", stages: [pair("pair-1", 9, 18)] }],
    } as unknown as Stage;
    const layer = {
      structure: [
        { insert: mine, at: 0 },
        { set: "pair-1.driver", to: 10 },
        { move: "pair-1", at: 0 },
      ] as Change[],
      sets: { "pair-1.driven": 20 },
    };
    const later = read({ ...build, stages: [pair("pair-1", 50, 60), ...build.stages] });
    const { build: now, dropped } = layOver(later, layer);
    expect(dropped).toEqual([]);
    expect(now.stages[1]).toEqual(later.stages[0]);
    const [inner] = (now.stages[0] as unknown as { positions: [{ stages: [Stage] }] }).positions[0].stages;
    expect(inner).toMatchObject({ kind: "pair", driver: 10, driven: 20 });
    expect(inner.id).not.toBe("pair-1");
  });

  it("leaves out a stage that cannot be, with all that stood in it, and keeps the rest", () => {
    const bad = { ...pair("bad", 60, 60), internal: true } as unknown as Stage;
    const lever = {
      ...{ id: "lever", kind: "selectable", selected: "p" },
      positions: [{ id: "p", stages: [bad] }],
    } as unknown as Stage;
    const layer = {
      structure: [
        { insert: lever, at: 0 },
        { insert: worm, into: "lever.p", at: 0 },
        { insert: { ...worm, id: "worm-2" } as Stage, at: 0 },
        { move: "worm-1", into: "rear", at: 0 },
      ],
      sets: { "first.driver": 16 },
    };
    const { build: now, dropped, layer: kept } = layOver(build, layer);
    expect(now.stages.map(({ id }) => id)).toEqual(["worm-2", "first", "row", "box", "counted"]);
    expect(now.stages[1]).toMatchObject({ driver: 16 });
    expect(dropped.map(({ address, why }) => [address, why.code])).toEqual([["lever", "ring-too-small"]]);
    expect(kept.structure).toHaveLength(1);
  });

  it("of more wrong stages than are tried one by one loses none without a word", () => {
    const structure = Array.from({ length: 100 }, (_, n): Change => ({
      insert: { ...pair(`bad-${n}`, 60, 60), internal: true } as unknown as Stage,
      at: 0,
    }));
    const { dropped, build: now } = layOver(build, { structure, sets: {} });
    expect(now).toEqual(build);
    expect(dropped.map(({ address }) => address)).toEqual(structure.map((_, n) => `bad-${n}`));
  });

  it("of more wrong values than are tried one by one keeps all that are right, and tells the others", () => {
    const rings = read(
      document([], { rear: Array.from({ length: 4000 }, (_, n) => pair(`s${n}`, 20, 60, { internal: true })) }),
    );
    const sets = Object.fromEntries(Array.from({ length: 200 }, (_, n) => [`s${n}.driver`, n < 30 ? 99 : 21]));
    const { dropped } = layOver(rings, { structure: [], sets });
    expect(dropped.slice(0, 30).map(({ address }) => address)).toEqual(Object.keys(sets).slice(0, 30));
    for (const { why } of dropped) expect(why.severity).toBe("error");
  });

  it("with what is no data, or over what is no build, is left out with its reason", () => {
    const broken = layOver(build, {
      structure: [
        { set: "outputs", to: 5 },
        { move: "row", at: 0 },
      ],
      sets: {},
    });
    expect(broken.dropped.map(({ address }) => address)).toEqual(["outputs"]);
    expect(broken.build.stages.map(({ id }) => id)).toEqual(["row", "first", "box", "counted"]);
    const none = { ...build, outputs: [] } as Build;
    const over = layOver(none, { structure: [], sets: { "first.driver": 16 } });
    expect(over.build).toBe(none);
    expect(over.dropped.map(({ address }) => address)).toEqual(["first.driver"]);
  });
});
