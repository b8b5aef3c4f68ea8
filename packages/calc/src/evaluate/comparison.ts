import { bounded, rational, type Bounded } from "../exact/index.js";
import type { Build } from "../build/index.js";
import { Effect, type Turn } from "../kinds/index.js";
import { follow } from "./drive.js";
import { rolledBy, type OutputEvaluation } from "./output.js";
import type { Quantity } from "./quantity.js";

/** "gears": as if the tyres were equal. "tyres": with the wheels as they are. */
export type Scope = "gears" | "tyres";

/** What a difference is measured against: the second output, the first one, or their mean. */
export type Base = "with" | "of" | "mean";

const over = (top: Bounded, bottom: Bounded): Bounded => top.over(bottom);

/** Turns a quotient into a difference: quotient − 1, 1 − 1/quotient, or twice the difference over the sum. */
export function differenceOf(quotient: Bounded, base: Base): Bounded {
  // Each of them grows with the quotient, so the ends stay the ends.
  const at = (x: Bounded["low"]) =>
    base === "with" ? x.minus(1) : base === "of" ? rational(1).minus(x.inverse()) : x.minus(1).times(2).over(x.plus(1));
  return bounded(at(quotient.low), at(quotient.high));
}

/** How two outputs stand to each other. Positive: the first is ahead. */
export class Comparison {
  readonly of: OutputEvaluation;
  readonly with: OutputEvaluation;
  readonly #build: Build;
  readonly #positions: Readonly<Record<string, string>> | undefined;

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
    const [mine, other] = [this.of, this.with];
    if (!mine.locked || !other.locked) return undefined;
    let quotient = other.locked.over(mine.locked);
    if (this.by === "motor-speed") {
      const kvs = [mine, other].map((one) => (one.output.motor ?? this.#build.motor)?.kv);
      if (!kvs[0] || !kvs[1]) return undefined;
      quotient = quotient.times(kvs[0]).over(kvs[1]);
    }
    if (scope === "gears") return quotient;
    const [front, rear] = [mine.output.wheel, other.output.wheel];
    return front && rear && quotient.times(rolledBy(front)).over(rolledBy(rear));
  }

  /** How much farther the first goes. Undefined where a wheel, a kV or the drive is missing. */
  difference(scope: Scope, base: Base = "with"): Bounded | undefined {
    const quotient = this.quotient(scope);
    return quotient && differenceOf(quotient.bounds, base);
  }

  /** Whether both turn the same way; null where the stages after the split do not establish it. */
  get sameWay(): boolean | null {
    const [mine, other] = [[...this.of.path], [...this.with.path]];
    if (this.by === "motor-speed") return null;
    while (mine.length && mine[0] === other[0]) {
      mine.shift();
      other.shift();
    }
    let turn = 1;
    for (const list of [...mine, ...other]) {
      const next: Turn | string = follow(list, new Effect(), this.#positions);
      turn *= typeof next === "string" ? 0 : next;
    }
    return turn ? turn > 0 : null;
  }

  /** Half the sum of both reductions: motor turns per wheel turn straight on with an open even split and equal tyres. */
  get arithmeticMean(): Bounded | undefined {
    const [a, b] = [this.of.locked?.bounds, this.with.locked?.bounds];
    return a && b && over(a.plus(b), bounded(2));
  }

  /** Motor turns per average wheel turn of a locked drive. */
  get harmonicMean(): Bounded | undefined {
    const [a, b] = [this.of.locked?.bounds, this.with.locked?.bounds];
    if (!a || !b) return undefined;
    // It grows with either reduction, so the ends come from the ends.
    const at = (x: Bounded["low"], y: Bounded["low"]) => x.times(y).times(2).over(x.plus(y));
    return bounded(at(a.low, b.low), at(a.high, b.high));
  }
}
