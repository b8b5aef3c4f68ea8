import { describe, expect, it } from "vitest";
import { readBuild } from "../../src/document/index.js";
import { isReserved, shapes } from "../../src/drivetrain/index.js";
import { document, pair, told } from "../make.js";

const found = (json: unknown) => told(readBuild(json).findings);

/** A document in which one name is given to a thing of some sort. */
const homes: Record<string, (id: string) => readonly [json: unknown, at: string]> = {
  stage: (id) => [document([pair(id, 1, 2)], { rear: [] }), "/stages/0/id"],
  "stage of an output": (id) => [document([], { rear: [pair(id, 1, 2)] }), "/outputs/0/stages/0/id"],
  "stage inside a position": (id) => [
    document([{ id: "box", kind: "selectable", selected: "a", positions: [{ id: "a", stages: [pair(id, 1, 2)] }] }], {
      rear: [],
    }),
    "/stages/0/positions/0/stages/0/id",
  ],
  output: (id) => [document([], { [id]: [] }), "/outputs/0/id"],
  branch: (id) => [document([], { rear: [] }, { branches: [{ id, stages: [] }] }), "/branches/0/id"],
  alternative: (id) => [document([], { rear: [] }, { alternatives: [{ id, changes: {} }] }), "/alternatives/0/id"],
  reference: (id) => [document([], { rear: [] }, { references: [{ id, src: "other.json" }] }), "/references/0/id"],
};

describe("a name", () => {
  const kept = [...Object.keys(shapes.build!), "article", "mean", "revision-1", "revision-20"];

  it.each(Object.keys(homes))("of a %s is none that the document, the article or a revision bears", (what) => {
    for (const id of kept) {
      const [json, at] = homes[what]!(id);
      // An output or a stage may not be written in capitals anyway.
      expect(found(json), id).toEqual([`${/[A-Z]/.test(id) ? "not-id" : "id-reserved"} at ${at}`]);
      expect(isReserved(id)).toBe(true);
    }
    for (const id of ["front", "article-2", "revision-one", "means"])
      expect(found(homes[what]!(id)[0]), id).toEqual([]);
  });

  it.each(Object.keys(homes))("of a %s has single hyphens", (what) => {
    for (const id of ["a--b", "a---b", "a--"]) {
      const [json, at] = homes[what]!(id);
      expect(found(json), id).toEqual([`not-id at ${at}`]);
    }
    for (const id of ["a-b", "a-b-c", "a-1"]) expect(found(homes[what]!(id)[0]), id).toEqual([]);
  });

  it("is given once, whatever bears it", () => {
    const clash = (more: object) => found(document([pair("primary", 1, 2)], { rear: [] }, more as never));
    expect(clash({ alternatives: [{ id: "primary", changes: {} }] })).toEqual(["id-repeated at /alternatives/0/id"]);
    expect(clash({ alternatives: [{ id: "rear", changes: {} }] })).toEqual(["id-repeated at /alternatives/0/id"]);
    expect(clash({ references: [{ id: "rear", src: "a.json" }] })).toEqual(["id-repeated at /references/0/id"]);
    expect(
      clash({ alternatives: [{ id: "other", changes: {} }], references: [{ id: "other", src: "a.json" }] }),
    ).toEqual(["id-repeated at /references/0/id"]);
    expect(clash({ branches: [{ id: "rear", stages: [] }] })).toEqual(["id-repeated at /outputs/0/id"]);
  });

  it("of a key that the document carries along is taken as well", () => {
    expect(found(document([pair("x-note", 1, 2)], { rear: [] }, { "x-note": 1 }))).toEqual([
      "id-reserved at /stages/0/id",
    ]);
    expect(found(document([pair("x-note", 1, 2)], { rear: [] }))).toEqual([]);
  });

  it("of a position is its own within its stage, and of a mode among the modes", () => {
    const box = (id: string, ids: readonly string[]) => ({
      id,
      kind: "selectable",
      selected: ids[0],
      positions: ids.map((one) => ({ id: one, stages: [] })),
    });
    const modes = (...ids: string[]) => ({ modes: ids.map((id) => ({ id, positions: {} })) });
    expect(
      found(document([box("a", ["low", "high"]), box("b", ["low", "a"])], { low: [] }, modes("low", "a"))),
    ).toEqual([]);
    expect(found(document([box("a", ["low", "low"])], { rear: [] }))).toEqual(["id-repeated at /stages/0/positions"]);
    expect(found(document([], { rear: [] }, modes("pull", "run", "pull")))).toEqual(["id-repeated at /modes/2/id"]);
  });

  it("of a part is its own among the parts, and what is fitted is one of them", () => {
    const parts = [
      { id: "p15", is: "pinion", teeth: 15 },
      { id: "s62", is: "spur", teeth: 62, stage: "primary" },
    ];
    const fitted = (...ids: string[]) => document([pair("primary", 15, 62, { fitted: ids })], { rear: [] }, { parts });
    expect(found(fitted("p15", "s62"))).toEqual([]);
    expect(found(fitted("p51"))).toEqual(["missing-reference at /stages/0/fitted/0"]);
    expect(readBuild(fitted("p51")).findings[0]!.values.nearest).toEqual(["p15"]);
    expect(found(fitted("p15", "p15"))).toEqual(["id-repeated at /stages/0/fitted/1"]);
    expect(found(document([], { rear: [] }, { parts: [parts[0], parts[0]] }))).toEqual(["id-repeated at /parts/1/id"]);
    // A part that is meant for a place which is not there is odd, and no more.
    const meant = readBuild(
      document([], { rear: [] }, { parts: [parts[1], { id: "t", is: "wheel", stage: "rear", diameter: "124 mm" }] }),
    );
    expect([meant.ok, told(meant.findings)]).toEqual([true, ["missing-reference at /parts/0/stage"]]);
    expect(meant.findings[0]!.severity).toBe("warning");
  });
});
