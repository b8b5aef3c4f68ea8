import type { Mount } from "../drivetrain/index.js";
import { lengthOf } from "../exact/index.js";
import type { Reason } from "./reason.js";

/** Holes evenly spaced on a circle. */
export type HoleCircle = NonNullable<Mount["hubHoles"]>[number];

/** A disc between a gear and a hub whose holes do not match, with circles for both. */
export interface AdapterPlate {
  readonly label?: string;
  readonly circles: readonly HoleCircle[];
}

/** Circles match where their diameters do and every hole of the one with fewer meets one of the other. */
const match = (some: readonly HoleCircle[], { count, diameter }: HoleCircle): boolean =>
  some.some(
    (one) =>
      !(one.count % count && count % one.count) &&
      lengthOf(one.diameter, "circles").equals(lengthOf(diameter, "circles")),
  );

/**
 * Whether a gear can be screwed to a hub: by any of its circles on any of the hub's, or by an adapter plate that has one
 * circle for the gear and another for the hub.
 */
export function hubReasons(
  gear: readonly HoleCircle[],
  hub: readonly HoleCircle[],
  plates: readonly AdapterPlate[],
  of: "driver" | "driven",
): Reason[] {
  if (hub.some((circle) => match(gear, circle))) return [];
  const plate = plates.find(({ circles }) =>
    circles.some((one) => match(gear, one) && circles.some((other) => other !== one && match(hub, other))),
  );
  return [
    plate
      ? { code: "plate", weight: "information", of, label: plate.label }
      : { code: "hub-holes", weight: "refusal", of },
  ];
}
