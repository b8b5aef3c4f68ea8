import { fail } from "./errors.js";
import { lowest, type Rational, ratioOf } from "./rational.js";

function check(factors: readonly number[], at: string, least: number): number {
  let product = 1;
  for (const [index, factor] of factors.entries()) {
    if (!Number.isSafeInteger(factor) || Math.abs(factor) < least)
      fail("not-an-integer", `${at}.${index}`, factor, `a whole number${least ? " but 0" : ""}`);
    product *= factor;
  }
  return product;
}

const add = (counts: Map<number, number>, value: number, by: number): unknown =>
  counts.set(value, (counts.get(value) ?? 0) + by);

/** How often each prime occurs above the line, less how often below. */
function primePowers(numerators: readonly number[], denominators: readonly number[]): Map<number, number> {
  const factors = new Map<number, number>();
  for (const factor of numerators) add(factors, Math.abs(factor), 1);
  for (const factor of denominators) add(factors, Math.abs(factor), -1);
  const powers = new Map<number, number>();
  for (const [factor, count] of factors) {
    let rest = factor;
    // Past a thousand, what is left is a prime, or a count beyond a million, which may stay whole.
    for (let prime = 2; prime <= 1000 && prime * prime <= rest; prime += prime > 2 ? 2 : 1)
      for (; rest % prime === 0; rest /= prime) add(powers, prime, count);
    add(powers, rest, count);
  }
  return powers;
}

/** By halves, so that large factors meet large ones. */
function multiply(factors: readonly bigint[], from = 0, to = factors.length): bigint {
  if (to - from < 2) return factors[from] ?? 1n;
  const middle = (from + to) >> 1;
  return multiply(factors, from, middle) * multiply(factors, middle, to);
}

/**
 * The product of whole numbers over the product of others: a whole drivetrain at once. Short lists run on plain numbers;
 * long ones are taken apart into primes, cancelled, and multiplied by halves, so that time grows hardly faster than the lists.
 * @throws MeshwrightError `not-an-integer`, with `numerators.3` or the like in `at`
 *
 * @example
 * import { productOf } from "@meshwright/calc/exact";
 * productOf([62, 45], [15, 18]).toFraction(); // => "31/3"
 */
export function productOf(numerators: readonly number[], denominators: readonly number[]): Rational {
  const above = check(numerators, "numerators", 0);
  const below = check(denominators, "denominators", 1);
  if (Number.isSafeInteger(above) && Number.isSafeInteger(below)) return ratioOf(above, below);
  if (numerators.includes(0)) return ratioOf(0, 1);
  const over: bigint[] = [];
  const under: bigint[] = [];
  let apart = true; // all are primes
  for (const [prime, power] of primePowers(numerators, denominators)) {
    (power > 0 ? over : under).push(BigInt(prime) ** BigInt(Math.abs(power)));
    apart &&= prime < 1e6;
  }
  const sign = above < 0 === below < 0 ? 1n : -1n;
  return (apart ? lowest : ratioOf)(sign * multiply(over), multiply(under));
}
