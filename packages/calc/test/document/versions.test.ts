import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { buildAsMeasured, buildAt, parseBuild, readBuild } from "../../src/document/index.js";
import type { Build } from "../../src/drivetrain/index.js";
import { difference, evaluate } from "../../src/evaluate/index.js";
import { document, pair, read, told } from "../make.js";

type Data = Record<string, unknown>;

const ring = pair("ring", 12, 35, { set: true });
const lever = {
  id: "lever",
  kind: "selectable",
  selected: "low",
  positions: [
    { id: "low", stages: [pair("low-pair", 10, 30)] },
    { id: "off", released: "free" },
  ],
};
const made = (more: Data) =>
  document(
    [pair("primary", 15, 62, { module: "0.8" }), { id: "row", kind: "train", teeth: [18, 31, 45] }, lever],
    { front: { stages: [], wheel: { diameter: "120 mm" } }, rear: { stages: [ring], wheel: { diameter: "110 mm" } } },
    { target: { from: 10, to: 50 }, battery: { cells: 3, chemistry: "lipo" }, ...more },
  );
const found = (json: unknown) => told(readBuild(json).findings);
const alternative = (changes: Data) => made({ alternatives: [{ id: "other", changes }] });

/** Every alternative and revision that a build tells, made. */
const all = (build: Build) => [
  ...(build.alternatives ?? []).map(({ id }) => buildAt(build, id)),
  ...(build.revisions ?? []).map(({ number }) => buildAt(build, `revision-${number}`)),
];

