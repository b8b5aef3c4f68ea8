/**
 * Exact numbers: fractions, intervals, rounding by the options of ECMA-402, lengths with units.
 * @module
 */
export { Bounded, bounded, type BoundedInput } from "./bounded.js";
export { MeshwrightError } from "./errors.js";
export { format, type NumberStyle } from "./format.js";
export { lengthOf } from "./length.js";
export { Rational, rational, type RationalInput, ratioOf, ratioOfCoprimes } from "./rational.js";
export type { ReadOptions } from "./read.js";
export { toRepeating } from "./repeating.js";
export type { Rounding, RoundingMode } from "./rounding.js";
export { simplestIn } from "./simplest.js";
