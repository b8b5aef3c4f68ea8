import { describe, expect, it } from "vitest";
import {
  branchesOf,
  finderIn,
  innerOf,
  pathTo,
  placesOf,
  spotOf,
  stagesOf,
  valueAt,
} from "../../src/drivetrain/index.js";
import { readBuild } from "../../src/document/index.js";
import { document, pair, read, told } from "../make.js";

const places = (json: unknown) => told(readBuild(json).findings);
const plain = (more: object) =>
  document([pair("primary", 15, 62)], { front: [pair("f", 1, 2)], rear: [] }, more as never);
const box = (more: object) => ({
  id: "box",
  kind: "selectable",
  selected: "low",
  positions: [{ id: "low", stages: [] }],
  ...more,
});

describe("what the shape cannot show", () => {
  it.each<[string, object, string[]]>([
    ["a stage named as an output", plain({ stages: [pair("rear", 1, 2)] }), ["id-repeated at /outputs/1/id"]],
    ["a branch named as a stage", plain({ branches: [{ id: "f", stages: [] }] }), ["id-repeated at /branches/0/id"]],
    [
      "two outputs of one name",
      {
        ...plain({}),
        outputs: [
          { id: "a", stages: [] },
          { id: "a", stages: [] },
        ],
      },
      ["id-repeated at /outputs/1/id"],
    ],
    [
      "a stage inside a position named as one outside",
      plain({ stages: [pair("a", 1, 2), box({ positions: [{ id: "low", stages: [pair("a", 1, 2)] }] })] }),
      ["id-repeated at /stages/1/positions/0/stages/0/id"],
    ],
    [
      "two modes of one name",
      plain({
        modes: [
          { id: "a", positions: {} },
          { id: "b", positions: {} },
          { id: "a", positions: {} },
        ],
      }),
      ["id-repeated at /modes/2/id"],
    ],
    [
      "two alternatives of one name",
      plain({
        alternatives: [
          { id: "a", changes: {} },
          { id: "a", changes: {} },
        ],
      }),
      ["id-repeated at /alternatives/1/id"],
    ],
    ["an output from nowhere", document([], { rear: { from: "shaft" } }), ["missing-reference at /outputs/0/from"]],
    [
      "an output from an output",
      document([], { front: [], rear: { from: "front" } }),
      ["missing-reference at /outputs/1/from"],
    ],
    [
      "a branch from nowhere",
      document([], { rear: { from: "a" } }, { branches: [{ id: "a", from: "b", stages: [] }] }),
      ["missing-reference at /branches/0/from"],
    ],
    [
      "a branch from itself",
      document([], { rear: [] }, { branches: [{ id: "a", from: "a", stages: [] }] }),
      ["reference-loop at /branches/0/from"],
    ],
    [
      "branches in a ring, and an output from it",
      document(
        [],
        { rear: { from: "a" } },
        {
          branches: [
            { id: "a", from: "b", stages: [] },
            { id: "b", from: "a", stages: [] },
            { id: "c", stages: [] },
          ],
        },
      ),
      ["reference-loop at /branches/0/from", "reference-loop at /branches/1/from", "reference-loop at /outputs/0/from"],
    ],
    ["a wheel that says nothing", document([], { rear: { wheel: {} } }), ["wheel-unclear at /outputs/0/wheel"]],
    [
      "a wheel with a remark only",
      document([], { rear: { wheel: { "x-note": 1 } } }),
      ["wheel-unclear at /outputs/0/wheel"],
    ],
    [
      "a wheel that says two things",
      document([], { rear: { wheel: { diameter: "1 mm", loadedDiameter: "1 mm" } } }),
      ["wheel-unclear at /outputs/0/wheel"],
    ],
    [
      "a target of nothing",
      plain({ target: { from: 1, to: 2, output: "mid" } }),
      ["missing-reference at /target/output"],
    ],
    ["a target backwards", plain({ target: { from: "46.1", to: 46 } }), ["range-backwards at /target"]],
    [
      "a comparison with nothing",
      plain({ compare: { of: "mid", with: "end" } }),
      ["missing-reference at /compare/of", "missing-reference at /compare/with"],
    ],
    ["a headline of nothing", plain({ headline: "primary" }), ["missing-reference at /headline"]],
    [
      "a share of nothing",
      plain({ centre: { kind: "differential", share: { front: 1, mid: 2, rear: 1 } } }),
      ["missing-reference at /centre/share/mid"],
    ],
    [
      "a share for one of two",
      plain({ centre: { kind: "differential", share: { front: 1 } } }),
      ["share-incomplete at /centre/share"],
    ],
    [
      "a share for an output behind a branch",
      document(
        [],
        { front: [], rear: { from: "shaft" } },
        {
          branches: [{ id: "shaft", stages: [], split: { kind: "differential", share: { front: 1, rear: 1 } } }],
          centre: { kind: "differential", share: { front: 1, rear: 1 } },
        },
      ),
      [
        "missing-reference at /centre/share/rear",
        "share-incomplete at /centre/share",
        "missing-reference at /branches/0/split/share/front",
      ],
    ],
    [
      "a share for an output with a motor of its own",
      document(
        [],
        { front: { motor: { kv: 1 } }, rear: [] },
        { centre: { kind: "differential", share: { front: 1, rear: 1 } } },
      ),
      ["missing-reference at /centre/share/front"],
    ],
    [
      "an output with a motor of its own that comes from a branch",
      document([], { rear: { motor: { kv: 1 }, from: "shaft" } }, { branches: [{ id: "shaft", stages: [] }] }),
      ["driven-twice at /outputs/0/from"],
    ],
    [
      "a measurement of nothing",
      plain({ measurements: [{ what: "primary", motorTurns: 1, wheelTurns: 1 }] }),
      ["missing-reference at /measurements/0/what"],
    ],
    ["a mount of nothing", plain({ mounts: [{ stage: "rear" }] }), ["missing-reference at /mounts/0/stage"]],
    [
      "a mode of no stage",
      plain({ modes: [{ id: "a", positions: { box: "low" } }] }),
      ["missing-reference at /modes/0/positions/box"],
    ],
    [
      "a mode of a stage without positions",
      plain({ modes: [{ id: "a", positions: { primary: "low" } }] }),
      ["missing-reference at /modes/0/positions/primary"],
    ],
    [
      "a mode of no position",
      plain({ stages: [box({})], modes: [{ id: "a", positions: { box: "high" } }] }),
      ["missing-reference at /modes/0/positions/box"],
    ],
    [
      "an alternative to nothing",
      plain({ alternatives: [{ id: "a", changes: { "primary.driver": 1, "none.driver": 1 } }] }),
      ["missing-address at /alternatives/0/changes/none.driver"],
    ],
    [
      "two positions of one name",
      plain({
        stages: [
          box({
            positions: [
              { id: "low", stages: [] },
              { id: "low", stages: [] },
            ],
          }),
        ],
      }),
      ["id-repeated at /stages/0/positions"],
    ],
    [
      "a position that is neither",
      plain({ stages: [box({ positions: [{ id: "low" }] })] }),
      ["position-unclear at /stages/0/positions"],
    ],
    [
      "a position that is both",
      plain({ stages: [box({ positions: [{ id: "low", stages: [], released: "free" }] })] }),
      ["position-unclear at /stages/0/positions"],
    ],
    [
      "a ring no larger than its gear",
      plain({ stages: [pair("a", 30, 30, { internal: true })] }),
      ["ring-too-small at /stages/0/driven"],
    ],
  ])("%s", (_, json, expected) => expect(places(json)).toEqual(expected));

  it("is silent about what is right", () => {
    expect(
      places(
        document(
          [pair("primary", 15, 62, { fitted: ["p15"] }), box({}), pair("ring", 29, 30, { internal: true })],
          {
            front: { from: "b", wheel: { travel: { turns: 10, length: "3.72 m" }, "x-note": 1 } },
            rear: { from: "b", wheel: { diameter: "120 mm" } },
          },
          {
            branches: [
              { id: "a", stages: [] },
              { id: "b", from: "a", stages: [], split: { kind: "differential", share: { front: 3, rear: "2" } } },
            ],
            modes: [{ id: "primary", positions: { box: "low" } }],
            target: { from: 46, to: "46.0", output: "rear" },
            compare: { of: "front", with: "rear" },
            headline: "rear",
            centre: { kind: "differential" },
            parts: [{ id: "p15", is: "pinion", teeth: 15, stage: "primary" }],
            measurements: [{ what: "rear", motorTurns: 40, wheelTurns: { from: "0.90", to: "0.91" } }],
            mounts: [{ stage: "primary" }],
            alternatives: [{ id: "other", changes: { "primary.driver": 1, wheelbase: "1 m", "rear.wheel": null } }],
          },
        ),
      ),
    ).toEqual([]);
  });

  it("names what there is to choose from", () => {
    const message = (json: unknown) => readBuild(json).findings[0]!.message;
    expect(message(plain({ headline: "mid" }))).toBe('There is no "mid". Expected one of front, rear.');
    expect(message(plain({ mounts: [{ stage: "spur" }] }))).toBe('There is no "spur". Expected one of primary, f.');
    expect(message(plain({ target: { from: 46, to: 38 } }))).toBe("46 to 38; expected the smaller first.");
    expect(message(document([], { rear: { from: "a" } }, { branches: [{ id: "a", from: "a", stages: [] }] }))).toBe(
      '"a" comes back to itself.',
    );
    expect(message(plain({ stages: [pair("f", 1, 2)] }))).toBe('"f" is used twice; expected ids of their own.');
    expect(message(plain({ alternatives: [{ id: "a", changes: { "strange.y": 1 } }] }))).toBe(
      "Nothing is at strange.y.",
    );
    expect(message(plain({ alternatives: [{ id: "a", changes: { "primry.driver": 1 } }] }))).toBe(
      "Nothing is at primry.driver; nearest: primary.driver.",
    );
  });
});

