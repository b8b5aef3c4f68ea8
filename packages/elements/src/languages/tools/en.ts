import { reasonWords } from "@meshwright/calc/fit";
import type { Forms } from "../../shared/words/index.js";

/**
 * What the elements beyond an article's own say in English. `{0}`, `{1}` stand for what is put in; where a count decides
 * the form, the forms bear the names of `Intl.PluralRules`.
 */
export const toolsEn = {
  // The working
  exactly: "Exactly",
  decimal: "Decimal",
  upToHere: "Up to here",
  everyStep: "Rounded at every step",
  drift: "{0}: rounding at every step would be {1} off.",
  noDrift: "{0}: rounding at every step happens to end on the same figure.",
  interval: "{0}: a printed ratio is an interval; it stays one to the end.",

  // Versions side by side
  published: "As published",
  yours: "Yours",
  motorTurns: "Motor turns, {0}",
  against: "{0} against {1}, {2}",
  speed: "Ideal speed at full charge, {0}",
  fit: "Fit, {0}",
  cost: "To buy",
  changedBy: "Against the published build, {0}",
  reduction: "reduction",
  wheelSpeed: "wheel speed",
  wheelTorque: "wheel torque",
  midpoint: "reduction, by the midpoint",
  fourNames:
    "Four figures for one change, each by its own base: reduction and torque against before, speed against before, the last against the middle of both.",

  // Speed
  state: "State",
  nominal: "Nominal, {0}",
  full: "Full charge, {0}",
  loaded: "Loaded, {0} of the free speed",
  motorRpm: "Motor, turns a minute",
  wheelRpm: "Wheel, turns a minute",
  ground: "Ground speed",
  travel: "Travel for one motor turn",
  assumes: "What this takes for granted",
  assumptions: {
    "kv-as-stated": "the motor’s kV is as stated",
    "no-load": "no load",
    "no-losses": "no losses",
    "no-slip": "no slip",
    "volts-as-stated": "the volts are as stated",
    "nominal-volts": "nominal volts",
    "full-charge": "full charge",
    "loaded-as-stated": "what load leaves of the speed is as stated",
    "diameter-unloaded": "the wheel’s diameter is unloaded",
    "diameter-loaded": "the wheel’s diameter is under load",
    "travel-measured": "the wheel’s travel was measured",
  },
  notKnown: {
    "not-driven": "Nothing drives it.",
    "wheel-not-given": "No wheel is given.",
    "battery-not-known": "Cells or their chemistry are not given.",
    "kv-not-given": "The motor’s kV is not given.",
    "turns-are-not-kv": "Turns of wire are not kV; the motor’s kV is not given.",
  },
  ideal: "An ideal figure: no load, no losses.",
  cautions: [
    "Local rules, the makers’ instructions and qualified people come first.",
    "First test with the wheels off the ground and the pinion out of mesh; transmitter on first and off last, its failsafe set to stop.",
    "Keep fingers, hair and sleeves away from gears and tyres. Lock the pinion’s grub screw.",
    "Check the controller’s and the motor’s limits against the full charge. 4.35 V a cell only where labelled for it, with the matching charge profile. Charge balanced, attended, on something that does not burn.",
    "Begin with a smaller pinion; stop and measure temperatures, and compare them with a set-up known to run well.",
    "Never trust a worm or a drag brake to hold a load that can hurt someone.",
  ],

  // Parts and orders
  toBuy: "To buy",
  ownedAlready: "Owned already",
  stays: "Stays",
  leftOver: "Left over",
  noPart: "No part of the list answers",
  nothingToBuy: "Nothing to buy.",
  part: "Part",
  pieces: "Pieces",
  packsHead: "Packs",
  packs: "{0} of {1}",
  price: "Price",
  noPrice: "no price",
  where: "Where",
  maker: "Maker",
  module: "module",
  notListed: "no part of the list",
  partKinds: {
    pinion: "pinion",
    spur: "spur",
    gear: "gear",
    set: "gear set",
    gearbox: "gearbox",
    worm: "worm",
    planetary: "planetary set",
    pulley: "pulley or sprocket",
    belt: "belt or chain",
    wheel: "wheel",
  },
  partsByStage: "Parts by stage",
  notToBeHad: "not to be had now",
  sum: "Together",
  and: "and",
  unpriced: { one: "1 without a price", other: "{0} without a price" },
  unlisted: { one: "1 not in the list", other: "{0} not in the list" },
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
  sleeves: "with sleeves and adapter plates",
  sortBy: "First",
  sorts: {
    nearest: "nearest to the middle of the range",
    cheapest: "cheapest",
    "fewest-new": "fewest new parts",
    closest: "closest centres",
  },
  found: { one: "1 pair reaches the range and fits.", other: "{0} pairs reach the range and fit." },
  noneFound: "No pair reaches the range and fits.",
  missed: { one: "1 near miss", other: "{0} near misses" },
  showAll: "Show all {0}",
  choose: "Take it",
  chosen: "in the build",
  looking: "Looking: {0} of the pairs seen.",
  stop: "Stop",
  stopped: "Stopped; what was found up to here is shown.",
  outsideRange: "{0} {1}: {2}.",
  unsureRange:
    "A ratio in the train is known only as printed: a pair counts only where all that it can be is in the range.",
  numberOnly: "A number above 0.",
  centres: "Centre distance",
  totals: "Motor turns, {0}",
  picture: "Pairs by centre distance and total. The box is the mount and the range: {0}",
  legend:
    "The box is what the mount and the range allow. Filled: reaches and fits; crossed: does not; ringed: in the build.",
  noParts: "The build lists no gears to choose from.",
  noTarget: "The build names no range to reach.",

  reasons: reasonWords,

  // The bench card
  card: "Bench card",
  should: "Should be",
  measured: "Measured",
  gearsToFit: "Gears, in the order of drive",
  mesh: "Setting the mesh",
  centreDistance: "Centre distance without play",
  slot: "The mount can set",
  opening: "Opening wanted",
  backlash: "Play between the teeth",
  byHand: "Ten turns of the first driven gear, by hand",
  bothTurn: "{0}: both wheels turn",
  oneHeld: "{0}: one wheel held, the other turns",
  howToCount: "Wheels off the ground, battery disconnected. Mark a tooth and a tyre, turn slowly, count.",
  firstRun: "Before the first run",
  room: "Notes",
  authorsValues: "The author’s values.",
  valuesOf: "Values of: {0}.",
  revision: "Revision {0}",
  printed: "Card made on {0}.",

  // The drawing
  drawing: "Gears to scale: {0}",
  meshes: "{0} teeth turn {1} the other way, {2} between centres.",
  runs: "{0} teeth turn {1}, {2} between centres.",
  centresFrom: "Centres can be set from {0} to {1}.",
  axisStands: "where the axis can stand, {0}×",
  slotEnds: "Needs {0} between centres. The slot ends at {1}, {2} short.",
  slotBegins: "Needs {0} between centres. The slot begins at {1}, {2} farther.",
  mountEnds: "Needs {0} between centres. The mount reaches {1}, {2} short.",
  mountBegins: "Needs {0} between centres. The mount begins at {1}, {2} farther.",
  noHole: "Needs {0} between centres. The nearest hole is {1} away.",
  short: "{0} short",
  tooClose: "{0} too close",
  holeAway: "{0} away",
  gap: "{0} clear",
  gapNeeds: "{0} clear, needs {1}",
  dashed: "Dashed: the article’s.",
  notDrawn: "Not drawn: {0}.",
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
type Widened<T> = T extends string
  ? string
  : T extends readonly string[]
    ? readonly string[]
    : T extends Readonly<Record<"other", string>>
      ? Forms
      : { readonly [Key in keyof T]: Widened<T[Key]> };
