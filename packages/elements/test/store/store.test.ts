import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { changesFrom, linkOf, parseBuild } from "@meshwright/calc/document";
import { changesOf, stagesOf, valueAt, type Build, type Change } from "@meshwright/calc/drivetrain";
import { errorOf, type Stage } from "@meshwright/calc/stages";
import { wholeEngine } from "../../src/third/engine.js";
import { BuildStore, runOn } from "../../src/shared/store/index.js";

// What comes with an article's second file; the first one's has a test of its own.
runOn(wholeEngine);

const seed = (name: string): string => readFileSync(new URL(`../../../../seeds/${name}.json`, import.meta.url), "utf8");
const limpet = seed("limpet");

type Data = Record<string, unknown> & { stages: Record<string, unknown>[]; outputs: { stages: Data[] }[] };
/** Limpet, changed by its author. */
const revised = (change: (data: Data) => void): Build => {
  const data = JSON.parse(limpet) as Data;
  change(data);
  return parseBuild(data);
};

const fresh = (json: unknown = limpet): BuildStore => {
  const store = new BuildStore();
  store.publish(parseBuild(json));
  return store;
};
const done = (store: BuildStore, request: Parameters<BuildStore["change"]>[0]) =>
  expect(store.change(request)).toEqual([]);
const rear = (store: BuildStore, at?: string): string | undefined =>
  store.evaluation(at)?.output("rear")?.reduction?.factor.toFraction();
const count = (store: BuildStore, address: string) => valueAt(store.build!, address);
const ids = (stages: readonly Stage[]): string[] => stages.map(({ id }) => id);
const worm = { id: "worm-1", kind: "worm", starts: 1, teeth: 30 } as Stage;

describe("values", () => {
  it("lie over the author's build, which is never written to", () => {
    const store = fresh();
    const before = JSON.stringify(store.article);
    done(store, { "primary.driver": 30 });
    // 62/30 · 45/18 · 35/12 · 23/16
    expect(rear(store)).toBe("24955/1152");
    expect(rear(store, "article")).toBe("24955/576");
    expect(JSON.stringify(store.article)).toBe(before);
  });

  it("that are the author's own are no change, however they are written", () => {
    const store = fresh();
    done(store, { "primary.driver": 16 });
    for (const same of [15, "15"]) {
      done(store, { "primary.driver": same });
      expect(store.changed).toBe(0);
      expect(store.build).toBe(store.article);
    }
    const { layer } = store;
    done(store, { "primary.driver": "15", "target.from": "38", "primary.reverses": null });
    expect(store.layer).toBe(layer);
  });

  it("are taken back one by one, and all at once, and that as well", () => {
    const store = fresh();
    done(store, { "primary.driver": 16 });
    done(store, { "primary.driven": 60 });
    store.undo();
    expect(store.layer.sets).toEqual({ "primary.driver": 16 });
    done(store, { "row.teeth.1": 30 });
    store.reset();
    expect(store.changed).toBe(0);
    store.undo();
    expect(store.layer.sets).toEqual({ "primary.driver": 16, "row.teeth.1": 30 });
    store.undo();
    store.undo();
    expect(store.build).toBe(store.article);
    expect(store.canUndo).toBe(false);
  });

  it("that a build cannot have are refused with what stands against them, and nothing is different", () => {
    const store = fresh();
    for (const change of [
      { "primary.driver": 0 },
      { "primary.driver": "many" },
      { "nobody.driver": 4 },
      { "rear-ring.driver": 11 },
      { outputs: [] },
      { remove: "nobody" },
      { move: "row", at: 9 },
      { insert: { id: "row", kind: "worm", starts: 1, teeth: 2 } as Stage, at: 0 },
    ]) {
      expect(store.change(change), JSON.stringify(change)).not.toEqual([]);
      expect(store.changed).toBe(0);
    }
    expect(store.canUndo).toBe(false);
    expect(new BuildStore().change({ "primary.driver": 16 })).toMatchObject([{ code: "no-build" }]);
  });

  it("of a stage that was replaced whole go on from there", () => {
    const store = fresh();
    done(store, {
      "front-hub": {
        ...(count(store, "front-hub") as object),
        kind: "published",
        value: "1.5",
        driver: undefined,
        driven: undefined,
        driverLabel: undefined,
        drivenLabel: undefined,
      },
    });
    done(store, { "front-hub.value": "1.6" });
    expect(Object.keys(store.layer.sets)).toEqual(["front-hub"]);
    expect(store.changed).toBe(1);
    done(store, { "front-hub": count(fresh(), "front-hub") });
    expect(store.changed).toBe(0);
  });

  it("of an author's alternative do not stand in a reader's way", () => {
    const store = fresh({
      ...JSON.parse(limpet),
      alternatives: [{ id: "longer", label: "Longer", changes: { "row.teeth.2": 50 } }],
    });
    done(store, { "row.teeth": [18, 45] });
    expect(store.evaluation("longer")).toBeDefined();
    expect(store.notes.map(({ message }) => message)).toEqual(["With Gear row went Longer."]);
    store.undo();
    expect(store.notes).toEqual([]);
  });
});

