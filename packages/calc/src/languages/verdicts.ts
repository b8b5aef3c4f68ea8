/**
 * The words of the commonest figures and of verdicts, in English: the first of {@link figureWords}, for pages that show sentences
 * before they show tables.
 */
export const verdictWords = {
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
};
