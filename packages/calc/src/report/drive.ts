import { bounded, type Bounded, type Rational } from "../exact/index.js";
import { rolledBy, type Evaluation, type OutputEvaluation } from "../evaluate/index.js";

/** What stands behind the open centre, all of it driven; nothing where there is no such centre. */
function openSplit({ build, outputs }: Evaluation): readonly OutputEvaluation[] {
  if (build.centre?.kind !== "differential") return [];
  const split = outputs.filter(({ output }) => !output.motor);
  return split.length > 1 && split.every(({ locked }) => locked) ? split : [];
}

/** Whether a differential before an output is open, so that there are two answers to what it turns. */
export const isOpen = (evaluation: Evaluation, output: OutputEvaluation): boolean =>
  openSplit(evaluation).includes(output);

/** What each output asks of the motor along the road, against what one of them does, and its share; none without all wheels. */
function partsAgainst(evaluation: Evaluation, { locked, output: { wheel } }: OutputEvaluation) {
  const own = wheel && locked!.over(rolledBy(wheel));
  return openSplit(evaluation).map((other) => {
    const rolls = other.output.wheel && rolledBy(other.output.wheel);
    return own && rolls && { share: evaluation.share(other), ratio: other.locked!.over(rolls).over(own).bounds };
  });
}

/**
 * Motor turns for one wheel turn, straight on: every output has one road speed, and the motor turns the share-weighted sum of
 * what they ask. Undefined without an open centre or where a wheel is not given.
 */
export function straightOn(evaluation: Evaluation, output: OutputEvaluation): Bounded | undefined {
  if (!isOpen(evaluation, output)) return undefined;
  let sum = bounded(0);
  for (const part of partsAgainst(evaluation, output)) {
    if (!part) return undefined;
    sum = sum.plus(part.ratio.times(part.share));
  }
  return sum.times(output.locked!.bounds);
}

/** How much of the motor's turns along the road an open centre takes up between two of its outputs: (Rf / Df − Rr / Dr) / M. */
export function takenUp(evaluation: Evaluation, of: OutputEvaluation, other: OutputEvaluation): Bounded | undefined {
  const parts = isOpen(evaluation, of) && isOpen(evaluation, other) ? partsAgainst(evaluation, other) : [];
  if (!parts.length || parts.some((part) => !part)) return undefined;
  const split = openSplit(evaluation);
  const mine = parts[split.indexOf(of)]!;
  const rest = parts.reduce(
    (sum, part) => (part === mine ? sum : sum.plus(part!.ratio.times(part!.share))),
    bounded(0),
  );
  // (q − 1) / (share · q + rest) grows with q, and nears nought with what the others turn.
  const at = (ratio: Rational, others: Rational): Rational => ratio.minus(1).over(ratio.times(mine.share).plus(others));
  const { low, high } = mine.ratio;
  return bounded(
    at(low, low.compare(1) < 0 ? rest.low : rest.high),
    at(high, high.compare(1) < 0 ? rest.high : rest.low),
  );
}