describe("a gear set", () => {
  const front = (store: BuildStore) => [count(store, "front-ring.driver"), count(store, "front-ring.driven")];
  const choose = (driver: number, driven: number) => ({ "front-ring.driver": driver, "front-ring.driven": driven });

  it("is chosen though it shares a count with the author's", () => {
    const store = fresh();
    // "12 to 38 · Front set, deep" where the article has 13 to 38.
    done(store, choose(12, 38));
    expect(front(store)).toEqual([12, 38]);
    expect(store.layer.sets).toEqual(choose(12, 38));
    expect(store.changed).toBe(1);
    // 62/15 · 45/18 · 38/12 · 22/15
    expect(store.evaluation()!.output("front")!.reduction!.factor.toFraction()).toBe("6479/135");
    store.undo();
    expect(front(store)).toEqual([13, 38]);
  });

  it("that is the author's again is no change, whichever counts were named on the way", () => {
    const store = fresh();
    for (const [driver, driven] of [
      [12, 38],
      [13, 40],
      [11, 36],
      [13, 38],
    ] as const) {
      done(store, choose(driver, driven));
      expect(front(store)).toEqual([driver, driven]);
    }
    expect(store.changed).toBe(0);
    expect(store.layer.sets).toEqual({});
  });

  it("is refused in part, unless the part changes nothing", () => {
    const store = fresh();
    expect(store.change({ "front-ring.driver": 12 })).toMatchObject([
      { code: "set-in-part", message: "Ring and pinion is sold as a set; change all its counts together." },
    ]);
    done(store, { "front-ring.driver": 13 });
    expect(store.changed).toBe(0);
  });

  it("is asked for whole by whoever changes one count of it", () => {
    const store = fresh();
    done(store, changesOf(count(store, "front-ring") as Stage, { driver: 12 }));
    done(store, changesOf(count(store, "front-ring") as Stage, { driven: 37 }));
    expect(store.layer.sets).toEqual(choose(12, 37));
    done(store, changesOf(count(store, "primary") as Stage, { driver: 16 }));
    expect(store.layer.sets).toEqual({ ...choose(12, 37), "primary.driver": 16 });
  });

  it("may be broken up in so many words, and goes on count by count", () => {
    const store = fresh();
    done(store, { "front-ring.set": null });
    done(store, { "front-ring.driver": 11 });
    expect(front(store)).toEqual([11, 38]);
    expect(store.changed).toBe(1);
    store.publish(revised((data) => void (data.stages[0]!.driver = 16)));
    expect(front(store)).toEqual([11, 38]);
  });

  it("stays when the author publishes again, whole", () => {
    const store = fresh();
    done(store, choose(12, 38));
    done(store, { "row.teeth.1": 30 });
    store.publish(revised((data) => void (data.stages[0]!.driver = 16)));
    expect(front(store)).toEqual([12, 38]);
    expect(store.layer.sets).toEqual({ ...choose(12, 38), "row.teeth.1": 30 });
    // The author's set is another by now, and shares the other count with the reader's.
    store.publish(revised((data) => Object.assign(data.outputs[0]!.stages[0]!, { driver: 12, driven: 40 })));
    expect(front(store)).toEqual([12, 38]);
    expect(store.layer.sets).toEqual({ ...choose(12, 38), "row.teeth.1": 30 });
    store.publish(revised((data) => Object.assign(data.outputs[0]!.stages[0]!, { driver: 12, driven: 38 })));
    expect(store.layer.sets).toEqual({ "row.teeth.1": 30 });
    // Before the row was changed, there was the reader's set.
    store.publish(parseBuild(limpet));
    store.undo();
    expect(front(store)).toEqual([12, 38]);
    store.undo();
    expect(front(store)).toEqual([13, 38]);
  });

  it("travels in a link, whole, beside others that share a count", () => {
    const store = fresh();
    done(store, choose(12, 38));
    done(store, { "rear-ring.driver": 12, "rear-ring.driven": 36 });
    const other = fresh();
    const { changes, findings } = changesFrom(linkOf(store.article!, store.layer.sets), other.article!);
    expect(findings).toEqual([]);
    other.arrive({ structure: [], sets: changes });
    expect(other.build).toEqual(store.build);
    expect(other.changed).toBe(2);
  });
});

