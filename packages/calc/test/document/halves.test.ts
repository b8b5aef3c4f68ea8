// Versions and stages that contradict themselves: told where they say it, and no more than anybody reads.
import { describe, expect, it } from "vitest";
import { buildAt, parseBuild, readBuild } from "../../src/document/index.js";
import type { Build } from "../../src/drivetrain/index.js";
import { displays } from "../../src/stages/index.js";
import { document, pair, read, told } from "../make.js";

const ring = pair("ring", 13, 38, { set: true });
const row = { id: "row", kind: "train", teeth: [18, 31, 45] };
const rear = { stages: [ring], wheel: { travel: { turns: 10, length: "3.9 m" } } };
const found = (changes: object) =>
  told(readBuild(document([row], { rear }, { alternatives: [{ id: "other", changes }] })).findings);
const at = (code: string, address: string) => [`${code} at /alternatives/0/changes/${address}`];

describe("an alternative", () => {
  it("changes a value inside of a wheel, and cannot change one inside of what it has taken away", () => {
    expect(found({ "rear.wheel.travel": { turns: 9, length: "3.5 m" } })).toEqual([]);
    expect(found({ "rear.wheel": null, "rear.wheel.travel": { turns: 9, length: "3.5 m" } })).toEqual(
      at("not-optional", "rear.wheel.travel"),
    );
  });

  it("cannot leave a wheel without a size, or a row with a gap", () => {
    expect(found({ "rear.wheel.travel": null })).toHaveLength(1);
    expect(found({ "row.teeth.1": null })).toEqual(at("not-optional", "row.teeth.1"));
    expect(found({ "row.teeth.1": 30 })).toEqual([]);
  });

  it("has a set whole: of half a set the half is told", () => {
    expect(found({ "ring.driver": 12 })).toEqual(at("set-in-part", "ring.driver"));
    expect(found({ "ring.driver": 12, "ring.driven": 36 })).toEqual([]);
  });

  it("of many wrong ones as many are told as anybody mends at once", () => {
    const alternatives = Array.from({ length: 100 }, (_, n) => ({
      id: `other-${n}`,
      changes: { "ring.driver": 0, "row.teeth.0": 0 },
    }));
    const { ok, findings } = readBuild(document([row], { rear }, { alternatives }));
    expect([ok, findings.length]).toEqual([false, 100]);
    const nowhere = alternatives.map(({ id }) => ({ id, changes: { "rnig.driver": 12 } }));
    const wrong = readBuild(document([row], { rear }, { alternatives: nowhere })).findings;
    expect(wrong[0]!.values.nearest).toEqual(["ring.driver"]);
    expect(new Set(wrong.map(({ code }) => code)).has("missing-address")).toBe(true);
    expect(wrong.length).toBeLessThanOrEqual(101);
  });
});

describe("a build whose author is the program itself", () => {
  it("is a build, or an error that says where, and what of no place", () => {
    expect(() => parseBuild(document([pair("a", 0, 1)], { rear: [] }))).toThrow(/^\/stages\/0\/driver: /);
    expect(() => parseBuild("{")).toThrow(/^Line 1/);
  });
});

describe("a stage", () => {
  const stages = (...list: readonly object[]) => told(readBuild(document(list as never, { rear: [] })).findings);
  const printed = (id: string, more: object = {}) => ({ id, kind: "published", value: "2.50", ...more });

  it("is the same thing as another only if it says the same", () => {
    expect(stages(printed("a"), printed("b", { sameAs: "a" }))).toEqual([]);
    expect(stages(printed("a", { read: "rounded" }), printed("b", { sameAs: "a" }))).toEqual([]);
    for (const more of [{ value: "2.60" }, { exact: true }, { read: "truncated" }])
      expect(stages(printed("a"), printed("b", { sameAs: "a", ...more }))).toEqual([
        "same-as-differs at /stages/1/sameAs",
      ]);
    expect(stages(pair("a", 1, 2), printed("b", { sameAs: "a" }))).toEqual(["same-as-differs at /stages/1/sameAs"]);
  });

  it("that was counted spans no lever, which can stand in many ways", () => {
    const lever = { id: "lever", kind: "selectable", selected: "a", positions: [{ id: "a", stages: [] }] };
    const counted = { id: "counted", kind: "measured", turnsIn: 40, turnsOut: "5.5" };
    expect(stages({ ...counted, spans: [pair("a", 1, 2)] })).toEqual([]);
    expect(stages({ ...counted, spans: [pair("a", 1, 2), lever] })).toEqual(["span-lever at /stages/0/spans/1"]);
    const pieces = (turnsOut: unknown) => displays.measured({ ...counted, turnsOut } as never).slice(3);
    expect(pieces("5.5")).toEqual([{ value: "5.5", field: "turnsOut" }]);
    expect(pieces({ from: "5.4", to: "5.6" }).map((piece) => ("value" in piece ? piece.value : piece.word))).toEqual([
      ...["5.4", "up to", "5.6"],
    ]);
  });

  it("of shifted teeth is whole", () => {
    const teeth = (more: object) => stages(pair("a", 15, 62, { module: "0.8", ...more }));
    expect(teeth({ driverShift: "0.2", drivenShift: "-0.2" })).toEqual([]);
  });

  it("of pulleys that touch is still being chosen; a belt that cannot go round is refused", () => {
    const belt = (more: object) => stages({ id: "b", kind: "belt", driver: 20, driven: 60, pitch: "5 mm", ...more });
    expect(belt({ centre: "100 mm" })).toEqual([]);
    expect(belt({ centre: "10 mm" })).toEqual([]);
  });
});

describe("a history that cannot be gone through", () => {
  const revisions = [
    { number: 2, back: [{ set: "first.driver", to: 0 }] },
    { number: 1, back: [{ set: "first.driver", to: 13 }] },
  ];
  const half = document([pair("first", 15, 62)], { rear: [] }, { revision: { number: 3 } });

  it("is told in a build that somebody left half done, and its states are refused", () => {
    expect(readBuild({ ...half, revisions }).ok).toBe(false);
    const build = { ...read(half), revisions } as Build;
    expect(buildAt(build, "revision-3")).toMatchObject({ ok: true, build });
    for (const id of ["revision-2", "revision-1"])
      expect(told(buildAt(build, id).findings)).toEqual(["not-count at /stages/0/driver"]);
    expect(told(buildAt(build, "revision-0").findings)).toEqual(["missing-reference at "]);
  });
});
