import { rational } from "../exact/index.js";
import { Quantity, type Power } from "./quantity.js";

/** The text by which equal terms are known: unknowns in one order. */
const nameOf = (unknowns: readonly Power[]): string =>
  unknowns
    .map(({ key, power }) => JSON.stringify([key, power]))
    .sort()
    .join();

/** The text by which equal quantities are known. */
export const textOf = ({ factor, unknowns }: Quantity): string => `${factor} ${nameOf(unknowns)}`;

/**
 * The sum of quantities as one quantity. Where it is more than one term by one set of unknowns, it is the first term times an
 * unknown of its own, named after what it is made of, so that it cancels against itself.
 */
export function sumOf(terms: readonly Quantity[]): Quantity {
  const alike = new Map<string, Quantity>();
  for (const term of terms) {
    const name = nameOf(term.unknowns);
    const other = alike.get(name);
    alike.set(name, other ? new Quantity(other.factor.plus(term.factor), other.unknowns) : term);
  }
  const [first, ...more] = [...alike.values()];
  if (!more.length) return first!;
  const rest = [first!, ...more].map((term) => term.over(first!));
  const interval = rest.map((term) => term.bounds).reduce((sum, one) => sum.plus(one));
  const key = `sum of ${rest.map(textOf).join(" and ")}`;
  return first!.times(new Quantity(rational(1), [{ key, interval, power: 1, terms: rest }]));
}
