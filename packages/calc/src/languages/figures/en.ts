import type { Widened } from "../tables.js";
import { verdictWords } from "../verdicts.js";

/**
 * The words of figures and verdicts, and of the summary and the gauge that an article holds, in English: the list of what every
 * language has to say. `{0}`, `{1}` stand for what is put in.
 */
// A call marked pure falls away where it is unused; a spread would not.
export const figureWords = /* @__PURE__ */ Object.assign({}, verdictWords, {
  /** Between the counts of a stage. */
  joints: {
    "in ring": "in ring",
    belt: "belt",
    chain: "chain",
    worm: "worm",
    sun: "sun",
    times: "×",
    printed: "printed",
    turned: "turned",
    for: "for",
    "up to": "to",
    pins: "pins",
  },

  /** What falls short. */
  lacks: {
    centre: "centre distance",
    hole: "holes of the mount",
    wall: "wall",
    bore: "bore",
    hubHoles: "hub holes",
    shaft: "shaft",
    boss: "boss",
    pitch: "pitch",
    angle: "pressure angle",
    helix: "helix angle",
    shift: "profile shift",
    axes: "crossed axes",
    ring: "ring",
    contact: "contact",
    tooth: "teeth",
  },

  // The summary and the gauge
  stage: "Stage",
  gears: "Teeth",
  total: "Motor turns for one wheel turn",
  exact: "The exact fractions",
  standing: "{0}: {1}, {2}",
  rangeIs: "The range is {0}.",
  gap: "For the same turns of the shaft, {0} against {2}: {1}.",
  base: "measured against",
  mean: "the mean of both",
  scope: "Counting",
  tyres: "gears and tyres",
  bySpeed: "Each axle has its own motor: compared at equal volts.",
  oppose: "Front and rear turn against each other. Do not drive it. Check the ring-gear sides, then count the meshes.",
  circle: "Matches a turning circle of {0} radius at the middle of the rear axle.",
  takesUp: "Straight on the open differential takes up the difference: {0} of the motor’s turns.",

  // What an edit does
  moved: "{0} {1}, was {2}",
  now: {
    above: "{0}: now above {1}",
    below: "{0}: now below {1}",
    inside: "{0}: now inside {1}",
    uncertain: "{0}: now cannot be told against {1}",
  },
  authorsRange: "the author’s {0}",
  ownRange: "your {0}",
  asBefore: "{0} as before",
  rolls: "{0} rolls {1} for one motor turn, was {2}",
  noEffect: "No total changes",
  slower: "{0} wheels {1} slower",
  faster: "{0} wheels {1} faster",
  idealSpeed: "{0} ideal speed {1}, was {2}",

  // Which of two axles runs ahead, by the name the trade has for it
  overdrive: "Overdrive, {0} over {1}: {2}.",
  underdrive: "Underdrive, {0} under {1}: {2}.",
});

/** The words of one language for figures. */
export type FigureWords = Widened<typeof figureWords>;

/** Those of the commonest figures and of verdicts. */
export type VerdictWords = Widened<typeof verdictWords>;
