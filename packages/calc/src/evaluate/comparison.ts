import { Bounded, bounded, rational, type Rational } from "../exact/index.js";
import { isEstablished, turnThrough, type Situation } from "./drive.js";
import type { OutputEvaluation } from "./output.js";
import type { Quantity } from "./quantity.js";
import type { Splitting, TyreAssumption } from "./splitting.js";
import { rolledBy } from "./wheel.js";

/** "gears": as if the tyres were equal. "tyres": with the wheels as they are. */
export type Scope = "gears" | "tyres";

/** What a difference is measured against: the second output, the first one, or their mean. */
export type ComparisonBase = "with" | "of" | "mean";

/** What grows with its argument takes an interval end by end; an exact value is worked out once. */
const betweenEnds = (x: Bounded, at: (end: Rational) => Rational): Bounded => {
  const low = at(x.low);
  return x.low === x.high ? bounded(low) : new Bounded(low, at(x.high));
};

/** Turns a quotient into a difference: quotient − 1, 1 − 1/quotient, or twice the difference over the sum. */
export function differenceOf(quotient: Bounded, base: ComparisonBase): Bounded {
  // Each of them grows with the quotient, so the ends stay the ends.
  const one = rational(1);
  const at = (x: Rational) =>
    base === "with"
      ? x.minus(one)
      : base === "of"
        ? one.minus(x.inverse())
        : // 2 (x − 1) / (x + 1), in the order in which nothing long has to be divided by anything long.
          x.plus(one).inverse().times(rational(-4)).plus(rational(2));
  return betweenEnds(quotient, at);
}

/**
 * How two outputs stand to each other. Positive: the first is ahead. What is told is of drives held together; where a
 * differential between the two is open, it takes the difference up.
 */
export class Comparison {
  readonly of: OutputEvaluation;
  readonly with: OutputEvaluation;
  readonly #situation: Situation;
  readonly #splitting: Splitting | undefined;
  #gears: Quantity | undefined;
  #tyres: Quantity | undefined;

  constructor(situation: Situation, splitting: Splitting | undefined, of: OutputEvaluation, other: OutputEvaluation) {
    this.#situation = situation;
    this.#splitting = splitting;
    this.of = of;
    this.with = other;
  }

  /** Whether they are compared for the same turns of a shaft, or at equal volts on motors of their own. */
  get by(): "shaft" | "motor-speed" {
    return this.of.output.motor || this.with.output.motor ? "motor-speed" : "shaft";
  }

  /** How often the first turns while the second turns once, or how far it rolls while the second rolls 1. */
  quotient(scope: Scope): Quantity | undefined {
    return scope === "gears" ? (this.#gears ??= this.#quotient()) : (this.#tyres ??= this.#rolled());
  }

  #quotient(): Quantity | undefined {
    const [mine, other] = [this.of, this.with];
    if (!mine.locked || !other.locked) return undefined;
    const quotient = other.locked.over(mine.locked);
    if (this.by === "shaft") return quotient;
    const [mineKv, otherKv] = [mine, other].map((output) => (output.output.motor ?? this.#situation.build.motor)?.kv);
    return mineKv && otherKv ? quotient.times(mineKv).over(otherKv) : undefined;
  }

  #rolled(): Quantity | undefined {
    const [mine, other] = [this.of.output.wheel, this.with.output.wheel];
    return mine && other && this.quotient("gears")?.times(rolledBy(mine).over(rolledBy(other)));
  }

  /** How much farther the first goes. Undefined where a wheel, a kV or the drive is missing. */
  difference(scope: Scope, base: ComparisonBase = "with"): Bounded | undefined {
    const quotient = this.quotient(scope);
    return quotient && differenceOf(quotient.bounds, base);
  }

  /** The open differentials by which the two can turn apart, by id: `"centre"` or a branch's. */
  get openSplits(): readonly string[] {
    return this.#splitting?.between(this.of, this.with).map(({ at }) => at.id) ?? [];
  }

  /** Whether a differential takes the difference up. */
  get isOpen(): boolean {
    return this.openSplits.length > 0;
  }

  /**
   * How much an open differential takes up straight on, as a part of the motor's turns: the turns that the first asks for less
   * those that the second asks for, over those that the motor makes. Undefined where none is open, or `straightOn` is not known.
   */
  get takenUp(): Bounded | undefined {
    const [mine, other] = [this.of.straightOver, this.with.straightOver];
    if (!this.isOpen || !mine || !other || !this.of.locked || !this.with.locked) return undefined;
    const [first, second] = [mine, other].map((one) => one.bounds.inverse()) as [Bounded, Bounded];
    if (first.isExact && second.isExact) return first.minus(second);
    // Both hang on the same unknowns: by their quotient, in which these cancel, either way round; the truth is in both.
    const quotient = other.over(mine).bounds;
    const [one, two] = [second.times(quotient.minus(1)), first.times(bounded(1).minus(quotient.inverse()))];
    return bounded(
      one.low.compare(two.low) > 0 ? one.low : two.low,
      one.high.compare(two.high) < 0 ? one.high : two.high,
    );
  }

  /** What `takenUp` takes for granted: without any wheel, equal tyres. */
  get assumes(): TyreAssumption | undefined {
    return this.isOpen ? this.of.assumes : undefined;
  }

  /** Whether both turn the same way; null where it does not follow from the stages after the split. */
  get sameWay(): boolean | null {
    if (this.by === "motor-speed") return null;
    const { positions } = this.#situation;
    const turn = this.#apart.reduce((product, list) => product * turnThrough(list, positions), 1);
    return turn ? turn > 0 : null;
  }

  /** `sameWay`, where every stage after the split has said what decides its direction; a convention alone establishes nothing. */
  get establishedSameWay(): boolean | null {
    const { positions } = this.#situation;
    return this.by === "shaft" && this.#apart.every((list) => isEstablished(list, positions)) ? this.sameWay : null;
  }

  /** The lists of stages that only one of the two passes through. */
  get #apart(): OutputEvaluation["path"] {
    const [mine, other] = [this.of.path, this.with.path];
    let shared = 0;
    while (shared < mine.length && mine[shared] === other[shared]) shared++;
    return [...mine.slice(shared), ...other.slice(shared)];
  }

  /** Half the sum of both reductions: motor turns per wheel turn straight on with an open even split and equal tyres. */
  get arithmeticMean(): Bounded | undefined {
    return this.#mean((x, y) => x.plus(y).over(rational(2)));
  }

  /** Motor turns per average wheel turn of a locked drive. */
  get harmonicMean(): Bounded | undefined {
    return this.#mean((x, y) => x.inverse().plus(y.inverse()).inverse().times(rational(2)));
  }

  /** A mean grows with either reduction, so its ends come from the ends. */
  #mean(at: (x: Rational, y: Rational) => Rational): Bounded | undefined {
    const [a, b] = [this.of.locked?.bounds, this.with.locked?.bounds];
    return a && b && new Bounded(at(a.low, b.low), at(a.high, b.high));
  }
}
