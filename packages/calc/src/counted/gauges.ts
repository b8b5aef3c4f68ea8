import { bounded, type Bounded, rational, type Rational } from "../exact/index.js";
import {
  basePitch,
  centreDistance,
  checkTeeth,
  depthOf,
  finiteOf,
  type GaugedGear,
  jawShare,
  type Numeric,
  refuse,
  sizeOf,
  spanLength,
  tipDiameter,
  type Toothed,
} from "../gears/index.js";
import { usualAngles } from "./pitches.js";

/** A length as measured: so long, or between two ends, which are included. Text with a unit, or millimetres. */
export type MeasuredLength = string | number | { readonly from: string | number; readonly to: string | number };

/** A gear without a mark, and what was measured of it. */
export interface UnmarkedGear {
  readonly teeth: number;
  /** Over the tips. */
  readonly outside?: MeasuredLength;
  /** Between the jaws of a calliper, which read less than the diameter where the count is odd. */
  readonly jaws?: boolean;
  /** A calliper over so many teeth, touching their flanks; and over one tooth more. */
  readonly span?: { readonly teeth: number; readonly over: MeasuredLength };
  readonly spanNext?: MeasuredLength;
  /** How far apart it runs from another gear where it comes from: the best witness, which does not wear. */
  readonly donorCentre?: {
    readonly centre: MeasuredLength;
    readonly otherTeeth: number;
    /** One of the two is a ring. */
    readonly internal?: boolean;
    /** How far from tight they are set; up to a tenth of the module where nobody says. */
    readonly opening?: MeasuredLength;
  };
  /** In modules: 1 for full depth, 0.8 for stub teeth; both where it is not said. */
  readonly addendum?: Numeric;
  /** How far it, and its partner in the donor, may be shifted, in modules; not at all where it is not said. */
  readonly shift?: Numeric | { readonly from: Numeric; readonly to: Numeric };
  /** Angles that it may have, in degrees; 14.5, 20 and 25 where none are given. */
  readonly pressureAngles?: readonly Numeric[];
  /** How much of the diameter may have worn off its tips, and how much thinner its teeth may be than half a pitch. */
  readonly tipWear?: string;
  readonly thinning?: string;
}

/** What a gear is measured by. */
export type Gauge = "outside" | "span" | "base pitch" | "donor centre";

/** A pitch that a gear may have, as the series writes it, with the angle and the height of its teeth where they were looked at. */
export interface PitchCandidate extends Toothed {
  readonly addendum?: Numeric;
}

/** A candidate as a gear, and the readings that it would give. */
export interface Suspect {
  readonly candidate: PitchCandidate;
  readonly gear: GaugedGear & { readonly shift: Bounded };
}

/** What a suspect reads at a shift of so many modules: base + slope × shift. */
export interface Line {
  readonly base: Bounded;
  readonly slope: Bounded;
}

/** One measurement: what was read, and what a suspect would read there. */
export interface Reading {
  readonly gauge: Gauge;
  readonly read: Bounded;
  /** Undefined where that is not known. */
  lineOf(suspect: Suspect): Line | undefined;
}

/** What a suspect would read, whatever its shift may be. */
export function expectedBy({ lineOf }: Pick<Reading, "lineOf">, suspect: Suspect): Bounded | undefined {
  const line = lineOf(suspect);
  return line && line.base.plus(line.slope.times(suspect.gear.shift));
}

/** A length as an interval in millimetres, above zero. */
function readingOf(length: MeasuredLength, at: string, more = "0 mm", moreAt = at): Bounded {
  const ends = typeof length === "object" ? [length.from, length.to] : [length, length];
  const [low, high] = ends.map((end) => sizeOf(end, at)) as [Rational, Rational];
  if (low.compare(high) > 0) refuse("ends-reversed", at, `${low} to ${high}`, "the smaller end first");
  return bounded(low, high.plus(depthOf(more, moreAt)));
}

/** An interval of shifts, none beyond what teeth can take. */
export function shiftOf({ shift = 0 }: Pick<UnmarkedGear, "shift">): Bounded {
  const ends = typeof shift === "object" ? [shift.from, shift.to] : [shift, shift];
  const [low, high] = ends.map((end) => rational(end, { at: "shift" })) as [Rational, Rational];
  if (low.compare(high) > 0 || low.compare(-5) < 0 || high.compare(5) > 0)
    refuse("out-of-range", "shift", `${low} to ${high}`, "shifts from -5 to 5 modules, the smaller first");
  return bounded(low, high);
}

