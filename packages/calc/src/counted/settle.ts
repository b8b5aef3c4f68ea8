import { type Bounded, bounded, rational, type Rational } from "../exact/index.js";
import { spanTeeth } from "../gears/index.js";
import {
  anglesOf,
  basePitchLine,
  centreLine,
  expectedBy,
  type Gauge,
  outsideLine,
  type PitchCandidate,
  type Reading,
  spanLine,
  type Suspect,
  type UnmarkedGear,
} from "./gauges.js";

/** Two pitches that a measurement does not tell apart: readings exist that either could give. */
export interface Blur {
  readonly gauge: Gauge;
  readonly pitches: readonly [PitchCandidate, PitchCandidate];
  /** How far apart they would read, in millimetres; zero where no care tells them apart. */
  readonly apart: Rational;
}

/** A measurement that was not taken, and what each of the pitches that are left would read. */
export interface Settling {
  readonly gauge: Gauge;
  /** Of a span: over how many teeth. Of a centre distance: with how many on the other gear. */
  readonly teeth?: number;
  /** In the order of `canBe`, in millimetres. */
  readonly expected: readonly Bounded[];
  /** The least that two of them are apart, in millimetres: read to within half of it, it tells. Zero where it leaves some together. */
  readonly apart: Rational;
  /** Whether it tells all that are left from each other. */
  readonly settles: boolean;
}

/** The room between two intervals: none where they overlap. */
function gapOf(a: Bounded, b: Bounded): Rational {
  const [below, above] = [b.low.minus(a.high), a.low.minus(b.high)];
  return below.sign > 0 ? below : above.sign > 0 ? above : rational(0);
}

/** What each measurement, as wide as it was read, does not tell from a pitch that is left. */
export function blursOf(readings: readonly Reading[], left: readonly Suspect[], all: readonly Suspect[]): Blur[] {
  return readings.flatMap((reading) => {
    const width = reading.read.high.minus(reading.read.low);
    const expected = new Map(all.map((suspect) => [suspect, expectedBy(reading, suspect)]));
    return left.flatMap((one) =>
      all.flatMap((other): Blur[] => {
        // Two that are left are named once.
        const isTold = one === other || (left.includes(other) && all.indexOf(other) < all.indexOf(one));
        const [first, second] = [expected.get(one), expected.get(other)];
        if (isTold || !first || !second) return [];
        const apart = gapOf(first, second);
        if (apart.compare(width) > 0) return [];
        return [{ gauge: reading.gauge, pitches: [one.candidate, other.candidate], apart }];
      }),
    );
  });
}

/** All that one that is left may be in what was not looked at: the angle, the height of its teeth. */
function variantsOf(suspect: Suspect, question: UnmarkedGear): Suspect[] {
  const { candidate, gear } = suspect;
  const angles = candidate.pressureAngle === undefined ? anglesOf(question) : [candidate.pressureAngle];
  const heights = candidate.addendum ?? question.addendum;
  return angles.flatMap((pressureAngle) =>
    (heights === undefined ? ["1", "0.8"] : [heights]).map((height) => ({
      candidate: { ...candidate, pressureAngle },
      gear: { ...gear, pressureAngle: rational(pressureAngle), addendum: rational(height) },
    })),
  );
}

/** From the least to the most that any of them would read. */
function readBy(lineOf: Reading["lineOf"], variants: readonly Suspect[]): Bounded | undefined {
  const read = variants.map((variant) => expectedBy({ lineOf }, variant));
  if (read.some((one) => one === undefined)) return undefined;
  const ends = (read as Bounded[]).flatMap(({ low, high }) => [low, high]).sort((a, b) => a.compare(b));
  return bounded(ends[0]!, ends[ends.length - 1]);
}

/** The measurements that were not taken, and what they would tell about the pitches that are left: the best first. */
export function settlingsOf(question: UnmarkedGear, left: readonly Suspect[]): Settling[] {
  if (left.length < 2) return [];
  const { teeth, outside, jaws, span, spanNext, donorCentre } = question;
  const angles = left.flatMap((one) => variantsOf(one, question).map(({ gear }) => gear.pressureAngle!.toNumber()));
  const spanned = span?.teeth ?? spanTeeth(teeth, Math.max(...angles));
  const offers: (readonly [Gauge, Reading["lineOf"], number?])[] = [];
  if (outside === undefined) offers.push(["outside", outsideLine(jaws)]);
  if (!span) offers.push(["span", spanLine(spanned), spanned]);
  if (spanNext === undefined) offers.push(["base pitch", basePitchLine, spanned]);
  // The partner's count is anybody's guess: with a gear like itself.
  if (!donorCentre) offers.push(["donor centre", centreLine(teeth, false), teeth]);
  return offers
    .flatMap(([gauge, lineOf, many]) => {
      const expected = left.map((one) => readBy(lineOf, variantsOf(one, question)));
      if (expected.some((one) => one === undefined)) return [];
      const known = expected as Bounded[];
      const gaps = known.flatMap((one, n) => known.slice(n + 1).map((other) => gapOf(one, other)));
      const told = gaps.filter((gap) => gap.sign > 0);
      const apart = gaps.reduce((a, b) => (a.compare(b) < 0 ? a : b));
      const settling: Settling = {
        gauge,
        ...(many !== undefined && { teeth: many }),
        expected: known,
        apart,
        settles: told.length === gaps.length,
      };
      return told.length ? [{ settling, told: told.length }] : [];
    })
    .sort((a, b) => b.told - a.told || b.settling.apart.compare(a.settling.apart))
    .map(({ settling }) => settling);
}
