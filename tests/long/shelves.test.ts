// Random shelves of parts of different origin against looking at every pair, every train, in fractions of the tests' own.
import { expect, it } from "vitest";
import { compareShelf, compareTrains } from "../../packages/calc/test/search/compare-shelves.js";
import { seed } from "./seed.js";

const shelves = 10_000;

it("finds on 10,000 shelves what looking at every pair finds, in every order, to the last cent", () => {
  let hits = 0;
  for (let n = 0; n < shelves; n++) hits += compareShelf(seed + n).hits;
  expect(hits).toBeGreaterThan(shelves);
});

it("finds on 10,000 shelves two stages and the wheels of two axles at once as going through all of them does", () => {
  let trains = 0;
  for (let n = 0; n < shelves; n++) trains += compareTrains(seed + n);
  expect(trains).toBeGreaterThan(shelves);
});
