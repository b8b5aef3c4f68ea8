import { describe, expect, test } from "vitest";
import { nameAt, placeName, sayCard, sayCounts, sayOrder, sayParts, speakerOf } from "../../src/article/index.js";
import { applyChanges, buildFromAttributes } from "../../src/document/index.js";
import { labelAt, type Build } from "../../src/drivetrain/index.js";
import { evaluate } from "../../src/evaluate/index.js";
import { wordsFor } from "../../src/languages/all.js";
import { figures } from "../../src/report/index.js";
import { pair, read } from "../make.js";

const reporter = (build: Build, locale = "en") => {
  const { figures: words, reports } = wordsFor(locale);
  return speakerOf({ evaluation: evaluate(build), locale, words, reports, figures });
};

/** Both axles have a ring and a hub, as authors name them. */
const plover = buildFromAttributes({
  stages: "Spur and pinion: 15 to 62",
  front: "Ring: 13 to 38; Hub: 15 to 22",
  rear: "Ring: 12 to 35; Hub: 16 to 23; Portal: 10 to 20",
}).build!;
const axles = ["front", "rear"].flatMap((axle) => ["ring", "hub"].map((stage) => `${axle}-${stage}`));

describe("a label that several stages bear", () => {
  test("has the axle before it, where labels stand alone; another one has not", () => {
    const names = [...axles, "spur-and-pinion", "rear-portal"].map((id) => placeName(reporter(plover), id));
    expect(names).toEqual(["front: Ring", "front: Hub", "rear: Ring", "rear: Hub", "Spur and pinion", "Portal"]);
    expect(placeName(reporter(plover, "fr"), "rear-hub")).toBe("rear : Hub");
    expect(axles.map((id) => labelAt(plover, `${id}.driver`))).toEqual(names.slice(0, 4));
  });

  test("is told apart in the order, in the list of parts and where a count is looked for", () => {
    const { build } = applyChanges(plover, { "front-ring.driver": 14, "rear-ring.driver": 13 });
    expect(sayOrder(reporter(build!), reporter(plover)).missing).toEqual([
      "front: Ring: pinion 14",
      "rear: Ring: pinion 13",
    ]);
    const heads = new Set(sayParts(reporter(plover)).rows.map(({ head }) => head));
    expect([...heads]).toEqual(["Spur and pinion", "front: Ring", "front: Hub", "rear: Ring", "rear: Hub", "Portal"]);
    const counts = sayCounts(reporter(plover), evaluate(plover), {});
    const labels = "places" in counts ? counts.places.map(([, label]) => label) : [];
    expect(labels).toContain("front: Ring: 13");
    expect(labels).toContain("rear: Ring: 12");
    expect(labels).toContain("Spur and pinion: 15");
    expect(new Set(labels).size).toBe(labels.length);
  });

  test("has the branch or the position before it that it stands in, as the card says it", () => {
    const bar = pair("front-bar", 10, 20, { label: "Bar" });
    const low = { id: "low", label: "Low", stages: [pair("low-gear", 10, 40, { label: "Gear" })] };
    const high = { id: "high", stages: [pair("high-gear", 20, 30, { label: "Gear" })] };
    const build = read({
      format: "meshwright-build/1",
      stages: [{ id: "box", kind: "selectable", positions: [low, high], selected: "low" }],
      branches: [{ id: "rears", label: "Both rear", stages: [pair("shared-bar", 11, 22, { label: "Bar" })] }],
      outputs: [
        {
          id: "front",
          label: "Front",
          stages: [bar, pair("second", 10, 11, { label: "Twin" }), pair("third", 10, 12, { label: "Twin" })],
        },
        { id: "middle", from: "rears", stages: [] },
        { id: "rear", from: "rears", stages: [] },
      ],
    });
    const name = (id: string) => placeName(reporter(build), id);
    expect(["front-bar", "shared-bar", "low-gear", "high-gear"].map(name)).toEqual([
      "Front: Bar",
      "Both rear: Bar",
      "Low: Gear",
      "high: Gear",
    ]);
    // The axle tells no two of one axle apart.
    expect(["second", "third"].map(name)).toEqual(["Twin", "Twin"]);
    const heads = sayCard(reporter(build)).gears.rows.map(({ head }) => head);
    expect(heads).toContain("Front: Bar");
    expect(heads).toContain("Both rear: Bar");
  });

  test("is a gear's own name where it has one", () => {
    const stage = (id: string) => pair(id, 10, 20, { label: id, driverLabel: "Crown" });
    const build = read({
      format: "meshwright-build/1",
      stages: [],
      outputs: [
        { id: "front", label: "Front", stages: [stage("a")] },
        { id: "rear", label: "Rear", stages: [stage("b")] },
      ],
    });
    expect(["a.driver", "b.driver", "b.driven", "b"].map((address) => labelAt(build, address))).toEqual([
      "Front: Crown",
      "Rear: Crown",
      "b",
      "b",
    ]);
  });
});

describe("the name of a value", () => {
  const words = {
    told: "{0}: {1}",
    gear: "gear {0}",
    fields: { driver: "driver", teeth: "wheel" },
    quantities: {
      diameter: "diameter",
      cells: "cells",
      target: "range",
      from: "from",
      value: "printed ratio",
      opening: "opening",
    },
    things: { wheel: "{0} wheel", ownMotor: "{0} motor", motor: "motor", battery: "battery", controller: "controller" },
  };
  const box = { id: "box", label: "Box", kind: "selectable", selected: "low" };
  const build = read({
    format: "meshwright-build/1",
    stages: [
      { ...box, positions: [{ id: "low", stages: [pair("low-gear", 10, 40)] }] },
      { id: "row", label: "Row", kind: "train", teeth: [18, 31, 45] },
      { id: "worm", kind: "worm", starts: 2, teeth: 30 },
      pair("spur", 12, 35, { label: "Spur", driverLabel: "Crown", module: "0.8" }),
    ],
    outputs: [
      { id: "front", label: "Front", stages: [{ id: "hub", label: "Hub", kind: "published", value: "1.5" }] },
      { id: "winch", motor: { kv: 900 }, stages: [] },
      { id: "rear", motor: { label: "Knot" }, stages: [] },
    ].map((one) => ({ ...one, wheel: { diameter: "120 mm" } })),
    motor: { kv: 1850 },
    battery: { cells: 3, chemistry: "lipo" },
    controller: { label: "Dunlin", maxVolts: "12" },
    target: { from: 20, to: 30 },
    wheelbase: "300 mm",
    mounts: [{ stage: "spur", opening: "0.1 mm" }],
  });
  const names: Readonly<Record<string, string>> = {
    "front.wheel.diameter": "Front wheel: diameter",
    "front.wheel": "Front wheel",
    "front.label": "Front: label",
    "winch.motor.kv": "winch motor: kV",
    "rear.motor.kv": "Knot: kV",
    "motor.kv": "motor: kV",
    "battery.cells": "battery: cells",
    "controller.maxVolts": "Dunlin: maxVolts",
    target: "range",
    "target.from": "range: from",
    wheelbase: "wheelbase",
    "hub.value": "Hub: printed ratio",
    "mounts.0.opening": "Spur: opening",
    "spur.driver": "Crown",
    "spur.driven": "Spur: driven",
    "row.teeth.1": "Row: gear 2",
    "worm.teeth": "worm: wheel",
    "box.selected": "Box",
    hub: "Hub",
  };

  test.each(Object.entries(names))("at %s is %s", (address, name) => {
    expect(nameAt(build, address, words)).toBe(name);
  });
});
