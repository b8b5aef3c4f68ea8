import { assert } from "@esm-bundle/chai";
import { readBuild } from "@meshwright/calc/document";
import { limpet } from "../../test/page.js";
import { BuildStore } from "./index.js";

const fresh = (): BuildStore => {
  const store = new BuildStore();
  const { build, findings } = readBuild(limpet);
  store.publish(build, findings);
  return store;
};

const rear = (store: BuildStore, at?: string): string | undefined =>
  store.evaluation(at)?.output("rear")?.reduction?.factor.toFraction();

describe("the build store", () => {
  it("lays the reader's changes over the author's build, and never writes to that", () => {
    const store = fresh();
    const before = JSON.stringify(store.article);
    assert.deepEqual(store.change({ "primary.driver": 30 }), []);
    assert.equal(rear(store), "24955/1152");
    assert.equal(rear(store, "article"), "24955/576");
    assert.equal(JSON.stringify(store.article), before);
  });

  it("knows the author's alternatives, and nothing of others", () => {
    const store = fresh();
    assert.equal(
      rear(store, "deeper-rear"),
      store.evaluation("deeper-rear")!.output("rear")!.reduction!.factor.toFraction(),
    );
    assert.isUndefined(store.evaluation("nobody"));
  });

  it("takes changes back one by one, and all at once, and that as well", () => {
    const store = fresh();
    store.change({ "primary.driver": 16 });
    store.change({ "primary.driven": 60 });
    store.undo();
    assert.deepEqual(store.layer.sets, { "primary.driver": 16 });
    store.change({ "row.teeth.1": 30 });
    store.reset();
    assert.equal(store.changed, 0);
    store.undo();
    assert.deepEqual(store.layer.sets, { "primary.driver": 16, "row.teeth.1": 30 });
    store.undo();
    store.undo();
    assert.equal(store.build, store.article);
    assert.isFalse(store.canUndo);
  });

  it("counts a value that is the author's own as no change", () => {
    const store = fresh();
    store.change({ "primary.driver": 16 });
    store.change({ "primary.driver": 15 });
    assert.equal(store.changed, 0);
  });

  it("refuses what a build cannot be, and stays as it was", () => {
    const store = fresh();
    for (const change of [
      { "primary.driver": 0 },
      { "primary.driver": "many" },
      { "nobody.driver": 4 },
      { "rear-ring.driver": 11 },
      { outputs: [] },
    ]) {
      assert.isNotEmpty(store.change(change), JSON.stringify(change));
      assert.equal(store.changed, 0);
    }
    assert.isFalse(store.canUndo);
  });

  it("keeps the reader's changes where the author publishes again, those that still apply", () => {
    const store = fresh();
    store.change({ "primary.driver": 16 });
    store.change({ "row.teeth.1": 30 });
    const json = JSON.parse(limpet);
    json.stages.pop();
    store.publish(readBuild(json).build);
    assert.deepEqual(store.layer.sets, { "primary.driver": 16 });
    store.publish(undefined);
    assert.isUndefined(store.build);
    assert.isUndefined(store.evaluation());
  });

  it("adds, moves and removes stages over the author's", () => {
    const store = fresh();
    store.change({ insert: { id: "worm-1", kind: "worm", starts: 1, teeth: 30 }, at: 2 });
    store.change({ "worm-1.starts": 2 });
    assert.equal(store.evaluation()!.output("rear")!.reduction!.factor.over("24955/576").toFraction(), "15/1");
    store.change({ move: "worm-1", at: 0 });
    assert.equal(store.build!.stages[0]!.id, "worm-1");
    store.change({ remove: "worm-1" });
    assert.equal(rear(store), "24955/576");
    store.undo();
    store.undo();
    store.undo();
    store.undo();
    assert.equal(store.build, store.article);
  });

  it("replaces a stage whole, and goes on from there", () => {
    const store = fresh();
    const stage = { ...store.build!.outputs[1]!.stages[0]!, driver: 11 };
    store.change({ "rear-ring": stage });
    store.change({ "rear-ring.driven": 36 });
    assert.deepEqual(Object.keys(store.layer.sets), ["rear-ring"]);
    assert.equal(rear(store), rear(store, "deeper-rear"));
    store.change({ "rear-ring.driver": 12, "rear-ring.driven": 35 });
    assert.equal(store.changed, 0);
  });

  it("tells each reader once for all changes of a turn", async () => {
    const store = fresh();
    await Promise.resolve();
    let told = 0;
    const reader = { stateChanged: () => void told++ };
    store.readers.add(reader);
    for (let n = 16; n < 40; n++) store.change({ "primary.driver": n });
    store.undo();
    assert.equal(told, 0);
    await Promise.resolve();
    assert.equal(told, 1);
    store.readers.delete(reader);
    store.reset();
    await Promise.resolve();
    assert.equal(told, 1);
  });
});
