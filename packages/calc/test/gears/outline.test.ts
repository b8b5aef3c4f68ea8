import { describe, expect, it } from "vitest";
import { gearOutline, meshingPhase, meshOf, outlinePoints, radiiOf, type GearShape } from "../../src/gears/index.js";

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

/** The least value of a function that falls and then rises around one of many places looked at first. */
function leastOf(f: (at: number) => number, from: number, to: number): number {
  const steps = 400;
  let best = from;
  for (let n = 0; n <= steps; n++) {
    const at = from + ((to - from) * n) / steps;
    if (f(at) < f(best)) best = at;
  }
  let [low, high] = [best - (to - from) / steps, best + (to - from) / steps];
  for (let n = 0; n < 60; n++) {
    const [a, b] = [low + (high - low) / 3, high - (high - low) / 3];
    if (f(a) < f(b)) high = b;
    else low = a;
  }
  return f((low + high) / 2);
}

/**
 * How near a point of a gear comes to a rack cutter that rolls around it: zero where the cutter just grazes it, below zero
 * where it would have cut it away. The rack is that of ISO 53: half a pitch of tooth at its reference line, flanks at the
 * pressure angle, corners rounded by what a quarter module of clearance allows, or wholly round where they meet.
 */
function fromCutter({ teeth, module, pressureAngle = 20, shift = 0 }: GearShape, point: Point, depth = 1.25): number {
  const alpha = (pressureAngle * Math.PI) / 180;
  const [sine, cosine, tangent] = [Math.sin(alpha), Math.cos(alpha), Math.tan(alpha)];
  const tipHalf = Math.PI / 4 - depth * tangent;
  const corner = Math.min(0.25 / (1 - sine), (tipHalf * cosine) / (1 - sine)) * module;
  const reference = (module * teeth) / 2;
  // The cutter's tooth is all that lies within the corner's radius of a smaller trapezoid.
  const floor = depth * module - corner;
  const half = (below: number): number => (module * Math.PI) / 4 - below * tangent - corner / cosine;
  const inside = half(floor);
  const distance = (along: number, below: number): number => {
    const across = Math.abs(along);
    const toFlank = (across - half(below)) * cosine;
    if (toFlank <= 0 && below <= floor) return Math.max(toFlank, below - floor) - corner;
    // From the trapezoid's corner, from its end, or from its flank.
    const alongFlank = (across - inside) * sine - (below - floor) * cosine;
    if (below > floor && across <= inside) return below - floor - corner;
    if (alongFlank < 0) return Math.hypot(across - inside, below - floor) - corner;
    return toFlank - corner;
  };
  const [radius, angle] = [radiusOf(point), angleOf(point)];
  const step = (2 * Math.PI) / teeth;
  // The space nearest to the point, in whose middle the cutter's tooth stands when it is deepest.
  const fromSpace = fromNearest(angle - step / 2, step);
  const at = (roll: number): number =>
    distance(
      radius * Math.sin(fromSpace + roll) - reference * roll,
      reference + shift * module - radius * Math.cos(fromSpace + roll),
    );
  return leastOf(at, -1.2, 1.2);
}

