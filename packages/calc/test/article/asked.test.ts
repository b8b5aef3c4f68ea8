// What is wrong with what elements ask of a build, and with builds that stand inside a page.
import { describe, expect, it } from "vitest";
import { askedFindings, readEmbedded } from "../../src/article/index.js";
import { document, pair, read, told } from "../make.js";

const build = read(
  document(
    [pair("first", 15, 62), { id: "row", kind: "train", teeth: [18, 31, 45] }],
    { front: [pair("front-ring", 13, 38, { set: true })], rear: [{ id: "hub", kind: "published", value: "1.5" }] },
    {
      mounts: [{ stage: "first", from: "20 mm", to: "40 mm" }],
      alternatives: [{ id: "deep", changes: { "first.driver": 12 } }],
      revisions: [{ number: 1, back: [{ set: "first.driver", to: 14 }] }],
      revision: { number: 2 },
    },
  ),
);
const asked = (tag: string, attributes: Record<string, string>, of = build) => askedFindings(tag, of, attributes);
const found = (tag: string, attributes: Record<string, string>, of = build) => told(asked(tag, attributes, of));
const nearest = (tag: string, attributes: Record<string, string>) => asked(tag, attributes)[0]?.values.nearest;

describe("what an element asks for", () => {
  it("of other builds of the page is one of them, or one of its own versions", () => {
    const others = () => ["whimbrel", "dunlin"];
    for (const [tag, attributes] of [
      ["mw-change-table", (id: string) => ({ against: id })],
      ["mw-value", (id: string) => ({ figure: "change", of: "rear", from: id })],
    ] as const) {
      const ask = (id: string) => askedFindings(tag, build, attributes(id), undefined, others);
      for (const id of ["whimbrel", "dunlin", "deep", "revision-1", "article"]) expect(ask(id)).toEqual([]);
      expect(ask("whimbrle")[0]!.values.nearest).toEqual(["whimbrel"]);
      expect(ask("depe")[0]!.values.nearest).toEqual(["deep"]);
      expect(askedFindings(tag, build, attributes("whimbrel"))).toHaveLength(1);
    }
    // Nobody is drawn at another build's state.
    expect(askedFindings("mw-value", build, { at: "whimbrel" }, undefined, others)).toHaveLength(1);
  });

  it("of a count is there, is a count, and its limits are counts", () => {
    for (const of of ["first.driver", "row.teeth.1", "front-ring"]) expect(found("mw-teeth", { of })).toEqual([]);
    expect(found("mw-teeth", {})).toEqual(["word-needed at /of"]);
    expect(found("mw-teeth", { of: "hub.value" })).toEqual(["not-count at /of"]);
    expect(found("mw-teeth", { of: "row.teeth.7" })).toEqual(["missing-address at /of"]);
    expect(nearest("mw-teeth", { of: "first.drivn" })).toContain("first.driven");
    // No shape has such a field: the counts of the stage are told.
    expect(nearest("mw-teeth", { of: "row" })).toEqual(["row.teeth.0", "row.teeth.1", "row.teeth.2"]);
    expect(found("mw-teeth", { of: "nobody.driver" })).toEqual(["missing-address at /of"]);
    expect(found("mw-teeth", { of: "first.driver", min: "10", max: "1000000" })).toEqual([]);
    expect(found("mw-teeth", { of: "first.driver", min: "0", max: "1000001" })).toEqual([
      ...["not-count at /min", "not-count at /max"],
    ]);
    expect(found("mw-teeth", { of: "first.driver", min: "ten" })).toEqual(["not-count at /min"]);
    expect(found("mw-teeth", { of: "first.driver", min: "20", max: "20" })).toEqual([]);
    expect(found("mw-teeth", { of: "first.driver", min: "21", max: "20" })).toEqual(["range-backwards at /min"]);
  });

  it("of a drawing is one output, or stages", () => {
    for (const of of ["", "front", "first", "first, row", "hub first"])
      expect(found("mw-train-drawing", { of })).toEqual([]);
    expect(found("mw-train-drawing", {})).toEqual([]);
    expect(asked("mw-train-drawing", { of: "front rear" })[0]).toMatchObject({ at: "/of", values: { id: "rear" } });
    expect(
      asked("mw-train-drawing", { of: "first frist rwo" }).map(({ values }) => [values.id, values.nearest]),
    ).toEqual([
      ["frist", ["first"]],
      ["rwo", ["row"]],
    ]);
  });

  it("of the finder is a pair of teeth, or the one that has a mount", () => {
    expect([found("mw-pair-finder", {}), found("mw-pair-finder", { of: "front-ring" })]).toEqual([[], []]);
    expect(found("mw-pair-finder", { of: "hub" })).toEqual(["missing-reference at /of"]);
    const { mounts: _, ...bare } = build;
    const [finding] = asked("mw-pair-finder", {}, bare);
    expect([finding!.code, finding!.values.known]).toEqual(["word-needed", ["first", "front-ring"]]);
  });

  it("of a table of changes is alternatives, of an order a version or nothing", () => {
    expect(found("mw-change-table", { show: "deep" })).toEqual([]);
    expect(nearest("mw-change-table", { show: "deep, deap" })).toEqual(["deep"]);
    const { alternatives: _, ...bare } = build;
    expect(found("mw-change-table", {}, bare)).toEqual([]);
    expect(found("mw-change-table", { show: "deep" }, bare)).toEqual(["missing-reference at /show"]);
    for (const from of ["nothing", "article", "deep", "revision-1"])
      expect(found("mw-order-list", { from })).toEqual([]);
    expect(found("mw-order-list", {})).toEqual([]);
    expect(asked("mw-order-list", { from: "nothin" })[0]).toMatchObject({
      at: "/from",
      values: { nearest: ["nothing"] },
    });
  });

  it("of a version is asked of that version", () => {
    const hubless = read({ ...build, alternatives: [{ id: "other", changes: { "first.id": "primary" } }], mounts: [] });
    const drawn = (of: string, at: string) => found("mw-train-drawing", { of, at }, hubless);
    expect([drawn("primary", "other"), drawn("first", "article")]).toEqual([[], []]);
    expect(drawn("first", "other")).toEqual(["missing-reference at /of"]);
    expect(askedFindings("mw-train-drawing", build, { of: "nobody", at: "deep" }, () => undefined)).toEqual([]);
    expect(found("mw-nothing-of-ours", { of: "nobody" })).toEqual([]);
    expect(found("mw-nothing-of-ours", { at: "daep" })).toEqual(["missing-reference at /at"]);
  });

  it("of speeds is a unit and a share", () => {
    for (const loaded of ["0.8", "0.8 to 0.9", "1"])
      expect(found("mw-wheel-speed", { loaded, unit: "mph" })).toEqual([]);
    for (const loaded of ["0.9 to 0.8", "0", "1.1", "most"])
      expect(found("mw-wheel-speed", { loaded, unit: "mhp" })).toEqual([
        ...["unknown-word at /unit", "not-understood at /loaded"],
      ]);
  });
});