describe("an alternative", () => {
  const at = "/alternatives/0/changes";

  it.each<[string, Data, string[]]>([
    ["half a set", { "ring.driver": 11 }, [`set-in-part at ${at}/ring.driver`]],
    ["the other half", { "ring.driven": 36, "primary.driver": 16 }, [`set-in-part at ${at}/ring.driven`]],
    ["a count of 0", { "primary.driver": 0 }, [`not-count at ${at}/primary.driver`]],
    ["a count in words", { "primary.driver": "eleven" }, [`not-count at ${at}/primary.driver`]],
    ["a count of a row", { "row.teeth.1": -1 }, [`not-count at ${at}/row.teeth.1`]],
    ["a row of one gear", { "row.teeth": [18] }, [`not-a-list at ${at}/row.teeth`]],
    ["a row with one gear left out", { "row.teeth.1": null }, [`not-optional at ${at}/row.teeth.1`]],
    ["a stage without its count", { "primary.driver": null }, [`missing at ${at}/primary.driver`]],
    ["a field that there is not", { "primary.drver": 16 }, [`unknown-key at ${at}/primary.drver`]],
    [
      "a ring too small",
      { "primary.internal": true, "primary.driver": 62 },
      [`ring-too-small at ${at}/primary.internal`],
    ],
    ["two pitches", { "primary.diametralPitch": 32 }, [`pitch-twice at ${at}/primary.diametralPitch`]],
    ["a stage that is none", { primary: { id: "primary", kind: "pair", driver: 15 } }, [`missing at ${at}/primary`]],
    [
      "a stage with a wrong count",
      { primary: { id: "primary", kind: "pair", driver: 15, driven: "many" } },
      [`not-count at ${at}/primary/driven`],
    ],
    ["no stage at all", { primary: null }, [`not-optional at ${at}/primary`]],
    ["a stage under another's name", { primary: pair("row", 1, 2) }, [`id-repeated at ${at}`]],
    ["a kind without its counts", { "primary.kind": "worm" }, []],
    ["a position that is none", { "lever.selected": "high" }, [`position-missing at ${at}/lever.selected`]],
    ["a tyre without a unit", { "front.wheel.diameter": "120" }, [`not-size at ${at}/front.wheel.diameter`]],
    [
      "a tyre that says two things",
      { "front.wheel.loadedDiameter": "118 mm" },
      [`wheel-unclear at ${at}/front.wheel.loadedDiameter`],
    ],
    ["a range backwards", { "target.from": 60 }, [`range-backwards at ${at}/target.from`]],
    ["a headline of nothing", { headline: "mid" }, [`missing-reference at ${at}/headline`]],
    ["cells of salt", { "battery.chemistry": "salt" }, [`not-a-choice at ${at}/battery.chemistry`]],
    [
      "digits the wrong way round",
      { rounding: { minimumFractionDigits: 3, maximumFractionDigits: 2 } },
      [`rounding-backwards at ${at}/rounding/maximumFractionDigits`],
    ],
    ["no format", { format: null }, [`missing at ${at}`]],
    ["an output from nowhere", { "rear.from": "shaft" }, [`missing-reference at ${at}/rear.from`]],
  ])("cannot be %s", (name, changes, expected) => {
    const reading = readBuild(alternative(changes));
    expect(reading.ok).toBe(false);
    if (expected.length) expect(told(reading.findings), name).toEqual(expected);
    for (const { at: place } of reading.findings) expect(place.startsWith(at)).toBe(true);
    // The Schema cannot see it.
    expect(reading.findings.every((one) => one.about === "meaning")).toBe(true);
  });

  it.each<[string, Data]>([
    ["both counts of a set", { "ring.driver": 11, "ring.driven": 36 }],
    ["a set that is no set any more", { "ring.driver": 11, "ring.set": null }],
    ["a whole stage", { ring: { id: "ring", kind: "published", value: "2.9" } }],
    ["a stage under a new name", { primary: pair("first", 1, 2) }],
    ["another position", { "lever.selected": "off" }],
    ["one gear of a row", { "row.teeth.1": 30 }],
    ["a label taken away", { "primary.module": null }],
    ["a tyre", { "front.wheel.diameter": "4.7 in", "rear.wheel": { travel: { turns: 10, length: "3.5 m" } } }],
    ["a range", { "target.from": 5, "target.to": 9 }],
    ["an open centre", { centre: { kind: "differential" } }],
    ["nothing", {}],
  ])("can be %s", (_, changes) => {
    const build = read(alternative(changes));
    const [version] = all(build);
    expect(version!.findings).toEqual([]);
    expect(version!.ok).toBe(true);
    expect(evaluate(version!.build!).outputs).toHaveLength(2);
    expect(version!.build).not.toHaveProperty("alternatives");
  });

  it("is tried on the article alone, not on other alternatives", () => {
    const build = read(
      made({
        alternatives: [
          { id: "printed", changes: { primary: { id: "primary", kind: "published", value: "4.1" } } },
          { id: "smaller", changes: { "primary.driver": 14 } },
          { id: "opened", changes: { lever: pair("lever", 1, 2) } },
          { id: "low-again", changes: { "low-pair.driver": 11 } },
        ],
      }),
    );
    expect(all(build).map(({ ok }) => ok)).toEqual([true, true, true, true]);
  });

  it("is told among all that is wrong with the others", () => {
    const json = made({
      alternatives: [
        { id: "a", changes: { "primary.driver": 0 } },
        { id: "b", changes: { "primary.driver": 16 } },
        { id: "c", changes: { "ring.driver": 11 } },
      ],
    });
    expect(found(json)).toEqual([
      "not-count at /alternatives/0/changes/primary.driver",
      "set-in-part at /alternatives/2/changes/ring.driver",
    ]);
  });
});

