import { ratioOf, type Bounded, type Rational } from "../exact/index.js";
import { productOf } from "./product.js";

/** A ratio known only as an interval, named so that it can cancel against itself, to a whole power. */
export interface Unknown {
  readonly key: string;
  readonly interval: Bounded;
  /** 1 where it is not said. */
  readonly power?: number;
}

const none: readonly Unknown[] = [];

/**
 * What a row of stages does: a product of whole numbers over whole numbers, times named unknowns.
 *
 * The products run on plain numbers. A product of whole numbers past 2^53 never comes back below it, so one look at
 * the end tells whether it was exact; only then are the factors gathered one by one and multiplied exactly.
 */
export class Effect {
  up = 1;
  down = 1;
  unknowns: readonly Unknown[] = none;
  private readonly list: readonly [number[], number[]] | undefined;
  private shared = true;
  /** What is exact, but no whole number over another that plain numbers hold. */
  private rest: Rational | undefined;

  /**
   * @param listing gather the factors, for trains whose product leaves the plain numbers
   * @param from the stages before, to go on from
   */
  constructor(listing = false, from?: Effect) {
    this.list = listing ? [[], []] : undefined;
    if (from) {
      this.up = from.up;
      this.down = from.down;
      this.unknowns = from.unknowns;
      this.rest = from.rest;
    }
  }

  /** Multiplies the reduction by `up / down`, whole numbers from 1. */
  times(up: number, down: number): void {
    this.up *= up;
    this.down *= down;
    if (this.list) {
      this.list[0].push(up);
      this.list[1].push(down);
    }
  }

  /** Multiplies the reduction by an exact ratio above zero. */
  exactly(ratio: Rational): void {
    const [up, down] = [Number(ratio.numerator), Number(ratio.denominator)];
    if (Number.isSafeInteger(up) && Number.isSafeInteger(down)) this.times(up, down);
    else this.rest = this.rest?.times(ratio) ?? ratio;
  }

  /** Multiplies the reduction by something known only as an interval. */
  unknown(key: string, interval: Bounded, power = 1): void {
    if (this.shared) this.unknowns = [...this.unknowns];
    this.shared = false;
    (this.unknowns as Unknown[]).push({ key, interval, power });
  }

  /** Divides the reduction by what another row of stages does. */
  over(other: Effect): void {
    if (this.list && other.list) {
      this.list[0].push(...other.list[1]);
      this.list[1].push(...other.list[0]);
    }
    this.up *= other.down;
    this.down *= other.up;
    if (other.rest) this.rest = (this.rest ?? ratioOf(1, 1)).over(other.rest);
    for (const { key, interval, power = 1 } of other.unknowns) this.unknown(key, interval, -power);
  }

  /** One like this, with nothing in it yet. */
  another(): Effect {
    return new Effect(this.list !== undefined);
  }

  /** Whether whole numbers hold all of its exact factor. */
  get isPlain(): boolean {
    return !this.rest;
  }

  /** Whether the plain-number products are exact. */
  get fits(): boolean {
    return this.up <= Number.MAX_SAFE_INTEGER && this.down <= Number.MAX_SAFE_INTEGER;
  }

  /** The exact factor. Only where it {@link fits} or the factors were listed. */
  get factor(): Rational {
    const product = this.list ? productOf(...this.list) : ratioOf(this.up, this.down);
    return this.rest ? product.times(this.rest) : product;
  }
}
