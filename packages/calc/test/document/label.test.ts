import { describe, expect, it } from "vitest";
import { parseBuild } from "../../src/document/index.js";
import { freeId, labelAt } from "../../src/drivetrain/index.js";

// What people call a thing. Oystercatcher: two axles with the same stages, a belt on a shaft of its own, and a box with a lever.
const ring = (id: string) => ({ id, label: "Ring", kind: "pair", driver: 12, driven: 36 });
const build = parseBuild({
  format: "meshwright-build/1",
  title: "Oystercatcher",
  motor: { label: "Whelk 36", kv: "1200" },
  stages: [
    { id: "spur", label: "Spur", kind: "pair", driver: 15, driven: 60, driverLabel: "Pinion" },
    { id: "bare", kind: "pair", driver: 20, driven: 40 },
    {
      id: "box",
      label: "Box",
      kind: "selectable",
      selected: "low",
      positions: [
        { id: "low", label: "Low", stages: [{ id: "low-pair", label: "Pair", kind: "pair", driver: 10, driven: 30 }] },
        { id: "high", stages: [{ id: "high-pair", label: "Pair", kind: "pair", driver: 20, driven: 30 }] },
      ],
    },
  ],
  branches: [{ id: "shaft", label: "Centre shaft", stages: [ring("shaft-ring")] }],
  outputs: [
    { id: "front", label: "Front", from: "shaft", stages: [ring("front-ring"), { ...ring("own"), label: "Hub" }] },
    { id: "rear", from: "shaft", stages: [ring("rear-ring")] },
  ],
});

describe("what the thing at an address is called", () => {
  it.each([
    ["spur", "Spur"],
    // A gear's own name before its stage's; the other gear has none.
    ["spur.driver", "Pinion"],
    ["spur.driven", "Spur"],
    // Nothing has a name here.
    ["bare.driver", "bare.driver"],
    ["motor.kv", "Whelk 36"],
    ["front", "Front"],
    ["rear", "rear"],
    ["shaft", "Centre shaft"],
    ["gone.driver", "gone.driver"],
    // Several stages bear one name, at other places.
    ["front-ring.driven", "Front: Ring"],
    ["rear-ring", "rear: Ring"],
    ["shaft-ring", "Centre shaft: Ring"],
    ["own", "Hub"],
  ])("%s: %s", (address, name) => {
    expect(labelAt(build, address)).toBe(name);
  });

  it("says of which position of a box a stage is", () => {
    expect(labelAt(build, "low-pair.driver")).toMatch(/Low: Pair$/);
    expect(labelAt(build, "high-pair.driver")).toMatch(/high: Pair$/i);
  });

  it("puts two names together as it is told to", () => {
    expect(labelAt(build, "rear-ring", undefined, (owner, name) => `${name} (${owner})`)).toBe("Ring (rear)");
  });

  it("knows the axle of a stage behind ten others", () => {
    const many = Array.from({ length: 12 }, (_, n) => ({
      ...ring(`front-${n}`),
      label: n < 11 ? `Stage ${n}` : "Ring",
    }));
    const long = parseBuild({
      format: "meshwright-build/1",
      stages: [],
      outputs: [
        { id: "front", label: "Front", stages: many },
        { id: "rear", label: "Rear", stages: [ring("rear-ring")] },
      ],
    });
    expect(labelAt(long, "front-11")).toBe("Front: Ring");
    expect(labelAt(long, "rear-ring")).toBe("Rear: Ring");
  });

  it("has no owner before a name that only one place has, as often as it may stand there", () => {
    const twice = parseBuild({
      format: "meshwright-build/1",
      stages: [],
      outputs: [{ id: "rear", label: "Rear", stages: [ring("one"), ring("two")] }],
    });
    expect(labelAt(twice, "two.driver")).toBe("Ring");
  });
});

describe("an id for a new stage", () => {
  it("is its kind's name with the first number that nothing has in any of the builds", () => {
    expect(freeId("ring", [build])).toBe("ring-1");
    const other = parseBuild({
      format: "meshwright-build/1",
      stages: [{ ...ring("ring-1"), label: "One" }],
      outputs: [{ id: "ring-2", stages: [] }],
      alternatives: [{ id: "ring-3", label: "Other", changes: { "ring-1.driver": 13 } }],
      references: [{ id: "ring-4", label: "Book", src: "oystercatcher.json" }],
    });
    expect(freeId("ring", [build, other], (id) => id === "ring-5")).toBe("ring-6");
  });
});
