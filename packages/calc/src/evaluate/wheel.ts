import { lengthOf } from "../exact/index.js";
import type { Wheel } from "../drivetrain/index.js";
import { pi, Quantity } from "./quantity.js";

const rolled = new WeakMap<Wheel, Quantity>();

/** Ground rolled in one turn of a wheel, in millimetres. */
export function rolledBy(wheel: Wheel): Quantity {
  let ground = rolled.get(wheel);
  if (!ground) {
    const { travel } = wheel;
    ground = travel
      ? new Quantity(lengthOf(travel.length).over(travel.turns))
      : pi().times(lengthOf(wheel.loadedDiameter ?? wheel.diameter!));
    rolled.set(wheel, ground);
  }
  return ground;
}
