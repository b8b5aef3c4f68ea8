import { bounded, type Bounded, type RationalInput } from "../exact/index.js";
import { shareOf } from "./share.js";

/**
 * Torque at the wheel, or at both wheels of an axle together: motor torque times reduction times the efficiency of every
 * stage. Nothing is assumed: without efficiencies it is the ideal figure. In the unit of the motor torque.
 *
 * @param efficiencies one for each stage, above 0 and up to 1
 * @throws MeshwrightError `out-of-range`
 *
 * @example
 * const torque = wheelTorque("0.1", 40, ["0.97", "0.97", "0.97"]);
 * torque.low.toDecimal({ maximumFractionDigits: 3 }); // => "3.651"
 */
export function wheelTorque(
  motorTorque: RationalInput,
  reduction: Bounded | RationalInput,
  efficiencies: readonly RationalInput[],
): Bounded {
  return efficiencies.reduce(
    (torque: Bounded, efficiency) => torque.times(shareOf(efficiency, "efficiencies")),
    bounded(reduction).times(motorTorque),
  );
}