describe("stages", () => {
  it("are added, moved and removed over the author's, one change for what it comes to", () => {
    const store = fresh();
    done(store, { insert: worm, at: 2 });
    done(store, { "worm-1.starts": 2 });
    expect(store.changed).toBe(1);
    expect(store.evaluation()!.output("rear")!.reduction!.factor.over("24955/576").toFraction()).toBe("15/1");
    done(store, { move: "worm-1", at: 0 });
    expect(ids(store.build!.stages)).toEqual(["worm-1", "primary", "row"]);
    expect(store.changed).toBe(1);
    done(store, { remove: "worm-1" });
    expect(store.changed).toBe(0);
    for (const expected of [
      ["worm-1", "primary", "row"],
      ["primary", "row", "worm-1"],
      ["primary", "row", "worm-1"],
      ["primary", "row"],
    ]) {
      store.undo();
      expect(ids(store.build!.stages)).toEqual(expected);
    }
    expect(store.build).toBe(store.article);
  });

  it("moved there and back again are where they were: no change", () => {
    const store = fresh();
    done(store, { move: "row", at: 0 });
    done(store, { "row.teeth.0": 20 });
    done(store, { move: "row", into: "front", at: 1 });
    done(store, { move: "row", at: 0, into: "rear" });
    expect(store.layer.structure).toHaveLength(1);
    done(store, { move: "row", into: undefined, at: 1 } as Change);
    expect(ids(store.build!.outputs[1]!.stages)).toEqual(["rear-ring", "row", "rear-hub"]);
    done(store, { remove: "row" });
    expect(store.layer.sets).toEqual({});
    expect(store.layer.structure).toEqual([{ remove: "row" }]);
  });

  it.each(["limpet", "dunlin", "turnstone"])(
    "of %s can be taken out one by one, whatever names them, and come back",
    (name) => {
      const article = parseBuild(seed(name));
      for (const { stage } of stagesOf(article)) {
        const store = fresh(seed(name));
        done(store, { remove: stage.id });
        expect(valueAt(store.build!, stage.id)).toBeUndefined();
        expect(() => parseBuild(JSON.parse(JSON.stringify(store.build)))).not.toThrow();
        for (const { message } of store.notes) {
          expect(message).toContain(stage.label ?? stage.id);
          if (stage.label) expect(message).not.toMatch(new RegExp(`\\b${stage.id}\\b`));
        }
        store.undo();
        expect(store.build).toBe(store.article);
      }
    },
  );

  it("can all be taken out, one after the other, and all come back", () => {
    const store = fresh();
    const all = stagesOf(store.article!).map(({ stage }) => stage.id);
    for (const id of all) done(store, { remove: id });
    expect(rear(store)).toBe("1/1");
    for (const _ of all) store.undo();
    expect(store.build).toBe(store.article);
  });

  it("say in words what goes with them, and that is all that goes", () => {
    const store = fresh();
    done(store, { remove: "primary" });
    expect(store.notes).toMatchObject([
      {
        severity: "warning",
        code: "went-along",
        at: "primary",
        message:
          "With Spur and pinion went its mount, 11 of its parts, First try, The tempting pair, Sixteen, were it made in this pitch.",
      },
    ]);
    const { mounts, parts, alternatives, target, measurements } = store.build!;
    expect([mounts, alternatives!.map(({ id }) => id)]).toEqual([
      undefined,
      ["as-printed", "as-exact", "hub-23", "deeper-rear"],
    ]);
    expect([target, measurements]).toEqual([store.article!.target, store.article!.measurements]);
    expect(parts).toEqual(store.article!.parts!.filter(({ stage }) => stage !== "primary"));
    // What the author published is still there to be looked at.
    expect(store.evaluation("first-try")).toBeDefined();
  });

  it("that are gone take no other mount's values along", () => {
    const json = JSON.parse(limpet);
    json.mounts.push({ stage: "rear-hub", from: "10 mm", to: "12 mm" });
    const store = fresh(json);
    done(store, { "mounts.1.to": "13 mm" });
    done(store, { remove: "primary" });
    expect(store.build!.mounts).toEqual([{ stage: "rear-hub", from: "10 mm", to: "13 mm" }]);
    done(store, { "mounts.0.from": "9 mm" });
    store.publish(parseBuild({ ...json, title: "Again" }));
    expect(store.build!.mounts).toEqual([{ stage: "rear-hub", from: "9 mm", to: "13 mm" }]);
  });

  it("take along modes, shares and what was compared, and leave the rest of them", () => {
    const lever = (id: string) => ({
      id,
      label: `Box ${id}`,
      kind: "selectable",
      selected: "low",
      positions: [
        { id: "low", stages: [{ id: `${id}-low`, kind: "pair", driver: 20, driven: 40 }] },
        { id: "free", released: "free" },
      ],
    });
    const store = fresh({
      format: "meshwright-build/1",
      stages: [lever("a"), lever("b")],
      outputs: [{ id: "rear", stages: [] }],
      modes: [
        { id: "dig", label: "Dig", positions: { a: "free" } },
        { id: "crawl", label: "Crawl", positions: { a: "low", b: "low" } },
      ],
      alternatives: [{ id: "deep", label: "Deep", changes: { "a-low.driven": 60 } }],
    });
    done(store, { remove: "a" });
    expect(store.build!.modes).toEqual([{ id: "crawl", label: "Crawl", positions: { b: "low" } }]);
    expect(store.build!.alternatives).toBeUndefined();
    expect(store.notes.map(({ message }) => message)).toEqual(["With Box a went Dig.", "With a-low went Deep."]);
    done(store, { remove: "b" });
    expect(store.build!.modes).toBeUndefined();
  });
});

