import { rational, type Bounded, type Rational } from "../exact/index.js";
import { pathTo, type Output } from "../drivetrain/index.js";
import { Effect, type Stage, type Turn } from "../stages/index.js";
import { follow, isEstablished, leavesOf, turnThrough, type Leaf, type Released, type Situation } from "./drive.js";
import { quantityOf, type Quantity } from "./quantity.js";
import type { Splitting, TyreAssumption } from "./splitting.js";
import { turnsOf, type Turns } from "./turns.js";
import type { Group, Step } from "./steps.js";
import { rolledBy } from "./wheel.js";

/** Where a total stands in the range that the builder likes. */
export type Standing = "inside" | "below" | "above" | "uncertain";

/** What is worked out of an output beside its totals. */
export interface OutputFurther {
  readonly steps: (leaves: readonly Leaf[], situation: Situation) => readonly Step[];
  readonly groups: (leaves: readonly Leaf[], situation: Situation) => readonly Group[];
}

/** What a run through the shared stages left, for every output to go on from. */
export interface Shared {
  readonly situation: Situation;
  readonly trunk: { readonly effect: Effect; readonly released: Released | undefined };
  readonly further: OutputFurther;
  /** How the places where the drive splits hang together; none where no differential is open. */
  readonly splitting: Splitting | undefined;
}

interface Drive {
  readonly reduction: Quantity | undefined;
  readonly released: Released | undefined;
}

/** What a build comes to at one output. Nothing is worked out before it is read. */
export class OutputEvaluation {
  readonly output: Output;
  readonly #shared: Shared;
  #drive: Drive | undefined;
  #turn: Turn | undefined;
  #straightOver: { readonly value: Quantity | undefined } | undefined;
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
    return (this.#path ??= pathTo(this.#shared.situation.build, this.output));
  }

  #run(listing: boolean): Drive {
    const { situation, trunk } = this.#shared;
    const own = this.output.motor !== undefined || listing;
    let released = own ? undefined : trunk.released;
    const effect = new Effect(listing, own ? undefined : trunk.effect);
    // The common case goes on from the trunk; branches and long trains are walked from their beginning.
    for (const list of own || this.output.from ? this.path : [this.output.stages])
      if (own || list !== situation.build.stages) released ??= follow(list, effect, situation);
    if (released) return { reduction: undefined, released };
    return effect.fits || listing
      ? { reduction: quantityOf(effect.factor, effect.unknowns), released }
      : this.#run(true);
  }

  get #driven(): Drive {
    return (this.#drive ??= this.#run(false));
  }

  get state(): "driven" | Released {
    return this.#driven.released ?? "driven";
  }

  /** Motor turns for one wheel turn with everything before it held together; undefined where nothing drives it. */
  get locked(): Quantity | undefined {
    return this.#driven.reduction;
  }

  /** The open differentials before it by id, from the motor outwards: `"centre"` or a branch's. */
  get openSplits(): readonly string[] {
    return this.#shared.splitting?.openOn(this).map(({ at }) => at.id) ?? [];
  }

  /** Whether a differential before it lets it turn apart from others. */
  get isOpen(): boolean {
    return this.openSplits.length > 0;
  }

  /** The part of the torque that reaches it through every open differential before it; 1 where there is none. */
  get share(): Rational {
    return this.#shared.splitting?.shareOf(this) ?? rational(1);
  }

  /** `straightOn` over `locked`. */
  get straightOver(): Quantity | undefined {
    const { splitting } = this.#shared;
    return (this.#straightOver ??= { value: splitting?.straightOver(this) }).value;
  }

  /**
   * Motor turns for one wheel turn straight on: behind an open differential every axle has one road speed, so that motor turns for a
   * unit of road are the sum of share × locked / rolled, whatever each axle would have alone; where the others are held,
   * share × locked. Elsewhere as locked. Undefined where nothing drives it, something let go of takes what it likes, or
   * wheels are given for some of the axles only.
   */
  get straightOn(): Quantity | undefined {
    const { locked } = this;
    if (!locked || !this.#shared.splitting) return locked;
    const over = this.straightOver;
    return over && locked.times(over);
  }

  /** What `straightOn` takes for granted: without any wheel, equal tyres. */
  get assumes(): TyreAssumption | undefined {
    return this.#shared.splitting?.assumes(this);
  }

  /** Motor turns for one wheel turn, as it drives: straight on, which is locked where no differential before it is open. */
  get reduction(): Quantity | undefined {
    return this.#shared.splitting ? this.straightOn : this.#driven.reduction;
  }

  get bounds(): Bounded | undefined {
    return (this.#bounds ??= this.reduction?.bounds);
  }

  /** +1 with the motor, −1 against it, 0 not known. */
  get turn(): Turn {
    const { positions } = this.#shared.situation;
    const turn = () => this.path.reduce((product, list) => product * turnThrough(list, positions), 1);
    return (this.#turn ??= (turn() || 0) as Turn);
  }

  get turns(): Turns {
    return turnsOf(this.turn);
  }

  /** `turns`, where every stage before it has said what decides its direction; a convention alone establishes nothing. */
  get establishedTurns(): Turns {
    const { positions } = this.#shared.situation;
    return this.path.every((list) => isEstablished(list, positions)) ? this.turns : "not known";
  }

  get #leaves(): readonly Leaf[] {
    const leaves: Leaf[] = [];
    for (const list of this.path) leavesOf(list, this.#shared.situation.positions, leaves);
    return leaves;
  }

  /** Every stage of the way, from the motor outwards. */
  get steps(): readonly Step[] {
    return (this.#steps ??= this.#shared.further.steps(this.#leaves, this.#shared.situation));
  }

  /** The reduction of each group of stages, in the order of the train. */
  get groups(): readonly Group[] {
    return this.#shared.further.groups(this.#leaves, this.#shared.situation);
  }

  /** Ground rolled for one motor turn, in millimetres; undefined without a wheel or a drive. */
  get travel(): Quantity | undefined {
    const { reduction } = this;
    return reduction && this.output.wheel && rolledBy(this.output.wheel).over(reduction);
  }

  /** Where the total stands in the target; undefined where the build has none for it. */
  get standing(): Standing | undefined {
    const { target } = this.#shared.situation.build;
    const { bounds } = this;
    if (!target || !bounds || (target.output ?? this.id) !== this.id) return undefined;
    const [from, to] = [rational(target.from), rational(target.to)];
    if (bounds.high.compare(from) < 0) return "below";
    if (bounds.low.compare(to) > 0) return "above";
    return bounds.low.compare(from) >= 0 && bounds.high.compare(to) <= 0 ? "inside" : "uncertain";
  }
}
