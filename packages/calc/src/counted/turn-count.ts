import { bounded, MeshwrightError, rational, type Bounded, type Rational } from "../exact/index.js";
import { type Numeric, refuse } from "../gears/index.js";

/** Turns as counted: so many exactly, or between two ends, which are included. */
export type CountedTurns = Numeric | { readonly from: Numeric; readonly to: Numeric };

/**
 * What was counted by hand, with the slack taken up at both ends. Where two marks come together again, both counts are whole
 * numbers, and exact.
 */
export interface TurnCount {
  readonly motorTurns: Numeric;
  readonly wheelTurns: CountedTurns;
  /** An open differential with one wheel held turns the other twice. */
  readonly oneWheelHeld?: boolean;
  /** What the other wheel of the axle turned, where neither was held: the mean of both counts. */
  readonly otherWheelTurns?: CountedTurns;
  /** The axle's share of the differential that feeds it, where the other axles were held: then it turns 1 / share as far. */
  readonly otherAxlesHeld?: Numeric;
}

function turnsOf(turns: CountedTurns, at: string): Bounded {
  const ends = typeof turns === "object" ? [turns.from, turns.to] : [turns, turns];
  const [low, high] = ends.map((end) => rational(end, { at })) as [Rational, Rational];
  if (low.sign > 0 && low.compare(high) <= 0) return bounded(low, high);
  throw low.sign > 0
    ? new MeshwrightError("ends-reversed", at, `Found ${low} to ${high}; expected the smaller first.`)
    : new MeshwrightError("out-of-range", at, "Turns are zero or less; expected counts above zero.");
}

/**
 * The reduction that a count of turns shows, as an interval: motor turns over wheel turns. An open differential with one
 * wheel held turns the other one twice as far, so that its turns count half; with neither held, the mean of both counts. Behind
 * a differential whose other axles are held the turns count as much as the axle's share.
 *
 * @throws MeshwrightError `out-of-range` where a count is not above zero, `ends-reversed`, `held-and-turning`
 *
 * @example
 * const seen = measuredReduction({ motorTurns: 40, wheelTurns: { from: "1.7", to: "1.8" }, oneWheelHeld: true });
 * seen.toJSON(); // => { low: "400/9", high: "800/17" }
 * measuredReduction({ motorTurns: 31, wheelTurns: 12 }).low.toFraction(); // => "31/12"
 * measuredReduction({ motorTurns: 40, wheelTurns: "0.85", otherWheelTurns: "0.95" }).low.toFraction(); // => "400/9"
 */
export function measuredReduction(count: TurnCount): Bounded {
  const { motorTurns, wheelTurns, oneWheelHeld, otherWheelTurns, otherAxlesHeld = 1 } = count;
  if (oneWheelHeld && otherWheelTurns !== undefined)
    throw new MeshwrightError(
      "held-and-turning",
      "otherWheelTurns",
      "One wheel is held; expected the turns of the other alone.",
    );
  const motor = turnsOf(motorTurns, "motorTurns");
  const one = turnsOf(wheelTurns, "wheelTurns");
  const sum = otherWheelTurns === undefined ? one : one.plus(turnsOf(otherWheelTurns, "otherWheelTurns"));
  const wheel = oneWheelHeld || otherWheelTurns !== undefined ? sum.over(2) : sum;
  const share = rational(otherAxlesHeld, { at: "otherAxlesHeld" });
  if (share.sign <= 0 || share.compare(1) > 0)
    refuse("out-of-range", "otherAxlesHeld", otherAxlesHeld, "a share above 0 and up to 1");
  return motor.over(wheel.times(share));
}

/** How a measurement stands to what the build says. */
export interface Agreement {
  readonly measured: Bounded;
  /** `cannot tell`: both overlap, but the build may still lie outside of what was measured. */
  readonly verdict: "agrees" | "disagrees" | "cannot tell";
  /** What was measured over what the build says, minus one. */
  readonly off: Bounded;
  /** Where they disagree, the least of it: a share of what the build says, below zero where less was measured. */
  readonly by?: Rational;
}

/**
 * Whether a build's reduction agrees with what was counted: it does where all that the build can be lies within what was
 * measured, and disagrees where nothing of it does.
 *
 * @param reduction what the build says with the counts that were in it then; an interval where it has printed ratios
 *
 * @example
 * const { verdict } = agreement(bounded("25916/585"), { motorTurns: 40, wheelTurns: { from: "0.90", to: "0.91" } });
 * verdict; // => "agrees"
 * agreement(bounded(50), { motorTurns: 40, wheelTurns: 1 }).by!.toFraction(); // => "-1/5"
 */
export function agreement(reduction: Bounded, count: TurnCount): Agreement {
  const measured = measuredReduction(count);
  const off = measured.over(reduction).minus(1);
  const apart = off.high.sign < 0 || off.low.sign > 0;
  return {
    measured,
    verdict: measured.contains(reduction) ? "agrees" : apart ? "disagrees" : "cannot tell",
    off,
    ...(apart && { by: off.high.sign < 0 ? off.high : off.low }),
  };
}
