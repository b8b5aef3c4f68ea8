import type { Numeric } from "../gears/index.js";
import type { Stage } from "../stages/index.js";
import type { HoleCircle } from "./circle.js";
import type { Part } from "./part.js";

/** A wheel: by a diameter, unloaded or under the vehicle's weight, or by the ground it was seen to roll. */
export interface Wheel {
  readonly diameter?: string;
  readonly loadedDiameter?: string;
  /** So many turns rolled so far: no π is involved. */
  readonly travel?: { readonly turns: Numeric; readonly length: string };
}

export interface Motor {
  readonly label?: string;
  /** Turns a minute for each volt, without load. */
  readonly kv?: Numeric;
  readonly maxRpm?: Numeric;
  readonly maxVolts?: Numeric;
  /** Turns of wire of a brushed motor: information, never turned into kV. */
  readonly turns?: Numeric;
}

/** One axle, or whatever else is driven on its own. */
export interface Output {
  readonly id: string;
  readonly label?: string;
  /** The branch that drives it; none: where the drive splits. */
  readonly from?: string;
  /** A motor of its own: nothing before it is shared. */
  readonly motor?: Motor;
  readonly stages: readonly Stage[];
  readonly wheel?: Wheel;
  readonly wheels?: number;
  readonly axle?: "differential" | "spool";
}

/** A shaft that several outputs share after the split. */
export interface Branch {
  readonly id: string;
  readonly label?: string;
  readonly from?: string;
  readonly stages: readonly Stage[];
}

export interface Centre {
  readonly kind: "spool" | "differential";
  /** Each output's share of the torque; equal where not said. */
  readonly share?: Readonly<Record<string, Numeric>>;
}

export interface Mode {
  readonly id: string;
  readonly label?: string;
  readonly positions: Readonly<Record<string, string>>;
}

/** Motor turns for one wheel turn that the builder likes. */
export interface Target {
  readonly from: Numeric;
  readonly to: Numeric;
  /** All outputs where none is named. */
  readonly output?: string;
}

export interface Compare {
  readonly of: string;
  readonly with: string;
}

export interface Battery {
  readonly cells?: number;
  readonly parallel?: number;
  readonly chemistry?: string;
  readonly capacity?: Numeric;
}

export interface Controller {
  readonly label?: string;
  readonly maxVolts?: Numeric;
}

/** Something a gear must stay clear of. */
export interface Wall {
  readonly label?: string;
  readonly of?: "driver" | "driven";
  /** From the gear's axis. */
  readonly distance: string;
  readonly gap?: string;
}

/** How a pair's centre distance can be set, and what stands around it. */
export interface Mount {
  readonly stage: string;
  readonly from?: string;
  readonly to?: string;
  /** Between what `from`, `to` and `holes` are measured: between the axes where it is not said, else outside over both shafts or in the gap between them. */
  readonly measured?: "between axes" | "over shafts" | "between shafts";
  /** A pair known to mesh in it, and how far it can move from there. */
  readonly knownPair?: readonly [number, number];
  readonly closer?: string;
  readonly farther?: string;
  readonly toothSum?: readonly [number, number];
  /** The motor swings about a pivot. */
  readonly pivot?: { readonly distance: string; readonly arm: string; readonly from: Numeric; readonly to: Numeric };
  /** Centre distances of a row of holes. */
  readonly holes?: readonly string[];
  /** How far from tight the pair is set: so much further apart than the theoretical centre distance, a ring and its gear so much closer. */
  readonly opening?: string;
  /** The widest opening that will do. */
  readonly openingTo?: string;
  readonly walls?: readonly Wall[];
  /** Diameter of the shaft that carries the driver, and of the one that carries the driven gear. */
  readonly shaft?: string;
  readonly drivenShaft?: string;
  /** Further diameters of a stepped shaft. */
  readonly steps?: readonly string[];
  /** Length of the shaft from the motor's face, and where along it the other gear's teeth stand. */
  readonly reach?: string;
  readonly line?: { readonly from: string; readonly to: string };
  /** Hole circles of the hub that carries the driven gear. */
  readonly hubHoles?: readonly HoleCircle[];
}

export interface Alternative {
  readonly id: string;
  readonly label?: string;
  readonly changes: ChangeSet;
}

export interface Measurement {
  readonly date?: string;
  readonly note?: string;
  /** An output's id. */
  readonly what: string;
  readonly motorTurns: Numeric;
  readonly wheelTurns: Numeric | { readonly from: Numeric; readonly to: Numeric };
  /** An open differential with one wheel held turns the other twice. */
  readonly oneWheelHeld?: boolean;
}

/** A build as its author wrote it, checked: the document itself. Lengths and measured numbers stay text. */
export interface Build {
  readonly format: "meshwright-build/1";
  readonly title?: string;
  readonly revision?: { readonly number?: number; readonly date?: string; readonly note?: string };
  readonly stages: readonly Stage[];
  readonly centre?: Centre;
  readonly outputs: readonly Output[];
  readonly branches?: readonly Branch[];
  readonly modes?: readonly Mode[];
  readonly target?: Target;
  readonly compare?: Compare;
  readonly wheelbase?: string;
  readonly motor?: Motor;
  readonly battery?: Battery;
  readonly controller?: Controller;
  readonly mounts?: readonly Mount[];
  readonly rounding?: Readonly<Record<string, Numeric>>;
  readonly headline?: string;
  readonly alternatives?: readonly Alternative[];
  readonly measurements?: readonly Measurement[];
  readonly parts?: readonly Part[];
}

/** New values by address: `id`, `id.field` or `id.field.n`. Null takes an optional field away. */
export type ChangeSet = Readonly<Record<string, unknown>>;

/** One change: set a value, or insert, remove or move a stage. `into` names an output, a branch or a position's stage; none: the shared stages. */
export type Change =
  | { readonly set: string; readonly to: unknown }
  | { readonly insert: Stage; readonly into?: string; readonly at: number }
  | { readonly remove: string }
  | { readonly move: string; readonly into?: string; readonly at: number };
