import { describe, expect, it } from "vitest";
import { readBuild } from "@meshwright/calc/document";
import {
  changeToWay,
  fileText,
  forgetWay,
  keepWay,
  newNotebook,
  openText,
  putOn,
  Session,
  swapFor,
  takeOff,
  totalsText,
} from "../../src/model/index.js";

// Phalarope: 14 to 56, a box printed 2.5, then a front axle of 12 to 36 and a rear one of 11 to 33 with hubs of 10 to 20.
function phalarope(): Session {
  const pair = (id: string, driver: number, driven: number) => ({ id, kind: "pair", driver, driven });
  const reading = readBuild({
    format: "meshwright-build/1",
    title: "Phalarope",
    stages: [pair("motor-gears", 14, 56), { id: "box", kind: "published", value: "2.5", exact: true }],
    outputs: [
      { id: "front", label: "Front", stages: [pair("front-ring", 12, 36)], wheel: { diameter: "90 mm" }, wheels: 2 },
      { id: "rear", label: "Rear", stages: [pair("rear-ring", 11, 33), pair("hub", 10, 20)], wheels: 2 },
    ],
    compare: { of: "front", with: "rear" },
    rounding: { minimumFractionDigits: 2, maximumFractionDigits: 2 },
  });
  if (!reading.ok) throw new Error(JSON.stringify(reading.findings));
  const session = new Session(newNotebook("test"), () => new Date("2026-10-03T12:00:00Z"));
  session.put({ build: reading.build, title: "Phalarope" }, "opened");
  return session;
}

describe("other ways to build it", () => {
  it("are kept by name, changed to, and kept again under the same name", () => {
    const session = phalarope();
    expect(keepWay(session, "short")).toEqual([]);
    session.change({ "motor-gears.driver": 16 });
    expect(keepWay(session, "long")).toEqual([]);
    expect(session.build!.alternatives!.map(({ label }) => label)).toEqual(["short", "long"]);
    const [short] = session.build!.alternatives!;
    expect(changeToWay(session, short!)).toEqual([]);
    // 56/14 · 2.5 · 3
    expect(totalsText(session.build!)).toBe("Front 30.00, rear 60.00");
    expect(session.undoName).toBe("Changed to short");
    session.undo();
    expect(totalsText(session.build!)).toBe("Front 26.25, rear 52.50");
    session.change({ "motor-gears.driven": 64 });
    keepWay(session, "long");
    expect(session.build!.alternatives).toHaveLength(2);
    expect(session.build!.alternatives![1]!.changes["motor-gears.driven"]).toBe(64);
  });

  it("survive a stage that is taken out, and are forgotten one by one", () => {
    const session = phalarope();
    keepWay(session, "short");
    expect(session.change([{ remove: "hub" }])).toEqual([]);
    expect(session.build!.alternatives![0]!.changes).not.toHaveProperty("hub.driver");
    forgetWay(session, session.build!.alternatives![0]!);
    expect(session.build!.alternatives).toBeUndefined();
  });
});

describe("axles that come off whole", () => {
  it("lie on the shelf with counts and tyre, and go on again as one more", () => {
    const session = phalarope();
    expect(takeOff(session, "front")).toEqual([]);
    expect(session.build!.outputs.map(({ id }) => id)).toEqual(["rear"]);
    expect(session.build!.compare).toBeUndefined();
    const [lying] = session.notebook.assemblies!;
    expect(lying).toMatchObject({ name: "Front axle", date: "2026-10-03", axle: { wheel: { diameter: "90 mm" } } });
    expect(putOn(session, "Front axle")).toEqual([]);
    expect(totalsText(session.build!)).toBe("Rear 60.00, front 30.00");
    expect(session.notebook.assemblies).toBeUndefined();
    session.undo();
    session.undo();
    expect(totalsText(session.build!)).toBe("Front 30.00, rear 60.00");
    expect(session.notebook.assemblies).toBeUndefined();
  });

  it("change places in one edit, and what stands there keeps its place in the comparison", () => {
    const session = phalarope();
    takeOff(session, "front");
    expect(swapFor(session, "rear", "Front axle")).toEqual([]);
    expect(totalsText(session.build!)).toBe("30.00");
    expect(session.build!.outputs[0]).toMatchObject({ id: "rear", label: "Rear", wheel: { diameter: "90 mm" } });
    expect(session.notebook.assemblies!.map(({ name }) => name)).toEqual(["Rear axle"]);
    session.undo();
    expect(totalsText(session.build!)).toBe("60.00");
    expect(session.notebook.assemblies!.map(({ name }) => name)).toEqual(["Front axle"]);
  });

  it("go on beside an axle with the same ids, which get new ones", () => {
    const session = phalarope();
    takeOff(session, "front");
    const [lying] = session.notebook.assemblies!;
    session.put({ assemblies: [lying!, { ...lying!, name: "Another" }] }, "two alike");
    expect(putOn(session, "Front axle")).toEqual([]);
    expect(putOn(session, "Another")).toEqual([]);
    expect(totalsText(session.build!)).toBe("Rear 60.00, front 30.00, front 30.00");
  });

  it("go into a file and come back; what cannot be read is left out", () => {
    const session = phalarope();
    takeOff(session, "front");
    const data = JSON.parse(fileText(session.notebook)) as { assemblies: unknown[] };
    data.assemblies.push({ name: "Broken", date: "2026-10-03", axle: { id: "front", stages: [{ kind: "pair" }] } });
    const opened = openText(JSON.stringify(data), "other");
    expect(opened.kind === "notebook" && opened.notebook.assemblies).toEqual(session.notebook.assemblies);
  });
});
