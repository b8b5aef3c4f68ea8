import type { Numeric, Toothed } from "../gears/index.js";
import type { PartForm, PartKind } from "../stages/index.js";
import type { HoleCircle } from "./circle.js";

/** What one pack costs, and when that was looked up. */
export interface Price {
  /** In the currency's main unit: "4.20". */
  readonly amount: Numeric;
  /** ISO 4217: "EUR". */
  readonly currency: string;
  /** The day on which it was looked up: "2026-09-28". */
  readonly checked?: string;
}

/** A part as it is marked and sold; its fields are those of `shapes.part`. What is not known is left out. */
export interface Part extends Toothed {
  /** The name that a stage's `fitted` goes by. */
  readonly id: string;
  /** The maker's or shop's number, as it is printed. */
  readonly number?: string;
  /** What it is sold as. */
  readonly name?: string;
  /** What it is. */
  readonly is: PartKind;
  /** The id of the stage that it is fitted to or meant for; for a wheel, of the output. */
  readonly stage?: string;
  /** Count of teeth; links of a chain, starts of a worm; of a planetary set, of one of its planets. */
  readonly teeth?: number;
  /** The driver's count of what is sold together; of a planetary set, the sun's. */
  readonly driver?: number;
  /** The driven gear's count of what is sold together; of a planetary set, the ring's. */
  readonly driven?: number;
  /** A gearbox's ratio as printed. */
  readonly value?: string;
  /** From tooth to tooth of a belt or pulley, a length with its unit. */
  readonly pitch?: string;
  /** What its teeth are like; straight ones, outside, where it is not said. */
  readonly form?: PartForm;
  /** Profile shift, in modules. */
  readonly shift?: Numeric;
  /** Over the tips of the teeth, a length with its unit. */
  readonly tipDiameter?: string;
  /** Diameter of the hole for the shaft, a length with its unit. */
  readonly bore?: string;
  /** A sleeve's outside diameter, a length with its unit. */
  readonly outside?: string;
  /** A wheel's diameter, a length with its unit. */
  readonly diameter?: string;
  /** Width of the teeth, a length with its unit. */
  readonly width?: string;
  /** Length of the boss beside the teeth, a length with its unit. */
  readonly hub?: string;
  /** Which way the boss points, seen from the motor. */
  readonly facing?: "hub in" | "hub out";
  /** The circles of holes by which it is held. */
  readonly circles?: readonly HoleCircle[];
  /** Who makes it. */
  readonly maker?: string;
  /** What one pack costs. */
  readonly price?: Price;
  /** Where it can be had. */
  readonly source?: string;
  /** Whether it can be had there. */
  readonly available?: boolean;
  /** Pieces in a pack; 1 where not given. */
  readonly pack?: number;
  /** Pieces that the builder owns, fitted ones among them. */
  readonly owned?: number;
  /** What has become of it. */
  readonly status?: "fitted" | "owned" | "ordered" | "spare";
  /** Of a bearing, a screw and whatever else is listed for a place: how many it takes, 1 where not given. */
  readonly pieces?: number;
  /** Whether a wheel, an axle or the vehicle takes so many. */
  readonly per?: "vehicle" | "axle" | "wheel";
}