describe("a build inside a page", () => {
  const { alternatives: _, revisions: __, ...plain } = build;
  const text = (more: object) => JSON.stringify({ ...plain, ...more });
  const broken = { id: "broken", changes: { "nobody.driver": 12 } };
  const ids = (json: unknown) => {
    const reading = readEmbedded(json);
    return [reading.ok && reading.build.alternatives?.map(({ id }) => id), told(reading.findings)];
  };

  it("is read without the alternatives that cannot be made, and they are told", () => {
    const alternatives = [{ id: "deep", changes: { "first.driver": 12 } }, broken];
    const faults = ["missing-address at /alternatives/1/changes/nobody.driver"];
    expect(ids(text({ alternatives }))).toEqual([["deep"], faults]);
    expect(ids({ ...plain, alternatives })).toEqual([["deep"], faults]);
  });

  it("is read without its history where one step of it cannot be made, and without what is no list", () => {
    const revisions = [{ number: 1, back: [{ set: "nobody.driver", to: 14 }] }];
    const reading = readEmbedded(text({ revisions }));
    expect([reading.ok, reading.ok && "revisions" in reading.build]).toEqual([true, false]);
    expect(reading.findings.map(({ at }) => at)).toEqual(["/revisions/0/back"]);
    const odd = readEmbedded(text({ alternatives: "none" }));
    expect([odd.ok, odd.findings.map(({ at }) => at)]).toEqual([true, ["/alternatives"]]);
  });

  it("is none where anything else is wrong besides", () => {
    const reading = readEmbedded(text({ alternatives: [broken], target: 5 }));
    expect(reading.ok).toBe(false);
    expect(reading.findings.map(({ at }) => at)).toContain("/target");
  });

  it("is put right where its quotes and blanks were made prose, and nothing of its own", () => {
    const titled = (title: string) => {
      const reading = readEmbedded(text({}).replaceAll('"', "&quot;").replace("{", `{&#34;title&#x22;: "${title}",`));
      return reading.ok && reading.build.title;
    };
    expect(titled("Tern &amp; plover")).toBe("Tern & plover");
    expect(titled("Tern &nosuch; plover")).toBe("Tern &nosuch; plover");
    expect(titled("Tern &#0; &#9999999; plover")).toBe("Tern &#0; &#9999999; plover");
    expect(readEmbedded("{ “format”: nothing }").ok).toBe(false);
  });
});
