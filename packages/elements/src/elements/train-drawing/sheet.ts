import type { Layout, PlacedWheel } from "@meshwright/calc/layout";

/** Where the drawing's millimetres lie on the screen: one scale, and a centre line that all axes lie on. */
export interface Sheet {
  readonly width: number;
  /** The size of the lettering, in pixels. */
  readonly em: number;
  /** Pixels for a millimetre. */
  readonly scale: number;
  /** The height of the centre line. */
  readonly y: number;
  /** What the wheels and walls reach to, above and below it. */
  readonly top: number;
  readonly bottom: number;
  readonly x: (millimetres: number) => number;
}

/** How far a wheel reaches from its axis, in millimetres. */
export const reachOf = ({ radii }: PlacedWheel): number =>
  Math.max(radii.tip, radii.root) + (radii.tip < radii.root ? 1 : 0);

/** The driver's pivot, in millimetres from the driven axis: above the centre line; none where no arm reaches so far. */
export function pivotOf(
  centre: number,
  distance: number,
  arm: number,
): { readonly x: number; readonly y: number } | undefined {
  // From the driven axis towards the driver, then square to it.
  const along = (centre ** 2 + distance ** 2 - arm ** 2) / (2 * centre);
  const square = distance ** 2 - along ** 2;
  return square >= 0 ? { x: -along, y: -Math.sqrt(square) } : undefined;
}

/** Lays the sheet out for a width: as large as it allows, and not larger than so many lines of text, or a scale. */
export function sheetFor(layouts: readonly Layout[], width: number, em: number, most = Infinity): Sheet {
  let [left, right, top, bottom] = [Infinity, -Infinity, 0, 0];
  const take = (x: number, y: number, reach: number): void => {
    left = Math.min(left, x - reach);
    right = Math.max(right, x + reach);
    top = Math.max(top, reach - y);
    bottom = Math.max(bottom, reach + y);
  };
  for (const { wheels, mounts } of layouts) {
    for (const wheel of wheels) take(wheel.x, 0, reachOf(wheel));
    for (const { span, pivot, walls } of mounts) {
      walls.forEach(({ wheel, distance }, n) =>
        take(wheel.x, ((n % 2 ? -1 : 1) * distance.low.toNumber()) / 2, distance.low.toNumber() / 2),
      );
      const point = pivot && pivotOf(span.centre.low.toNumber(), pivot.distance, pivot.arm);
      if (point) take(span.driven.x + point.x, point.y, 1);
    }
  }
  const beside = 1.1 * em;
  const scale = Math.min(most, (width - 2 * beside) / (right - left), (25 * em) / (top + bottom));
  const middle = (width - (left + right) * scale) / 2;
  // Small wheels carry their counts on top.
  const tops = layouts.flatMap(({ wheels }) =>
    wheels.map((wheel) => {
      const reach = reachOf(wheel) * scale;
      return reach + (reach > 4 * em ? 0.5 : wheel.label === undefined ? 1.7 : 2.8) * em;
    }),
  );
  return {
    width,
    em,
    scale,
    top: top * scale,
    bottom: bottom * scale,
    y: Math.ceil(Math.max(top * scale + 0.5 * em, ...tops)),
    x: (millimetres) => middle + millimetres * scale,
  };
}
