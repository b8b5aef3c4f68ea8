import type { Part } from "../drivetrain/index.js";
import type { Reason } from "../fit/index.js";
import {
  asDriven,
  asDriver,
  type BuyLine,
  canBeHad,
  type Carried,
  cheapestFirst,
  type Cost,
  costOfLine,
  currencyOf,
  emptyStock,
  type Stock,
} from "../parts/index.js";
import { costOfAll } from "./batch.js";
import type { GearChoice, PairQuestion } from "./question.js";

/** One gear of a pair where it is held. */
export class End {
  readonly part: Part;
  readonly reasons: readonly Reason[];
  /** The sleeve or plate between. */
  readonly by: Part | undefined;
  /** 0: goes on by itself. 1: with a part between. 4: not, or nobody can tell. */
  readonly term: 0 | 1 | 4;
  readonly #ends: Ends;
  /** Whether the part is counted here: a set is counted with its driver. */
  readonly #counts: boolean;
  #lines: readonly BuyLine[] | undefined;
  #cost: Cost | undefined;

  constructor(ends: Ends, part: Part, { reasons, by }: Carried, counts: boolean) {
    this.part = part;
    this.reasons = reasons;
    this.by = by;
    this.term = reasons.some(({ weight }) => weight !== "information") ? 4 : by ? 1 : 0;
    this.#ends = ends;
    this.#counts = counts;
  }

  get lines(): readonly BuyLine[] {
    const { part, by } = this;
    const own = this.#counts && part.id ? [this.#ends.lineFor(part, 1)] : [];
    return (this.#lines ??= by ? [...own, this.#ends.lineFor(by, 1)] : own);
  }

  get cost(): Cost {
    return (this.#cost ??= costOfAll(this.lines.map((line) => costOfLine(line, this.#ends.currency()))));
  }
}

/** Whether what is lacking can be had: false where one part cannot, undefined where nobody has said of one. */
export function areHad(lines: readonly BuyLine[]): boolean | undefined {
  let all: boolean | undefined = true;
  for (const { part, pieces } of lines) {
    const had = canBeHad(part, pieces);
    if (had === false) return false;
    all &&= had;
  }
  return all;
}

/** The currency that a search goes by, looked for when it is needed first. */
export function currencyFor(choices: readonly GearChoice[], asked: Pick<PairQuestion, "currency">): () => string {
  let { currency } = asked;
  return () =>
    (currency ??= currencyOf(
      choices.flatMap(({ drivers = [], drivens = [], sets = [], adapters = [] }) =>
        [...drivers, ...drivens, ...sets, ...adapters].filter((one): one is Part => typeof one !== "number"),
      ),
    ));
}

/** How the gears of a choice are held, and what they cost with what holds them. Looks once at what is alike. */
export class Ends {
  readonly pieces: number;
  readonly stock: Stock;
  readonly currency: () => string;
  readonly #choice: GearChoice;
  /** Sleeves and plates, the cheapest first. */
  readonly #adapters: readonly Part[];
  readonly #carried = new Map<string, Carried>();
  readonly #ends = new Map<Part, End>();
  readonly #hubs = new Map<Part, End>();

  constructor(choice: GearChoice, { stock = emptyStock }: Pick<PairQuestion, "stock">, currency: () => string) {
    this.#choice = choice;
    this.pieces = choice.pieces ?? 1;
    this.stock = stock;
    this.currency = currency;
    const usable = (choice.adapters ?? []).filter((part) => areHad([this.lineFor(part, 1)]) !== false);
    this.#adapters = cheapestFirst(usable, (part) => this.costOf(part, 1));
  }

  /** What so many of a part come to, for each piece of the place. */
  lineFor(part: Part, times: number): BuyLine {
    return this.stock.lineFor(part, this.pieces * times);
  }

  costOf(part: Part, times: number): Cost {
    return costOfLine(this.lineFor(part, times), this.currency());
  }

  #alike(kind: string, fields: readonly unknown[], make: () => Carried): Carried {
    const key = kind + JSON.stringify(fields);
    let one = this.#carried.get(key);
    if (!one) this.#carried.set(key, (one = make()));
    return one;
  }

  /** The gear on the shaft: the driver. */
  shaft(part: Part): End {
    let end = this.#ends.get(part);
    if (!end) {
      const { mount = {} } = this.#choice;
      const { bore, width, hub, facing } = part;
      const carried = this.#alike("shaft", [bore, width, hub, facing], () => asDriver(part, mount, this.#adapters));
      this.#ends.set(part, (end = new End(this, part, carried, true)));
    }
    return end;
  }

  /** The gear on the hub, or on a shaft of its own: the driven one. Of a set, what has not been counted with its driver. */
  hub(part: Part, set: boolean): End {
    let end = this.#hubs.get(part);
    if (!end) {
      const { mount = {} } = this.#choice;
      const { driver, bore, circles } = part;
      const carried = this.#alike("hub", [driver, bore, circles], () => asDriven(part, mount, this.#adapters));
      this.#hubs.set(part, (end = new End(this, part, carried, !set)));
    }
    return end;
  }
}
