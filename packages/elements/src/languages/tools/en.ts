import type { Widened } from "@meshwright/calc/languages";

/**
 * What the elements beyond an article's own say in English. `{0}`, `{1}` stand for what is put in; where a count decides
 * the form, the forms bear the names of `Intl.PluralRules`.
 */
export const toolsEn = {
  // Parts and orders
  copyList: "Copy as text",
  copied: "Copied.",
  notCopied: "This page may not copy; select the text instead.",
  printPage: "Print",

  // Finding a pair
  question: "Which two gears bring the total to between {0} and {1}, and fit?",
  rangeFrom: "The range begins at",
  rangeTo: "The range ends at",
  among: "Among",
  amongAll: "all parts listed",
  amongHad: "parts that can be had",
  amongOwned: "parts that are owned",
  amongCounts: "any counts, without a list",
  sleeves: "with sleeves and adapter plates",
  sortBy: "First",
  sorts: {
    nearest: "nearest to the middle of the range",
    cheapest: "cheapest",
    "fewest-new": "fewest new parts",
    closest: "closest centres",
  },
  morePairs: "More pairs: {0}",
  moreMisses: "More near misses",
  choose: "Take it",
  chosen: "in the build",
  looking: "Looking: {0} of the pairs seen.",
  stop: "Stop",
  stopped: "Stopped; what was found up to here is shown.",
  numberOnly: "A number above 0.",
  trains: {
    look: "Look",
    looking: "Looking: {0} done.",
    more: "More",
    leadFrom: "Lead from",
    leadTo: "to",
    choose: "Choose",
    tyres: "tyres, {0}",
    found: "Found: {0}",
    none: "Nothing on the list meets all of it.",
  },

  // The drawing
  letTurn: "Let it turn",
  holdStill: "Hold it still",

  // The stages as a list
  editor: {
    shared: "From the motor to the split",
    add: "Add a stage",
    up: "Move up: {0}",
    down: "Move down: {0}",
    remove: "Remove: {0}",
    gearMore: "One more gear: {0}",
    gearLess: "One gear less: {0}",
    more: "All there is to say: {0}",
    kinds: {
      pair: "Pair of gears",
      train: "Gear row",
      belt: "Belt or chain",
      worm: "Worm",
      planetary: "Planetary",
      cycloidal: "Cycloidal",
      measured: "Counted by turning",
      published: "Printed ratio",
      selectable: "Box with a lever",
    },
  },
};

/** The strings of the elements beyond an article of one language. */
export type ToolWords = Widened<typeof toolsEn>;
