// How calc's values are written in vectors.
import type { Bounded } from "@meshwright/calc/exact";
import { fraction } from "./fields.js";

/** The form of an interval. */
export const interval = { low: fraction, high: fraction };

export const ends = (bounded: Bounded) => ({ low: bounded.low.toFraction(), high: bounded.high.toFraction() });

/** A value that has to be exact: an interval in its place is told as one. */
export const exact = (bounded: Bounded) => (bounded.isExact ? bounded.low.toFraction() : ends(bounded));
