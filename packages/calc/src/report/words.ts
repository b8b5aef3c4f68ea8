/** The words that stand in figures; a language gives its own. */
export const figureWords = {
  to: "to",
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
};

export type FigureWords = Readonly<Record<keyof typeof figureWords, string>>;
