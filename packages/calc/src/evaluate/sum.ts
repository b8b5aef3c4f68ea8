import { bounded, rational, type Bounded, type Rational } from "../exact/index.js";
import { Quantity, type Power } from "./quantity.js";

/** The text by which equal terms are known: unknowns in one order. */
const nameOf = (unknowns: readonly Power[]): string =>
  unknowns
    .map(({ key, power }) => JSON.stringify([key, power]))
    .sort()
    .join();

/** The unknowns that all terms have, to the power that all of them have on one side of the line. */
function commonOf(terms: readonly Quantity[]): readonly Power[] {
  const [first, ...others] = terms.map(({ unknowns }) => new Map(unknowns.map((one) => [one.key, one])));
  return [...first!.values()].flatMap((one) => {
    const powers = [one.power, ...others.map((other) => other.get(one.key)?.power ?? 0)];
    const power = one.power > 0 ? Math.min(...powers) : Math.max(...powers);
    return power * one.power > 0 ? [{ ...one, power }] : [];
  });
}

/**
 * The sum of quantities as one quantity. What all terms have in common stays in front of it by name; where the rest is still
 * no exact number, it is an unknown of its own, named after what it is made of, so that it cancels against itself.
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
  const common = new Quantity(first!.factor, commonOf([first!, ...more]));
  const rest = [first!, ...more].map((term) => term.over(common));
  const ends = rest.map((term) => term.bounds);
  const total = (end: (one: Bounded) => Rational) => ends.reduce((sum, one) => sum.plus(end(one)), rational(0));
  const interval = bounded(
    total(({ low }) => low),
    total(({ high }) => high),
  );
  const key = `sum of ${rest.map(({ factor, unknowns }) => `${factor} ${nameOf(unknowns)}`).join(" and ")}`;
  return new Quantity(common.factor, [...common.unknowns, { key, interval, power: 1 }]);
}
