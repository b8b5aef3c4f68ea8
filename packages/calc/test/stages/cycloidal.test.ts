import { describe, expect, it } from "vitest";
import { readBuild } from "../../src/document/index.js";
import { notations } from "../../src/stages/index.js";
import { document, evaluated, read, told } from "../make.js";

const disc = (more: object) => ({ id: "a", kind: "cycloidal", ...more });
const rear = (more: object) => evaluated([disc(more)], { rear: [] }).output("rear")!;

describe("a cycloidal stage", () => {
  it.each([
    // Pins held, disc out: 10 : 1 for 10 lobes in 11 pins, the other way round.
    [{ lobes: 10, pins: 11 }, "10/1", "opposite way"],
    [{ lobes: 10, pins: 11, fixed: "pins" }, "10/1", "opposite way"],
    // Disc held, pins out: one more.
    [{ lobes: 10, pins: 11, fixed: "disc" }, "11/1", "same way"],
    // Two pins more than lobes: half as deep.
    [{ lobes: 38, pins: 40 }, "19/1", "opposite way"],
    [{ lobes: 38, pins: 40, fixed: "disc" }, "20/1", "same way"],
    [{ lobes: 7, pins: 10 }, "7/3", "opposite way"],
  ])("of %j is %s, %s", (stage, ratio, turns) => {
    expect(rear(stage).reduction!.factor.toFraction()).toBe(ratio);
    expect([rear(stage).turns, rear(stage).establishedTurns]).toEqual([turns, turns]);
  });

  it("turns as it is said to, whatever it would", () => {
    expect(rear({ lobes: 10, pins: 11, reverses: false }).turns).toBe("same way");
  });

  it("has more pins than lobes", () => {
    for (const pins of [9, 10])
      expect(told(readBuild(document([disc({ lobes: 10, pins })], { rear: [] })).findings)).toEqual([
        "pins-too-few at /stages/0/pins",
      ]);
    expect(told(readBuild(document([disc({ lobes: 10 })], { rear: [] })).findings)).toEqual(["missing at /stages/0"]);
  });

  it("is written in attributes by its counts", () => {
    const [stage] = read(document([disc({ lobes: 19, pins: 20 })], { rear: [] })).stages;
    expect(notations.cycloidal!.write(stage!)).toBe("19 lobes in 20 pins");
    expect(notations.cycloidal!.parse("19 lobes in 20 pins")).toEqual({ lobes: 19, pins: 20 });
    for (const text of ["19 to 20", "19 lobes", "lobes 19 in 20 pins", "19 lobes in 20 pins more"])
      expect(notations.cycloidal!.parse(text)).toBeUndefined();
  });
});