describe("finding one's way", () => {
  const build = read(
    document(
      [
        pair("primary", 15, 62),
        box({
          positions: [
            { id: "low", stages: [pair("low-pair", 3, 4)] },
            { id: "off", released: "held" },
            { id: "high", stages: [pair("high-pair", 4, 3)] },
          ],
        }),
      ],
      {
        front: { from: "b", stages: [pair("f", 1, 2)] },
        rear: { motor: { kv: 1 }, stages: [pair("r", 1, 2)] },
        mid: [],
      },
      {
        branches: [
          { id: "b", from: "a", stages: [pair("b-pair", 1, 2)] },
          { id: "a", stages: [] },
        ],
        title: "Title",
      },
    ),
  );

  it("lists every stage from the motor outwards, with its place", () => {
    expect(stagesOf(build).map(({ stage, pointer }) => [stage.id, pointer])).toEqual([
      ["primary", "/stages/0"],
      ["box", "/stages/1"],
      ["low-pair", "/stages/1/positions/0/stages/0"],
      ["high-pair", "/stages/1/positions/2/stages/0"],
      ["b-pair", "/branches/0/stages/0"],
      ["f", "/outputs/0/stages/0"],
      ["r", "/outputs/1/stages/0"],
    ]);
    for (const { stage, list, index } of stagesOf(build)) expect(list[index]).toBe(stage);
  });

  it("goes from the motor to each output, through every branch; from its own motor straight", () => {
    const [front, rear, mid] = build.outputs;
    expect(branchesOf(build, front!).map((branch) => branch.id)).toEqual(["a", "b"]);
    expect(pathTo(build, front!)).toEqual([build.stages, [], [build.branches![0]!.stages[0]], front!.stages]);
    expect(pathTo(build, rear!)).toEqual([rear!.stages]);
    expect(pathTo(build, mid!)).toEqual([build.stages, []]);
  });

  it("shows what stands for a stage", () => {
    const [primary, selectable] = build.stages;
    expect(innerOf(primary!)).toBeUndefined();
    expect(innerOf(selectable!)).toEqual([pair("low-pair", 3, 4)]);
    expect(innerOf(selectable!, { box: "off" })).toBe("held");
    expect(innerOf(selectable!, { box: "high" })).toEqual([pair("high-pair", 4, 3)]);
    expect(innerOf(selectable!, { other: "high" })).toEqual([pair("low-pair", 3, 4)]);
  });

  it("finds addresses with the pointer and the stage that each belongs to", () => {
    const find = finderIn(build);
    for (const [address, pointer, stage] of [
      ["low-pair.driver", "/stages/1/positions/0/stages/0/driver", "low-pair"],
      ["box.positions.1", "/stages/1/positions/1", "box"],
      ["b", "/branches/0", undefined],
      ["front.from", "/outputs/0/from", undefined],
      ["rear.motor.kv", "/outputs/1/motor/kv", undefined],
      ["title", "/title", undefined],
      ["wheelbase", "/wheelbase", undefined],
      ["primary.label", "/stages/0/label", "primary"],
    ] as const) {
      expect([find(address)?.pointer, find(address)?.stage?.id]).toEqual([pointer, stage]);
      expect(spotOf(build, address)).toEqual(find(address));
      expect(find.value(address)).toBe(valueAt(build, address));
    }
    expect(find.value("rear.motor.kv")).toBe(1);
    expect(find.value("wheelbase")).toBeUndefined();
    expect(find.value("nowhere")).toBeUndefined();
    expect(find.value("primary.toString")).toBeUndefined();
    expect([...placesOf(build).keys()]).toEqual(expect.arrayContaining(["title", "stages", "front", "a", "high-pair"]));
  });
});