/** The angles that a gear may have, in degrees. */
export const anglesOf = ({ pressureAngles }: Pick<UnmarkedGear, "pressureAngles">): readonly Numeric[] =>
  pressureAngles?.length ? pressureAngles : usualAngles();

/** Over the tips: m (z + 2 h + 2 x), or the share of it that jaws read. */
export const outsideLine =
  (jaws: boolean | undefined) =>
  ({ gear }: Suspect): Line => {
    const share = jaws ? jawShare(gear) : bounded(1);
    return { base: tipDiameter({ ...gear, shift: bounded(0) }).times(share), slope: share.times(gear.module).times(2) };
  };

/** Over k teeth: Wk = m cos α (π (k − ½) + z inv α) + 2 x m sin α. */
export const spanLine =
  (teeth: number) =>
  ({ gear }: Suspect): Line => {
    const at = (shift: number): Bounded => spanLength({ ...gear, shift: bounded(shift) }, teeth);
    return { base: at(0), slope: at(1).minus(at(0)) };
  };

/** From k to k + 1 teeth: π m cos α, whatever the shift. */
export const basePitchLine = ({ gear }: Suspect): Line => ({ base: basePitch(gear), slope: bounded(0) });

/** Between the axes of the donor's pair, without play. */
export const centreLine =
  (otherTeeth: number, internal: boolean | undefined) =>
  ({ candidate: { addendum: _, ...pitch }, gear }: Suspect): Line | undefined => {
    const [driver, driven] = internal
      ? [Math.min(gear.teeth, otherTeeth), Math.max(gear.teeth, otherTeeth)]
      : [gear.teeth, otherTeeth];
    const at = (shift: Rational): Bounded | undefined => {
      const shifts = { driverShift: shift.toFraction(), drivenShift: shift.toFraction() };
      return centreDistance({ ...pitch, driver, driven, ...shifts, ...(internal && { internal }) });
    };
    const { low, high } = gear.shift;
    const [closest, farthest] = [at(low), at(high)];
    if (!closest || !farthest) return undefined;
    const ends = [closest.low, closest.high, farthest.low, farthest.high].sort((a, b) => a.compare(b));
    return { base: bounded(ends[0]!, ends[3]), slope: bounded(0) };
  };

/** An opening on either side of tight, in millimetres. */
function openingOf(opening: MeasuredLength): Bounded {
  const ends = typeof opening === "object" ? [opening.from, opening.to] : [opening, opening];
  const [low, high] = ends.map((end) => finiteOf(end, "opening")) as [Rational, Rational];
  return low.compare(high) > 0
    ? refuse("ends-reversed", "opening", `${low} to ${high}`, "the smaller first")
    : bounded(low, high);
}

/** The measurements of a question, each as an interval and as what it would have to be. */
export function readingsOf(question: UnmarkedGear): Reading[] {
  const { teeth, outside, jaws, span, spanNext, donorCentre, tipWear, thinning } = question;
  checkTeeth(teeth);
  const readings: Reading[] = [];
  if (outside !== undefined)
    readings.push({
      gauge: "outside",
      read: readingOf(outside, "outside", tipWear, "tipWear"),
      lineOf: outsideLine(jaws),
    });
  if (spanNext !== undefined && !span)
    refuse("span-missing", "spanNext", "one span", "the span over a tooth less beside it");
  if (span) {
    const read = readingOf(span.over, "span");
    const more = depthOf(thinning ?? 0, "thinning");
    const full = (over: Bounded): Bounded => bounded(over.low, over.high.plus(more));
    checkTeeth(span.teeth, "span");
    readings.push({ gauge: "span", read: full(read), lineOf: spanLine(span.teeth) });
    if (spanNext !== undefined) {
      const next = readingOf(spanNext, "spanNext");
      readings.push({ gauge: "span", read: full(next), lineOf: spanLine(span.teeth + 1) });
      // Both spans lose the same to thinner teeth.
      readings.push({ gauge: "base pitch", read: next.minus(read), lineOf: basePitchLine });
    }
  }
  if (donorCentre) {
    const { centre, otherTeeth, internal, opening } = donorCentre;
    const between = readingOf(centre, "donorCentre");
    const line = centreLine(checkTeeth(otherTeeth, "otherTeeth"), internal);
    const opened = opening === undefined ? undefined : openingOf(opening);
    readings.push({
      gauge: "donor centre",
      read: between,
      lineOf(suspect) {
        const theoretical = line(suspect);
        const moved = opened ?? bounded(0, suspect.gear.module.over(10));
        return theoretical && { ...theoretical, base: theoretical.base.plus(internal ? moved.negate() : moved) };
      },
    });
  }
  return readings;
}