describe("an earlier revision", () => {
  const revisions = (...list: Data[]) => made({ revision: { number: 4 }, revisions: list });

  it("is made from the next later one, by changes as a document writes them", () => {
    const build = read(
      revisions(
        { number: 3, note: "as measured", back: [{ set: { primary: { driver: 23, driven: 53 } } }] },
        { number: 2, date: "2026-08-02", back: [{ set: "row.teeth.1", to: 30 }, { remove: "lever" }] },
        {
          number: 1,
          back: [
            { set: { "primary.driver": 20, "rear.wheel": { diameter: "100 mm" } } },
            { insert: pair("first", 1, 2), at: 0 },
          ],
        },
      ),
    );
    const at = (id: string) => {
      const reading = buildAt(build, id);
      expect(reading.findings).toEqual([]);
      return reading.build!;
    };
    const counts = (id: string) =>
      at(id).stages.map((stage) => ("driver" in stage ? [stage.driver, stage.driven] : stage.id));
    expect(counts("revision-4")).toEqual([[15, 62], "row", "lever"]);
    expect(at("revision-4")).toBe(build);
    expect(counts("revision-3")).toEqual([[23, 53], "row", "lever"]);
    expect(counts("revision-2")).toEqual([[23, 53], "row"]);
    expect(counts("revision-1")).toEqual([[1, 2], [20, 53], "row"]);
    expect(at("revision-3").revision).toEqual({ number: 3, note: "as measured" });
    expect(at("revision-2").revision).toEqual({ number: 2, date: "2026-08-02" });
    expect(at("revision-2").outputs[1]!.wheel).toEqual({ diameter: "110 mm" });
    expect(at("revision-1").outputs[1]!.wheel).toEqual({ diameter: "100 mm" });
    expect(at("revision-1").outputs[1]!.stages).toHaveLength(1);
  });

  it("does not care in which order it is written", () => {
    const list = [3, 1, 2].map((number) => ({ number, back: [{ set: "primary.driver", to: 10 + number }] }));
    const build = read(revisions(...list));
    expect([1, 2, 3].map((n) => buildAt(build, `revision-${n}`).build!.stages[0])).toMatchObject([
      { driver: 11 },
      { driver: 12 },
      { driver: 13 },
    ]);
  });

  it("takes an id's fields for these alone, and whatever has an id for all of it", () => {
    const build = read(
      revisions({
        number: 1,
        back: [
          {
            set: {
              front: { label: "Bow" },
              primary: { id: "primary", kind: "pair", driver: 1, driven: 2 },
              battery: { cells: 2 },
            },
          },
        ],
      }),
    );
    const first = buildAt(build, "revision-1").build!;
    expect(first.outputs[0]).toEqual({ ...build.outputs[0], label: "Bow" });
    expect(first.stages[0]).toEqual(pair("primary", 1, 2));
    expect(first.battery).toEqual({ cells: 2 });
  });

  it.each<[string, Data[], string[]]>([
    [
      "with half a set",
      [{ number: 1, back: [{ set: "ring.driver", to: 11 }] }],
      ["set-in-part at /revisions/0/back/0"],
    ],
    [
      "with a count of 0",
      [{ number: 1, back: [{ set: { primary: { driver: 0 } } }] }],
      ["not-count at /revisions/0/back/0"],
    ],
    [
      "that takes away what nothing is",
      [{ number: 1, back: [{ remove: "primry" }] }],
      ["not-a-stage at /revisions/0/back"],
    ],
    [
      "whose later one cannot be made: that is told, and no more",
      [
        { number: 1, back: [{ set: "primary.driver", to: 0 }] },
        { number: 2, back: [{ set: "primary.driven", to: 0 }] },
      ],
      ["not-count at /revisions/1/back/0"],
    ],
    [
      "that goes on from a stage which the later one has taken away",
      [
        { number: 2, back: [{ remove: "primary" }] },
        { number: 1, back: [{ set: "primary.driver", to: 12 }] },
      ],
      ["missing-address at /revisions/1/back"],
    ],
    [
      "numbered twice",
      [
        { number: 1, back: [] },
        { number: 1, back: [] },
      ],
      ["id-repeated at /revisions/1/number"],
    ],
    ["that is later than the build", [{ number: 4, back: [] }], ["revision-late at /revisions/0/number"]],
    ["that does nothing", [{ number: 1, back: [{}] }], ["change-unclear at /revisions/0/back/0"]],
    [
      "that does two things",
      [{ number: 1, back: [{ remove: "row", move: "row", at: 0 }] }],
      ["change-unclear at /revisions/0/back/0"],
    ],
    [
      "that sets to nothing",
      [{ number: 1, back: [{ set: "primary.driver" }] }],
      ["change-unclear at /revisions/0/back/0"],
    ],
    ["that sets nowhere", [{ number: 1, back: [{ set: 5, to: 5 }] }], ["change-unclear at /revisions/0/back/0"]],
    [
      "that inserts nowhere",
      [{ number: 1, back: [{ insert: pair("n", 1, 2) }] }],
      ["change-unclear at /revisions/0/back/0"],
    ],
  ])("cannot be one %s", (_, list, expected) => expect(found(revisions(...list))).toEqual(expected));

  it("is compared with what came after it like any other build", () => {
    const build = read(revisions({ number: 1, back: [{ set: "primary.driver", to: 20 }] }));
    const [change] = difference(buildAt(build, "revision-1").build!, build);
    expect(change!.reduction.low.toFraction()).toBe("1/3");
  });
});