describe("a slot that is counted in teeth", () => {
  const counted = { stage: "primary", knownPair: [23, 53], closer: "0.1 mm", farther: "0.9 mm" };
  const findings = (changes: object, mount: object = counted, more: object = { module: "0.8" }) =>
    told(
      readBuild(
        document(
          [{ ...pair("primary", 15, 62), form: "spur", ...more }],
          { rear: [] },
          { mounts: [mount], alternatives: [{ id: "fine", changes }] },
        ),
      ).findings,
    );

  it("is told of where a version has another pitch, and would carry it along", () => {
    expect(findings({ "primary.module": "0.5" })).toEqual(["slot-moves at /alternatives/0/changes/primary.module"]);
    expect(findings({ "primary.module": null, "primary.diametralPitch": 32 })).toEqual([
      "slot-moves at /alternatives/0/changes/primary.diametralPitch",
    ]);
    const sums = { stage: "primary", toothSum: [75, 80] };
    const helical = { module: "0.8", helixAngle: 20 };
    expect(findings({ "primary.module": "0.80", "primary.helixAngle": null }, counted, helical)).toEqual([
      "slot-moves at /alternatives/0/changes/primary.helixAngle",
    ]);
    expect(findings({ "primary.form": "helical", "primary.helixAngle": 20 }, sums)).toEqual([
      "slot-moves at /alternatives/0/changes/primary.helixAngle",
    ]);
  });

  it("stays where it is with other counts, as lengths, where the version says so, and of a pitch that nobody knew", () => {
    expect(findings({ "primary.driver": 16, "primary.module": "0.8" })).toEqual([]);
    expect(findings({ "primary.module": "0.5" }, { stage: "primary", from: "30 mm", to: "32 mm" })).toEqual([]);
    const kept = { "mounts.0.knownPair": null, "mounts.0.from": "30.3 mm", "mounts.0.to": "31.3 mm" };
    expect(findings({ "primary.module": "0.5", ...kept })).toEqual([]);
    expect(findings({ "primary.module": "0.5" }, counted, {})).toEqual([]);
  });

  it("stays where the version writes the same pitch in another way", () => {
    for (const module of ["0.80", 0.8, "4/5"]) expect(findings({ "primary.module": module })).toEqual([]);
    expect(findings({ "primary.module": null, "primary.diametralPitch": 32 }, counted, { module: "127/160" })).toEqual(
      [],
    );
    expect(findings({ "primary.helixAngle": "0" }, counted, { module: "0.8", helixAngle: 0 })).toEqual([]);
  });
});

