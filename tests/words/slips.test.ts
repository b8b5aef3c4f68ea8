import { describe, expect, it } from "vitest";
import { edits, lettersOf, nearWords, slipsOf } from "./slips.js";

describe("slips", () => {
  it("are every letter left out, put in, replaced or swapped, and wrong case", () => {
    const slips = slipsOf("of", lettersOf(["of"]));
    // 2 left out, 26 put in at 3 places but "oof" and "off" twice, 25 replaced at 2 places, 1 swapped; Of, oF, OF.
    expect(slips).toHaveLength(2 + (26 * 3 - 2) + 25 * 2 + 1 + 3);
    for (const slip of ["o", "f", "fo", "oof", "ofx", "xf", "Of", "oF", "OF"]) expect(slips).toContain(slip);
    expect(slips).not.toContain("of");
    expect(new Set(edits("ab", ["c"]))).toEqual(new Set(["cab", "acb", "abc", "b", "a", "cb", "ac", "ba"]));
  });

  it("are near to the words that one of them makes of them", () => {
    const words = ["mm", "cm", "m", "in", "ft"];
    for (const slip of slipsOf("cm", lettersOf(words))) {
      const near = words.filter((word) => {
        const [one, other] = [slip.toLowerCase(), word.toLowerCase()];
        return one === other || [...edits(one, lettersOf(words))].includes(other);
      });
      const same = near.filter((word) => word.toLowerCase() === slip.toLowerCase());
      expect(nearWords(slip, words), slip).toEqual((same.length ? same : near).slice(0, 3));
    }
  });
});