describe("a gear's outline, cut by a rack", () => {
  it.each<GearShape>([
    { teeth: 7, module: 1 },
    { teeth: 12, module: 0.8 },
    { teeth: 14, module: 1 },
    { teeth: 15, module: 1 },
    { teeth: 16, module: 1.5, shift: -0.2 },
    { teeth: 15, module: 0.8, shift: 0.5 },
    { teeth: 24, module: 1 },
    { teeth: 62, module: 0.8, shift: 0.3 },
    { teeth: 12, module: 1, pressureAngle: 14.5 },
    { teeth: 31, module: 2, pressureAngle: 14.5 },
    { teeth: 18, module: 1, pressureAngle: 25 },
    { teeth: 13, module: 1, pressureAngle: 28 },
  ])("is what the cutter just leaves: %j", (shape) => {
    const pieces = 8;
    const points = outlinePoints(shape, { pieces });
    const perTooth = points.length / shape.teeth;
    for (const point of points.slice(0, perTooth)) expect(fromCutter(shape, point)).toBeCloseTo(0, 5);
    // From the middle of the space to the tip and back, with no step missing.
    const { tip, root } = radiiOf(shape);
    const radii = points.slice(0, perTooth).map(radiusOf);
    expect(radii[0]).toBeCloseTo(root, 9);
    expect(radii[perTooth / 2]).toBeCloseTo(tip, 9);
    expect(radii.at(-1)).toBeCloseTo(root, 9);
    for (let n = 1; n < perTooth; n++) expect(Math.abs(radii[n]! - radii[n - 1]!)).toBeLessThan((tip - root) / 2);
  });

  it("goes around in order of rising angle, also where teeth come to a point", () => {
    for (const shape of [
      { teeth: 10, module: 1, shift: 1 },
      { teeth: 24, module: 1 },
      { teeth: 60, module: 1, internal: true },
      { teeth: 30, module: 1, internal: true },
    ]) {
      const points = outlinePoints(shape, { phase: 0.2 });
      points.forEach((point, n) => {
        const next = points[(n + 1) % points.length]!;
        const turn = fromNearest(angleOf(next) - angleOf(point), 2 * Math.PI);
        expect(turn).toBeGreaterThan(-1e-9);
        expect(turn).toBeLessThan((2 * Math.PI) / shape.teeth);
      });
    }
  });

  it("has the spaces of a ring as wide as the teeth that fit them, also where they begin inside the base circle", () => {
    for (const [teeth, shift] of [
      [60, 0],
      [60, 0.3],
      [24, 0],
      [24, -0.2],
    ] as const) {
      const shape = { teeth, module: 1, internal: true, shift };
      const { reference, base, tip, root } = radiiOf(shape);
      expect([tip, root]).toEqual([reference - 1 - shift, reference - shift + 1.25]);
      const points = outlinePoints(shape, { pieces: 10 });
      const alpha = Math.PI / 9;
      for (const point of points) {
        const radius = radiusOf(point);
        const string = Math.sqrt(Math.max(0, radius ** 2 - base ** 2));
        const unwound = string / base - Math.atan(string / base);
        // Between two teeth of a ring lies the shape of a tooth, narrower by what the shift adds to the ring's.
        const half = Math.PI / (2 * teeth) - (2 * shift * Math.tan(alpha)) / teeth;
        const off = Math.abs(fromNearest(angleOf(point), (2 * Math.PI) / teeth));
        expect(off).toBeCloseTo(Math.max(0, half + Math.tan(alpha) - alpha - unwound), 9);
      }
      const radii = points.map(radiusOf);
      expect([Math.min(...radii), Math.max(...radii)]).toEqual([
        expect.closeTo(tip, 9) as number,
        expect.closeTo(root, 9) as number,
      ]);
    }
  });

  it("keeps to a tip and a root of its own, however shallow", () => {
    for (const shape of [
      { teeth: 20, module: 1, tip: 10.6, root: 9.1 },
      { teeth: 20, module: 1, root: 9.8 },
      { teeth: 20, module: 1, root: 9.3 },
      { teeth: 12, module: 1, root: 5.9 },
      { teeth: 10, module: 1, root: 4.65 },
      { teeth: 60, module: 1, internal: true, tip: 29.3, root: 31 },
    ]) {
      const { tip, root } = radiiOf(shape);
      expect([tip, root]).toEqual([shape.tip ?? shape.teeth / 2 + 1, shape.root]);
      const points = outlinePoints(shape);
      const radii = points.map(radiusOf);
      expect(Math.min(...radii)).toBeCloseTo(Math.min(tip, root), 9);
      expect(Math.max(...radii)).toBeCloseTo(Math.max(tip, root), 9);
      expect(points.flat().every(Number.isFinite)).toBe(true);
      if (shape.internal || root < radiiOf(shape).base || shape.teeth / 2 - root > 0.3) continue;
      // Too shallow for the cutter's corner: the involute begins at the root.
      const { base } = radiiOf(shape);
      const inv = (radius: number): number => Math.tan(Math.acos(base / radius)) - Math.acos(base / radius);
      const half = Math.PI / (2 * shape.teeth) + inv(shape.teeth / 2) - inv(root);
      expect(Math.abs(angleOf(points[0]!))).toBeCloseTo(half, 9);
    }
  });

  it("follows the curve closer with more pieces, around the origin and in millimetres where nothing else is said", () => {
    const shape = { teeth: 18, module: 1 };
    const [few, many] = [outlinePoints(shape, { pieces: 3 }), outlinePoints(shape, { pieces: 30 })];
    expect(many.length).toBeGreaterThan(8 * few.length);
    expect(angleOf(outlinePoints(shape)[0]!)).toBeCloseTo(angleOf(outlinePoints(shape, { phase: 0 })[0]!), 12);
    expect(gearOutline(shape)).toBe(gearOutline(shape, { scale: 1, phase: 0 }));
    expect(gearOutline(shape).split("L").length).toBe(outlinePoints(shape).length);
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