describe("stages that are the same bought thing", () => {
  const hub = (id: string, more: object = {}) => ({ id, label: `The ${id}`, kind: "published", value: "1.5", ...more });
  const json = {
    format: "meshwright-build/1",
    outputs: [
      { id: "front", stages: [hub("front-hub")] },
      { id: "rear", stages: [hub("rear-hub", { sameAs: "front-hub" })] },
    ],
  };
  const sameAs = (store: BuildStore) => count(store, "rear-hub.sameAs");

  it.each([
    ["front-hub", { "front-hub.value": "1.6" }],
    ["rear-hub", { "rear-hub.value": "1.6" }],
    ["front-hub", { "front-hub": { id: "front-hub", kind: "pair", driver: 20, driven: 30 } }],
  ])("are no longer where %s is swapped: %j", (id, change) => {
    const store = fresh(json);
    done(store, change);
    expect(sameAs(store)).toBeUndefined();
    expect(store.changed).toBe(1);
    store.publish(parseBuild({ ...json, title: "Again" }));
    expect([sameAs(store), store.changed]).toEqual([undefined, 1]);
    done(store, { [id]: valueAt(store.article!, id) });
    expect([sameAs(store), store.changed]).toEqual(["front-hub", 0]);
  });

  it("stay so where both are changed alike, and where one is named anew", () => {
    const store = fresh(json);
    done(store, { "front-hub.value": "1.6", "rear-hub.value": "1.6" });
    done(store, { "rear-hub.label": "Hub behind" });
    expect(sameAs(store)).toBe("front-hub");
    store.reset();
    done(store, { remove: "front-hub" });
    expect(sameAs(store)).toBeUndefined();
    store.undo();
    expect(sameAs(store)).toBe("front-hub");
  });
});