describe("a mount", () => {
  const findings = (mounts: readonly object[], stage: object = {}) =>
    told(
      readBuild(
        document(
          [{ ...pair("spur", 15, 62), module: "0.8", ...stage }],
          { rear: [] },
          { mounts: mounts.map((mount) => ({ stage: "spur", ...mount })) },
        ),
      ).findings,
    );

  it("is the only one of its stage", () => {
    expect(findings([{ from: "30 mm", to: "31 mm" }, { walls: [{ distance: "20 mm" }] }])).toEqual([
      "mount-repeated at /mounts/1/stage",
    ]);
  });

  it.each([
    [{ from: "31 mm", to: "30 mm" }, "range-backwards at /mounts/0/to"],
    [{ from: "1.3 in", to: "31 mm" }, "range-backwards at /mounts/0/to"],
    [{ opening: "0.2 mm", openingTo: "0.1 mm" }, "range-backwards at /mounts/0/openingTo"],
    [{ reach: "20 mm", line: { from: "9 mm", to: "4 mm" } }, "range-backwards at /mounts/0/line/to"],
    [{ pivot: { distance: "30 mm", arm: "20 mm", from: 30, to: 200 } }, "angle-out-of-range at /mounts/0/pivot/to"],
    [{ pivot: { distance: "30 mm", arm: "20 mm", from: -1, to: 90 } }, "angle-out-of-range at /mounts/0/pivot/from"],
    [
      { measured: "over shafts", shaft: "40 mm", drivenShaft: "60 mm", from: "50 mm", to: "51 mm" },
      "centre-below-zero at /mounts/0/from",
    ],
    [
      { measured: "over shafts", shaft: "4 mm", drivenShaft: "6 mm", holes: ["36 mm", "5 mm"] },
      "centre-below-zero at /mounts/0/holes/1",
    ],
    [{ knownPair: [23, 53], closer: "31 mm" }, "centre-below-zero at /mounts/0/closer"],
  ])("that cannot be worked out is told of: %j", (mount, told) => {
    expect(findings([mount])).toEqual([told]);
  });

  it("of a ring names a known pair whose ring holds its gear", () => {
    const ring = { internal: true };
    expect(findings([{ knownPair: [62, 15], closer: "0 mm" }], ring)).toEqual([
      "ring-too-small at /mounts/0/knownPair",
    ]);
    expect(findings([{ knownPair: [15, 62], closer: "0 mm" }], ring)).toEqual([]);
    expect(findings([{ knownPair: [62, 15], closer: "0 mm" }])).toEqual([]);
  });

  it("may be a point, swing either way, and be measured over shafts that nobody has told", () => {
    expect(findings([{ from: "30 mm", to: "30 mm", opening: "0.1 mm", openingTo: "0.1 mm" }])).toEqual([]);
    expect(findings([{ pivot: { distance: "30 mm", arm: "20 mm", from: 180, to: 0 } }])).toEqual([]);
    expect(findings([{ measured: "over shafts", from: "3 mm", to: "4 mm" }])).toEqual([]);
    expect(findings([{ measured: "between shafts", shaft: "4 mm", drivenShaft: "6 mm", from: "1 mm" }])).toEqual([]);
  });
});

describe("what says nothing", () => {
  const findings = (more: object) => told(readBuild(document([], { front: [], rear: [] }, more as never)).findings);

  it("is told of: an output against itself, shares of a spool", () => {
    expect(findings({ compare: { of: "front", with: "front" } })).toEqual(["compare-itself at /compare/with"]);
    expect(findings({ centre: { kind: "spool", share: { front: 2, rear: 3 } } })).toEqual([
      "share-on-spool at /centre/share",
    ]);
    expect(findings({ centre: { kind: "differential", share: { front: 2, rear: 3 } } })).toEqual([]);
  });
});
