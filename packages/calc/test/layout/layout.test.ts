import { describe, expect, it } from "vitest";
import { evaluate } from "../../src/evaluate/index.js";
import { parseBuild } from "../../src/document/index.js";
import type { Mount } from "../../src/drivetrain/index.js";
import type { Stage } from "../../src/stages/index.js";
import { layoutOf, type Layout, type PlacedWall } from "../../src/layout/index.js";
import { meshOf, outlinePoints } from "../../src/gears/index.js";

const primary = { id: "primary", kind: "pair", driver: 15, driven: 62, module: "0.8" } as const;
const row = { id: "row", kind: "train", teeth: [18, 31, 45], module: "0.8" } as const;
const ring = { id: "ring", kind: "pair", form: "bevel", driver: 13, driven: 38, module: "1" } as const;
const belt = { id: "belt", kind: "belt", driver: 20, driven: 60, pitch: "2 mm", beltTeeth: 101 } as const;

const layout = (stages: readonly Stage[], mounts: readonly Mount[] = []): Layout => {
  const build = parseBuild({ format: "meshwright-build/1", stages, outputs: [{ id: "rear", stages: [] }] });
  return layoutOf(evaluate(build).output("rear")!.steps, mounts);
};
const fractions = ({ spans }: Layout): string[] => spans.map((span) => span.centre.low.toFraction());

