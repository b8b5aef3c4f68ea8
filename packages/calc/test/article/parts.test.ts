import { describe, expect, test } from "vitest";
import { sayChanges, sayOrder, sayParts, speakerOf, type Reporter } from "../../src/article/index.js";
import { applyChanges, buildFromAttributes } from "../../src/document/index.js";
import type { Build, ChangeSet } from "../../src/drivetrain/index.js";
import { evaluate } from "../../src/evaluate/index.js";
import { languageCodes, wordsFor } from "../../src/languages/all.js";
import { figures } from "../../src/report/index.js";
import { read } from "../make.js";

const reporter = (build: Build, locale = "en"): Reporter => {
  const { figures: words, reports } = wordsFor(locale);
  return speakerOf({
    ...{ evaluation: evaluate(build), locale, words, reports, figures },
    version: () => evaluate(build),
  });
};
const changed = (build: Build, changes: ChangeSet): Build => applyChanges(build, changes).build!;

const avocet = buildFromAttributes({
  stages: "Spur and pinion: 15 to 62",
  rear: "Ring: 12 to 35",
  "rear-wheel": "120 mm",
  motor: "1850 kv",
  battery: "3 cells lipo",
}).build!;

/** What an order says of what is to be had, and of what stays and is left over. */
const order = (build: Build, changes: ChangeSet, locale?: string) => {
  const { missing, rest, notes } = sayOrder(reporter(changed(build, changes), locale), reporter(build, locale));
  return { missing, rest, notes };
};

describe("a motor, a battery, a controller and a wheel whose figures are others", () => {
  test("are something to get, told as what they are", () => {
    const { missing, notes } = order(avocet, { "motor.kv": 2600, "battery.cells": 4 });
    expect(missing).toEqual(["motor 2600\u00a0kV", "battery 4S LiPo, 14.8\u00a0V"]);
    expect(notes).toEqual(["No part of the list answers: motor 2600\u00a0kV; battery 4S LiPo, 14.8\u00a0V."]);
    expect(order(avocet, { "rear.wheel.diameter": "130 mm" }).missing).toEqual(["rear: 2 × wheel 130 mm"]);
    const both = ["Motor 2600\u00a0kV", "Akku 4S LiPo, 14,8\u00a0V"];
    expect(order(avocet, { "motor.kv": 2600, "battery.cells": 4 }, "de").missing).toEqual(both);
  });

  test("are what they were where nothing of theirs changes", () => {
    expect(order(avocet, { "spur-and-pinion.driver": 16 }).missing).toEqual(["Spur and pinion: pinion 16"]);
    expect(order(avocet, {}).notes).toEqual(["Nothing to buy."]);
  });

  test("are told by all that is known of them", () => {
    const build = read({
      ...avocet,
      outputs: [
        { ...avocet.outputs[0], wheel: { loadedDiameter: "116 mm" } },
        { id: "winch", label: "Winch", motor: { turns: 27 }, stages: [] },
      ],
      motor: { label: "Turnstone", kv: 1850, maxRpm: 50000, maxVolts: "16" },
      battery: { cells: 3, parallel: 2, chemistry: "li-ion", capacity: "5.2" },
      controller: { maxVolts: "12.6" },
    });
    expect(sayOrder(reporter(build), undefined).missing).toEqual([
      "Spur and pinion: pinion 15",
      "Spur and pinion: gear 62",
      "Ring: pinion 12",
      "Ring: gear 35",
      "rear: 2 × wheel 116 mm",
      "Winch: motor 27T",
      "motor Turnstone, 1850\u00a0kV, up to 50000\u00a0min⁻¹, up to 16\u00a0V",
      "battery 3S2P Li-ion, 10.8\u00a0V, 5.2\u00a0Ah",
      "controller up to 12.6\u00a0V",
    ]);
    expect(order(build, { "winch.motor.turns": 21 }).missing).toEqual(["Winch: motor 21T"]);
    expect(order(build, { "controller.maxVolts": "16.8" }).missing).toEqual(["controller up to 16.8\u00a0V"]);
    expect(order(build, { "rear.wheel.loadedDiameter": "126 mm" }).missing).toEqual(["rear: 2 × wheel 126 mm"]);
  });

  test("are not the parts that stood there, which are left over", () => {
    const parts = [
      { id: "turnstone", is: "motor", name: "Turnstone", stage: "motor", status: "fitted" },
      { id: "pack", is: "battery", name: "Pack", stage: "battery", owned: 1 },
      { id: "tyre", is: "wheel", name: "Tyre", diameter: "120 mm", stage: "rear", status: "fitted" },
    ];
    const build = read({ ...avocet, parts });
    expect(order(build, { "motor.kv": 2600 })).toMatchObject({
      missing: ["motor 2600\u00a0kV"],
      rest: [
        ["Stays", ["2 × Tyre", "Pack"]],
        ["Left over", ["Turnstone"]],
      ],
    });
    // The same build from nothing has them all.
    expect(sayOrder(reporter(build), undefined).rest).toContainEqual([
      "Owned already",
      ["2 × Tyre", "Turnstone", "Pack"],
    ]);
    const table = sayChanges(reporter(changed(build, { "motor.kv": 2600 })), reporter(build), [
      { label: "Yours", speaker: reporter(changed(build, { "motor.kv": 2600 })) },
    ]);
    expect(table.groups[0]!.rows.find(({ cost }) => cost)?.texts).toEqual(["1 not in the list"]);
  });
});

describe("the parts list", () => {
  test("names what no part of the list answers, of every kind, in every language", () => {
    const build = read({
      ...avocet,
      motor: {},
      battery: {},
      controller: {},
      mounts: [{ stage: "spur-and-pinion", shaft: "3.17 mm", hubHoles: [{ count: 4, diameter: "24 mm" }] }],
      parts: [
        { id: "p15", is: "pinion", teeth: 15, bore: "5 mm", stage: "spur-and-pinion" },
        { id: "s62", is: "spur", teeth: 62, circles: [{ count: 4, diameter: "20 mm" }], stage: "spur-and-pinion" },
      ],
    });
    const named = (locale: string) => sayParts(reporter(build, locale)).rows.map(({ texts }) => texts[1]!);
    expect(named("en").slice(2)).toEqual([
      "sleeve 3.17 mm, 5 mm: no part of the list",
      "adapter plate: no part of the list",
      "pinion 12: no part of the list",
      "gear 35: no part of the list",
      "wheel 120 mm: no part of the list",
      "motor: no part of the list",
      "battery: no part of the list",
      "controller: no part of the list",
    ]);
    for (const locale of languageCodes) for (const name of named(locale)) expect(name, locale).not.toMatch(/^\s*[:：]/);
  });
});
