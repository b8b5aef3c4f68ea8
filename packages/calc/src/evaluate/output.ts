import { lengthOf, rational, type Bounded, type Rational } from "../exact/index.js";
import { pathTo, type Build, type Output, type Wheel } from "../drivetrain/index.js";
import { Effect, type Stage, type Turn } from "../stages/index.js";
import { along, follow, leavesOf, type Leaf, type Released } from "./drive.js";
import { pi, Quantity, quantityOf } from "./quantity.js";

/** Where a total stands in the range that the builder likes. */
export type Standing = "inside" | "below" | "above" | "uncertain";

/** Which way something turns against the motor. */
export type Turns = "same way" | "opposite way" | "not known";

/** One stage of the way from the motor to a wheel. */
export interface Step {
  readonly stage: Stage;
  readonly group: string | undefined;
  readonly reduction: Quantity;
  readonly turns: Turns;
  /** The reduction from the motor up to here. */
  readonly running: Quantity;
}

export interface Group {
  readonly group: string;
  readonly reduction: Quantity;
}

export const turnsOf = (turn: Turn): Turns => (turn ? (turn > 0 ? "same way" : "opposite way") : "not known");

/** What a run through the shared stages left, for every output to go on from. */
export interface Shared {
  readonly build: Build;
  readonly positions: Readonly<Record<string, string>> | undefined;
  readonly trunk: { readonly effect: Effect; readonly turn: Turn | Released };
  /** What an open centre differential makes of an output's own reduction. */
  centre(output: OutputEvaluation): Rational | 1 | undefined;
}

/** What a run left behind, exactly; `again` runs once more where the plain numbers did not hold it. */
function resultOf(effect: Effect, again: (into: Effect) => void): Quantity {
  if (!effect.fits) again((effect = new Effect(true)));
  return quantityOf(effect.factor, effect.unknowns);
}

/** The reduction of a few stages on their own. */
function through(leaves: readonly Leaf[], from = 0, to = leaves.length): Quantity {
  const effect = new Effect();
  along(leaves, from, to, effect);
  return resultOf(effect, (into) => along(leaves, from, to, into));
}

class Leg implements Step {
  readonly stage: Stage;
  readonly group: string | undefined;
  readonly reduction: Quantity;
  readonly turns: Turns;
  readonly #leaves: readonly Leaf[];
  readonly #place: number;

  constructor(leaves: readonly Leaf[], place: number) {
    const effect = new Effect();
    const leaf = leaves[place]!;
    this.stage = leaf.stage;
    this.group = leaf.group;
    this.turns = turnsOf(along(leaves, place, place + 1, effect));
    this.reduction = resultOf(effect, (into) => along(leaves, place, place + 1, into));
    this.#leaves = leaves;
    this.#place = place;
  }

  get running(): Quantity {
    return this.#place ? through(this.#leaves, 0, this.#place + 1) : this.reduction;
  }
}

interface Drive {
  readonly reduction: Quantity | undefined;
  readonly turn: Turn;
  readonly released: Released | undefined;
}

const rolled = new WeakMap<Wheel, Quantity>();

/** Ground rolled in one turn of a wheel, in millimetres. */
export function rolledBy(wheel: Wheel): Quantity {
  let ground = rolled.get(wheel);
  if (!ground) {
    const { travel } = wheel;
    ground = travel
      ? new Quantity(lengthOf(travel.length).over(travel.turns))
      : pi().times(lengthOf(wheel.loadedDiameter ?? wheel.diameter!));
    rolled.set(wheel, ground);
  }
  return ground;
}

/** What a build comes to at one output. Nothing is worked out before it is read. */
export class OutputEvaluation {
  readonly output: Output;
  readonly #shared: Shared;
  #drive: Drive | undefined;
  #bounds: Bounded | undefined;
  #steps: readonly Step[] | undefined;
  #path: readonly (readonly Stage[])[] | undefined;

  constructor(shared: Shared, output: Output) {
    this.#shared = shared;
    this.output = output;
  }

