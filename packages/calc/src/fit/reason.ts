import type { Bounded, Rational } from "../exact/index.js";
import type { Toothed, NotKnown } from "../gears/index.js";

/** What speaks against a pair, or is worth knowing about it. */
export type ReasonCode =
  | NotKnown
  | "shafts-not-given"
  | "pitch-near"
  | "pitch-different"
  | "angle-different"
  | "too-close"
  | "too-far"
  | "no-hole"
  | "no-contact"
  | "wall"
  | "bore-too-small"
  | "bore-too-large"
  | "hub-holes"
  | "reach"
  | "hub-too-long"
  | "undercut"
  | "same-teeth-meet"
  | "sleeve"
  | "plate"
  | "facing";

/** One thing found about a fit, as data; `reasonText` makes a sentence of it. Lengths in millimetres, exact where they can be. */
export interface Reason {
  readonly code: ReasonCode;
  /** A `refusal` decides; `unknown` leaves it open; `information` does neither. */
  readonly weight: "refusal" | "unknown" | "information";
  /** Which gear. */
  readonly of?: "driver" | "driven";
  /** What it meets: a wall's label, a sleeve's or plate's, the kind of limit. */
  readonly label?: string | undefined;
  /** What the pair asks for, and what there is. */
  readonly needed?: Bounded;
  readonly available?: Bounded;
  /** What would have to change: the difference of the two, or a sleeve's wall. */
  readonly short?: Bounded;
  /** The count that would do: of the gear, of the ring, or of both together. */
  readonly teeth?: number;
  readonly pitches?: readonly [Toothed, Toothed];
  /** How much coarser the first pitch is: a share. */
  readonly coarser?: Rational;
  /** Which way round the gear goes on its shaft. */
  readonly facing?: "hub in" | "hub out";
}

/** A refusal where something is short, an open question where it may be, nothing where it is not. */
export const lacking = (code: ReasonCode, short: Bounded, rest: Partial<Reason>): Reason[] =>
  short.high.sign > 0 ? [{ code, weight: short.low.sign > 0 ? "refusal" : "unknown", short, ...rest }] : [];
