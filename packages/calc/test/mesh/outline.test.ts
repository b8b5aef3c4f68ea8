import { describe, expect, it } from "vitest";
import { gearOutline, meshingPhase, meshOf, outlinePoints, radiiOf, type GearShape } from "../../src/mesh/index.js";

type Point = readonly [number, number];

const radiusOf = ([x, y]: Point): number => Math.hypot(x, y);
const angleOf = ([x, y]: Point): number => Math.atan2(y, x);

/** Between −half a step and half a step: how far from the nearest multiple of the step. */
const fromNearest = (angle: number, step: number): number => angle - step * Math.round(angle / step);

/** Whether a point lies inside a closed outline, by counting the edges to its right. */
function isInside([x, y]: Point, outline: readonly Point[]): boolean {
  let inside = false;
  outline.forEach(([ax, ay], n) => {
    const [bx, by] = outline[(n + 1) % outline.length]!;
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside;
  });
  return inside;
}

/** The least distance from a point to an outline's edges, of those that begin within a millimetre. */
function distanceTo([x, y]: Point, outline: readonly Point[]): number {
  let least = Infinity;
  outline.forEach(([ax, ay], n) => {
    if (Math.abs(ax - x) > 1 || Math.abs(ay - y) > 1) return;
    const [bx, by] = outline[(n + 1) % outline.length]!;
    const [dx, dy] = [bx - ax, by - ay];
    const along = Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy || 1)));
    least = Math.min(least, Math.hypot(x - ax - along * dx, y - ay - along * dy));
  });
  return least;
}

/**
 * How deep the outlines of two gears at a centre distance reach into one another, and how near they come: both in
 * millimetres, looked at from the corners of either. A ring's outline bounds the space that the gear turns in.
 */
function meeting(driver: GearShape, driven: GearShape, centre: number, phase: number): { into: number; apart: number } {
  const direction = 0.7;
  const place: Point = [centre * Math.cos(direction), centre * Math.sin(direction)];
  const options = { pieces: 40 };
  const first = outlinePoints(driver, { ...options, phase });
  const other = outlinePoints(driven, { ...options, phase: meshingPhase(driver, phase, driven, direction) });
  const second = other.map(([x, y]): Point => [x + place[0], y + place[1]]);
  let [into, apart] = [0, Infinity];
  const look = (points: readonly Point[], outline: readonly Point[], forbidden: boolean): void => {
    for (const point of points) {
      const distance = distanceTo(point, outline);
      apart = Math.min(apart, distance);
      if (Number.isFinite(distance) && isInside(point, outline) === forbidden) into = Math.max(into, distance);
    }
  };
  // Only what lies near the other gear matters; the rest costs time.
  const near = (points: readonly Point[], [x, y]: Point, shape: GearShape): Point[] => {
    const { tip, root } = radiiOf(shape);
    return points.filter((point) => Math.hypot(point[0] - x, point[1] - y) < Math.max(tip, root) + 0.3);
  };
  look(near(first, place, driven), second, !driven.internal);
  look(near(second, [0, 0], driver), first, true);
  return { into, apart };
}

