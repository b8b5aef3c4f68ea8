import type { Wheel } from "../drivetrain/index.js";
import { bounded, lengthOf, ratioOf, type Bounded, type RationalInput } from "../exact/index.js";
import { pi, rolledBy } from "../evaluate/index.js";
import { ceilOf, floorOf } from "../gears/index.js";
import { toMillimetresPerMinute, type SpeedUnit } from "./units.js";

/** The ground rolled for one motor turn, or a speed at so many motor turns a minute. */
export type WantedMotion =
  | { readonly travel: string }
  | { readonly speed: RationalInput; readonly unit: SpeedUnit; readonly motorRpm: RationalInput };

/** What is wanted, above zero: a reduction, or a motion on some wheel. */
export type Wanted = { readonly reduction: RationalInput } | (WantedMotion & { readonly wheel: Wheel });

/** One choice, and how near it comes. */
export interface Neighbour<Choice> {
  readonly choice: Choice;
  readonly reduction: Bounded;
  /** What was wanted, as this choice gives it: a reduction, millimetres for one motor turn, a speed in its unit. */
  readonly gives: Bounded;
  /** What it gives over what was wanted, minus one. */
  readonly off: Bounded;
}

/** What answers a wanted figure: what is exact, and what can be had on either side of it. */
export interface Solution<Choice> {
  /** The reduction that would give exactly what is wanted. */
  readonly reduction: Bounded;
  /** On either side of it, in rising order; one alone where it is met, or where there is nothing beyond. */
  readonly neighbours: readonly Neighbour<Choice>[];
}

/** The value of what is wanted, in its own unit, and as ground rolled for one motor turn in millimetres. */
function motionOf(wanted: WantedMotion): readonly [value: Bounded, travel: Bounded] {
  if ("travel" in wanted) {
    const travel = bounded(lengthOf(wanted.travel, "travel"));
    return [travel, travel];
  }
  const speed = bounded(wanted.speed);
  return [speed, toMillimetresPerMinute(speed, wanted.unit).over(wanted.motorRpm)];
}

/** The reduction that gives what is wanted, and how a choice's reduction is judged by it. */
function goalOf(wanted: Wanted) {
  const byReduction = "reduction" in wanted;
  const [value, travel] = byReduction ? [bounded(wanted.reduction)] : motionOf(wanted);
  const goal = byReduction ? value : rolledBy(wanted.wheel).bounds.over(travel!);
  const judge = <Choice>(choice: Choice, reduction: Bounded): Neighbour<Choice> => {
    const share = byReduction ? reduction.over(goal) : goal.over(reduction);
    return { choice, reduction, gives: value.times(share), off: share.minus(1) };
  };
  return { goal, judge };
}

/** Which tooth count gives what is wanted: the whole counts on either side, and the one between them that would be exact. */
export interface CountSolution extends Solution<number> {
  /** The count as a fraction. */
  readonly teeth: Bounded;
}

interface Pairing {
  /** The reduction of all the other stages. */
  readonly rest: Bounded | RationalInput;
  readonly wanted: Wanted;
}

/**
 * Which driver gives what is wanted beside a driven gear, or which driven gear beside a driver: the whole counts on either
 * side of all that the exact count can be.
 *
 * @throws MeshwrightError `division-by-zero` where nothing is wanted
 *
 * @example
 * const wanted = { travel: "2.40 in", wheel: { diameter: "2.25 in" } };
 * const { teeth, neighbours } = solveCount({ driven: 116, rest: 1, wanted });
 * [teeth.low.toDecimal({ maximumFractionDigits: 2 }), ...neighbours.map((one) => one.choice)]; // => ["39.39", 39, 40]
 */
export function solveCount({
  driver,
  driven,
  rest,
  wanted,
}: Pairing &
  (
    { readonly driven: number; readonly driver?: undefined } | { readonly driver: number; readonly driven?: undefined }
  )): CountSolution {
  const { goal, judge } = goalOf(wanted);
  // Turns asked of this pair alone.
  const own = goal.over(rest);
  const teeth = driven ? own.inverse().times(driven) : own.times(driver!);
  const counts = [...new Set([floorOf(teeth.low), ceilOf(teeth.high)])].filter((count) => count > 0);
  const neighbours = counts.map((count) =>
    judge(count, bounded(rest).times(driven ? ratioOf(driven, count) : ratioOf(count, driver!))),
  );
  return { reduction: goal, teeth, neighbours };
}

/** Which sets of a list come nearest to what is wanted: the next below and the next above it in reduction. */
export function solveSet<Set extends { readonly driver: number; readonly driven: number }>({
  sets,
  rest,
  wanted,
}: Pairing & { readonly sets: readonly Set[] }): Solution<Set> {
  const { goal, judge } = goalOf(wanted);
  const judged = sets
    .map((set) => judge(set, bounded(rest).times(ratioOf(set.driven, set.driver))))
    .sort((a, b) => a.reduction.low.compare(b.reduction.low));
  const below = judged.filter((one) => one.reduction.low.compare(goal.high) <= 0).at(-1);
  const above = judged.find((one) => one.reduction.high.compare(goal.low) >= 0);
  return { reduction: goal, neighbours: [...new Set([below, above])].filter((one) => one !== undefined) };
}

/** Which tyre diameter gives a wanted travel or speed at a reduction, in millimetres. */
export const solveDiameter = (reduction: Bounded | RationalInput, wanted: WantedMotion): Bounded =>
  motionOf(wanted)[1].times(reduction).over(pi().bounds);
