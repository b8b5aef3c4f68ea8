import fc from "fast-check";
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { buildFromAttributes, parseBuild, readBuild } from "@meshwright/calc/document";
import { stagesOf, type Build } from "@meshwright/calc/drivetrain";
import { evaluate } from "@meshwright/calc/evaluate";
import { figureOf } from "@meshwright/calc/report";
import { attributesOf, elementsOf } from "../../../../tests/demo/page.js";
import { parseFragment, type DefaultTreeAdapterTypes } from "parse5";
import { anyBuild } from "../../../calc/test/document/any-build.js";
import { postOf, postToHtml } from "../../src/writing/index.js";

const limpet = parseBuild(readFileSync(new URL("../../../../seeds/limpet.json", import.meta.url), "utf8"));
const blockOf = (tag: string) => postOf({ type: "doc", content: [{ type: "drawn", attrs: { tag, ask: {} } }] });
const words = postOf({ type: "doc", content: [{ type: "paragraph", content: [{ type: "text", text: "Words" }] }] });

/** The drivetrain that a post is handed out with, and how. */
function handed(build: Build, doc = words) {
  const html = postToHtml(doc, build);
  const json = /<mw-build><script type="application\/json">(.*)<\/script>/.exec(html)?.[1];
  if (json) return { how: "data", build: readBuild(json.replace(/\\u003c/g, "<")).build!, html } as const;
  const all = elementsOf(parseFragment(html) as unknown as DefaultTreeAdapterTypes.Element);
  const attributes = attributesOf(all.find(({ tagName }) => tagName === "mw-build")!);
  const reading = buildFromAttributes(attributes);
  expect(reading.ok).toBe(true);
  return { how: "attributes", build: reading.build!, attributes, html } as const;
}

const twoRings = (mounts: readonly object[], more: object = {}) =>
  parseBuild({
    format: "meshwright-build/1",
    stages: [{ id: "gears", label: "Gears", kind: "pair", driver: 15, driven: 60, module: "0.8" }],
    outputs: [
      {
        id: "front",
        label: "Front",
        stages: [{ id: "fr", label: "Ring", kind: "pair", driver: 13, driven: 38, module: "0.8" }],
      },
      {
        id: "rear",
        label: "Rear",
        wheels: 2,
        stages: [{ id: "rr", label: "Ring", kind: "pair", driver: 12, driven: 35, module: "0.8" }],
      },
    ],
    mounts,
    rounding: { minimumFractionDigits: 2, maximumFractionDigits: 2 },
    ...more,
  });

const size = fc.constantFrom("20 mm", "1.25 in", "31.5 mm");
const anyMount = fc.record(
  {
    from: size,
    to: fc.constantFrom("40 mm", "2 in"),
    knownPair: fc.constantFrom([15, 60], [23, 53]),
    closer: fc.constantFrom("0.1 mm", "0.5 mm"),
    measured: fc.constantFrom("between axes", "over shafts"),
    shaft: fc.constant("5 mm"),
    drivenShaft: fc.constant("6 mm"),
    opening: fc.constant("0.1 mm"),
    walls: fc.constant([{ distance: "20 mm" }]),
    toothSum: fc.constant([70, 80]),
  },
  { requiredKeys: [] },
);
const texts = (_: string, value: unknown): unknown => (typeof value === "number" ? String(value) : value);

type Data = Readonly<Record<string, unknown>>;
const listed = (value: unknown) => value as readonly Data[];
/** Without what no attribute says. */
function plain({ modes: _, branches: _branches, rounding: _rounding, ...rest }: Data): Data {
  const known = (stages: unknown) =>
    listed(stages)
      .filter(({ kind }) => kind !== "selectable")
      .map(({ spans: _spans, ...stage }) => stage);
  const outputs = listed(rest.outputs).map(({ from: _from, motor: _motor, ...output }) => ({
    ...output,
    stages: known(output.stages),
  }));
  return {
    ...rest,
    centre: undefined,
    stages: known(rest.stages),
    outputs,
    alternatives: [],
    revisions: [],
    measurements: [],
  };
}