describe("the gears in their places", () => {
  it("stand on their true centre distances, each stage on the axis where the last one ends", () => {
    const both = layout([primary, row]);
    expect(fractions(both)).toEqual(["154/5", "98/5", "152/5"]);
    const places = both.wheels.map((wheel) => [wheel.teeth, wheel.role, Math.round(wheel.x * 1e6) / 1e6]);
    expect(places).toEqual([
      [15, "driver", -30.8],
      [62, "driven", 0],
      [18, "driver", 0],
      [31, "idler", 19.6],
      [45, "driven", 50],
    ]);
    expect(both.notDrawn).toEqual([]);
    expect(both.mounts).toEqual([]);
    expect(both.spans.map((span) => [span.stage, span.by])).toEqual([
      ["primary", "mesh"],
      ["row", "mesh"],
      ["row", "mesh"],
    ]);
    expect(layoutOf([{ stage: primary }]).mounts).toEqual([]);
  });

  it("turn as their teeth say, neighbours against each other", () => {
    const { wheels } = layout([primary, row]);
    const turns = wheels.map((wheel) => wheel.turns!);
    expect(turns[0]).toBe(1);
    expect(turns[1]).toBeCloseTo(-15 / 62, 12);
    expect(turns[2]).toBe(turns[1]);
    expect(turns[3]).toBeCloseTo((15 * 18) / (62 * 31), 12);
    expect(turns[4]).toBeCloseTo((-15 * 18) / (62 * 45), 12);
  });

  it("have a tooth of one in a space of the other", () => {
    const { spans } = layout([primary, row]);
    for (const { driver, driven } of spans) {
      // The pitch point lies inside a tooth of exactly one of the two, or on the flanks of both.
      const away = (wheel: typeof driver, direction: number): number => {
        const step = (2 * Math.PI) / wheel.teeth;
        const from = (direction - wheel.phase) / step;
        return Math.abs(from - Math.round(from));
      };
      expect(away(driver, 0) + away(driven, Math.PI)).toBeCloseTo(0.5, 9);
    }
    expect(outlinePoints(spans[0]!.driver.shape!, { phase: spans[0]!.driver.phase }).length).toBeGreaterThan(100);
  });

  it("carry on at the right speed after a stage that has no place, which is named", () => {
    const { wheels, notDrawn } = layout([primary, ring, { ...row, id: "hub", teeth: [15, 22] }]);
    expect(notDrawn.map((stage) => stage.id)).toEqual(["ring"]);
    const hub = wheels.filter((wheel) => wheel.stage === "hub");
    // A bevel pair's direction is not known until somebody says it.
    expect(hub[0]!.turns).toBeUndefined();
    expect(hub[0]!.x).toBeGreaterThan(24.8 + 0.8);
    const said = layout([primary, { ...ring, reverses: true }, { ...row, id: "hub", teeth: [15, 22] }]);
    expect(said.wheels.at(-2)!.turns).toBeCloseTo((15 / 62) * (13 / 38), 12);
  });

  it("name what has no pitch, and what a printed ratio hides", () => {
    const { pitchless, box } = {
      pitchless: { id: "p", kind: "pair", driver: 15, driven: 62 } as const,
      box: { id: "b", kind: "published", value: "2.61" } as const,
    };
    const { wheels, notDrawn } = layout([pitchless, box]);
    expect(wheels).toEqual([]);
    expect(notDrawn.map((stage) => stage.id)).toEqual(["p", "b"]);
  });

  it("hold belts whose length is known, turning the same way", () => {
    const { spans } = layout([belt]);
    const [span] = spans;
    expect(span!.by).toBe("belt");
    expect(span!.centre.low.toNumber()).toBeCloseTo(59.636, 3);
    expect(span!.driven.turns).toBeCloseTo(1 / 3, 12);
    expect(span!.driven.radii.reference).toBeCloseTo((60 * 2) / (2 * Math.PI), 9);
    expect(layout([{ id: "loose", kind: "belt", driver: 20, driven: 60 }]).notDrawn.length).toBe(1);
  });

  it("hold a ring with the gear inside it", () => {
    const { spans } = layout([{ ...primary, internal: true }]);
    expect(spans[0]!.centre.low.toFraction()).toBe("94/5");
    expect(spans[0]!.driven.turns).toBeCloseTo(15 / 62, 12);
    expect(spans[0]!.driven.radii.tip).toBeCloseTo(24, 9);
  });

  it("have their names, where they are given", () => {
    const names = (stages: readonly Stage[]) => layout(stages).wheels.map((wheel) => wheel.label);
    expect(names([{ ...primary, driverLabel: "motor pinion", drivenLabel: "spur" }, row])).toEqual([
      "motor pinion",
      "spur",
      undefined,
      undefined,
      undefined,
    ]);
    expect(names([{ ...belt, driverLabel: "front pulley", drivenLabel: "rear pulley" }])).toEqual([
      "front pulley",
      "rear pulley",
    ]);
    for (const wheel of layout([primary, belt]).wheels) expect(wheel).not.toHaveProperty("label");
  });

  it("stand apart after a stage that has no place, clear of everything before", () => {
    const hub = { ...row, id: "hub", teeth: [15, 22] } as const;
    const second = { ...primary, id: "second" };
    const gaps: number[] = [];
    for (const before of [[primary], [{ ...primary, internal: true }], [belt], [primary, ring, second]] as const) {
      const { wheels } = layout([...before, { ...ring, id: "angle" }, hub]);
      const [first] = wheels.filter((wheel) => wheel.stage === "hub");
      const others = wheels.slice(0, wheels.indexOf(first!));
      const ends = others.map(({ x, radii }) => x + Math.max(radii.tip, radii.root));
      const gap = first!.x - first!.radii.tip - Math.max(...ends);
      expect(gap).toBeGreaterThan(2);
      expect(gap).toBeLessThan(4 * first!.radii.tip);
      gaps.push(gap);
    }
    // Whatever stands before it.
    for (const gap of gaps) expect(gap).toBeCloseTo(gaps[0]!, 9);
    // What comes first stands where it stands, whatever has no place before it.
    expect(layout([ring, primary]).wheels.map(({ x }) => Math.round(x * 1e9) / 1e9)).toEqual([-30.8, 0]);
  });

  it("turn at a printed ratio's middle behind it, the way it says; and stay unknown where it says none", () => {
    const box = { id: "box", kind: "published", value: "2.5" } as const;
    const behind = (stage: Stage) => layout([stage, row]).wheels.map((wheel) => wheel.turns);
    expect(behind(box)).toEqual([undefined, undefined, undefined]);
    expect(behind({ ...box, reverses: false })[0]).toBeCloseTo(1 / 2.5, 12);
    expect(behind({ ...box, reverses: true })[0]).toBeCloseTo(-1 / 2.5, 12);
    expect(behind({ ...box, reverses: true })[2]).toBeCloseTo((-1 / 2.5) * (18 / 45), 12);
    // A stage alone, without what it comes to.
    expect(layoutOf([{ stage: box }, { stage: belt }]).wheels.map((wheel) => wheel.turns)).toEqual([
      undefined,
      undefined,
    ]);
    expect(layoutOf([{ stage: ring }, { stage: primary }]).wheels[0]!.turns).toBeUndefined();
  });

  it("run on belts and chains at the centres that are wanted, or that their count sets", () => {
    const wanted = { id: "belt", kind: "belt", driver: 20, driven: 60, pitch: "2 mm", centre: "60 mm" } as const;
    const [open] = layout([wanted]).spans;
    expect([open!.driver.role, open!.driven.role]).toEqual(["driver", "driven"]);
    expect(open!.centre.toJSON()).toEqual({ low: "60/1", high: "60/1" });
    expect([open!.driver.x, open!.driven.x]).toEqual([-60, 0]);
    for (const { radii, teeth, shape, phase } of [open!.driver, open!.driven]) {
      for (const radius of Object.values(radii)) expect(radius).toBeCloseTo(teeth / Math.PI, 9);
      expect([shape, phase]).toEqual([undefined, 0]);
    }
    expect(layout([{ ...wanted, chain: true }]).spans[0]!.by).toBe("chain");
    expect(layout([{ ...wanted, centre: "20 mm" }]).notDrawn.map((stage) => stage.id)).toEqual(["belt"]);
    expect(open).not.toHaveProperty("tensioner");
    const after = layout([belt, primary]);
    expect(after.spans[1]!.driver.x).toBe(after.spans[0]!.driven.x);
    expect(after.spans[1]!.driver.turns).toBeCloseTo(1 / 3, 12);
  });

  it("have a belt with a tensioner drawn at its centres, and marked", () => {
    const taut = { id: "belt", kind: "belt", driver: 20, driven: 60, pitch: "2 mm", tensioner: true } as const;
    const [span] = layout([{ ...taut, centre: "60 mm" }]).spans;
    expect([span!.by, span!.tensioner, span!.centre.low.toFraction()]).toEqual(["belt", true, "60/1"]);
    expect(span!.driven.turns).toBeCloseTo(1 / 3, 12);
    expect(layout([{ ...taut, centre: "60 mm", beltTeeth: 110 }]).spans[0]!.centre.low.toFraction()).toBe("60/1");
    // Where nobody says how far apart its axes are, or where the belt is too short for them, it has no place.
    expect(layout([{ ...taut, beltTeeth: 110 }]).notDrawn.length).toBe(1);
    expect(layout([{ ...taut, centre: "60 mm", beltTeeth: 100 }]).notDrawn.length).toBe(1);
  });

  it("have chains on the circles of their sprockets", () => {
    const chain = { id: "chain", kind: "belt", chain: true, driver: 9, driven: 17, pitch: "8 mm" } as const;
    const [span] = layout([{ ...chain, centre: "60 mm" }]).spans;
    expect(span!.by).toBe("chain");
    expect(span!.driver.radii.reference).toBeCloseTo(4 / Math.sin(Math.PI / 9), 12);
    expect(span!.driven.radii.tip).toBeCloseTo(4 / Math.sin(Math.PI / 17), 12);
    expect(layout([{ ...chain, driver: 1, centre: "60 mm" }]).notDrawn.map((stage) => stage.id)).toEqual(["chain"]);
  });

  it("bear the names of their stages", () => {
    const named = layout(
      [{ ...primary, label: "Spur and pinion", driverLabel: "pinion" }, row],
      [{ stage: "primary" }],
    );
    expect(named.wheels.map(({ stageLabel, role, label }) => [stageLabel, role, label])).toEqual([
      ["Spur and pinion", "driver", "pinion"],
      ["Spur and pinion", "driven", undefined],
      [undefined, "driver", undefined],
      [undefined, "idler", undefined],
      [undefined, "driven", undefined],
    ]);
    expect(named.mounts[0]!.stageLabel).toBe("Spur and pinion");
    expect(layout([primary], [{ stage: "primary" }]).mounts[0]).not.toHaveProperty("stageLabel");
    expect(named.wheels[2]).not.toHaveProperty("stageLabel");
  });

  it("have no place where their teeth cannot be", () => {
    expect(layout([{ ...primary, driverShift: 3 }]).notDrawn.length).toBe(1);
    expect(layout([{ ...primary, driver: 2 }, row]).spans.length).toBe(2);
  });

  it("show helical and shifted gears by their section", () => {
    const helical = {
      ...primary,
      form: "helical",
      helixAngle: 30,
      driverShift: "0.4",
      drivenShift: "-0.1",
    } as const;
    const mesh = meshOf(helical);
    const [span] = layout([helical]).spans;
    const cos = Math.cos(Math.PI / 6);
    for (const [wheel, gear] of [
      [span!.driver, mesh.driver!],
      [span!.driven, mesh.driven!],
    ] as const) {
      expect(wheel.shape!.module).toBeCloseTo(0.8 / cos, 12);
      expect(Math.tan((wheel.shape!.pressureAngle! * Math.PI) / 180)).toBeCloseTo(Math.tan(Math.PI / 9) / cos, 12);
      expect(wheel.shape!.internal).toBe(false);
      for (const circle of ["reference", "base", "tip", "root"] as const)
        expect(wheel.radii[circle]).toBeCloseTo(gear[circle].low.toNumber() / 2, 8);
    }
    // The same rack cuts them: 0.4 of the normal module, told in transverse ones.
    expect(span!.driver.shape!.shift).toBeCloseTo(0.4 * cos, 12);
    expect(span!.driven.shape!.shift).toBeCloseTo(-0.1 * cos, 12);
    expect(span!.driven.x - span!.driver.x).toBeCloseTo(mesh.centreDistance!.low.toNumber(), 8);
    const inside = layout([{ ...primary, internal: true }]).spans[0]!;
    expect([inside.driver.shape!.internal, inside.driven.shape!.internal]).toEqual([false, true]);
    expect(inside.driven.radii.root).toBeCloseTo(24.8 + 1, 9);
  });
});

