import { MeshwrightError, rational, type Rational, type RationalInput } from "../exact/index.js";
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

export interface Range {
  readonly from: Rational;
  readonly to: Rational;
  readonly middle: Rational;
}

/** One wanted output, read. */
export interface Aim {
  readonly id: string;
  readonly rest: Rational;
  readonly range?: Range;
}

const aboveZero = (input: RationalInput, at: string): Rational => {
  const value = rational(input, { at });
  if (value.sign <= 0)
    throw new MeshwrightError("not-above-zero", at, `Found ${value.toFraction()}; expected more than 0.`);
  return value;
};

/** Reads what is wanted. At least one output must have a range, or nothing would be nearest. */
export function aimsOf(outputs: readonly Wanted[]): Aim[] {
  const aims = outputs.map(({ id, rest = 1, from, to }) => {
    const aim = { id, rest: aboveZero(rest, `${id}.rest`) };
    if (from === undefined || to === undefined) return aim;
    const range = { from: aboveZero(from, `${id}.from`), to: aboveZero(to, `${id}.to`) };
    return { ...aim, range: { ...range, middle: range.from.plus(range.to).over(2) } };
  });
  if (!aims.some((aim) => "range" in aim))
    throw new MeshwrightError("no-target", "outputs", 'No range; expected "from" and "to" in one output at least.');
  return aims;
}

/**
 * What the loops need of an output whose ratio is top × a / (bottom × b) times what they vary: the ends of the range, and
 * its middle with |ratio − middle| = |top × a − bottom × b| / (bottom × c).
 */
export interface Bounds {
  readonly lowA: Whole;
  readonly lowB: Whole;
  readonly highA: Whole;
  readonly highB: Whole;
  readonly a: Whole;
  readonly b: Whole;
  readonly c: Whole;
}

export function boundsOf({ rest, range }: Aim & { readonly range: Range }, cast: Cast): Bounds {
  const { from, to, middle } = range;
  const low = rest.over(from);
  const high = rest.over(to);
  return {
    lowA: cast(low.numerator),
    lowB: cast(low.denominator),
    highA: cast(high.numerator),
    highB: cast(high.denominator),
    a: cast(rest.numerator * middle.denominator),
    b: cast(rest.denominator * middle.numerator),
    c: cast(rest.denominator * middle.denominator),
  };
}

/** A fraction that the loops write to again and again. */
export interface Gap {
  top: Whole;
  bottom: Whole;
}

/** The greatest distance that a ratio leaves any output at, into `gap`: three factors an output, a, b and c of `Bounds`. */
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
