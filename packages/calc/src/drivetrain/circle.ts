/**
 * Holes evenly spaced on a circle, given across its middle, or from the middle of one hole to that of its neighbour: a row of
 * holes with none opposite is measured so.
 */
export interface HoleCircle {
  /** How many holes there are. */
  readonly count: number;
  /** Of the circle through the holes' middles, a length with its unit. */
  readonly diameter?: string;
  /** From the middle of one hole to that of the next one, a length with its unit. */
  readonly neighbours?: string;
  /** Diameter of the holes, a length with its unit. */
  readonly hole?: string;
  /** Diameter of the screws that go through them, a length with its unit. */
  readonly screw?: string;
}