  get id(): string {
    return this.output.id;
  }

  get label(): string {
    return this.output.label ?? this.output.id;
  }

  /** The lists of stages from the motor to the wheel. */
  get path(): readonly (readonly Stage[])[] {
    return (this.#path ??= pathTo(this.#shared.build, this.output));
  }

  #run(listing: boolean): Drive {
    const { positions, trunk, build } = this.#shared;
    const own = this.output.motor !== undefined;
    let turn: Turn | Released = own || listing ? 1 : trunk.turn;
    const effect = new Effect(listing, own || listing ? undefined : trunk.effect);
    // The common case goes on from the trunk; branches and long trains are walked from their beginning.
    for (const list of own || listing || this.output.from ? this.path : [this.output.stages]) {
      if (list === build.stages && !own && !listing) continue;
      const next: Turn | Released = typeof turn === "string" ? turn : follow(list, effect, positions);
      turn = typeof next === "string" || typeof turn === "string" ? next : (((turn * next) | 0) as Turn);
    }
    if (typeof turn === "string") return { reduction: undefined, turn: 0, released: turn };
    if (!effect.fits && !listing) return this.#run(true);
    return { reduction: quantityOf(effect.factor, effect.unknowns), turn, released: undefined };
  }

  get #driven(): Drive {
    return (this.#drive ??= this.#run(false));
  }

  /** Motor turns for one wheel turn, with everything before it locked; undefined where nothing drives it. */
  get locked(): Quantity | undefined {
    return this.#driven.reduction;
  }

  get state(): "driven" | Released {
    return this.#driven.released ?? "driven";
  }

  /** Motor turns for one wheel turn. Undefined where nothing drives it, or nothing settles how fast. */
  get reduction(): Quantity | undefined {
    const { reduction } = this.#driven;
    const factor = reduction && this.#shared.centre(this);
    return factor && (factor === 1 ? reduction : reduction.times(factor));
  }

  get bounds(): Bounded | undefined {
    return (this.#bounds ??= this.reduction?.bounds);
  }

  /** +1 with the motor, −1 against it, 0 not known. */
  get turn(): Turn {
    return this.#driven.turn;
  }

  get turns(): Turns {
    return turnsOf(this.turn);
  }

  get #leaves(): readonly Leaf[] {
    const leaves: Leaf[] = [];
    for (const list of this.path) leavesOf(list, this.#shared.positions, leaves);
    return leaves;
  }

  /** Every stage of the way, from the motor outwards. */
  get steps(): readonly Step[] {
    if (!this.#steps) {
      const leaves = this.#leaves;
      this.#steps = leaves.map((_, place) => new Leg(leaves, place));
    }
    return this.#steps;
  }

  /** The reduction of each group of stages, in the order of the train. */
  get groups(): readonly Group[] {
    const groups = new Map<string, Leaf[]>();
    for (const leaf of this.#leaves)
      if (leaf.group !== undefined) {
        const leaves = groups.get(leaf.group);
        if (leaves) leaves.push(leaf);
        else groups.set(leaf.group, [leaf]);
      }
    const list: Group[] = [];
    groups.forEach((leaves, group) => list.push({ group, reduction: through(leaves) }));
    return list;
  }

  /** Ground rolled for one motor turn, in millimetres; undefined without a wheel or a drive. */
  get travel(): Quantity | undefined {
    const { reduction } = this;
    return reduction && this.output.wheel && rolledBy(this.output.wheel).over(reduction);
  }

  /** Where the total stands in the target; undefined where the build has none for it. */
  get standing(): Standing | undefined {
    const { target } = this.#shared.build;
    const { bounds } = this;
    if (!target || !bounds || (target.output ?? this.id) !== this.id) return undefined;
    const [from, to] = [rational(target.from), rational(target.to)];
    if (bounds.high.compare(from) < 0) return "below";
    if (bounds.low.compare(to) > 0) return "above";
    return bounds.low.compare(from) >= 0 && bounds.high.compare(to) <= 0 ? "inside" : "uncertain";
  }
}
