import { bounded, MeshwrightError, rational, type Bounded, type RationalInput } from "../exact/index.js";

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
  return efficiencies.reduce((torque: Bounded, efficiency) => {
    const share = rational(efficiency, { at: "efficiencies" });
    if (share.sign <= 0 || share.compare(1) > 0)
      throw new MeshwrightError("out-of-range", "efficiencies", `Found ${share}; expected above 0 and up to 1.`);
    return torque.times(share);
  }, bounded(reduction).times(motorTorque));
}
