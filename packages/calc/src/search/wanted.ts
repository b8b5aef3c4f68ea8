import {
  bounded,
  Bounded,
  MeshwrightError,
  rational,
  type Rational,
  type RationalInput,
  ratioOf,
} from "../exact/index.js";
import { type Cast, isBelow, type Whole } from "./whole.js";

/** What one output's reduction is to be. */
export interface WantedTotal {
  readonly id: string;
  /** The reduction of all that is not chosen, an interval where it is not known better; 1 where not given. */
  readonly rest?: RationalInput | Bounded;
  /** Motor turns for one wheel turn, ends included. Without them the output is only compared. */
  readonly from?: RationalInput;
  readonly to?: RationalInput;
}

/** What one output's reduction is to be, of which a single pair is chosen. */
export interface WantedPairTotal extends WantedTotal {
  /**
   * What is added to it whatever is chosen: behind an open differential, the motor turns that the other axles ask for. 0
   * where not given.
   */
  readonly beside?: RationalInput | Bounded;
}

/** One wanted output, read; both ends of an interval by themselves. */
export interface Aim {
  readonly output: number;
  readonly rest: Rational;
  readonly beside: Rational;
  /** The range of the output, and what it leaves of it for what is chosen. */
  readonly whole?: Range;
  readonly range?: Range;
}

type Range = readonly [from: Rational, to: Rational];

function aboveZero(input: RationalInput, at: string): Rational {
  const value = rational(input, { at });
  if (value.sign > 0) return value;
  throw new MeshwrightError("not-above-zero", at, `Found ${value}; expected more than 0.`);
}

function rangeOf({ id, from, to }: WantedTotal): Range | undefined {
  if (from === undefined || to === undefined) return undefined;
  const range: Range = [aboveZero(from, `${id}.from`), aboveZero(to, `${id}.to`)];
  if (range[0].compare(range[1]) <= 0) return range;
  throw new MeshwrightError("range-backwards", id, `Found ${range[0]} to ${range[1]}; expected the smaller first.`);
}

const endsOf = (value: RationalInput | Bounded): readonly RationalInput[] =>
  value instanceof Bounded ? (value.isExact ? [value.low] : [value.low, value.high]) : [value];

/** Reads what is wanted: the low and the high end of each output. At least one must have a range, or nothing would be nearest. */
export function aimsOf(outputs: readonly WantedPairTotal[]): Aim[] {
  const aims = outputs.flatMap((wanted, output): Aim[] => {
    const { id, rest = 1, beside = 0 } = wanted;
    const whole = rangeOf(wanted);
    const [own, more] = [endsOf(rest), endsOf(beside)];
    const count = Math.max(own.length, more.length);
    return Array.from({ length: count }, (_, n): Aim => {
      const added = rational(more[n] ?? more[0]!, { at: `${id}.beside` });
      const range = whole && ([whole[0].minus(added), whole[1].minus(added)] as const);
      const aim = { output, rest: aboveZero(own[n] ?? own[0]!, `${id}.rest`), beside: added };
      return { ...aim, ...(whole && range && { whole, range }) };
    });
  });
  if (aims.some(({ range }) => range)) return aims;
  throw new MeshwrightError("no-target", "outputs", 'No range; expected "from" and "to" in one output at least.');
}

/** The total of each output: the product of what is chosen and all else. */
export const totalsOf = (aims: readonly Aim[], outputs: number, ratioOn: (output: number) => Rational): Bounded[] =>
  Array.from({ length: outputs }, (_, output) => {
    const ends = aims
      .filter((aim) => aim.output === output)
      .map(({ rest, beside }) => {
        const own = rest.times(ratioOn(output));
        return beside.sign ? own.plus(beside) : own;
      });
    return bounded(ends[0]!, ends.at(-1)!);
  });

/**
 * How far each output can be outside its range: below zero, zero, or above; of both ends of an interval the one that is
 * farther outside.
 */
export const outsideOf = (aims: readonly Aim[], totals: readonly Bounded[]): Rational[] =>
  totals.map(({ low, high }, output) => {
    const range = aims.find((aim) => aim.output === output)!.whole;
    const none = rational(0);
    if (!range) return none;
    const below = low.minus(range[0]);
    const above = high.minus(range[1]);
    if (above.sign > 0 && (below.sign >= 0 || above.compare(below.negate()) >= 0)) return above;
    return below.sign < 0 ? below : none;
  });

/**
 * A range over one denominator, for a ratio of top / bottom: it is inside where top × a lies from bottom × low to
 * bottom × high, and |ratio − middle| = |top × a − bottom × middle| / (bottom × c).
 */
export type Bounds = readonly [a: Whole, low: Whole, high: Whole, middle: Whole, c: Whole];

export function boundsOf({ rest, range }: Aim, cast: Cast): Bounds | undefined {
  if (!range) return undefined;
  const [from, to] = range;
  const middle = from.plus(to).over(2);
  let common = middle.denominator;
  for (const one of range) common *= ratioOf(common, one.denominator).denominator;
  const part = ({ numerator, denominator }: Rational): bigint => (rest.denominator * numerator * common) / denominator;
  const numbers = [rest.numerator * common, ...[from, to, middle].map(part), rest.denominator * common];
  return numbers.map(cast) as unknown as Bounds;
}

/** A fraction that the loops write to again and again. */
export interface Gap {
  top: Whole;
  bottom: Whole;
}

/** The greatest distance that a ratio leaves any output at, into `gap`. Three factors an output: a, middle and c. */
export function farthest(
  top: Whole,
  bottom: Whole,
  factors: readonly Whole[],
  start: number,
  end: number,
  gap: Gap,
): void {
  for (let n = start; n < end; n += 3) {
    const x = top * factors[n]!;
    const y = bottom * factors[n + 1]!;
    const far = x > y ? x - y : y - x;
    const whole = bottom * factors[n + 2]!;
    if (n === start || isBelow(gap.top, gap.bottom, far, whole)) {
      gap.top = far;
      gap.bottom = whole;
    }
  }
}
