import { bounded, MeshwrightError, rational, type Bounded } from "../exact/index.js";
import type { Measurement } from "../drivetrain/index.js";

/** What was counted by hand. */
export type TurnCount = Pick<Measurement, "motorTurns" | "wheelTurns" | "oneWheelHeld">;

/**
 * The reduction that a count of turns shows, as an interval: motor turns over wheel turns. An open differential with one
 * wheel held turns the other one twice as far, so that its turns count half.
 *
 * @throws MeshwrightError where a count is not above zero
 *
 * @example
 * const seen = measuredReduction({ motorTurns: 40, wheelTurns: { from: "1.7", to: "1.8" }, oneWheelHeld: true });
 * seen.toJSON(); // => { low: "400/9", high: "800/17" }
 */
export function measuredReduction({ motorTurns, wheelTurns, oneWheelHeld }: TurnCount): Bounded {
  const wheel = typeof wheelTurns === "object" ? bounded(wheelTurns.from, wheelTurns.to) : bounded(wheelTurns);
  const motor = rational(motorTurns, { at: "motorTurns" });
  if (motor.sign <= 0 || wheel.low.sign <= 0)
    throw new MeshwrightError("out-of-range", "wheelTurns", "Turns are zero or less; expected counts above zero.");
  return bounded(motor)
    .over(wheel)
    .times(oneWheelHeld ? 2 : 1);
}

export interface Agreement {
  readonly measured: Bounded;
  /** `cannot tell`: both overlap, but the build may still lie outside of what was measured. */
  readonly verdict: "agrees" | "disagrees" | "cannot tell";
  /** What was measured over what the build says, minus one. */
  readonly off: Bounded;
}

/**
 * Whether a build's reduction agrees with what was counted: it does where all that the build can be lies within what was
 * measured, and disagrees where nothing of it does.
 *
 * @example
 * const { verdict } = agreement(bounded("25916/585"), { motorTurns: 40, wheelTurns: { from: "0.90", to: "0.91" } });
 * verdict; // => "agrees"
 */
export function agreement(reduction: Bounded, count: TurnCount): Agreement {
  const measured = measuredReduction(count);
  const apart = measured.high.compare(reduction.low) < 0 || measured.low.compare(reduction.high) > 0;
  return {
    measured,
    verdict: measured.contains(reduction) ? "agrees" : apart ? "disagrees" : "cannot tell",
    off: measured.over(reduction).minus(1),
  };
}
