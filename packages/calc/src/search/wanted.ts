import { MeshwrightError, rational, type Rational, type RationalInput, ratioOf } from "../exact/index.js";
import { type Cast, isBelow, type Whole } from "./whole.js";

/** What one output's reduction is to be. */
export interface Wanted {
  readonly id: string;
  /** The reduction of all that is not chosen; 1 where not given. */
  readonly rest?: RationalInput;
  /** Motor turns for one wheel turn, ends included. Without them the output is only compared. */
  readonly from?: RationalInput;
  readonly to?: RationalInput;
}

/** One wanted output, read. */
export interface Aim {
  readonly id: string;
  readonly rest: Rational;
  readonly range?: readonly [from: Rational, to: Rational];
}

function aboveZero(input: RationalInput, at: string): Rational {
  const value = rational(input, { at });
  if (value.sign > 0) return value;
  throw new MeshwrightError("not-above-zero", at, `Found ${value}; expected more than 0.`);
}

/** Reads what is wanted. At least one output must have a range, or nothing would be nearest. */
export function aimsOf(outputs: readonly Wanted[]): Aim[] {
  const aims = outputs.map(({ id, rest = 1, from, to }): Aim => {
    const aim = { id, rest: aboveZero(rest, `${id}.rest`) };
    if (from === undefined || to === undefined) return aim;
    return { ...aim, range: [aboveZero(from, `${id}.from`), aboveZero(to, `${id}.to`)] };
  });
  if (aims.some((aim) => aim.range)) return aims;
  throw new MeshwrightError("no-target", "outputs", 'No range; expected "from" and "to" in one output at least.');
}

/** A count of teeth, or an error. */
export function countOf(teeth: number, at: string): number {
  if (Number.isSafeInteger(teeth) && teeth > 0) return teeth;
  throw new MeshwrightError("not-a-count", at, `Found ${teeth} teeth; expected a whole number from 1.`);
}

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