describe("a gear's outline", () => {
  it("has flanks that are involutes of its base circle", () => {
    for (const [teeth, pressureAngle, shift] of [
      [62, 20, 0],
      [31, 14.5, 0.2],
      [23, 25, -0.1],
      [15, 20, 0.5],
    ] as const) {
      const shape = { teeth, module: 0.8, pressureAngle, shift };
      const { reference, base } = radiiOf(shape);
      const points = outlinePoints(shape, { pieces: 12 });
      const alpha = (pressureAngle * Math.PI) / 180;
      let seen = 0;
      for (const point of points) {
        const radius = radiusOf(point);
        if (radius < reference * 0.99) continue;
        // The string that unwinds from the base circle: as long as the arc that it has left.
        const string = Math.sqrt(radius ** 2 - base ** 2);
        const unwound = string / base - Math.atan(string / base);
        const atReference = Math.tan(alpha) - alpha;
        const half = Math.PI / (2 * teeth) + (2 * shift * Math.tan(alpha)) / teeth;
        const off = Math.abs(fromNearest(angleOf(point), (2 * Math.PI) / teeth));
        expect(off).toBeCloseTo(half + atReference - unwound, 10);
        seen++;
      }
      expect(seen).toBeGreaterThan(10 * teeth);
    }
  });

  it("is as thick at the reference circle as half a pitch and what the shift adds", () => {
    const thickness = (shift: number): number => {
      const shape = { teeth: 40, module: 1, shift };
      const near = outlinePoints(shape, { pieces: 400 }).filter((point) => Math.abs(radiusOf(point) - 20) < 0.01);
      return 2 * 20 * Math.abs(fromNearest(angleOf(near[0]!), (2 * Math.PI) / 40));
    };
    expect(thickness(0)).toBeCloseTo(Math.PI / 2, 1.9);
    expect(thickness(0.5) - thickness(0)).toBeCloseTo(2 * 0.5 * Math.tan(Math.PI / 9), 1.9);
  });

  it("keeps to the circles of meshOf", () => {
    const mesh = meshOf({ driver: 15, driven: 62, module: "0.8" });
    const ring = meshOf({ driver: 15, driven: 62, internal: true, module: "0.8" });
    for (const [gear, shape] of [
      [mesh.driver!, { teeth: 15, module: 0.8 }],
      [mesh.driven!, { teeth: 62, module: 0.8 }],
      [ring.driven!, { teeth: 62, module: 0.8, internal: true }],
    ] as const) {
      const radii = outlinePoints(shape).map(radiusOf);
      const [tip, root] = [gear.tip.low.toNumber() / 2, gear.root.low.toNumber() / 2];
      expect(Math.max(...radii)).toBeCloseTo(Math.max(tip, root), 9);
      expect(Math.min(...radii)).toBeCloseTo(Math.min(tip, root), 9);
      expect(radiiOf(shape).base).toBeCloseTo(gear.base.low.toNumber() / 2, 9);
    }
  });

  it("is hollowed at the root below 17 teeth, and not from there on", () => {
    const waist = (teeth: number): number => {
      const points = outlinePoints({ teeth, module: 1 }, { pieces: 60 });
      const side = points.slice(0, 121).map((point) => Math.abs(fromNearest(angleOf(point), (2 * Math.PI) / teeth)));
      // How much the tooth widens again, on its way from the root to the tip.
      return Math.max(...side.slice(1).map((angle, n) => angle - side[n]!));
    };
    for (const teeth of [7, 10, 13]) expect(waist(teeth)).toBeGreaterThan(1e-5);
    for (const teeth of [20, 31, 62]) expect(waist(teeth)).toBeLessThan(1e-9);
  });

  it("is path data, scaled and turned", () => {
    const path = gearOutline({ teeth: 12, module: 1 }, { scale: 10, phase: 0.3, pieces: 4 });
    expect(path).toMatch(/^M(-?\d+(\.\d{1,2})? -?\d+(\.\d{1,2})?L?)+Z$/);
    const numbers = path.match(/-?[\d.]+/g)!.map(Number);
    const plain = outlinePoints({ teeth: 12, module: 1 }, { pieces: 4 });
    expect(numbers.length).toBe(2 * plain.length);
    expect(Math.hypot(numbers[0]!, numbers[1]!)).toBeCloseTo(10 * radiusOf(plain[0]!), 1);
    expect(Math.atan2(numbers[1]!, numbers[0]!) - angleOf(plain[0]!)).toBeCloseTo(0.3, 3);
  });
});

describe("two gears in mesh", () => {
  const cases: readonly (readonly [string, GearShape, GearShape, number])[] = [
    ["15 and 62", { teeth: 15, module: 0.8 }, { teeth: 62, module: 0.8 }, 30.8],
    ["18 and 31", { teeth: 18, module: 0.8 }, { teeth: 31, module: 0.8 }, 19.6],
    ["8 and 40, undercut", { teeth: 8, module: 1 }, { teeth: 40, module: 1 }, 24],
    [
      "12 and 38, 14.5°",
      { teeth: 12, module: 1, pressureAngle: 14.5 },
      { teeth: 38, module: 1, pressureAngle: 14.5 },
      25,
    ],
    [
      "11 and 30, shifts that cancel",
      { teeth: 11, module: 1, shift: 0.4 },
      { teeth: 30, module: 1, shift: -0.4 },
      20.5,
    ],
    ["24 inside 60", { teeth: 24, module: 1 }, { teeth: 60, module: 1, internal: true, tip: 29.25 }, 18],
  ];
  it.each(cases)("touch and do not overlap: %s", (_, driver, driven, centre) => {
    for (let n = 0; n < 5; n++) {
      const { into, apart } = meeting(driver, driven, centre, (n * 2 * Math.PI) / (5 * driver.teeth));
      // Straight pieces stand off from the curve by micrometres.
      expect(into).toBeLessThan(0.002);
      expect(apart).toBeLessThan(0.004);
    }
  });

  it("overlap where they are too close, and the measure tells", () => {
    const [driver, driven] = [cases[0]![1], cases[0]![2]];
    expect(meeting(driver, driven, 30.6, 0).into).toBeGreaterThan(0.05);
    expect(meeting(driver, { ...driven, teeth: 63 }, 30.8, 0.2).into).toBeGreaterThan(0.05);
  });

  it("stand apart by the backlash where their centres are opened", () => {
    const mesh = meshOf({ driver: 15, driven: 62, module: "0.8" }, "0.1 mm");
    const { apart, into } = meeting(cases[0]![1], cases[0]![2], 30.9, 0);
    expect(into).toBe(0);
    expect(apart).toBeCloseTo(Number(mesh.normalBacklash) / 2, 2.5);
  });

  it("turn in the ratio of their teeth, against each other; a ring along with the gear inside", () => {
    const turned = (driver: GearShape, driven: GearShape): number =>
      (meshingPhase(driver, 1.5, driven, 0.4) - meshingPhase(driver, 0.5, driven, 0.4)) / 1;
    expect(turned({ teeth: 15, module: 1 }, { teeth: 62, module: 1 })).toBeCloseTo(-15 / 62, 12);
    expect(turned({ teeth: 15, module: 1 }, { teeth: 62, module: 1, internal: true })).toBeCloseTo(15 / 62, 12);
  });
});
