import { describe, expect, it } from "vitest";
import { readBuild } from "@meshwright/calc/document";
import {
  fileText,
  handedOut,
  merging,
  newNotebook,
  openText,
  Session,
  totalsText,
  type Notebook,
} from "../../src/model/index.js";

// Ruff: 16 to 64, then rear 10 to 30. One file went to a friend; both went on.

function ruff(): Notebook {
  const reading = readBuild({
    format: "meshwright-build/1",
    title: "Ruff",
    stages: [{ id: "gears", label: "Motor gears", kind: "pair", driver: 16, driven: 64 }],
    outputs: [{ id: "rear", label: "Rear", stages: [{ id: "ring", kind: "pair", driver: 10, driven: 30 }] }],
    rounding: { minimumFractionDigits: 2, maximumFractionDigits: 2 },
  });
  if (!reading.ok) throw new Error("unreadable");
  const notebook = { ...newNotebook("ruff", "Ruff"), build: reading.build };
  return { ...notebook, ...handedOut(notebook, "file-1", "2026-10-01T10:00:00Z") };
}

const changed = (notebook: Notebook, ...requests: Parameters<Session["change"]>[0][]): Notebook => {
  const session = new Session(notebook);
  for (const request of requests) expect(session.change(request)).toEqual([]);
  return session.notebook;
};

/** Out of the hands of a friend, as a file. */
const sent = (notebook: Notebook): Notebook => {
  const opened = openText(fileText(notebook), "here");
  if (opened.kind !== "notebook") throw new Error("not opened");
  return opened.notebook;
};

const made = (notebook: Notebook | string): Notebook => {
  if (typeof notebook === "string") throw new Error(notebook);
  return notebook;
};

describe("two people's notebooks", () => {
  it("become a third without a question where each changed another stage", () => {
    const mine = changed(ruff(), { "gears.driver": 15 });
    const theirs = sent(
      changed(ruff(), { "ring.driven": 33 }, {
        insert: { id: "hub", kind: "pair", driver: 10, driven: 20 },
        into: "rear",
        at: 1,
      } as never),
    );
    const both = merging(mine, theirs);
    expect(both.since?.key).toBe("file-1");
    expect(both.questions).toEqual([]);
    const third = made(both.make({}, "third"));
    expect(third.id).toBe("third");
    expect(third.title).toBe("Ruff, merged");
    // 64/15 · 33/10 · 2
    expect(totalsText(third.build!)).toBe("28.16");
    expect(both.taken).toContainEqual({ name: "Motor gears", from: "mine" });
  });

  it("are asked about where both changed one stage, nothing preselected", () => {
    const mine = changed(ruff(), { "gears.driver": 15 });
    const theirs = sent(changed(ruff(), { "gears.driven": 66 }));
    const both = merging(mine, theirs);
    expect(both.questions).toEqual([{ key: "stage:gears", name: "Motor gears", mine: "15 → 64", theirs: "16 → 66" }]);
    expect(both.make({}, "third")).toBe("Not every question is answered.");
    expect(totalsText(made(both.make({ "stage:gears": "theirs" }, "third")).build!)).toBe("12.38");
    expect(totalsText(made(both.make({ "stage:gears": "mine" }, "third")).build!)).toBe("12.80");
  });

  it("are asked about everything that differs where no file is common to both", () => {
    const { handed: _, ...mine } = changed(ruff(), { "gears.driver": 15 });
    const theirs = sent(changed(ruff(), { "ring.driven": 33 }));
    const both = merging(mine, theirs);
    expect(both.since).toBeUndefined();
    expect(both.questions.map(({ key }) => key).sort()).toEqual(["stage:gears", "stage:ring"]);
  });

  it("are asked about in words, without a question where a part lies on one shelf only", () => {
    const other = readBuild({
      format: "meshwright-build/1",
      title: "Knot",
      stages: [{ id: "pair", label: "Gears", kind: "pair", driver: 13, driven: 60, module: "0.8" }],
      outputs: [{ id: "drive", label: "Wheels", stages: [], wheel: { diameter: "90 mm" } }],
      parts: [{ id: "p13", name: "Pinion 13", is: "pinion", teeth: 13, stage: "pair" }],
      mounts: [{ stage: "pair", from: "29 mm", to: "32 mm" }],
      target: { from: "4", to: "5.2" },
    });
    if (!other.ok) throw new Error("unreadable");
    const { handed: _, ...mine } = ruff();
    const { questions } = merging(mine, { ...newNotebook("knot", "Knot"), build: other.build });
    const said = Object.fromEntries(questions.map(({ name, mine: one, theirs }) => [name, [one, theirs]]));
    expect(said).toMatchObject({
      "Its name": ["Ruff", "Knot"],
      "How figures are rounded": ["2 digits after the point", "not there"],
      "The range that you want": ["not there", "4 to 5.2"],
      "Which stages stand after the motor, and their order": ["Motor gears 16 → 64", "Gears 13 → 60"],
      "Which axles there are": ["Rear", "Wheels"],
      "How Gears 13 → 60 is mounted": ["not there", "29 mm to 32 mm"],
      Wheels: ["not there", "diameter 90 mm"],
    });
    expect(JSON.stringify(said)).not.toMatch(/part|p13|Digits|[{:]"?(id|stage)\b/);
  });

  it("keep what was noted in either, once", () => {
    const note = { of: "gears", text: "32.1 mm", date: "2026-10-02", with: { "gears.driver": 16 } };
    const mine = { ...ruff(), bench: [note] };
    const theirs = sent({
      ...ruff(),
      bench: [note, { ...note, text: "32.2 mm" }],
      runs: [{ date: "2026-10-03", motor: "61" }],
    });
    const third = made(merging(mine, theirs).make({}, "third"));
    expect(third.bench).toHaveLength(2);
    expect(third.runs).toHaveLength(1);
  });

  it("make no drivetrain that cannot be read: an axle that the comparison needs", () => {
    const two = changed(ruff(), [
      { set: "outputs", to: [{ id: "front", label: "Front", stages: [] }, ...ruff().build!.outputs] } as never,
    ]);
    const base = { ...two, ...handedOut({ ...two, handed: [] }, "file-2", "2026-10-01T11:00:00Z") };
    const mine = changed(base, { compare: { of: "front", with: "rear" } } as never);
    const theirs = sent(changed(base, [{ set: "outputs", to: [two.build!.outputs[1]] } as never]));
    expect(merging(mine, theirs).make({}, "third")).toMatch(/^Together they make no drivetrain: /);
  });
});
