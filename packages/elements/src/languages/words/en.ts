import { figureWords, type FigureWords } from "@meshwright/calc/report";

/**
 * What the elements say in English, and the list of what every language has to say. `{0}`, `{1}` stand for what is put in;
 * where a count decides the form, the forms bear the names of `Intl.PluralRules`.
 */
export const en = {
  to: "to",
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
  article: "article {0}",
  yours: "yours {0} · article {1}",
  less: "One less",
  more: "One more",
  undo: "Undo",
  reset: "Back to the article’s values",
  restored: "These are the article’s values.",
  copy: "Copy a link to this version",
  copied: "Link copied.",
  link: "Link to this version",
  readers: { one: "A reader’s version: 1 change.", other: "A reader’s version: {0} changes." },
  showArticle: "Show the article’s.",
  changed: "You changed {0}.",
  structure: "the stages",
  stage: "Stage",
  gears: "Teeth",
  total: "Motor turns for one wheel turn",
  exact: "The exact fractions",
  range: "{0}: {1}, {2}",
  from: "The range is {0}.",
  start: "start",
  enlarged: "the end, {0}×",
  gap: "For the same turns of the shaft, {0} against {2}: {1}.",
  base: "measured against",
  mean: "the mean of both",
  scope: "Counting",
  tyres: "gears and tyres",
  onlyGears: "gears alone",
  bySpeed: "Each axle has its own motor: compared at equal volts.",
  oppose: "Front and rear turn against each other. Do not drive it. Check the ring-gear sides, then count the meshes.",
  circle: "Matches a turning circle of {0} radius at the middle of the rear axle.",
  figures: figureWords,
  findings: { one: "1 finding about this build", other: "{0} findings about this build" },
};

/** The strings of one language. */
export type Words = {
  readonly [Key in keyof typeof en]: (typeof en)[Key] extends string
    ? string
    : Key extends "figures"
      ? FigureWords
      : Key extends "fields"
        ? { readonly [Field in keyof (typeof en)["fields"]]: string }
        : Forms;
};

/** One sentence in the forms that a count can ask for. */
export type Forms = { readonly [form in Intl.LDMLPluralRule]?: string };
