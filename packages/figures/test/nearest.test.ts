import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { nearest, slips } from "../src/nearest.js";

const letters = "abcwmv-";
const word = fc.array(fc.constantFrom(...letters), { maxLength: 5 }).map((one) => one.join(""));

/** Every word that one slip makes of another. */
function slipped(from: string): readonly string[] {
  const places = Array.from({ length: from.length + 1 }, (_, n) => [from.slice(0, n), from.slice(n)] as const);
  return places.flatMap(([head, tail]) => [
    ...(tail ? [head + tail.slice(1)] : []),
    ...(tail.length > 1 ? [head + tail[1]! + tail[0]! + tail.slice(2)] : []),
    ...[...letters].flatMap((one) => [head + one + tail, ...(tail ? [head + one + tail.slice(1)] : [])]),
  ]);
}

describe("nearest", () => {
  it("counts a letter left out, put in, replaced, or swapped with its neighbour as one slip", () => {
    fc.assert(
      fc.property(word, (one) => {
        for (const other of slipped(one)) expect(slips(one, other)).toBe(one === other ? 0 : 1);
        expect(slips(one, one)).toBe(0);
      }),
    );
  });

  it("counts as many slips both ways, and no more than letters", () => {
    fc.assert(
      fc.property(word, word, (one, other) => {
        expect(slips(one, other)).toBe(slips(other, one));
        expect(slips(one, other)).toBeLessThanOrEqual(Math.max(one.length, other.length));
        if (one !== other && !slipped(one).includes(other)) expect(slips(one, other)).toBeGreaterThan(1);
      }),
    );
  });

  it("names all at the least distance, three at most", () => {
    expect(nearest("mw-valeu", ["mw-value", "mw-teeth"])).toEqual(["mw-value"]);
    expect(nearest("ab", ["b", "a", "abc", "ad", "xyz"])).toEqual(["b", "a", "abc"]);
    expect(nearest("X".repeat(100_000), ["mw-value"])).toEqual(["mw-value"]);
  });
});
