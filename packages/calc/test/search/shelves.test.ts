import { expect, it } from "vitest";
import { compareShelf, compareTrains } from "./compare-shelves.js";

it(
  "finds on 150 random shelves what looking at every pair finds, in every order, to the last cent",
  { timeout: 120_000 },
  () => {
    const sum = { hits: 0, misses: 0 };
    for (let seed = 1; seed <= 150; seed++) {
      const { hits, misses } = compareShelf(seed);
      sum.hits += hits;
      sum.misses += misses;
    }
    expect(sum.hits).toBeGreaterThan(250);
    expect(sum.misses).toBeGreaterThan(1000);
  },
);

it(
  "finds two stages and the wheels of two axles at once as going through all of them does",
  { timeout: 120_000 },
  () => {
    let sum = 0;
    for (let seed = 1; seed <= 110; seed++) sum += compareTrains(seed);
    expect(sum).toBeGreaterThan(500);
  },
);
