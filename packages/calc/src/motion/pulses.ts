import type { Wheel } from "../drivetrain/index.js";
import { bounded, ratioOf, type Bounded, type RationalInput } from "../exact/index.js";
import { rolledBy } from "../evaluate/index.js";

/**
 * Ground rolled for one pulse of an encoder, in millimetres: on the wheel's side of the gearing and on the motor's, since the
 * count alone does not say which.
 *
 * @example
 * const { onWheel, onMotor } = travelPerPulse(400, 83, { diameter: "101.6 mm" });
 * [onWheel, onMotor].map((one) => one.low.toDecimal({ maximumSignificantDigits: 3 })); // => ["0.798", "0.00961"]
 */
export function travelPerPulse(
  pulsesPerTurn: number,
  reduction: Bounded | RationalInput,
  wheel: Wheel,
): { readonly onWheel: Bounded; readonly onMotor: Bounded } {
  const onWheel = rolledBy(wheel).bounds.times(ratioOf(1, pulsesPerTurn));
  return { onWheel, onMotor: onWheel.over(bounded(reduction)) };
}