describe("a version by its name", () => {
  const build = read(
    made({
      revision: { number: 2 },
      alternatives: [{ id: "deeper", changes: { "primary.driver": 14 } }],
      revisions: [{ number: 1, back: [{ set: "primary.driver", to: 23 }] }],
      references: [
        { id: "as-sold", label: "As sold", build: document([pair("primary", 23, 53)], { front: [], rear: [] }) },
        { id: "elsewhere", src: "other.json" },
      ],
    }),
  );
  const driver = (id: string) => (buildAt(build, id).build?.stages[0] as { driver?: number } | undefined)?.driver;

  it("is the article, an alternative, a revision, or a build that is referred to", () => {
    expect(["article", "deeper", "revision-1", "revision-2", "as-sold"].map(driver)).toEqual([15, 14, 23, 15, 23]);
    expect(buildAt(build, "article").build).toBe(build);
    expect(evaluate(buildAt(build, "as-sold").build!).output("front")!.reduction!.factor.toFraction()).toBe("53/23");
  });

  it("is nothing else, and the nearest are named", () => {
    const nearest = (id: string) => {
      const reading = buildAt(build, id);
      expect([reading.ok, reading.build, reading.findings.map(({ code }) => code)]).toEqual([
        false,
        undefined,
        ["missing-reference"],
      ]);
      return reading.findings[0]!.values.nearest;
    };
    expect(nearest("articel")).toEqual(["article"]);
    expect(nearest("deepr")).toEqual(["deeper"]);
    expect(nearest("revision-3")).toEqual(["revision-1"]);
    expect(nearest("as-sodl")).toEqual(["as-sold"]);
    // What has not been loaded is no version yet.
    for (const id of ["elsewhere", "front", "", "constructor", "revision-", "revision-99999999"]) nearest(id);
  });

  it("has no versions of its own, and is read", () => {
    for (const id of ["deeper", "revision-1"]) {
      const version = buildAt(build, id).build!;
      for (const key of ["alternatives", "revisions", "references", "measurements"])
        expect(version).not.toHaveProperty(key);
      expect(readBuild(version).ok).toBe(true);
      expect(buildAt(version, "deeper").ok).toBe(false);
    }
  });
});

describe("a build that is referred to", () => {
  const whole = document([], { rear: [pair("r", 1, 2)] });
  const referring = (...references: Data[]) => document([], { rear: [] }, { references });

  it("is checked as a whole build", () => {
    expect(found(referring({ id: "a", build: whole }))).toEqual([]);
    expect(found(referring({ id: "a", build: { ...whole, headline: "front" } }))).toEqual([
      "missing-reference at /references/0/build/headline",
    ]);
    expect(found(referring({ id: "a", build: document([], { rear: [pair("r", 0, 2)] }) }))).toEqual([
      "not-count at /references/0/build/outputs/0/stages/0/driver",
    ]);
    expect(found(referring({ id: "a", build: { outputs: [] } }))).toEqual([
      "not-a-list at /references/0/build/outputs",
      "missing at /references/0/build",
    ]);
    // Its names are its own.
    expect(found(referring({ id: "a", build: document([pair("rear", 1, 2)], { front: [] }) }))).toEqual([]);
  });

  it("stands here, or somewhere else, and refers to nothing itself", () => {
    expect(found(referring({ id: "a" }))).toEqual(["reference-unclear at /references/0"]);
    expect(found(referring({ id: "a", src: "a.json", build: whole }))).toEqual(["reference-unclear at /references/0"]);
    expect(found(referring({ id: "a", build: referring({ id: "b", src: "b.json" }) }))).toEqual([
      "references-nested at /references/0/build/references",
    ]);
  });

  it("is never mixed in: what it calls the same is compared, by name", () => {
    const build = read(referring({ id: "a", build: whole }));
    const [change] = difference(buildAt(build, "a").build!, build);
    expect([change!.id, change!.reduction.low.toFraction()]).toEqual(["rear", "-1/2"]);
  });
});

