import { expect, it } from "vitest";
import { applyChanges, parseBuild } from "../../src/document/index.js";
import { evaluate } from "../../src/evaluate/index.js";
import { figureOf } from "../../src/report/index.js";
import { changesAt } from "../../src/search/index.js";

const build = (mount: object, more: object = {}) =>
  parseBuild({
    format: "meshwright-build/1",
    stages: [{ id: "primary", kind: "pair", driver: 15, driven: 62, module: "0.8" }],
    outputs: [{ id: "rear", stages: [] }],
    mounts: [{ stage: "primary", ...mount }],
    ...more,
  });
const after = (one: ReturnType<typeof build>, ...edits: readonly (readonly [string, unknown])[]) =>
  edits.reduce((now, [address, value]) => applyChanges(now, changesAt(now, address, value)).build!, one);
const said = (one: ReturnType<typeof build>) =>
  (["slot", "fit", "shortfall"] as const).map((figure) =>
    figureOf(evaluate(one), { figure, of: "primary" }).replace(/\s/g, " "),
  );

// 23 and 53 teeth of module 0.8 stand 30.4 mm apart.
const known = { knownPair: [23, 53], closer: "0.1 mm", farther: "0.9 mm" };

it("a slot that is counted in teeth stays where it is when the pair gets another pitch", () => {
  const one = build(known);
  expect(said(one)).toEqual(["30.3 mm to 31.3 mm", "fits", "fits"]);
  // 77 teeth of module 0.5 stand 19.25 mm apart.
  expect(said(after(one, ["primary.module", "0.5"]))).toEqual(["30.3 mm to 31.3 mm", "too close", "11.05 mm"]);
  const inches = after(one, ["primary.module", null], ["primary.diametralPitch", "31.75"]);
  expect(said(inches)).toEqual(["30.3 mm to 31.3 mm", "fits", "fits"]);
  const sums = build({ toothSum: [75, 80] });
  expect(said(after(sums, ["primary.module", "0.5"]))[0]).toBe("30.0 mm to 32.0 mm");
});

it("a slot in lengths, and one of a pair of another count, are left as they are", () => {
  expect(changesAt(build(known), "primary.driver", 17)).toEqual({ "primary.driver": 17 });
  expect(changesAt(build(known), "primary.module", "0.80")).toEqual({ "primary.module": "0.80" });
  expect(changesAt(build({ from: "30 mm", to: "31 mm" }), "primary.module", "0.5")).toEqual({
    "primary.module": "0.5",
  });
  expect(changesAt(build(known), "mounts.0.closer", "0.2 mm")).toEqual({ "mounts.0.closer": "0.2 mm" });
});

it("what cannot be is asked for as it is, and refused", () => {
  expect(changesAt(build(known), "primary.module", "fine")).toEqual({ "primary.module": "fine" });
  expect(changesAt(build(known), "primary.diametralPitch", 48)).toEqual({ "primary.diametralPitch": 48 });
});

it("half a set is never asked for", () => {
  const stages = [{ id: "primary", kind: "pair", driver: 13, driven: 38, set: true }];
  expect(changesAt(build({}, { stages }), "primary.driver", 12)).toEqual({
    "primary.driver": 12,
    "primary.driven": 38,
  });
});
