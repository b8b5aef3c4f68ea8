import type { ReasonCode } from "../../fit/index.js";
import type { Widened } from "../tables.js";

/**
 * What the working, tables, cards, drawings and the finder say in English. `{0}`, `{1}` stand for what is put in; where a
 * count decides the form, the forms bear the names of `Intl.PluralRules`.
 */
export const reportWords = {
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
  against: "{0} against {1}, {2}",
  speed: "Ideal speed at full charge, {0}",
  fit: "Fit, {0}",
  cost: "To buy",
  changedBy: "Against the published build, {0}",
  reduction: "reduction",
  wheelSpeed: "wheel speed",
  wheelTorque: "wheel torque",
  midpoint: "reduction, by the midpoint",
  travelChange: "travel for one motor turn",
  fourNames:
    "One change, several figures, each by its own base: reduction, torque, speed and travel against before, the midpoint against the middle of both. Only travel counts the tyres.",

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

  // Finding a pair
  found: { one: "1 pair reaches the range and fits.", other: "{0} pairs reach the range and fit." },
  noneFound: "No pair reaches the range and fits.",
  missed: { one: "1 near miss", other: "{0} near misses" },
  outsideRange: "{0} {1}: {2}.",
  unsureRange:
    "A ratio in the train is known only as printed: a pair counts only where all that it can be is in the range.",
  centres: "Centre distance",
  totals: "Motor turns, {0}",
  picture: "Pairs by centre distance and total. The box is the mount and the range: {0}",
  legend:
    "The box is what the mount and the range allow. Filled: reaches and fits; crossed: does not; ringed: in the build.",
  noParts: "The build lists no gears to choose from.",
  noTarget: "The build names no range to reach.",

  reasons: {
    /** A sentence or two for each code; the names in braces are those of the reason's fields. */
    texts: {
      "pitch-near": "Close, not equal: {coarse} is {coarser} coarser than {fine}. Do not mesh them.",
      "pitch-different": "{first} does not mesh with {second}.",
      "angle-different": "Pressure angles differ: {first}, {second}.",
      "too-close":
        "Needs {needed} between centres. Your {label} begins at {available}, {short} too far: {teeth} teeth in all at least.",
      "too-far":
        "Needs {needed} between centres. Your {label} ends at {available}, {short} short: {teeth} teeth in all at most.",
      "no-hole": "Needs {needed} between centres. The nearest hole is at {available}, {short} off.",
      "no-contact": "Opened so far, two teeth part before the next two meet.",
      wall: "Leaves {available} to the {label}, needs {needed}, {short} more: {teeth} teeth at most.",
      "bore-too-small": "A bore of {available} is {short} too small for a shaft of {needed}.",
      "bore-too-large": "A bore of {available} on a shaft of {needed} needs a sleeve with a wall of {short}.",
      "hub-holes": "None of its hole circles matches the hub's.",
      reach: "Needs {needed} of shaft. There are {available}, {short} short.",
      "hub-too-long": "A boss of {available} holds the teeth {short} out of line.",
      undercut: "The {of} is undercut if its teeth are not shifted.",
      "same-teeth-meet": "The same teeth meet every {teeth} driver turns.",
      sleeve: "Takes a sleeve with a wall of {short}.",
      plate: "Takes an adapter plate.",
      facing: "Goes on with the {facing} only.",
      "angle-gears": "Angle gears have no spur centre distance.",
      "pitch-not-given": "No pitch is given.",
      "helix-not-given": "No helix angle is given.",
      "shift-not-given": "A tip diameter without its shift does not tell the centre distance.",
      "ring-too-small": "The ring is too small for the gear in it.",
      "no-centre": "Shifted so far inwards, the teeth meet at no centre distance.",
      "no-line-of-action": "At this centre distance the flanks do not meet.",
      "tooth-pointed": "With this shift and tip diameter the teeth come to a point.",
      "tooth-missing": "With these figures nothing is left of the teeth.",
      "shafts-not-given": "Measured over or between shafts whose diameters are not given.",
    } satisfies Readonly<Record<ReasonCode, string>>,
    module: "module {0}",
    angle: "{0} at {1}°",
    /** What stands in a reason as a word and no name. */
    terms: {
      "known-pair": "slot",
      "tooth-sum": "maker's range",
      wall: "wall",
      driver: "driver",
      driven: "driven",
      "hub in": "hub in",
      "hub out": "hub out",
    },
  },

  // The bench card
  card: "Bench card",
  should: "Should be",
  measured: "Measured",
  gearsToFit: "Gears, in the order of drive",
  mesh: "Setting the mesh",
  centreDistance: "Centre distance without play",
  slot: "The mount can set",
  opening: "Opening wanted",
  centreSet: "Centre distance as set",
  playAlong: "Play along the pitch circle",
  playAcross: "Play straight across, by paper or feeler",
  allMet: "Turns of the driven gear until every pairing was met",
  tightest: "Set a mesh at its tightest spot: turn until every pairing was met, find the spot, measure there. Plastic gears want more play than metal ones.",
  beltTeeth: "{0} teeth",
  links: "{0} links",
  setsCentre: "sets {0} between centres",
  takenUp: "the tensioner takes up {0}",
  byHand: "Turned by hand",
  bothTurn: "{0}, both wheels {1}× round; turns of: {2}",
  oneHeld: "{0}, one wheel held, the other {1}× round; turns of: {2}",
  othersHeld: "Other axles held: {0}",
  firstDriven: "first driven gear",
  motorShaft: "motor",
  oneOff: "Each count is long enough that a gear one tooth off shows as a third of a turn or more.",
  hands: {
    nominal: "{0} is a nominal figure; count the teeth.",
    controller: "{0} full cells reach {1} V, not {2}. Controller limit: {3} V.",
    motor: "{0} full cells reach {1} V, not {2}. Motor limit: {3} V.",
    rpm: "{0} kV at {1} V is above {2} a minute.",
  },
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

  // Fields
  typed: {
    found: "Found {0}; expected {1}.",
    number: "a number above 0, such as 9.5",
    length: "a length such as 17.6 mm or 0.69 in",
    counts: "a count of teeth, or two: 10 to 40",
    count: "one count of teeth",
    any: "a number, such as 0.3",
    reversed: "Less than {0}; expected the smaller first.",
  },

  // A box counted by turns
  turned: {
    total: "All that turned: {0}.",
    box: "The box: {0} turns in for one turn out.",
    counts: {
      one: "1 pair of counts can be behind it.",
      other: "{0} pairs of counts can be behind it.",
    },
    noCounts: "No pair of counts between these can be behind it.",
    narrow: "Teeth that can be seen narrow them down.",
  },

  // A gear without a mark
  unmarked: {
    canBe: "It can be:",
    none: "No usual pitch reads so. Look at the count and the measurements again, or allow for shift and wear.",
    full: "full-depth teeth",
    stub: "stub teeth",
    together: "no one shift explains all readings",
    against: "{0} it would read {1}, not {2}",
    gauges: {
      outside: "over the tips",
      span: "over {0} teeth",
      "base pitch": "from {0} to {1} teeth",
      "donor centre": "between the axes with its partner",
    },
    never: "What this never tells, however well it is read: {0}.",
    untold: {
      pressureAngle: "the pressure angle",
      addendum: "the height of the teeth",
      shift: "the shift",
    },
    blur: "Read so, {0}, {1} and {2} are not told apart: {3} between them.",
    settles: "This would settle it: {0}, read to within {2}. {1}.",
    narrows: "This would tell more: {0}. {1}.",
  },

  // Measurements against the build
  measuring: {
    caption: "Measured against the build",
    output: "Axle",
    counted: "Counted",
    build: "The build says",
    verdict: "Verdict",
    turns: "{0} in, {1} out",
    held: "one wheel held",
    agrees: "agrees",
    above: "disagrees: measured at least {0} more",
    below: "disagrees: measured at least {0} less",
    with: "Measured with {0}",
    nothing: "Nothing was measured.",
  },
};

/** The words of one language for reports. */
export type ReportWords = Widened<typeof reportWords>;

/** The words of one language for what a fit comes to. */
export type ReasonWords = ReportWords["reasons"];
