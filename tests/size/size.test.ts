import { expect, it } from "vitest";
import { sizeProblems } from "../../scripts/size.js";

it("a size within its limit and near the one on record is fine", () => {
  expect(sizeProblems({ exact: 4000, "words-de": 700 }, { exact: 3990, "words-de": 720 })).toEqual([]);
  expect(sizeProblems({ exact: 3000 }, undefined)).toEqual([]);
});

it.each([
  ["above its limit", { exact: 4001 }, undefined, /exact is 4001 bytes; at most 4000 are wanted/],
  ["a language above its limit", { "words-de": 801 }, undefined, /at most 800 are wanted/],
  ["grown", { calc: 15_000 }, { calc: 14_900 }, /100 bytes more than the 14900 on record.*size -- --write/],
  ["shrunk", { calc: 14_800 }, { calc: 14_900 }, /100 bytes fewer/],
  ["not on record", { calc: 15_000 }, {}, /not on record/],
  ["on record and gone", {}, { calc: 14_900 }, /was not found/],
])("a size that is %s is told", (_what, sizes, expected, message) => {
  expect(sizeProblems(sizes, expected).join("\n")).toMatch(message);
});

it("a size that is known to be above its limit is no surprise, until it no longer is", () => {
  const notReached = { calc: "a reason" };
  expect(sizeProblems({ calc: 17_000 }, undefined, notReached)).toEqual([]);
  expect(sizeProblems({ calc: 15_000 }, undefined, notReached)[0]).toMatch(/can let it go/);
  expect(sizeProblems({ article: 19_000 }, undefined, notReached)[0]).toMatch(/at most 18000/);
});
