/**
 * A whole number in the loops: a JS number where no product can leave the safe range, else a bigint, all alike. Operators
 * mean the same for both, so that one loop serves both; the type says number for the compiler's sake.
 */
export type Whole = number;

/** Turns what is whole into the sort of number that a search runs on. */
export type Cast = (value: number | bigint) => Whole;

/** Numbers where `largest`, a bound of all products, is safe; else bigints. */
export const castFor = (largest: number): Cast => (largest < Number.MAX_SAFE_INTEGER ? Number : BigInt) as Cast;

/** The greatest of whole numbers, roughly; at least 1. */
export const greatest = (list: Iterable<number | bigint>): number => {
  let most = 1;
  for (const one of list) if (one > most) most = Number(one);
  return most;
};

/** Whether a/b is below c/d; for parts whose own values are exact, whatever their products. */
export function isBelow(a: Whole, b: Whole, c: Whole, d: Whole): boolean {
  const x = a * d;
  const y = c * b;
  // Rounding of a product is far below this; bigints are never rounded.
  if (typeof x === "bigint" || (x < Number.MAX_SAFE_INTEGER && y < Number.MAX_SAFE_INTEGER)) return x < y;
  if (Math.abs(x - y) > x * 1e-12) return x < y;
  return BigInt(a) * BigInt(d) < BigInt(c) * BigInt(b);
}
