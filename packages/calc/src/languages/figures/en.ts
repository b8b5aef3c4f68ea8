import type { Widened } from "../tables.js";

/**
 * The words of figures and verdicts, and of the summary and the gauge that an article holds, in English: the list of what every
 * language has to say. `{0}`, `{1}` stand for what is put in.
 */
export const figureWords = {
  // Between and around figures. A range has a word of its own: gears that drive each other are no range.
  range: "{0} to {1}",
  from: "from {0}",
  upTo: "up to {0}",
  driving: "{0} driving {1}",
  drives: "{0} drives {1}",
  was: "{0}, was {1}",
  aside: "{0}, {1}",
  told: "{0}: {1}",

  // Verdicts
  inside: "inside",
  below: "too few motor turns",
  above: "too many motor turns",
  uncertain: "cannot tell",
  ahead: "ahead",
  behind: "behind",
  level: "level",
  farther: "farther",
  lessFar: "less far",
  asFar: "as far",
  same: "same way",
  opposite: "opposite way",
  unknown: "not known",
  none: "not driven",
  free: "free",
  held: "held",
  fits: "fits",
  far: "too far apart",
  close: "too close",
  misfit: "does not fit",
  nothing: "none",
  gearsAlone: "gears alone",
  locked: "locked",
  straightOn: "straight on",

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
};

/** The words of one language for figures. */
export type FigureWords = Widened<typeof figureWords>;
