import type { Numeric, Toothed } from "../gears/index.js";
import type { PartKind } from "../stages/index.js";
import type { HoleCircle } from "./circle.js";

/** What one pack costs, and when that was looked up. */
export interface Price {
  readonly amount: Numeric;
  /** ISO 4217. */
  readonly currency: string;
  readonly checked?: string;
}

/** A part as it is marked and sold; its fields are those of `shapes.part`. What is not known is left out. */
export interface Part extends Toothed {
  readonly id: string;
  /** The maker's or shop's number, as it is printed. */
  readonly number?: string;
  readonly name?: string;
  readonly is: PartKind;
  /** The stage it is fitted to or meant for; for a wheel, the output. */
  readonly stage?: string;
  /** Links of a chain, starts of a worm. */
  readonly teeth?: number;
  /** Both counts of what is sold together; of a planetary set, sun and ring. */
  readonly driver?: number;
  readonly driven?: number;
  /** A gearbox's ratio as printed. */
  readonly value?: string;
  /** Of a belt or pulley. */
  readonly pitch?: string;
  /** Profile shift, in modules. */
  readonly shift?: Numeric;
  readonly tipDiameter?: string;
  readonly bore?: string;
  /** A sleeve's outside diameter. */
  readonly outside?: string;
  /** A wheel's diameter. */
  readonly diameter?: string;
  readonly width?: string;
  /** Length of the boss beside the teeth. */
  readonly hub?: string;
  readonly facing?: "hub in" | "hub out";
  readonly circles?: readonly HoleCircle[];
  readonly maker?: string;
  /** Of one pack. */
  readonly price?: Price;
  /** Where it can be had. */
  readonly source?: string;
  readonly available?: boolean;
  /** Pieces in a pack; 1 where not given. */
  readonly pack?: number;
  /** Pieces that the builder owns, fitted ones among them. */
  readonly owned?: number;
  readonly status?: "fitted" | "owned" | "ordered" | "spare";
  /** Of a bearing, a screw and whatever else is listed for a place: how many it takes, 1 where not given, and whether a wheel, an axle or the vehicle takes them. */
  readonly pieces?: number;
  readonly per?: "vehicle" | "axle" | "wheel";
}
