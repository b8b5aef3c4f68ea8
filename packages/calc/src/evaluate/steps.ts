import { Bounded, bounded, rational, ratioOf, type Rational } from "../exact/index.js";
import { Effect, type Stage, type Unknown } from "../stages/index.js";
import { onto, turnOf, type Leaf, type Situation } from "./drive.js";
import { Quantity, quantityOf, type Power } from "./quantity.js";
import { turnsOf, type Turns } from "./turns.js";

/** One stage of the way from the motor to a wheel. */
export interface Step {
  readonly stage: Stage;
  readonly group: string | undefined;
  readonly reduction: Quantity;
  readonly turns: Turns;
  /** The reduction from the motor up to here. Made when it is read; in their order, each from the one before. */
  readonly running: Quantity;
  /** All that `running` can be, made without it: for tables of many printed ratios. */
  readonly runningBounds: Bounded;
}

/** What the stages of one group come to together. */
export interface Group {
  readonly group: string;
  readonly reduction: Quantity;
}

/** What a run left behind, exactly; `again` runs once more where the plain numbers did not hold it. */
function resultOf(effect: Effect, again: (into: Effect) => void): Quantity {
  if (!effect.fits) again((effect = new Effect(true)));
  return quantityOf(effect.factor, effect.unknowns);
}

/** A product that grows stage by stage, read in order as a rule: now and then it is kept, so that going back costs little. */
class Growing {
  readonly #factorOf: (place: number) => Rational;
  readonly #kept: Rational[] = [rational(1)];
  #place = 0;
  #value = this.#kept[0]!;

  constructor(factorOf: (place: number) => Rational) {
    this.#factorOf = factorOf;
  }

  /** The product of all before a place. */
  before(place: number): Rational {
    if (place < this.#place) {
      const last = Math.floor(place / 64);
      [this.#place, this.#value] = [last * 64, this.#kept[last]!];
    }
    while (this.#place < place) {
      this.#value = this.#value.times(this.#factorOf(this.#place++));
      if (this.#place % 64 === 0) this.#kept[this.#place / 64] = this.#value;
    }
    return this.#value;
  }
}

/** A quantity of so many of a way's unknowns: their powers are put together when somebody reads them. */
class Running extends Quantity {
  readonly #list: readonly Unknown[];
  readonly #count: number;
  #powers: readonly Power[] | undefined;

  constructor(factor: Rational, list: readonly Unknown[], count: number) {
    super(factor);
    this.#list = list;
    this.#count = count;
  }

  override get unknowns(): readonly Power[] {
    return (this.#powers ??= quantityOf(this.factor, this.#list.slice(0, this.#count)).unknowns);
  }
}

/** What the steps of one way have in common. */
interface Way {
  readonly steps: Leg[];
  /** The unknowns of all steps, one after the other; each step knows how many of them stand before it. */
  readonly unknowns: Unknown[];
  readonly factors: Growing;
  readonly lows: Growing;
  readonly highs: Growing;
  /** Whether something is divided out somewhere: then the ends of a product are not the products of ends. */
  cancels: boolean;
}

class Leg implements Step {
  readonly stage: Stage;
  readonly group: string | undefined;
  readonly reduction: Quantity;
  readonly turns: Turns;
  readonly #way: Way;
  readonly #place: number;
  readonly #unknowns: number;
  readonly #up: number;
  readonly #down: number;
  #bounds: Bounded | undefined;

  /** @param plain the product up to here in plain numbers, as far as they hold it */
  constructor(leaf: Leaf, situation: Situation, way: Way, plain: { up: number; down: number }) {
    const effect = new Effect();
    this.stage = leaf.stage;
    this.group = leaf.group;
    this.turns = turnsOf(turnOf(leaf.stage));
    onto(leaf, effect, situation);
    this.reduction = resultOf(effect, (into) => onto(leaf, into, situation));
    this.#way = way;
    this.#place = way.steps.length + 1;
    for (const one of this.reduction.unknowns) {
      way.unknowns.push(one);
      way.cancels ||= one.power < 0;
    }
    this.#unknowns = way.unknowns.length;
    plain.up = effect.isPlain ? plain.up * effect.up : NaN;
    plain.down *= effect.down;
    this.#up = plain.up;
    this.#down = plain.down;
  }

  get bounds(): Bounded {
    return (this.#bounds ??= this.reduction.bounds);
  }

  get #factor(): Rational {
    return this.#up <= Number.MAX_SAFE_INTEGER && this.#down <= Number.MAX_SAFE_INTEGER
      ? ratioOf(this.#up, this.#down)
      : this.#way.factors.before(this.#place);
  }

  get running(): Quantity {
    return this.#unknowns ? new Running(this.#factor, this.#way.unknowns, this.#unknowns) : new Quantity(this.#factor);
  }

  get runningBounds(): Bounded {
    const { cancels, lows, highs } = this.#way;
    if (!this.#unknowns) return bounded(this.#factor);
    return cancels ? this.running.bounds : new Bounded(lows.before(this.#place), highs.before(this.#place));
  }
}

/** Every stage of a way, one after the other. */
export function stepsOf(leaves: readonly Leaf[], situation: Situation): readonly Step[] {
  const steps: Leg[] = [];
  const way: Way = {
    steps,
    unknowns: [],
    factors: new Growing((place) => steps[place]!.reduction.factor),
    lows: new Growing((place) => steps[place]!.bounds.low),
    highs: new Growing((place) => steps[place]!.bounds.high),
    cancels: false,
  };
  const plain = { up: 1, down: 1 };
  for (const leaf of leaves) steps.push(new Leg(leaf, situation, way, plain));
  return steps;
}

/** The reduction of each group of stages, in the order of the way. */
export function groupsOf(leaves: readonly Leaf[], situation: Situation): readonly Group[] {
  const groups = new Map<string, Leaf[]>();
  for (const leaf of leaves)
    if (leaf.group !== undefined) {
      const members = groups.get(leaf.group);
      if (members) members.push(leaf);
      else groups.set(leaf.group, [leaf]);
    }
  const list: Group[] = [];
  groups.forEach((members, group) => {
    const run = (into: Effect): void => members.forEach((leaf) => onto(leaf, into, situation));
    const effect = new Effect();
    run(effect);
    list.push({ group, reduction: resultOf(effect, run) });
  });
  return list;
}
