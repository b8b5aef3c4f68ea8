// What goes with a stage or an axle that a reader takes away, wherever a document names it.
import { describe, expect, it } from "vitest";
import { asPublished, edited, type Edited } from "../../src/document/index.js";
import type { Build, Change, ChangeSet } from "../../src/drivetrain/index.js";
import { document, pair, read } from "../make.js";

const lever = (id: string) => ({
  ...{ id, kind: "selectable", selected: "a" },
  positions: [
    { id: "a", stages: [] },
    { id: "b", stages: [] },
  ],
});
const first = pair("first", 15, 62, { module: "0.8", label: "Spur and pinion" });
const build = read(
  document(
    [first, lever("box"), lever("range")],
    { front: [pair("f", 10, 20)], rear: [pair("r", 10, 21)] },
    {
      target: { from: 3, to: 9, output: "rear" },
      compare: { of: "front", with: "rear" },
      headline: "rear",
      centre: { kind: "differential", share: { front: 1, rear: 2 } },
      mounts: [{ stage: "first", from: "30 mm", to: "31 mm" }],
      parts: [
        { id: "p15", is: "pinion", teeth: 15, stage: "first" },
        { id: "s20", is: "spur", teeth: 20 },
      ],
      modes: [
        { id: "slow", positions: { box: "a", range: "b" } },
        { id: "boxed", positions: { box: "b" } },
      ],
      alternatives: [
        { id: "deep", label: "Deeper", changes: { "first.driver": 12 } },
        { id: "long", changes: { "f.driven": 25 } },
      ],
      measurements: [
        { what: "front", motorTurns: 10, wheelTurns: { from: 1, to: 2 }, with: { "first.driver": 14 } },
        { what: "rear", motorTurns: 10, wheelTurns: { from: 1, to: 2 } },
      ],
      revision: { number: 3 },
      revisions: [
        { number: 2, back: [{ set: { "f.driven": 19 } }] },
        { number: 1, back: [{ move: "box", at: 2 }] },
      ],
    },
  ),
);
const edit = (request: ChangeSet | Change, of: Build = build): Edited => {
  const state = edited(of, asPublished(of), request);
  expect(state).toMatchObject({ ok: true });
  return state as Edited;
};

describe("without a stage", () => {
  it("its mount, its parts, what was counted with it and what changes it go; the rest stays", () => {
    const { build: now, gone } = edit({ remove: "first" });
    expect(now.mounts).toBeUndefined();
    expect(now.parts?.map(({ id }) => id)).toEqual(["s20"]);
    expect(now.measurements?.map(({ what }) => what)).toEqual(["rear"]);
    expect(now.alternatives?.map(({ id }) => id)).toEqual(["long"]);
    for (const key of ["target", "compare", "headline", "centre", "modes", "revisions"] as const)
      expect(now[key], key).toEqual(build[key]);
    const [went, ...others] = gone;
    expect([went!.at, went!.values.label, others]).toEqual(["first", "Spur and pinion", []]);
    for (const what of [/mount/, /\b1\b.*part/, /\b1\b.*(measure|count)/, /Deeper/])
      expect(went!.message).toMatch(what);
  });

  it("a mode says where the others stand, and goes where it spoke of nothing else", () => {
    const { build: now, gone } = edit({ remove: "box" });
    expect(now.modes).toEqual([{ id: "slow", positions: { range: "b" } }]);
    // One step of the history moved it: none behind it can be made.
    expect(now.revisions).toBeUndefined();
    expect(gone.map(({ at, values }) => [at, values.what])).toEqual([["box", ["boxed"]]]);
  });

  it("the history goes where a step of it sets something in it", () => {
    expect(edit({ remove: "f" }).build.revisions).toBeUndefined();
    expect(edit({ remove: "r" }).build.revisions).toEqual(build.revisions);
  });
});

describe("without an axle", () => {
  const outputs = build.outputs.slice(0, 1);

  it("nothing is meant for it, compared with it, shared with it or counted at it any more", () => {
    const { build: now } = edit({ outputs });
    expect([now.target, now.compare, now.headline]).toEqual([undefined, undefined, undefined]);
    expect(now.centre).toEqual({ kind: "differential" });
    expect(now.measurements?.map(({ what }) => what)).toEqual(["front"]);
    expect(now.mounts).toEqual(build.mounts);
  });

  it("what speaks of the others stays as it is", () => {
    const kept = read({
      ...build,
      target: { from: 3, to: 9 },
      compare: undefined,
      headline: "front",
      centre: { kind: "spool" },
    });
    const { build: now } = edit({ outputs }, kept);
    expect([now.target, now.headline, now.centre]).toEqual([kept.target, "front", { kind: "spool" }]);
  });

  it("a shaft that shared its torque with it shares it as before anybody said how", () => {
    const branched = read(
      document(
        [],
        { front: { from: "long" }, rear: { from: "long" }, wing: { from: "short" } },
        {
          branches: [
            { id: "long", stages: [], split: { kind: "differential", share: { front: 1, rear: 2 } } },
            { id: "short", stages: [] },
          ],
        },
      ),
    );
    const { build: now } = edit({ outputs: branched.outputs.filter(({ id }) => id !== "rear") }, branched);
    expect(now.branches).toEqual([
      { id: "long", stages: [], split: { kind: "differential" } },
      { id: "short", stages: [] },
    ]);
  });
});

describe("a stage that names parts and its twin", () => {
  const hub = (id: string, more = {}) => ({ id, kind: "published", value: "2.5", ...more });
  const twins = read(
    document(
      [hub("one", { fitted: ["h1", "h2"] }), hub("two", { sameAs: "one", fitted: ["h1"] }), pair("last", 1, 2)],
      { rear: [] },
      {
        parts: [
          { id: "h1", is: "gearbox", value: "2.5", stage: "last" },
          { id: "h2", is: "gearbox", value: "2.5" },
        ],
      },
    ),
  );

  it("names none any more that went with another stage, and keeps the others", () => {
    const { build: now } = edit({ remove: "last" }, twins);
    expect(now.stages).toEqual([hub("one", { fitted: ["h2"] }), hub("two", { sameAs: "one" })]);
  });

  it("is no twin any more of a stage that is gone", () => {
    expect(edit({ remove: "one" }, twins).build.stages[0]).toEqual(hub("two", { fitted: ["h1"] }));
  });
});
