import { rational, type Rational, type RationalInput } from "../../src/exact/index.js";

/** A small generator of its own, so that runs repeat. */
export function randomFrom(seed: number): (below: number) => number {
  let state = seed * 2654435761 + 1;
  return (below) => {
    state = (Math.imul(state ^ (state >>> 15), 0x2c1b3c6d) + 0x9e3779b9) | 0;
    const mixed = Math.imul(state ^ (state >>> 12), 0x297a2d39);
    return ((mixed ^ (mixed >>> 15)) >>> 0) % below;
  };
}

export const some = <T>(random: (below: number) => number, most: number, make: () => T): T[] =>
  Array.from({ length: 1 + random(most) }, make);

export const counts = (from: number, to: number): number[] => Array.from({ length: to - from + 1 }, (_, n) => from + n);

interface Range {
  readonly from?: RationalInput;
  readonly to?: RationalInput;
}

export const inside = (value: Rational, { from, to }: Range): boolean =>
  from === undefined || to === undefined || (value.compare(from) >= 0 && value.compare(to) <= 0);

/** The greatest distance of values from the middles of their ranges. */
export const worst = (values: readonly Rational[], ranges: readonly Range[]): Rational =>
  values
    .flatMap((value, n) => {
      const { from, to } = ranges[n]!;
      return from === undefined || to === undefined ? [] : [value.minus(rational(from).plus(to).over(2)).abs()];
    })
    .reduce((most, one) => (one.compare(most) > 0 ? one : most));

/** All ways to take one of each list. */
export const product = <T>(lists: readonly (readonly T[])[]): T[][] =>
  lists.reduce<T[][]>((all, list) => all.flatMap((head) => list.map((one) => [...head, one])), [[]]);
