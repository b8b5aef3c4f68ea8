import type { Part } from "../drivetrain/index.js";
import { rational, type Rational } from "../exact/index.js";
import { ceilOf } from "../gears/index.js";

/** An amount in a currency. */
export interface Money {
  readonly amount: Rational;
  readonly currency: string;
}

/** A part and how many pieces of it. */
export interface OrderLine {
  readonly part: Part;
  readonly pieces: number;
}

export interface BuyLine extends OrderLine {
  /** Whole packs. */
  readonly packs: number;
  /** What the packs cost; undefined where the part has no price. */
  readonly cost?: Money;
}

/** What is to pay. */
export interface Bill {
  /** What is to be bought, in whole packs. */
  readonly buy: readonly BuyLine[];
  /** Of all that has a price, exactly, by currency. */
  readonly sums: readonly Money[];
  /** How many lines to buy have no price. */
  readonly unpriced: number;
}

/** What it takes to have something: how many new parts, their price in thousandths, how many have none. */
export interface Cost {
  readonly fresh: number;
  readonly amount: number;
  readonly unpriced: number;
}

/** Whole packs for so many pieces. */
export const packsFor = ({ pack = 1 }: Part, pieces: number): number => Math.ceil(Math.max(0, pieces) / pack);

/** A line to buy. */
export function buyLine(part: Part, pieces: number, packs = packsFor(part, pieces)): BuyLine {
  const { price } = part;
  const cost = price && { amount: rational(price.amount).times(packs), currency: price.currency };
  return { part, pieces, packs, ...(cost && { cost }) };
}

/** The bill of some lines. Where a price is missing nothing is invented. */
export function billOf(buy: readonly BuyLine[]): Bill {
  const sums = new Map<string, Rational>();
  for (const { cost } of buy) if (cost) sums.set(cost.currency, cost.amount.plus(sums.get(cost.currency) ?? 0));
  return {
    buy,
    sums: [...sums].map(([currency, amount]) => ({ currency, amount })),
    unpriced: buy.filter(({ cost }) => !cost).length,
  };
}

/**
 * A line for the order of a search, which knows one currency, in whole thousandths: another currency's price counts as none.
 *
 * @example
 * const line = { part: { id: "p15", is: "pinion" } as const, pieces: 1, packs: 1 };
 * costOfLine({ ...line, cost: { amount: rational("4.20"), currency: "EUR" } }, "EUR"); // => { fresh: 1, amount: 4200, unpriced: 0 }
 * costOfLine(line, "EUR"); // => { fresh: 1, amount: 0, unpriced: 1 }
 */
export function costOfLine({ packs, cost }: BuyLine, currency: string): Cost {
  if (!packs) return nothing;
  if (cost?.currency !== currency) return { fresh: 1, amount: 0, unpriced: 1 };
  return { fresh: 1, amount: ceilOf(cost.amount.times(1000)), unpriced: 0 };
}

const nothing: Cost = { fresh: 0, amount: 0, unpriced: 0 };

/** Fewest without a price first, then cheapest, then by id. */
export const cheapestFirst = (parts: readonly Part[], costOf: (part: Part) => Cost): Part[] =>
  parts
    .map((part) => ({ part, ...costOf(part) }))
    .sort((a, b) => a.unpriced - b.unpriced || a.amount - b.amount || (a.part.id < b.part.id ? -1 : 1))
    .map(({ part }) => part);