describe("a measurement", () => {
  const measured = (values: Data) =>
    made({ measurements: [{ what: "rear", motorTurns: 40, wheelTurns: 1, with: values }] });

  it("keeps the values that it was made with, whatever has been swapped since", () => {
    const build = read(measured({ "ring.driver": 13, "ring.driven": 38 }));
    const before = buildAsMeasured(build, build.measurements![0]!);
    expect(before.build!.outputs[1]!.stages[0]).toMatchObject({ driver: 13, driven: 38 });
    const plain = read(made({ measurements: [{ what: "rear", motorTurns: 40, wheelTurns: 1 }] }));
    expect(buildAsMeasured(plain, plain.measurements![0]!).build).toBe(plain);
  });

  it("was made with values that can be put back", () => {
    const at = "/measurements/0/with";
    expect(found(measured({ "ring.driver": 13 }))).toEqual([`set-in-part at ${at}/ring.driver`]);
    expect(found(measured({ "primary.driver": 0 }))).toEqual([`not-count at ${at}/primary.driver`]);
    expect(found(measured({ "primry.driver": 12 }))).toEqual([`missing-address at ${at}/primry.driver`]);
  });
});

describe("a later minor version", () => {
  const newer = (more: Data) => ({ ...made(more), format: "meshwright-build/1.3" });

  it("is read where all that it uses is known; its other new keys are passed over, and told", () => {
    const json = newer({
      uses: ["pair", "train", "selectable", "alternatives"],
      haptics: 1,
      alternatives: [{ id: "a", changes: {}, why: "x" }],
    });
    const { ok, build, findings } = readBuild(json);
    expect([ok, told(findings)]).toEqual([
      true,
      ["unknown-key-passed at /haptics", "unknown-key-passed at /alternatives/0/why"],
    ]);
    expect(findings.every(({ severity }) => severity === "warning")).toBe(true);
    expect(build).not.toHaveProperty("haptics");
    expect(evaluate(build!).output("rear")!.reduction).toBeDefined();
    expect(readBuild(newer({ taget: 1 })).findings[0]!.message).toBe(
      'There is no "taget" here; nearest: target. It is passed over.',
    );
    expect(readBuild(build).ok).toBe(true);
  });

  it("is refused where it uses what is not known, and by that alone", () => {
    expect(found(newer({ uses: ["pair", "toroid"], stages: [{ id: "a", kind: "toroid" }] }))).toEqual([
      "unknown-use at /uses/1",
    ]);
    expect(readBuild(newer({ uses: ["pairs"] })).findings[0]!.values.nearest).toEqual(["pair"]);
    // A kind is always used.
    expect(found(newer({ stages: [{ id: "a", kind: "toroid" }] }))).toEqual(["unknown-kind at /stages/0/kind"]);
    expect(found(newer({ target: { from: "many", to: 2 } }))).toEqual(["not-positive at /target/from"]);
  });

  it("is not this version: here a key that is not known is an error, and so is a use", () => {
    expect(found(made({ haptics: 1 }))).toEqual(["unknown-key at /haptics"]);
    expect(found(made({ uses: ["pair", "measured", "sameAs", "split"] }))).toEqual([]);
    expect(found(made({ uses: ["toroid"] }))).toEqual(["unknown-use at /uses/0"]);
    for (const format of ["meshwright-build/1", "meshwright-build/1.0"])
      expect(found({ ...made({}), format })).toEqual([]);
    for (const format of [
      "meshwright-build/2",
      "meshwright-build/2.0",
      "meshwright-build/10",
      "meshwright-build/1.1.1",
      "meshwright-build/1.01",
    ])
      expect(found({ ...made({}), format }), format).toEqual(["newer-format at /format"]);
    expect(found({ ...made({}), format: "meshwright-build/1." })).toEqual(["newer-format at /format"]);
    expect(found({ ...made({}), format: "meshwright/1" })).toEqual(["not-format at /format"]);
  });
});

describe("the starter builds", () => {
  it.each(["limpet", "turnstone", "dunlin"])("%s can be made in every version", (name) => {
    const build = parseBuild(readFileSync(new URL(`../../../../seeds/${name}.json`, import.meta.url), "utf8"));
    for (const reading of all(build))
      expect(reading.findings.filter(({ severity }) => severity === "error")).toEqual([]);
  });
});
