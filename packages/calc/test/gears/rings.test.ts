import { describe, expect, it } from "vitest";
import { meshingPhase, meshOf, outlinePoints, radiiOf, type ToothPair } from "../../src/gears/index.js";

type Point = readonly [number, number];

function isInside([x, y]: Point, outline: readonly Point[]): boolean {
  let inside = false;
  outline.forEach(([ax, ay], n) => {
    const [bx, by] = outline[(n + 1) % outline.length]!;
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside;
  });
  return inside;
}

function distanceTo([x, y]: Point, outline: readonly Point[]): number {
  let least = Infinity;
  outline.forEach(([ax, ay], n) => {
    const [bx, by] = outline[(n + 1) % outline.length]!;
    const [dx, dy] = [bx - ax, by - ay];
    const along = Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy || 1)));
    least = Math.min(least, Math.hypot(x - ax - along * dx, y - ay - along * dy));
  });
  return least;
}

/** How deep the tips of a gear reach into the teeth of the ring that it rolls in, in millimetres, from their outlines. */
function tipsInRing(teeth: number, ring: number, pressureAngle: number): number {
  const gear = { teeth, module: 1, pressureAngle };
  const around = { teeth: ring, module: 1, internal: true, pressureAngle };
  const centre = (ring - teeth) / 2;
  const { tip } = radiiOf(gear);
  let deepest = 0;
  for (let n = 0; n < 12; n++) {
    const phase = (n * 2 * Math.PI) / teeth / 12;
    const options = { pieces: 30, phase: meshingPhase(gear, phase, around, Math.PI) };
    const space = outlinePoints(around, options).map(([x, y]): Point => [x - centre, y]);
    for (const point of outlinePoints(gear, { pieces: 30, phase }))
      if (Math.hypot(...point) > tip - 0.25 && !isInside(point, space))
        deepest = Math.max(deepest, distanceTo(point, space));
  }
  return deepest;
}

const ring = (driver: number, driven: number, more: Partial<ToothPair> = {}) =>
  meshOf({ driver, driven, module: 1, internal: true, ...more });

describe("a gear inside a ring", () => {
  it("fouls the ring where that has only a few teeth more, as their outlines do", () => {
    for (const [teeth, driven, pressureAngle] of [
      [41, 48, 20],
      [31, 36, 20],
      [26, 30, 25],
      [66, 76, 14.5],
    ] as const) {
      expect(ring(teeth, driven, { pressureAngle }).fouls).toBe(true);
      expect(tipsInRing(teeth, driven, pressureAngle)).toBeGreaterThan(0.005);
    }
    for (const [teeth, driven, pressureAngle] of [
      [31, 40, 20],
      [51, 60, 20],
      [24, 30, 25],
      [20, 40, 20],
    ] as const) {
      expect(ring(teeth, driven, { pressureAngle }).fouls).toBe(false);
      // What outlines of straight pieces show of flanks that touch.
      expect(tipsInRing(teeth, driven, pressureAngle)).toBeLessThan(0.003);
    }
    expect(ring(35, 36)).toMatchObject({ fouls: true, circumferentialBacklash: expect.closeTo(0, 9) as number });
    expect(meshOf({ driver: 35, driven: 36, module: 1 })).not.toHaveProperty("fouls");
  });

  it("has as many teeth in contact as lie on the line of action, counted", () => {
    for (const [z1, z2] of [
      [20, 60],
      [24, 80],
      [30, 45],
    ] as const) {
      const mesh = ring(z1, z2);
      const angle = Math.PI / 9;
      const base = [z1, z2].map((z) => (z / 2) * Math.cos(angle)) as [number, number];
      const between = Math.sqrt(mesh.operatingCentre! ** 2 - (base[1] - base[0]) ** 2);
      const pitch = (2 * Math.PI * base[0]) / z1;
      let touching = 0;
      const steps = 20_000;
      for (let n = 0; n < steps; n++)
        for (let tooth = -6; tooth <= 30; tooth++) {
          // Along the line of action from where it touches the gear's base circle; the ring's lies further back.
          const place = (n / steps + tooth) * pitch;
          const inGear = Math.hypot(base[0], place) <= z1 / 2 + 1;
          const inRing = place + between > 0 && Math.hypot(base[1], place + between) >= z2 / 2 - 1;
          if (inGear && inRing) touching++;
        }
      expect(mesh.contactRatio).toBeCloseTo(touching / steps, 2);
      expect(mesh.interference).toBe(Math.hypot(base[1], between) > z2 / 2 - 1);
    }
  });

  it("is smaller than the ring: else there is no such pair", () => {
    for (const [driver, driven] of [
      [36, 36],
      [50, 36],
    ] as const) {
      const mesh = ring(driver, driven);
      expect(mesh.notKnown).toBe("ring-too-small");
      expect(mesh).not.toHaveProperty("centreDistance");
    }
  });
});