describe("what was measured, and what was before", () => {
  const json = {
    format: "meshwright-build/1",
    revision: { number: 2 },
    stages: [{ id: "row", label: "Row", kind: "train", teeth: [18, 31, 45] }],
    outputs: [{ id: "rear", stages: [{ id: "ring", label: "Ring", kind: "pair", driver: 12, driven: 35 }] }],
    measurements: [
      { what: "rear", motorTurns: 40, wheelTurns: { from: "5.4", to: "5.6" }, with: { "row.teeth.2": 44 } },
      { what: "rear", motorTurns: 40, wheelTurns: { from: "5.4", to: "5.6" }, with: { "ring.driver": 12 } },
    ],
    revisions: [{ number: 1, back: [{ set: { row: { teeth: [20, 30, 40] } } }] }],
  };

  it("goes with the stage that it speaks of, in the reader's version only", () => {
    const store = fresh(json);
    done(store, { "row.teeth": [18, 45] });
    expect(store.build!.measurements).toHaveLength(1);
    store.reset();
    done(store, { remove: "row" });
    const { measurements, revisions } = store.build!;
    expect([measurements!.length, revisions]).toEqual([1, undefined]);
    expect(store.notes.map(({ message }) => message)).toEqual(["With Row went 1 of its measurements."]);
    // 40/20 · 35/12, as the author had it before
    expect(rear(store, "revision-1")).toBe("35/6");
    expect(store.evaluation("revision-7")).toBeUndefined();
  });
});

describe("an author who publishes again", () => {
  const told = (store: BuildStore) => store.notes.map(({ message }) => message);

  it("loses none of the reader's changes that still apply, and the others are told", () => {
    const store = fresh();
    done(store, { "primary.driver": 16 });
    done(store, { "row.teeth.1": 30 });
    done(store, { "front-ring.driver": 12, "front-ring.driven": 38 });
    store.publish(revised((data) => void data.stages.pop()));
    expect(store.layer.sets).toEqual({ "primary.driver": 16, "front-ring.driver": 12, "front-ring.driven": 38 });
    expect(told(store)).toEqual(["Your change of Gear row could not be kept: It is not there any more."]);
    store.publish(undefined);
    expect([store.build, store.evaluation()]).toEqual([undefined, undefined]);
    store.publish(parseBuild(limpet));
    expect(store.layer.sets).toEqual({ "primary.driver": 16, "front-ring.driver": 12, "front-ring.driven": 38 });
  });

  it("loses no change of structure either", () => {
    const store = fresh();
    done(store, { insert: worm, into: "rear", at: 2 });
    done(store, { move: "row", at: 0 });
    done(store, { remove: "front-hub" });
    done(store, { "primary.driver": 16 });
    store.publish(revised((data) => Object.assign(data.outputs[1]!.stages[0]!, { driver: 11, driven: 36 })));
    expect(ids(store.build!.stages)).toEqual(["row", "primary"]);
    expect(store.build!.outputs.map(({ stages }) => ids(stages))).toEqual([
      ["front-ring"],
      ["rear-ring", "rear-hub", "worm-1"],
    ]);
    expect(count(store, "primary.driver")).toBe(16);
    // 62/16 · 45/18 · 36/11 · 23/16 · 30
    expect(rear(store)).toBe("481275/352");
    expect(told(store).every((message) => message.startsWith("With "))).toBe(true);
    // The author takes the row away: what was moved is gone, the rest stays.
    store.publish(revised((data) => void data.stages.pop()));
    expect(ids(store.build!.stages)).toEqual(["primary"]);
    expect(count(store, "worm-1.teeth")).toBe(30);
    expect(told(store).filter((message) => message.startsWith("Your"))).toEqual([
      "Your change of Gear row could not be kept: It is not there any more.",
    ]);
  });

  it("may bring a stage of an id that the reader's new one has: both stay", () => {
    const store = fresh();
    done(store, { insert: worm, at: 0 });
    store.publish(
      revised((data) => void data.stages.push({ id: "worm-1", label: "Worm", kind: "worm", starts: 2, teeth: 40 })),
    );
    expect(store.build!.stages.map((stage) => (stage as { teeth: unknown }).teeth)).toEqual([
      30,
      undefined,
      [18, 31, 45],
      40,
    ]);
    expect(told(store)).toEqual([]);
    done(store, { [`${store.build!.stages[0]!.id}.teeth`]: 31 });
    expect(store.changed).toBe(1);
  });

  it("does not undo what was there before: that can still be taken back", () => {
    const store = fresh();
    done(store, { "primary.driver": 16 });
    done(store, { "row.teeth.1": 30 });
    store.publish(revised((data) => void (data.title = "Again")));
    store.undo();
    expect(store.layer.sets).toEqual({ "primary.driver": 16 });
    store.undo();
    expect(store.build).toBe(store.article);
  });

  it("who has the reader's own value by now has left no change to take back", () => {
    const store = fresh();
    done(store, { "row.teeth.1": 30 });
    done(store, { "primary.driver": 16 });
    store.publish(revised((data) => void (data.stages[0]!.driver = 16)));
    expect(store.layer.sets).toEqual({ "row.teeth.1": 30 });
    store.undo();
    expect(store.changed).toBe(0);
  });
});

