import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readFileSync } from "node:fs";
import { parseBuild } from "@meshwright/calc/document";
import { backToDay, fileText, newNotebook, openText, Session, type Notebook } from "../../src/model/index.js";

const limpet = parseBuild(readFileSync(new URL("../../../../seeds/limpet.json", import.meta.url), "utf8"));
const begun = (): Session => new Session({ ...newNotebook("one", "Limpet"), build: limpet }, () => new Date(0));
const pairOf = ({ build }: Session) => build!.stages[0] as unknown as { driver: number; driven: number };

describe("edits of a notebook", () => {
  it("are named by what they did, and Undo says which it takes back", () => {
    const session = begun();
    expect(session.change({ "primary.driver": 16 })).toEqual([]);
    expect(session.undoName).toBe("motor pinion 15, now 16");
    session.change([{ remove: "front-hub" }]);
    expect(session.undoName).toBe("Front: Hub taken out");
    expect(session.undo()).toBe("Front: Hub taken out");
    expect(session.undo()).toBe("motor pinion 15, now 16");
    expect(session.build).toEqual(limpet);
    expect(session.undo()).toBeUndefined();
    expect(session.redo()).toBe("motor pinion 15, now 16");
    expect(pairOf(session).driver).toBe(16);
  });

  it("that cannot be made change nothing, and say why", () => {
    const session = begun();
    const [finding] = session.change({ "primary.driver": 0 });
    expect(finding?.code).toBe("not-count");
    expect(session.build).toBe(limpet);
    expect(session.undoName).toBeUndefined();
  });

  it("leave the post alone when the drivetrain is taken back", () => {
    const session = begun();
    session.change({ "primary.driver": 16 });
    session.note({ post: { type: "doc", content: [] } });
    session.undo();
    expect(pairOf(session).driver).toBe(15);
    expect(session.notebook.post).toEqual({ type: "doc", content: [] });
  });

  it("that put something in the place of another bring back what was done with it since", () => {
    const said = (text: string) => ({
      type: "doc",
      content: [{ type: "paragraph", content: [{ type: "text", text }] }],
    });
    const session = begun();
    session.note({ post: said("mine") });
    session.put({ post: said("opened") }, "Post opened");
    session.note({ post: said("opened, and written on") });
    expect(session.undo()).toBe("Post opened");
    expect(session.notebook.post).toEqual(said("mine"));
    session.note({ post: said("mine, and written on") });
    session.redo();
    expect(session.notebook.post).toEqual(said("opened, and written on"));
    session.undo();
    expect(session.notebook.post).toEqual(said("mine, and written on"));
  });

  it("make others follow that are no step of their own", () => {
    const follows = new Session({ ...newNotebook("one"), build: limpet }, undefined, (before, after) =>
      before.build === after.build ? {} : { onlyText: [...(after.onlyText ?? []), String(before.title)] },
    );
    follows.change({ "primary.driver": 16 });
    expect(follows.notebook.onlyText).toHaveLength(1);
    follows.undo();
    expect(follows.notebook.onlyText).toHaveLength(2);
    follows.put({ title: "Another" }, "Called Another");
    expect(follows.notebook.onlyText).toHaveLength(2);
  });

  it("of a new day leave what stood the evening before, for a week of days, and it comes back through a file", () => {
    let now = new Date(2026, 9, 1, 18);
    const session = new Session({ ...newNotebook("one", "Limpet"), build: limpet }, () => now);
    session.change({ "primary.driver": 16 });
    session.change({ "primary.driver": 17 });
    expect(session.notebook.days).toBeUndefined();
    now = new Date(2026, 9, 2, 9);
    session.put({ title: "Limpet, again" }, "Called Limpet, again");
    expect(session.notebook.days!.map(({ date }) => date)).toEqual(["2026-10-01"]);
    expect((session.notebook.days![0]!.build.stages[0] as { driver?: number }).driver).toBe(17);
    session.change({ "primary.driver": 18 });
    session.change({ "primary.driver": 19 });
    for (let day = 3; day < 12; day++) {
      now = new Date(2026, 9, day, 9);
      session.change({ "primary.driver": 20 + day });
    }
    const { days } = session.notebook;
    expect(days!.map(({ date }) => date)).toEqual(
      [4, 5, 6, 7, 8, 9, 10].map((day) => `2026-10-${String(day).padStart(2, "0")}`),
    );
    expect(days!.map(({ build }) => (build.stages[0] as { driver?: number }).driver)).toEqual([
      24, 25, 26, 27, 28, 29, 30,
    ]);
    const whole = { drivetrain: true, post: true, parts: true, history: true };
    const opened = openText(fileText(session.notebook, whole), "there");
    expect(opened.kind === "notebook" && opened.notebook.days!.map(({ date }) => date)).toEqual(
      days!.map(({ date }) => date),
    );
    expect(fileText(session.notebook)).not.toContain('"days"');
    backToDay(session, 6);
    expect(pairOf(session).driver).toBe(30);
    expect(session.undoName).toBe("Back to how it stood on 10 October 2026");
  });

  it("are all in the history, with what was taken back", () => {
    const session = begun();
    session.change({ "primary.driver": 16 });
    session.undo();
    expect(session.notebook.log?.map(({ what }) => what)).toEqual([
      "motor pinion 15, now 16",
      "Taken back: motor pinion 15, now 16",
    ]);
  });

  it("come to what a list of states says, whatever is done in which order", () => {
    const action = fc.oneof(
      fc.record({ kind: fc.constant("driver" as const), to: fc.integer({ min: 1, max: 90 }) }),
      fc.record({ kind: fc.constant("driven" as const), to: fc.integer({ min: 1, max: 90 }) }),
      fc.record({ kind: fc.constant("title" as const), to: fc.string({ maxLength: 8 }) }),
      fc.constant({ kind: "undo" as const, to: 0 }),
      fc.constant({ kind: "redo" as const, to: 0 }),
    );
    fc.assert(
      fc.property(fc.array(action, { maxLength: 60 }), (actions) => {
        const session = begun();
        // The model: states one after the other, and which of them stands.
        let states: { driver: number; driven: number; title: string }[] = [{ driver: 15, driven: 62, title: "Limpet" }];
        let at = 0;
        for (const { kind, to } of actions) {
          if (kind === "undo") {
            session.undo();
            at = Math.max(0, at - 1);
          } else if (kind === "redo") {
            session.redo();
            at = Math.min(states.length - 1, at + 1);
          } else {
            if (kind === "title") session.put({ title: String(to) }, "named");
            else session.change({ [`primary.${kind}`]: to });
            // A count that is what it was is no edit.
            if (states[at]![kind] === to && kind !== "title") continue;
            states = [...states.slice(0, at + 1), { ...states[at]!, [kind]: to }];
            at++;
          }
          const { driver, driven } = pairOf(session);
          expect({ driver, driven, title: session.notebook.title }).toEqual(states[at]);
        }
      }),
      { numRuns: 60 },
    );
  });

  it("tell whoever watches, once each", () => {
    const session = begun();
    const seen: Notebook[] = [];
    session.watchers.add(({ notebook }) => seen.push(notebook));
    session.change({ "primary.driver": 16 });
    session.change({ "primary.driver": 0 });
    session.undo();
    expect(seen.map(({ build }) => (build!.stages[0] as unknown as { driver: number }).driver)).toEqual([16, 15]);
  });

  it("are refused, each of them, while another tab edits; what comes from there is shown", () => {
    const session = begun();
    session.change({ "primary.driver": 16 });
    const { notebook } = session;
    session.isFollowing = true;
    const [refusal] = session.change({ "primary.driver": 17 });
    expect(refusal?.message).toMatch(/edited in another tab.*Edit here instead/);
    expect(session.put({ title: "Other" }, "Called Other")).toBe(false);
    session.note({ orders: { "": "ordered" } });
    session.take(parseBuild({ ...limpet, title: "Other" }), { set: "title", to: "Other" });
    expect(session.undoName).toBeUndefined();
    expect(session.undo()).toBeUndefined();
    expect(session.redo()).toBeUndefined();
    expect(session.notebook).toBe(notebook);
    session.open({ ...notebook, title: "Out of the other tab" });
    expect(session.notebook.title).toBe("Out of the other tab");
  });
});
