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

  // A box counted by turns
  turnCount: {
    turn: "Mark both ends, take up the slack, turn slowly one way, and count.",
    turnsIn: "Turns towards the motor",
    turnsFrom: "Turns towards the wheels, from",
    turnsTo: "to",
    toEmpty: "empty: both marks met again",
    axle: "The axle",
    locked: "one shaft, or locked",
    held: "open: one wheel held, the other counted",
    along: "Turned along with it",
    seen: "Teeth that can be seen",
    driver: "Driver",
    driven: "Driven gear",
    countsHint: "a count, or two: 10 to 40",
    put: "Put it into the build",
    there: "In the build",
    turns: "turns",
    teeth: "teeth",
  },

  // A gear without a mark
  unmarked: {
    teeth: "Teeth counted",
    tips: "Over the tips",
    outside: "Diameter",
    jaws: "read between the jaws of a calliper",
    within: "Read to within",
    height: "Height of the teeth",
    notKnown: "not known",
    fullDepth: "full depth",
    stub: "stub",
    shiftFrom: "Shift, in modules, from",
    shiftTo: "to",
    spans: "A calliper over several teeth",
    spanTeeth: "Over so many teeth",
    span: "Reads",
    spanNext: "Over one tooth more",
    donor: "In the vehicle it comes from",
    centre: "Between the axes",
    otherTeeth: "Teeth of its partner",
    internal: "one of the two is a ring",
    angle: "Pressure angle",
    cannotBe: "What it cannot be",
    shelf: "Put it on the shelf: {0}",
    shelved: "Put on the shelf: {0}.",
  },

  // What a value in a sentence is called
  quantities: {
    diameter: "diameter",
    loadedDiameter: "diameter under load",
    length: "ground rolled",
    turns: "turns",
    value: "printed ratio",
    cells: "cells",
    kv: "kV",
    maxRpm: "highest speed",
    maxVolts: "highest volts",
    wheelbase: "wheelbase",
    target: "range",
    opening: "opening",
    turnsIn: "turns in",
    turnsOut: "turns out",
    centre: "centre distance",
    beltTeeth: "belt teeth",
    from: "from",
    to: "to",
  },
};

/** The strings of the elements beyond an article of one language. */
export type ToolWords = Widened<typeof toolsEn>;
