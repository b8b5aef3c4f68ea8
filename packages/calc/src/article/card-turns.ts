import type { OutputEvaluation, Step } from "../evaluate/index.js";
import { rational, type Rational } from "../exact/index.js";
import { fill } from "../languages/index.js";
import { isToothPair } from "../report/index.js";
import { checks, Effect, effects, stageShapes, unknowns, type Stage } from "../stages/index.js";
import type { BlockRow } from "./block.js";
import type { Reporter } from "./speaker.js";

/** What a person can tell apart, in turns. */
const tellable = rational("1/3");
/** A gear that nobody has counted has hardly more teeth. */
const uncounted = rational("1/60");

/** A stage's reduction by its counts alone; nothing where something else comes in. */
function byCounts(stage: Stage): Rational | undefined {
  if (unknowns[stage.kind]) return undefined;
  const effect = new Effect();
  effects[stage.kind](stage, effect, { namesake: ({ id }) => id, divide: () => undefined });
  return effect.fits ? effect.factor : undefined;
}

/** Whether there can be such a stage: a ring larger than what runs in it, more pins than lobes. */
function isPossible(stage: Stage): boolean {
  let isWrong = false;
  checks[stage.kind](stage, (severity) => (isWrong ||= severity === "error"));
  return !isWrong;
}

/** Stages like this one with one count a tooth off. */
function toothOff(stage: Stage): Stage[] {
  const values = stage as unknown as Readonly<Record<string, unknown>>;
  const near = (count: unknown): number[] =>
    typeof count === "number" ? [count - 1, count + 1].filter((other) => other > 0) : [];
  return Object.entries(stageShapes[stage.kind]).flatMap(([field, shape]) => {
    const value = values[field];
    if (/^count\b/.test(shape)) return near(value).map((count) => ({ ...stage, [field]: count }));
    if (!/^\[count\]/.test(shape) || !Array.isArray(value)) return [];
    return value.flatMap((count, n) =>
      near(count).map((other) => ({
        ...stage,
        [field]: value.map((one, place) => (place === n ? other : one) as unknown),
      })),
    );
  }) as unknown as Stage[];
}

/** The least that one tooth too many or too few changes about any of these stages, as a share. */
function leastChange(steps: readonly Step[]): Rational {
  let least: Rational | undefined;
  for (const { stage } of steps) {
    const right = byCounts(stage);
    const wrong = right ? toothOff(stage).filter(isPossible).map(byCounts) : [undefined];
    for (const one of wrong) {
      const change = right && one ? one.over(right).minus(1).abs() : uncounted;
      if (change.sign && (!least || change.compare(least) < 0)) least = change;
    }
  }
  return least ?? uncounted;
}

/**
 * What to count by hand at an output: so many whole turns of the wheel that one tooth too many or too few anywhere on the way
 * shows as a third of a turn or more where it is counted.
 */
export function turnRows({ reports, writer }: Reporter, evaluation: OutputEvaluation): BlockRow[] {
  const { label, steps, locked, output, isOpen, share } = evaluation;
  const [first, ...rest] = steps;
  if (!first || !locked) return [];
  // Teeth that can be seen are counted; what comes after them is turned.
  const seen = rest.length > 0 && isToothPair(first.stage) ? first.stage : undefined;
  // Off the ground an axle behind an open differential turns by its share, the others held.
  const each = (seen ? locked.over(first.reduction) : locked).times(share).bounds;
  const change = leastChange(seen ? rest : steps);
  const row = (text: string, part: string): BlockRow => {
    const counted = each.times(part);
    const needed = tellable.over(change.times(counted.low));
    const turns = Math.max(1, Math.ceil(needed.toNumber() - 1e-9));
    const by = seen ? (seen.drivenLabel ?? reports.firstDriven) : reports.motorShaft;
    const head = fill(text, label, writer.given(turns), by);
    return {
      head: isOpen ? fill(reports.othersHeld, head) : head,
      texts: [writer.number(counted.times(turns), { digits: 2 })],
    };
  };
  return [row(reports.bothTurn, "1"), ...(output.axle === "differential" ? [row(reports.oneHeld, "1/2")] : [])];
}
