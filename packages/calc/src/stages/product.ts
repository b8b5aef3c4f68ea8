import { MeshwrightError, type Rational, ratioOf, ratioOfCoprimes } from "../exact/index.js";

function productOfAll(factors: readonly number[], at: string, least: number): number {
  let product = 1;
  for (const [index, factor] of factors.entries()) {
    if (!Number.isSafeInteger(factor) || Math.abs(factor) < least)
      throw new MeshwrightError(
        "not-an-integer",
        `${at}.${index}`,
        `Found ${factor}; expected a whole number${least ? " but 0" : ""}.`,
      );
    product *= factor;
  }
  return product;
}

/** Adds how often each prime occurs; past a thousand, what is left is one, or a count beyond a million, which stays whole. */
function addPrimes(powers: Map<number, number>, factors: readonly number[], by: number): void {
  const add = (prime: number): unknown => powers.set(prime, (powers.get(prime) ?? 0) + by);
  for (const factor of factors) {
    let rest = Math.abs(factor);
    for (let prime = 2; prime <= 1000 && prime * prime <= rest; prime += prime > 2 ? 2 : 1)
      for (; rest % prime === 0; rest /= prime) add(prime);
    add(rest);
  }
}

/** By halves, so that large factors meet large ones. */
function multiply(factors: readonly bigint[], from = 0, to = factors.length): bigint {
  if (to - from < 2) return factors[from]!;
  const middle = (from + to) >> 1;
  return multiply(factors, from, middle) * multiply(factors, middle, to);
}

/**
 * The product of whole numbers over the product of others: a whole drivetrain at once. Short lists run on plain numbers;
 * long ones are taken apart into primes, cancelled, and multiplied by halves, so that time grows hardly faster than the lists.
 * @throws MeshwrightError `not-an-integer`, with `numerators.3` or the like in `at`
 *
 * @example
 * import { productOf } from "@meshwright/calc/stages";
 * productOf([62, 45], [15, 18]).toFraction(); // => "31/3"
 */
export function productOf(numerators: readonly number[], denominators: readonly number[]): Rational {
  const above = productOfAll(numerators, "numerators", 0);
  const below = productOfAll(denominators, "denominators", 1);
  if (Number.isSafeInteger(above) && Number.isSafeInteger(below)) return ratioOf(above, below);
  if (numerators.includes(0)) return ratioOf(0, 1);
  const powers = new Map<number, number>();
  addPrimes(powers, numerators, 1);
  addPrimes(powers, denominators, -1);
  const over = [above < 0 === below < 0 ? 1n : -1n];
  const under = [1n];
  let apart = true;
  for (const [prime, power] of powers) {
    (power > 0 ? over : under).push(BigInt(prime) ** BigInt(Math.abs(power)));
    apart &&= prime < 1e6;
  }
  return (apart ? ratioOfCoprimes : ratioOf)(multiply(over), multiply(under));
}
