import type { Part } from "../drivetrain/index.js";
import { type Bounded, type Rational, ratioOf } from "../exact/index.js";
import type { Fit, Reason } from "../fit/index.js";
import type { Toothed } from "../gears/index.js";
import { type Bill, billOf, type BuyLine, type Cost, costOfLine } from "../parts/index.js";
import { costOfAll } from "./batch.js";
import { areHad, type End, type Ends } from "./ends.js";
import type { Meeting } from "./gears.js";
import type { Placed, Wish } from "./looking.js";
import { outsideOf, totalsOf } from "./wanted.js";

/** Two gears for a stage, and everything that taking them means. Worked out when it is asked for. */
export class GearPick {
  /** @internal */
  readonly meeting: Meeting;
  readonly #ends: Ends;
  readonly #driver: End;
  readonly #driven: End;

  /** @internal */
  constructor(meeting: Meeting, ends: Ends, driver: End, driven: End) {
    this.meeting = meeting;
    this.#ends = ends;
    this.#driver = driver;
    this.#driven = driven;
  }

  /** Teeth of driver and driven; of a worm its starts, of a planetary set those of sun and ring. */
  get counts(): readonly [driver: number, driven: number] {
    return this.meeting.counts;
  }

  /** The reduction, as whole numbers over each other. */
  get ratio(): readonly [top: number | bigint, bottom: number | bigint] {
    return this.meeting.ratio;
  }

  /** The gear that turns; of a set, the set. A bare count is a part without an id. */
  get driver(): Part {
    return this.#driver.part;
  }

  /** The gear that is turned; of a set, the set. */
  get driven(): Part {
    return this.#driven.part;
  }

  /** Both in one, where they are sold together. */
  get set(): Part | undefined {
    return this.meeting.set ? this.driver : undefined;
  }

  /** The sleeve between the driver and its shaft, the cheapest that does. */
  get sleeve(): Part | undefined {
    return this.#driver.by;
  }

  /** The sleeve between the driven gear and its shaft, the cheapest that does. */
  get drivenSleeve(): Part | undefined {
    return this.#driven.by?.is === "sleeve" ? this.#driven.by : undefined;
  }

  /** The plate between the driven gear and its hub, the cheapest that does. */
  get plate(): Part | undefined {
    return this.#driven.by?.is === "plate" ? this.#driven.by : undefined;
  }

  /** Every part that is put on the stage, once. */
  get parts(): readonly Part[] {
    const all = [this.driver, this.driven, this.#driver.by, this.#driven.by];
    return [...new Set(all.filter((part) => part?.id))] as Part[];
  }

  /** As the parts are marked. */
  get pitch(): Toothed {
    return this.meeting.driver.pitch;
  }

  get verdict(): Fit["verdict"] {
    const has = (weight: Reason["weight"]) => this.reasons.some((reason) => reason.weight === weight);
    return has("refusal") ? "does not fit" : has("unknown") ? "cannot tell" : "fits";
  }

  /** What speaks against the pair, and what is worth knowing. */
  get reasons(): readonly Reason[] {
    return [...this.meeting.reasons, ...this.#driver.reasons, ...this.#driven.reasons];
  }

  /** The theoretical centre distance, by the parts' own pitch, in millimetres. */
  get centre(): Bounded | undefined {
    return this.meeting.centre;
  }

  /** The smallest opening of those wanted that the mount can set, in millimetres. */
  get opening(): Bounded | undefined {
    return this.meeting.fit.opening;
  }

  /** Between the axes at that opening, in millimetres: how they are set. */
  get axes(): Bounded | undefined {
    return this.meeting.fit.centre;
  }

  /** Whether all parts can be had; undefined where nobody has said. */
  get had(): boolean | undefined {
    return areHad(this.lines);
  }

  /** @internal One part in both places, a gear or a sleeve: there may be only one piece of it. */
  get isTwice(): boolean {
    const [one, other] = [this.#driver, this.#driven];
    return (!this.meeting.set && one.part === other.part && one.part.id !== "") || (!!one.by && one.by === other.by);
  }

  /** @internal The parts, and how many pieces of each. */
  get wants(): readonly (readonly [Part, number])[] {
    const { pieces } = this.#ends;
    const gears = this.meeting.set ? [this.driver] : [this.driver, this.driven];
    const all = [...gears, this.#driver.by, this.#driven.by].filter((part) => part?.id) as Part[];
    return all.map((part) => [part, pieces] as const);
  }

  /** @internal What each part comes to by itself. */
  get lines(): readonly BuyLine[] {
    const [first, second] = [this.#driver.lines, this.#driven.lines];
    if (!this.isTwice) return [...first, ...second];
    const both = (part: Part) => second.some((line) => line.part === part);
    return [
      ...first.map((line) => (both(line.part) ? this.#ends.lineFor(line.part, 2) : line)),
      ...second.filter(({ part }) => !first.some((line) => line.part === part)),
    ];
  }

  /** What it takes to have the parts, for the order of a search. */
  get cost(): Cost {
    if (!this.isTwice) return costOfAll([this.#driver.cost, this.#driven.cost]);
    return costOfAll(this.lines.map((line) => costOfLine(line, this.#ends.currency())));
  }

  /** What is to pay for the parts, with the cheapest adapters. */
  get pay(): Bill {
    return billOf(this.lines.filter(({ packs }) => packs));
  }
}

/** A pair that was looked at, with everything that taking it means. */
export class FoundPair extends GearPick {
  readonly #placed: Placed;
  readonly #wish: Wish;

  /** @internal */
  constructor(placed: Placed, wish: Wish, ends: Ends, driver: End, driven: End) {
    super(placed.meeting, ends, driver, driven);
    this.#placed = placed;
    this.#wish = wish;
  }

  /** Motor turns for one wheel turn, in the order of the outputs; an interval where the rest of the train is one. */
  get totals(): readonly Bounded[] {
    const ratio = ratioOf(...this.ratio);
    return totalsOf(this.#wish.aims, this.#wish.outputs, () => ratio);
  }

  /** How far each output can be outside its range: below zero, zero, or above. */
  get outside(): readonly Rational[] {
    return outsideOf(this.#wish.aims, this.totals);
  }

  /** Whether each output reaches its range for certain, or not, or nobody can tell. */
  get reaches(): readonly ("yes" | "no" | "cannot tell")[] {
    return this.totals.map((total, output) => {
      const range = this.#wish.aims.find((aim) => aim.output === output)!.whole;
      if (!range) return "yes";
      const [from, to] = range;
      if (total.low.compare(from) >= 0 && total.high.compare(to) <= 0) return "yes";
      return total.high.compare(from) < 0 || total.low.compare(to) > 0 ? "no" : "cannot tell";
    });
  }

  /** How far the worst output is from the middle of its range. */
  get distance(): Rational {
    return ratioOf(this.#placed.gap.top, this.#placed.gap.bottom);
  }
}
