/** What a count in a sentence says in English: the first of the elements' strings, for pages that show sentences first. */
export const countWords = {
  comma: ",",
  teeth: "{0}, teeth",
  gear: "gear {0}",
  fields: {
    driver: "driver",
    driven: "driven",
    starts: "starts",
    teeth: "wheel",
    sun: "sun",
    ring: "ring",
    planet: "planet",
    planets: "planets",
  },
  set: "{0}, set",
  wholeOnly: "Whole teeth only, from {0}. Kept {1}.",
  most: "{0} is the most here. Kept {1}.",
  kept: "{0} Kept {1}.",
};
