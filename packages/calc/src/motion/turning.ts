import { bounded, lengthOf, type Bounded, type RationalInput } from "../exact/index.js";
import { rootOf } from "../gears/index.js";

/**
 * The turning circle that an overdrive matches: its radius at the middle of the rear axle, in millimetres. In a turn without
 * slip the front axle stands further from the centre, by the hypotenuse over wheelbase L and radius r, and rolls
 * √(1 + (L / r)²) times as far; so r = L / √((1 + overdrive)² − 1). Exact where the root is. Undefined where the front is not
 * surely ahead.
 *
 * @param overdrive how much farther the front rolls than the rear, as a share
 *
 * @example
 * turningRadius("1/12", "300 mm")!.toJSON(); // => { low: "720/1", high: "720/1" }
 */
export function turningRadius(overdrive: Bounded | RationalInput, wheelbase: string): Bounded | undefined {
  const ratio = bounded(overdrive).plus(1);
  const square = ratio.power(2).minus(1);
  if (ratio.low.compare(1) <= 0) return undefined;
  return rootOf(square.inverse().times(lengthOf(wheelbase, "wheelbase").power(2)));
}

/**
 * How many times as far as the rear the front has to roll in a turn: √(1 + (L / r)²).
 *
 * @example
 * const needed = overdriveFor("400 mm", "300 mm");
 * const off = bounded("117/110").over(needed).minus(1);
 * [needed.low.toFraction(), off.low.toFraction()]; // => ["5/4", "-41/275"]
 */
export const overdriveFor = (radius: string, wheelbase: string): Bounded =>
  rootOf(bounded(lengthOf(wheelbase, "wheelbase").over(lengthOf(radius, "radius")).power(2).plus(1)));
