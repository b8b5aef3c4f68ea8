import { ratioOf, type Bounded } from "../exact/index.js";

/** Units of speed. */
export type SpeedUnit = "metresPerSecond" | "kilometresPerHour" | "milesPerHour" | "feetPerSecond";

/** Millimetres a minute in one of each, exactly: a foot is 304.8 mm, a mile 1609.344 m. */
const sixtieths = {
  metresPerSecond: 3_600_000,
  kilometresPerHour: 1_000_000,
  milesPerHour: 1_609_344,
  feetPerSecond: 1_097_280,
};

/** The units that a speed can be said in. */
export const speedUnits = Object.keys(sixtieths) as readonly SpeedUnit[];

/** Units of speed by the symbols that they are written with. */
export const speedSymbols: Readonly<Record<string, SpeedUnit>> = {
  "km/h": "kilometresPerHour",
  "m/s": "metresPerSecond",
  mph: "milesPerHour",
  "ft/s": "feetPerSecond",
};

/** A speed in millimetres a minute, from one in some unit. */
export const toMillimetresPerMinute = (speed: Bounded, unit: SpeedUnit): Bounded =>
  speed.times(ratioOf(sixtieths[unit], 60));

/**
 * A speed in millimetres a minute in the units in use.
 *
 * @example
 * speedFigures(bounded(1_609_344)).milesPerHour.toJSON(); // => { low: "60/1", high: "60/1" }
 */
export const speedFigures = (millimetresPerMinute: Bounded): Readonly<Record<SpeedUnit, Bounded>> => {
  const each = speedUnits.map((unit) => [unit, millimetresPerMinute.times(ratioOf(60, sixtieths[unit]))]);
  return Object.fromEntries(each) as Record<SpeedUnit, Bounded>;
};
