import type { Mount } from "../drivetrain/index.js";
import { MeshwrightError, rational, type Rational } from "../exact/index.js";
import { sizeOf } from "../gears/index.js";

/** How a centre distance was measured, and the shafts that it was measured over. */
export type Measured = Pick<Mount, "measured" | "shaft" | "drivenShaft">;

/** A mount without the lengths that are measured over or between shafts, where nobody has told both shafts' diameters. */
export function withKnownShafts<M extends Measured & Pick<Mount, "from" | "to" | "holes">>(
  mount: M,
): M | Omit<M, "from" | "to" | "holes"> {
  const { from, to, holes, ...rest } = mount;
  const isMeasured = (mount.measured ?? "between axes") !== "between axes" && (from ?? to ?? holes) !== undefined;
  return isMeasured && (mount.shaft === undefined || mount.drivenShaft === undefined) ? rest : mount;
}

/**
 * What to add to a measured length for the distance between the axes, in millimetres, exactly: nothing, or half of both
 * shafts' diameters, which outside over the shafts is too much and in the gap between them too little.
 *
 * @throws MeshwrightError `shafts-not-given`
 */
export function toAxes(mount: Measured): Rational {
  const { measured = "between axes", shaft, drivenShaft } = mount;
  if (measured === "between axes") return rational(0);
  if (shaft === undefined || drivenShaft === undefined)
    throw new MeshwrightError(
      "shafts-not-given",
      shaft === undefined ? "shaft" : "drivenShaft",
      `Measured ${measured} without both shafts' diameters; expected them.`,
    );
  const half = sizeOf(shaft, "shaft").plus(sizeOf(drivenShaft, "drivenShaft")).over(2);
  return measured === "over shafts" ? half.negate() : half;
}