describe("a version that arrives by a link", () => {
  it("takes the place of the author's values, and is nobody's to undo", () => {
    const store = fresh();
    store.arrive({ structure: [{ move: "row", at: 0 }], sets: { "primary.driver": 17 } });
    expect([store.arrived, store.changed, store.canUndo]).toEqual([true, 2, false]);
    store.publish(revised((data) => void (data.title = "Again")));
    expect([store.arrived, store.changed]).toEqual([true, 2]);
    done(store, { "primary.driver": 18 });
    expect(store.arrived).toBe(false);
    store.undo();
    expect(count(store, "primary.driver")).toBe(17);
  });

  it("does not cost the reader changes of their own", () => {
    const store = fresh();
    done(store, { "row.teeth.1": 30 });
    store.arrive({ structure: [], sets: { "primary.driver": 17 } });
    expect(store.layer.sets).toEqual({ "primary.driver": 17 });
    store.undo();
    expect(store.layer.sets).toEqual({ "row.teeth.1": 30 });
  });
});

describe("undo", () => {
  it("takes back a gesture, and a gesture that came to nothing leaves nothing", () => {
    const store = fresh();
    const held = {};
    for (let n = 16; n < 20; n++) expect(store.change({ "primary.driver": n }, held)).toEqual([]);
    for (const n of [61, 60, 61, 62]) expect(store.change({ "primary.driven": n }, "other")).toEqual([]);
    store.undo();
    expect(store.changed).toBe(0);
    expect(store.canUndo).toBe(false);
  });
});

describe("whoever follows", () => {
  it("is told once for all changes of a turn, and not of a change that is none", async () => {
    const store = fresh();
    await Promise.resolve();
    let told = 0;
    const follower = { stateChanged: () => void told++ };
    store.followers.add(follower);
    for (let n = 16; n < 40; n++) store.change({ "primary.driver": n });
    store.undo();
    expect(told).toBe(0);
    await Promise.resolve();
    expect(told).toBe(1);
    store.change({ "primary.driver": 0 });
    store.change({ "primary.driver": 38 });
    await Promise.resolve();
    expect(told).toBe(1);
    store.followers.delete(follower);
    store.reset();
    await Promise.resolve();
    expect(told).toBe(1);
  });

  it("hears nothing of complaints, and no figure is worked out again for one", async () => {
    const store = fresh();
    await Promise.resolve();
    let told = 0;
    let heard = 0;
    store.followers.add({ stateChanged: () => void told++ });
    store.complaints.watchers.add(() => void heard++);
    done(store, { "primary.driver": 16 });
    await Promise.resolve();
    const evaluation = store.evaluation();
    const [one, other] = [{}, {}];
    const figure = errorOf("meaning", "unknown-figure", "/figure", { found: "laed" });
    const nobody = errorOf("meaning", "missing-reference", "/of", { id: "nobody" });
    store.complain(one, [figure]);
    store.complain(one, [{ ...figure }]);
    store.complain(other, [nobody]);
    await Promise.resolve();
    expect([told, heard]).toEqual([1, 2]);
    expect([...store.complaints.all]).toEqual([
      [one, [figure]],
      [other, [nobody]],
    ]);
    expect(store.evaluation()).toBe(evaluation);
    store.complain(one);
    expect([...store.complaints.all.keys()]).toEqual([other]);
  });
});

describe("alternatives", () => {
  it("are the author's, and there is nothing of others", () => {
    const store = fresh();
    // 62/15 · 45/18 · 36/11 · 23/16
    expect(rear(store, "deeper-rear")).toBe("2139/44");
    expect(store.evaluation("nobody")).toBeUndefined();
  });
});
