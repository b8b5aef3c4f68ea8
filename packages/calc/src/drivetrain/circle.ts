/**
 * Holes evenly spaced on a circle, given across its middle, or from the middle of one hole to that of its neighbour: a row of
 * holes with none opposite is measured so.
 */
export interface HoleCircle {
  readonly count: number;
  readonly diameter?: string;
  readonly neighbours?: string;
  /** Diameter of the holes, and of the screws that go through them. */
  readonly hole?: string;
  readonly screw?: string;
}
