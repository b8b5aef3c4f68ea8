// What the guide shows as examples: stages of a kind, where there is more to show than how an editor begins it, and how each
// figure is asked for.

export const examples = {
  pair: { id: "primary", kind: "pair", driver: 15, driven: 62, module: "0.8" },
  train: { id: "row", kind: "train", teeth: [18, 31, 45] },
  belt: { id: "drive-belt", kind: "belt", driver: 20, driven: 60, pitch: "2 mm", beltTeeth: 101 },
  worm: { id: "winch", kind: "worm", starts: 2, teeth: 37, reverses: false },
  planetary: {
    id: "gearhead",
    kind: "planetary",
    sun: 12,
    ring: 42,
    fixed: "ring",
    input: "sun",
    output: "carrier",
    planets: 3,
    planet: 15,
    repeat: 2,
  },
  published: { id: "hub", kind: "published", value: "1.5" },
  measured: { id: "box", kind: "measured", turnsIn: "50", turnsOut: { from: "3.1", to: "3.15" }, held: true },
  selectable: {
    id: "lever",
    kind: "selectable",
    selected: "low",
    positions: [
      { id: "low", stages: [{ id: "low-pair", kind: "pair", driver: 17, driven: 43 }] },
      { id: "high", stages: [{ id: "high-pair", kind: "pair", driver: 25, driven: 35 }] },
      { id: "neutral", released: "free" },
    ],
  },
};

export const queries = {
  reduction: { of: "front" },
  fraction: { of: "front" },
  standing: { of: "front" },
  count: { of: "primary.driver" },
  counts: { of: "row" },
  direction: { of: "front" },
  gap: { base: "mean" },
  drift: { over: "10 m" },
  mean: { measure: "arithmetic" },
  travel: { of: "front" },
  change: { of: "front", from: "first-try", measure: "wheel-speed" },
  speed: { of: "front" },
  "wheel-rpm": { of: "front" },
  "motor-rpm": { of: "front" },
  "hand-turns": { of: "front" },
  slot: { measure: "to" },
};
