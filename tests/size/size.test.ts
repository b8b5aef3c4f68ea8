import { expect, it } from "vitest";
import { sizeProblems } from "../../scripts/size.js";

it("a size within its limit and near the one on record is fine", () => {
  expect(sizeProblems({ exact: 4096, "words-de": 700 }, { exact: 4090, "words-de": 720 })).toEqual([]);
  expect(sizeProblems({ exact: 3000, calc: 90_000 }, undefined)).toEqual([]);
});

it.each([
  ["above its limit", { exact: 4097 }, undefined, /exact is 4097 bytes; at most 4096 are wanted/],
  ["a language above its limit", { "words-de": 1025 }, undefined, /at most 1024 are wanted/],
  ["grown", { calc: 15_000 }, { calc: 14_900 }, /100 bytes more than the 14900 on record.*size -- --write/],
  ["shrunk", { calc: 14_800 }, { calc: 14_900 }, /100 bytes fewer/],
  ["not on record", { calc: 15_000 }, {}, /not on record/],
  ["on record and gone", {}, { calc: 14_900 }, /was not found/],
])("a size that is %s is told", (_what, sizes, expected, message) => {
  expect(sizeProblems(sizes, expected).join("\n")).toMatch(message);
});

it("a size that is known to be above its limit is no surprise, until it no longer is", () => {
  const notReached = { first: "a reason" };
  expect(sizeProblems({ first: 21_000 }, undefined, notReached)).toEqual([]);
  expect(sizeProblems({ first: 20_000 }, undefined, notReached)[0]).toMatch(/can let it go/);
  expect(sizeProblems({ article: 48_000 }, undefined, notReached)[0]).toMatch(/at most 47104/);
});
