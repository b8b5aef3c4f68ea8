import { type Bounded, MeshwrightError, rational } from "../exact/index.js";
import { moduleOf, pressureAngleOf, refuse, type Toothed } from "../gears/index.js";
import {
  anglesOf,
  expectedBy,
  type Gauge,
  type PitchCandidate,
  type Reading,
  readingsOf,
  shiftOf,
  type Suspect,
  type UnmarkedGear,
} from "./gauges.js";
import { usualPitches } from "./pitches.js";
import { blursOf, settlingsOf, type Blur, type Settling } from "./settle.js";

/** A pitch that a gear cannot have, and what speaks against it. */
export interface Excluded {
  readonly candidate: PitchCandidate;
  /** None by itself where only all readings together speak against it: each would take another shift. */
  readonly against: readonly { readonly gauge: Gauge; readonly read: Bounded; readonly expected: Bounded }[];
}

/** What a gear without a mark can be. */
export interface Unmarked {
  /** In the order of the series, then of the angles, then of the heights of teeth. */
  readonly canBe: readonly PitchCandidate[];
  readonly cannotBe: readonly Excluded[];
  /** What none of these measurements shows, however well it is read. */
  readonly untold: readonly ("pressureAngle" | "addendum" | "shift")[];
  /** Pairs of pitches that a reading as wide as this one does not tell apart, at this count. */
  readonly blurs: readonly Blur[];
  /** What else could be measured, and how far apart what is left would read: the best first. None where one pitch is left. */
  readonly settledBy: readonly Settling[];
}

const blind: Readonly<Record<Gauge, Unmarked["untold"]>> = {
  outside: ["pressureAngle"],
  span: ["addendum"],
  "base pitch": ["addendum", "shift"],
  "donor centre": ["pressureAngle", "addendum"],
};

/** Every pitch of the series as a gear, with each angle and height of teeth that the measurements hang on. */
function suspectsOf(question: UnmarkedGear, series: readonly Toothed[]): Suspect[] {
  const { teeth, outside, jaws, span, donorCentre, addendum } = question;
  const shift = shiftOf(question);
  const needsAngle =
    span !== undefined || (jaws && teeth % 2 === 1) || (donorCentre && !(shift.isExact && !shift.low.sign));
  const angles = needsAngle ? anglesOf(question) : [undefined];
  const heights = outside === undefined ? [undefined] : addendum === undefined ? ["1", "0.8"] : [addendum];
  return series.flatMap((entry) => {
    const module = moduleOf(entry);
    if (!module)
      throw new MeshwrightError(
        "pitch-not-given",
        "series",
        "A pitch without a module or diametral pitch; expected one.",
      );
    const own = entry.pressureAngle === undefined ? angles : [entry.pressureAngle];
    return own.flatMap((pressureAngle) =>
      heights.map((height): Suspect => {
        const high = rational(height ?? 1, { at: "addendum" });
        if (high.sign <= 0 || high.compare(5) > 0)
          refuse("out-of-range", "addendum", height, "a height above 0 and up to 5 modules");
        const pitch = { ...entry, ...(pressureAngle !== undefined && { pressureAngle }) };
        return {
          candidate: { ...pitch, ...(height !== undefined && addendum === undefined && { addendum: height }) },
          gear: { teeth, module, shift, addendum: high, pressureAngle: pressureAngleOf(pitch) },
        };
      }),
    );
  });
}

const overlap = (a: Bounded, b: Bounded): boolean => a.low.compare(b.high) <= 0 && b.low.compare(a.high) <= 0;

/** Whether one shift explains all readings at once. */
function isExplained(suspect: Suspect, readings: readonly Reading[]): boolean {
  let { low, high } = suspect.gear.shift;
  for (const { lineOf, read } of readings) {
    const line = lineOf(suspect);
    if (!line || !line.slope.high.sign) continue;
    const shifts = read.minus(line.base).over(line.slope);
    if (shifts.low.compare(low) > 0) low = shifts.low;
    if (shifts.high.compare(high) < 0) high = shifts.high;
  }
  return low.compare(high) <= 0;
}

/**
 * What a gear without a mark can be, from its count and what was measured of it, each as an interval: the pitches (with angle and
 * height of teeth, where the measurement hangs on them) that it can be, ends included, and those that it cannot; what this can
 * never tell apart; and which measurement would settle it. Fractions are exact; where an angle comes in, an interval encloses
 * the true figure.
 *
 * Over the tips it reads m (z + 2 h + 2 x), h = 1 or, for stub teeth, 0.8; between jaws with an odd count a little more than
 * (1 + cos 180°/z) / 2 of it; over k teeth m cos α (π (k − ½) + z inv α) + 2 x m sin α, and over one more π m cos α more
 * (ISO 21771-1); between the axes in its donor m (z + z2) / 2 with its opening.
 *
 * @param series pitches that exist; the usual ones where none are given. One with a pressure angle has that angle alone.
 * @throws MeshwrightError `not-a-count`, `out-of-range`, `ends-reversed`, `nothing-measured`, `span-missing`, `pitch-not-given`
 *
 * @example
 * const { canBe } = unmarkedGear({ teeth: 20, outside: { from: "17.58 mm", to: "17.62 mm" }, addendum: 1 });
 * canBe; // => [{ module: "0.8" }]
 * const span = { teeth: 2, over: { from: "3.7 mm", to: "3.74 mm" } };
 * const found = unmarkedGear({ teeth: 17, span, pressureAngles: [20] }, [{ module: "0.8" }, { diametralPitch: 32 }]);
 * [found.canBe.length, found.settledBy[0]!.gauge]; // => [2, "donor centre"]
 */
export function unmarkedGear(question: UnmarkedGear, series: readonly Toothed[] = usualPitches()): Unmarked {
  const readings = readingsOf(question);
  if (!readings.length)
    throw new MeshwrightError(
      "nothing-measured",
      "outside",
      "Nothing measured; expected a diameter, a span or a centre distance.",
    );
  const suspects = suspectsOf(question, series);
  const left: Suspect[] = [];
  const cannotBe: Excluded[] = [];
  for (const suspect of suspects) {
    const against = readings.flatMap((reading) => {
      const { gauge, read } = reading;
      const expected = expectedBy(reading, suspect);
      return expected && !overlap(expected, read) ? [{ gauge, read, expected }] : [];
    });
    if (!against.length && isExplained(suspect, readings)) left.push(suspect);
    else cannotBe.push({ candidate: suspect.candidate, against });
  }
  const gauges = readings.map(({ gauge }) => gauge);
  return {
    canBe: left.map(({ candidate }) => candidate),
    cannotBe,
    untold: (["pressureAngle", "addendum", "shift"] as const).filter((field) =>
      gauges.every((gauge) => blind[gauge].includes(field)),
    ),
    blurs: blursOf(readings, left, suspects),
    settledBy: settlingsOf(question, left),
  };
}
