import { expect } from "vitest";
import { evaluate } from "../../src/evaluate/index.js";
import {
  askPairs,
  askTrains,
  findPairs,
  findTrains,
  type FoundPair,
  type FoundTrain,
  nearMisses,
  type PairQuestion,
  type TrainQuestion,
} from "../../src/search/index.js";
import { byCost, byFresh, everyPair, idsOf, type Looked, nearest, Shop, shown } from "./every-pair.js";
import { everyTrain, shownTrain } from "./every-train.js";
import { compare } from "./fractions.js";
import { shelfCase, trainCase } from "./shelf-cases.js";

const all = (batches: Iterable<{ readonly found: readonly FoundPair[] }>): FoundPair[] =>
  [...batches].flatMap(({ found }) => found);

const shownPair = (pair: FoundPair): string =>
  [
    ...idsOf(pair).map((id) => id ?? "-"),
    pair.centre?.low.toFraction() ?? "-",
    ...pair.totals.map(({ low, high }) => `${low.toFraction()}..${high.toFraction()}`),
    pair.distance.toFraction(),
    ...pair.pay.sums.map(({ currency, amount }) => `${currency} ${amount.toFraction()}`).sort(),
  ].join(" ");

/** Compares what is found on one shelf, in every order, with what is found by looking at every pair. Answers how much there was. */
export function compareShelf(seed: number): { hits: number; misses: number } {
  const one = shelfCase(seed);
  const shop = new Shop(one.build);
  const ask = (order?: PairQuestion["order"]) =>
    askPairs(evaluate(one.build), "primary", { ...(order && { order }) }) as PairQuestion;
  const looked = everyPair(one);
  const hits = looked.filter(({ hit }) => hit).sort(nearest);
  const misses = looked.filter(({ hit }) => !hit);
  const about = `shelf ${seed}`;
  const lines = (list: readonly Looked[]) => list.map((pair) => shown(shop, pair));

  expect(all(findPairs(ask())).map(shownPair), about).toEqual(lines(hits));
  const cheapest = [...hits].sort((a, b) => byCost(shop)(a, b) || byFresh(shop)(a, b));
  expect(all(findPairs(ask("cheapest"))).map(shownPair), about).toEqual(lines(cheapest));
  const fewest = [...hits].sort((a, b) => byFresh(shop)(a, b) || byCost(shop)(a, b));
  expect(all(findPairs(ask("fewest-new"))).map(shownPair), about).toEqual(lines(fewest));
  const near = misses.sort((a, b) => compare(a.off, b.off) || byCost(shop)(a, b) || nearest(a, b));
  expect(all(nearMisses(ask())).map(shownPair), about).toEqual(lines(near));
  return { hits: hits.length, misses: misses.length };
}

const shownFound = (train: FoundTrain): string =>
  [
    ...train.picks.flatMap(idsOf),
    ...train.wheels.map((wheel) => wheel?.id),
    ...train.totals.map(({ low, high }) => `${low.toFraction()}..${high.toFraction()}`),
    `${train.ahead!.low.toFraction()}..${train.ahead!.high.toFraction()}`,
    train.distance.toFraction(),
    ...train.pay.sums.map(({ currency, amount }) => `${currency} ${amount.toFraction()}`).sort(),
  ].join(" ");

/** Compares two stages and wheels that are chosen at once with what is found by going through all of them. */
export function compareTrains(seed: number): number {
  const one = trainCase(seed);
  const [from, to] = one.ahead;
  const question = askTrains(evaluate(one.build), ["primary", "rear-ring"], {
    wheels: one.wheels,
    compare: { of: "front", with: "rear", from, to },
  }) as TrainQuestion;
  const expected = everyTrain(one);
  const shop = new Shop(one.build);
  const batches = [...findTrains(question)];
  const lines = expected.map((train) => shownTrain(shop, train));
  expect(
    batches.flatMap(({ found }) => found.map(shownFound)),
    `trains ${seed}`,
  ).toEqual(lines);
  expect(batches.findLast(({ count }) => count !== undefined)?.count, `trains ${seed}`).toBe(expected.length);
  return expected.length;
}