describe("a drivetrain as attributes", () => {
  it("says of which stage a mount is, where two have one label", () => {
    const { how, build, attributes } = handed(twoRings([{ stage: "rr", from: "18 mm", to: "19.5 mm" }]));
    expect(how).toBe("attributes");
    expect(attributes!.mount).toBe("rear-ring: 18 mm to 19.5 mm");
    expect(build.mounts).toEqual([{ stage: "rear-ring", from: "18 mm", to: "19.5 mm" }]);
  });

  it("says of a mount what one word says", () => {
    const mount = {
      stage: "gears",
      from: "24 mm",
      to: "27 mm",
      measured: "over shafts",
      shaft: "5 mm",
      drivenShaft: "6 mm",
      opening: "0.1 mm",
    };
    const { how, build } = handed(twoRings([mount]));
    expect(how).toBe("attributes");
    expect(build.mounts).toEqual([mount]);
  });

  it.each<[string, Build]>([
    ["walls", twoRings([{ stage: "gears", from: "24 mm", to: "27 mm", walls: [{ distance: "20 mm" }] }])],
    ["holes", twoRings([{ stage: "gears", holes: ["24 mm", "25 mm"] }])],
    ["a tooth sum", twoRings([{ stage: "gears", from: "24 mm", to: "27 mm", toothSum: [70, 80] }])],
    ["a pivot", twoRings([{ stage: "gears", pivot: { distance: "30 mm", arm: "10 mm", from: 30, to: 60 } }])],
    ["a slot with one end", twoRings([{ stage: "gears", to: "27 mm" }])],
    ["a rounding", twoRings([], { rounding: { maximumFractionDigits: 1 } })],
    ["what drives the wheels", limpet],
    ["how many wheels", twoRings([], { outputs: [{ id: "rear", wheels: 4, stages: [] }] })],
    ["a motor's name", twoRings([], { motor: { kv: 1850, label: "Dunlin 36" } })],
  ])("goes as data where it has %s", (_what, build) => {
    const { how, build: read } = handed(build);
    expect(how).toBe("data");
    const { parts: _parts, ...bare } = build;
    expect(read).toEqual(bare);
  });

  it("goes as attributes without an axle's name, unless something of the post says it", () => {
    const named = twoRings([], { outputs: [{ id: "rear", label: "Rear axle", stages: [] }] });
    expect(handed(named).how).toBe("attributes");
    expect(handed(named, blockOf("mw-ratio-summary")).how).toBe("data");
  });

  it("brings its parts along where the post lists them, and only then", () => {
    const listed = handed(limpet, blockOf("mw-parts-list"));
    expect(listed.build.parts?.length).toBeGreaterThan(0);
    expect(listed.html).toContain("Saltmarsh Gears");
    expect(handed(limpet, blockOf("mw-train-drawing")).build.parts).toBeUndefined();
  });

  it("says the same as the notebook, whatever it is", () => {
    let asAttributes = 0;
    fc.assert(
      fc.property(anyBuild, fc.boolean(), fc.array(anyMount, { maxLength: 3 }), (document, isPlain, some) => {
        const reading = readBuild(isPlain ? plain(document) : document);
        if (!reading.ok) return;
        const pairs = stagesOf(reading.build).filter(({ stage }) => stage.kind === "pair");
        const mounts = some.flatMap((mount, n) => (pairs[n] ? [{ stage: pairs[n].stage.id, ...mount }] : []));
        const mounted = readBuild({ ...reading.build, ...(mounts.length && { mounts }) });
        if (!mounted.ok) return;
        const { build } = mounted;
        const { how, build: there } = handed(build);
        if (how === "attributes") asAttributes++;
        const [one, other] = [evaluate(build), evaluate(there)];
        const [ours, theirs] = [stagesOf(build), stagesOf(there)];
        expect(theirs.length).toBe(ours.length);
        build.outputs.forEach(({ id }, n) => {
          const query = { figure: "reduction", of: id } as const;
          expect(figureOf(other, { ...query, of: there.outputs[n]!.id })).toBe(figureOf(one, query));
          expect(there.outputs[n]!.wheel?.diameter).toBe(build.outputs[n]!.wheel?.diameter);
        });
        const placeOf = (places: typeof ours, id: string) => places.findIndex(({ stage }) => stage.id === id);
        const said = ({ mounts: all = [] }: Build, places: typeof ours) =>
          all.map(({ stage, ...mount }) => [placeOf(places, stage), JSON.parse(JSON.stringify(mount), texts)] as const);
        expect(said(there, theirs)).toEqual(said(build, ours));
        expect(JSON.stringify(there.rounding)).toBe(JSON.stringify(build.rounding));
      }),
      { numRuns: 150 },
    );
    expect(asAttributes).toBeGreaterThan(3);
  });
});
