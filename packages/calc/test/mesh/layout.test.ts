import { describe, expect, it } from "vitest";
import { evaluate } from "../../src/evaluate/index.js";
import type { Build, Mount } from "../../src/build/index.js";
import type { Stage } from "../../src/kinds/index.js";
import { layoutOf, outlinePoints, type Layout } from "../../src/mesh/index.js";

const primary = { id: "primary", kind: "pair", driver: 15, driven: 62, module: "0.8" } as const;
const row = { id: "row", kind: "train", teeth: [18, 31, 45], module: "0.8" } as const;
const ring = { id: "ring", kind: "pair", form: "bevel", driver: 13, driven: 38, module: "1" } as const;
const belt = { id: "belt", kind: "belt", driver: 20, driven: 60, pitch: "2 mm", beltTeeth: 101 } as const;

const layout = (stages: readonly Stage[], mounts: readonly Mount[] = []): Layout => {
  const build: Build = { format: "meshwright-build/1", stages, outputs: [{ id: "rear", stages: [] }], mounts };
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
    expect(mount!.holes.length).toBe(2);
    expect(mount!.short!.end).toBe("hole");
    expect(mount!.span.centre.low.toFraction()).toBe("154/5");
  });
});
