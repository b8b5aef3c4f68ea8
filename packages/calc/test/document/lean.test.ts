import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { buildAt, edited, asPublished, readBuild } from "../../src/document/index.js";
import { leanEdited, leanFromAttributes, leanRead, leanVersion } from "../../src/document/lean/index.js";
import { readMany } from "./slipped.js";

const seed = (name: string): string => readFileSync(new URL(`../../../../seeds/${name}.json`, import.meta.url), "utf8");

it("three thousand documents with slips in them: both readers give the same build, or the lean one gives none", () => {
  const outcomes = readMany(3000, 20_261_125);
  // What the lean reader leaves to the full one is the lesser part.
  expect(outcomes.get("both")).toBeGreaterThan(400);
  expect(outcomes.get("both")).toBeGreaterThan(outcomes.get("full alone") ?? 0);
  expect(outcomes.get("neither")).toBeGreaterThan(400);
});

it.each(["limpet", "dunlin", "turnstone"])("the starter build %s is read without sentences", (name) => {
  expect(leanRead(seed(name))).toEqual(readBuild(seed(name)).build);
});

it("a key that stands twice is not read, whatever stands in texts", () => {
  const text = '{ "format": "meshwright-build/1", "title": "\\"a\\": 1", "outputs": [{ "id": "rear", "stages": [] }] }';
  expect(leanRead(text)?.title).toBe('"a": 1');
  expect(leanRead(text.replace('"title"', '"outputs": [], "title"'))).toBeUndefined();
});

it("what is no data at all is not read", () => {
  const data = { format: "meshwright-build/1", outputs: [{ id: "rear", stages: [] }] };
  const throwing = {
    ...data,
    get title() {
      throw new Error("no");
    },
  };
  for (const one of [undefined, null, 1, "", "{", [], throwing, new Proxy(data, { ownKeys: () => ["x"] })])
    expect(leanRead(one)).toBeUndefined();
});

it.each([[2.5], [null], [["belt.driver"]], [true], [undefined]])("%s is nothing that a step back could set", (set) => {
  const back = [{ ...(set !== undefined && { set }), to: 18 }];
  const build = {
    format: "meshwright-build/1",
    outputs: [{ id: "rear", stages: [{ id: "ring", kind: "pair", driver: 12, driven: 35 }] }],
    revision: { number: 2 },
    revisions: [{ number: 1, back }],
  };
  expect(readBuild(build).ok).toBe(false);
  expect(leanRead(build)).toBeUndefined();
  expect(leanRead({ ...build, revisions: [{ number: 1, back: [{ set: "ring.driver", to: 18 }] }] })).toBeDefined();
});

it("an attribute that nobody knows is left to the full reader", () => {
  const attributes = { stages: "Spur: 15 to 62", rear: "Ring: 12 to 35" };
  expect(leanFromAttributes(attributes)?.outputs).toHaveLength(1);
  expect(leanFromAttributes({ ...attributes, class: "wide", "data-x": "1" })?.outputs).toHaveLength(1);
  expect(leanFromAttributes({ ...attributes, colour: "red" })).toBeUndefined();
});

it("versions are those that the full reader makes", () => {
  const build = readBuild(seed("limpet")).build!;
  for (const { id } of build.alternatives!) expect(leanVersion(build, id)).toEqual(buildAt(build, id).build);
  expect(leanVersion(build, "article")).toBe(build);
  expect(leanVersion(build, "nowhere")).toBeUndefined();
  expect(leanVersion(build, "revision-7")).toBeUndefined();
});

it("edits of counts are those that the full layer makes", () => {
  const article = readBuild(seed("limpet")).build!;
  let full = asPublished(article);
  let lean: { readonly build: typeof article; readonly sets: object } = { build: article, sets: {} };
  const requests = [
    { "primary.driver": 17 },
    { "rear-ring.driver": 11, "rear-ring.driven": 36 },
    { "row.teeth.1": 33 },
    { "primary.driver": 15 },
    { "front-ring.driver": 13, "front-ring.driven": 38 },
    { "rear-ring.driver": 12, "rear-ring.driven": 35 },
    { "row.teeth.1": 31 },
  ];
  for (const request of requests) {
    const now = edited(article, full, request);
    if (!now.ok) throw new Error("refused");
    full = now;
    lean = leanEdited(article, lean as Parameters<typeof leanEdited>[1], request)!;
    expect(lean.build).toEqual(full.build);
    expect(lean.sets).toEqual(full.layer.sets);
  }
  expect(lean.build).toBe(article);
  for (const request of [{ "primary.driver": 0 }, { "rear-ring.driver": 11 }, { "nothing.driver": 3 }])
    expect(leanEdited(article, { build: article, sets: {} }, request)).toBeUndefined();
});
