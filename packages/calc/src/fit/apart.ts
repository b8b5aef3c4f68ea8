import { bounded, type Bounded } from "../exact/index.js";

/** How far one length lies beyond another; nothing where both are one and the same, which may be known only within digits. */
export const apart = (one: Bounded, other: Bounded): Bounded =>
  one.low.equals(other.low) && one.high.equals(other.high) ? bounded(0) : one.minus(other);