describe("a mount", () => {
  const slot: Mount = { stage: "primary", knownPair: [23, 53], closer: "0.1 mm", farther: "0.9 mm" };

  it("has the ends of its slot, and nothing short where the pair fits", () => {
    const [mount] = layout([primary], [slot]).mounts;
    expect([mount!.from, mount!.to].map((end) => end!.low.toFraction())).toEqual(["303/10", "313/10"]);
    expect(mount!.short).toBeUndefined();
    expect(mount!.fit.verdict).toBe("fits");
  });

  it("is 1.9 mm short for 17 and 66", () => {
    const [mount] = layout([{ ...primary, driver: 17, driven: 66 }], [slot]).mounts;
    expect(mount!.span.centre.low.toFraction()).toBe("166/5");
    expect(mount!.short!.by.low.toFraction()).toBe("19/10");
    expect(mount!.short!.end).toBe("to");
  });

  it("swings about a pivot, with an opening and a wall", () => {
    const walls = [{ label: "skid", distance: "28 mm", gap: "0.5 mm" }];
    const pivot = { distance: "30 mm", arm: "20 mm", from: 60, to: 90 };
    const scoter: Mount = { stage: "primary", pivot, opening: "0.05 mm", walls };
    const of = (driver: number, driven: number) => layout([{ ...primary, driver, driven }], [scoter]).mounts[0]!;
    const fitting = of(15, 52);
    expect(fitting.span.centre.low.toFraction()).toBe("537/20");
    expect(fitting.from!.low.toNumber() ** 2).toBeCloseTo(700, 9);
    expect(fitting.to!.low.toNumber() ** 2).toBeCloseTo(1300, 9);
    expect(fitting.pivot).toEqual({ distance: 30, arm: 20 });
    expect(fitting.walls[0]!.kept).toBe(true);
    const tight = of(23, 67);
    expect(tight.walls[0]!.gap.low.toFraction()).toBe("2/5");
    expect(tight.walls[0]!.kept).toBe(false);
    expect(of(13, 53).short!.end).toBe("from");
  });

  it("can be a row of holes", () => {
    const holes: Mount = { stage: "primary", holes: ["30 mm", "32 mm"], opening: "0 mm" };
    const [mount] = layout([primary], [holes]).mounts;
    expect(mount!.holes.map((hole) => hole.low.toFraction())).toEqual(["30/1", "32/1"]);
    expect(mount!.short!.end).toBe("hole");
    expect(mount!.span.centre.low.toFraction()).toBe("154/5");
  });

  it("has the tightest of its limits at either end", () => {
    const ends = (more: object) => {
      const [mount] = layout([primary], [{ ...slot, ...more }]).mounts;
      return [mount!.from, mount!.to].map((end) => end?.low.toNumber());
    };
    expect(ends({ from: "30 mm", to: "31 mm" })).toEqual([30.3, 31]);
    expect(ends({ from: "30.5 mm", to: "32 mm" })).toEqual([30.5, 31.3]);
    expect(ends({ toothSum: [76, 78] })).toEqual([30.4, 31.2]);
    expect(ends({ closer: undefined })).toEqual([undefined, 31.3]);
    expect(ends({ farther: undefined })).toEqual([30.3, undefined]);
    const [free] = layout([primary], [{ stage: "primary" }]).mounts;
    expect([free!.holes, free!.walls]).toEqual([[], []]);
    for (const none of ["from", "to", "short", "pivot", "shaft"]) expect(free).not.toHaveProperty(none);
  });

  it("lets a ring run closer than its theoretical centres by its opening", () => {
    const ringed = { ...primary, internal: true } as const;
    const [span] = layout([ringed], [{ stage: "primary", opening: "0.05 mm" }]).spans;
    // 18.8 mm less the opening.
    expect(span!.centre.low.toFraction()).toBe("75/4");
    const [far] = layout([ringed], [{ stage: "primary", opening: "0.05 mm", from: "18.8 mm" }]).mounts;
    expect([far!.short!.end, far!.short!.by.low.toFraction(), far!.span.centre.low.toFraction()]).toEqual([
      "from",
      "1/20",
      "75/4",
    ]);
  });

  it("shows its slot and holes between the axes, however they were measured", () => {
    const shafts = { shaft: "4 mm", drivenShaft: "6 mm" };
    const over: Mount = { stage: "primary", measured: "over shafts", ...shafts, from: "35 mm", to: "36 mm" };
    const [mount] = layout([primary], [over]).mounts;
    expect([mount!.from!.low.toFraction(), mount!.to!.low.toFraction()]).toEqual(["30/1", "31/1"]);
    expect([mount!.shaft, mount!.drivenShaft, mount!.fit.verdict]).toEqual([4, 6, "fits"]);
    const between: Mount = { stage: "primary", measured: "between shafts", ...shafts, holes: ["25.8 mm", "27 mm"] };
    const [row_] = layout([primary], [between]).mounts;
    expect(row_!.holes.map((hole) => hole.low.toFraction())).toEqual(["154/5", "32/1"]);
    expect(row_!.short).toBeUndefined();
    // Without both shafts nothing is known of it: no slot is drawn, and none is said to be short.
    const [half] = layout([primary], [{ ...over, drivenShaft: undefined } as unknown as Mount]).mounts;
    for (const none of ["from", "to", "short"]) expect(half).not.toHaveProperty(none);
    expect([half!.fit.verdict, half!.holes]).toEqual(["cannot tell", []]);
  });

  it("is that of its own stage only, and of every mesh of a row", () => {
    const { mounts, spans } = layout([primary, row], [{ stage: "row", opening: "0.1 mm", shaft: "5 mm" }]);
    expect(mounts.map((mount) => mount.span)).toEqual(spans.slice(1));
    expect(mounts.map((mount) => mount.shaft)).toEqual([5, 5]);
    expect(fractions({ spans } as Layout)).toEqual(["154/5", "197/10", "61/2"]);
    expect(layout([primary], [{ stage: "row" }]).mounts).toEqual([]);
    expect(() => layout([row], [{ stage: "row", shaft: "narrow" }])).toThrowError(
      expect.objectContaining({ code: "not-a-length", at: "shaft" }),
    );
  });

  it("lets a pair be seen where it wants to run, not where the mount would push it", () => {
    const seen = (driver: number, driven: number, mount: object) =>
      layout([{ ...primary, driver, driven }], [{ stage: "primary", ...mount }]).spans[0]!.centre.low.toFraction();
    const openings = { opening: "0.05 mm", openingTo: "0.1 mm" };
    // Too close: even opened to the most that is wanted. Too far: with the least.
    expect(seen(13, 53, { from: "27 mm", ...openings })).toBe("53/2");
    expect(seen(13, 53, { to: "26 mm", ...openings })).toBe("529/20");
    // Pushed out to where the slot begins, which is within what is wanted.
    expect(seen(13, 53, { from: "26.48 mm", ...openings })).toBe("662/25");
    expect(seen(13, 53, { walls: [{ distance: "20 mm" }], ...openings })).toBe("529/20");
  });

  it("shows walls by the gear that they stand around, with the room that is left", () => {
    const walls = [
      { of: "driver", distance: "7.3 mm" },
      { label: "cover", distance: "25.6 mm" },
      { distance: "26 mm", gap: "0.5 mm" },
    ] as const;
    const [mount] = layout([primary], [{ stage: "primary", walls }]).mounts;
    const room = ({ gap, needed }: PlacedWall) => [gap.low.toFraction(), needed.low.toFraction()];
    expect(mount!.walls.map((wall) => [wall.wheel.teeth, ...room(wall), wall.kept])).toEqual([
      [15, "1/2", "0/1", true],
      [62, "0/1", "0/1", true],
      [62, "2/5", "1/2", false],
    ]);
    expect(mount!.walls.map(({ label, distance }) => [label, distance.low.toFraction()])).toEqual([
      [undefined, "73/10"],
      ["cover", "128/5"],
      [undefined, "26/1"],
    ]);
    expect(mount!.walls[0]).not.toHaveProperty("label");
    // How far a ring reaches outwards is not known: only what stands around the gear inside is shown.
    const [inside] = layout([{ ...primary, internal: true }], [{ stage: "primary", walls }]).mounts;
    expect(inside!.walls.map(({ wheel }) => wheel.teeth)).toEqual([15]);
    // cos 60° is one half, which floating point does not know: tips at 21 mm, and a wall there.
    const helical = { ...primary, module: 1, driver: 20, driven: 40, form: "helical", helixAngle: 60 } as const;
    const [close] = layout([helical], [{ stage: "primary", walls: [{ of: "driver", distance: "21 mm" }] }]).mounts;
    expect(close!.walls[0]!.kept).toBeUndefined();
  });
});
