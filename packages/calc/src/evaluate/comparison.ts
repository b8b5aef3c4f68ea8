import { bounded, rational, type Bounded, type Rational } from "../exact/index.js";
import type { Build } from "../drivetrain/index.js";
import { Effect } from "../stages/index.js";
import { follow } from "./drive.js";
import { rolledBy, type OutputEvaluation } from "./output.js";
import type { Quantity } from "./quantity.js";

/** "gears": as if the tyres were equal. "tyres": with the wheels as they are. */
export type Scope = "gears" | "tyres";

/** What a difference is measured against: the second output, the first one, or their mean. */
export type Base = "with" | "of" | "mean";

/** What grows with its argument takes an interval end by end; an exact value is worked out once. */
const betweenEnds = (x: Bounded, at: (end: Rational) => Rational): Bounded => {
  const low = at(x.low);
  return x.low === x.high ? bounded(low) : bounded(low, at(x.high));
};

/** Turns a quotient into a difference: quotient − 1, 1 − 1/quotient, or twice the difference over the sum. */
export function differenceOf(quotient: Bounded, base: Base): Bounded {
  // Each of them grows with the quotient, so the ends stay the ends.
  const one = rational(1);
  const at = (x: Rational) =>
    base === "with"
      ? x.minus(one)
      : base === "of"
        ? one.minus(x.inverse())
        : x.minus(one).times(rational(2)).over(x.plus(one));
  return betweenEnds(quotient, at);
}

/** How two outputs stand to each other. Positive: the first is ahead. */
export class Comparison {
  readonly of: OutputEvaluation;
  readonly with: OutputEvaluation;
  readonly #build: Build;
  readonly #positions: Readonly<Record<string, string>> | undefined;
  #gears: Quantity | undefined;
  #tyres: Quantity | undefined;

  constructor(
    build: Build,
    positions: Readonly<Record<string, string>> | undefined,
    of: OutputEvaluation,
    other: OutputEvaluation,
  ) {
    this.#build = build;
    this.#positions = positions;
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
    const [mineKv, otherKv] = [mine, other].map((output) => (output.output.motor ?? this.#build.motor)?.kv);
    return mineKv && otherKv ? quotient.times(mineKv).over(otherKv) : undefined;
  }

  #rolled(): Quantity | undefined {
    const [mine, other] = [this.of.output.wheel, this.with.output.wheel];
    return mine && other && this.quotient("gears")?.times(rolledBy(mine).over(rolledBy(other)));
  }

  /** How much farther the first goes. Undefined where a wheel, a kV or the drive is missing. */
  difference(scope: Scope, base: Base = "with"): Bounded | undefined {
    const quotient = this.quotient(scope);
    return quotient && differenceOf(quotient.bounds, base);
  }

  /** Whether both turn the same way; null where the stages after the split do not establish it. */
  get sameWay(): boolean | null {
    if (this.by === "motor-speed") return null;
    const [mine, other] = [this.of.path, this.with.path];
    let shared = 0;
    while (shared < mine.length && mine[shared] === other[shared]) shared++;
    const turn = this.#turn(mine, shared) * this.#turn(other, shared);
    return turn ? turn > 0 : null;
  }

  #turn(path: OutputEvaluation["path"], from: number): number {
    let turn = 1;
    for (let n = from; n < path.length; n++) {
      const next = follow(path[n]!, new Effect(), this.#positions);
      turn *= typeof next === "string" ? 0 : next;
    }
    return turn;
  }

  /** Half the sum of both reductions: motor turns per wheel turn straight on with an open even split and equal tyres. */
  get arithmeticMean(): Bounded | undefined {
    return this.#mean((x, y) => x.plus(y).over(rational(2)));
  }

  /** Motor turns per average wheel turn of a locked drive. */
  get harmonicMean(): Bounded | undefined {
    return this.#mean((x, y) => x.times(y).times(rational(2)).over(x.plus(y)));
  }

  /** A mean grows with either reduction, so its ends come from the ends. */
  #mean(at: (x: Rational, y: Rational) => Rational): Bounded | undefined {
    const [a, b] = [this.of.locked?.bounds, this.with.locked?.bounds];
    return a && b && bounded(at(a.low, b.low), at(a.high, b.high));
  }
}
