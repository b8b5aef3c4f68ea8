import type { Rounding } from "../exact/index.js";
import type { Numeric } from "../gears/index.js";
import type { Stage } from "../stages/index.js";
import type { ChemistryName } from "./chemistry.js";
import type { HoleCircle } from "./circle.js";
import type { Part } from "./part.js";

/** A wheel, known in one of three ways: by a diameter, unloaded or under the vehicle's weight, or by the ground it was seen to roll. */
export interface Wheel {
  /** Outside diameter without load, a length with its unit: "124 mm". */
  readonly diameter?: string;
  /** Twice the axle's height under the vehicle's weight, a length with its unit. */
  readonly loadedDiameter?: string;
  /** So many turns rolled so far, a length with its unit: no π is involved. */
  readonly travel?: {
    /** Turns of the wheel that were counted. */
    readonly turns: Numeric;
    /** The ground that it rolled meanwhile, a length with its unit. */
    readonly length: string;
  };
}

/** A motor as its label tells. */
export interface Motor {
  /** What a reader is shown. */
  readonly label?: string;
  /** Turns a minute for each volt, without load. */
  readonly kv?: Numeric;
  /** The most turns a minute that it bears. */
  readonly maxRpm?: Numeric;
  /** The most volts that it bears. */
  readonly maxVolts?: Numeric;
  /** Turns of wire of a brushed motor: information, never turned into kV. */
  readonly turns?: Numeric;
}

/** One axle, or whatever else is driven on its own. */
export interface Output {
  /** The name that it is addressed by: "front". */
  readonly id: string;
  /** What a reader is shown; the id where it is not given. */
  readonly label?: string;
  /** The id of the branch that drives it; none: where the drive splits. */
  readonly from?: string;
  /** A motor of its own: nothing before it is shared. */
  readonly motor?: Motor;
  /** What stands between where the drive splits and its wheels, in the order of drive. */
  readonly stages: readonly Stage[];
  /** One of its wheels. */
  readonly wheel?: Wheel;
  /** How many wheels it has. */
  readonly wheels?: number;
  /** What drives its two wheels: an open differential, or a spool that turns both alike. */
  readonly axle?: "differential" | "spool";
}

/** How a drive splits. A spool turns all that it feeds alike; behind a differential each may turn as it likes, by its share. */
export interface Split {
  /** What stands where the drive splits. */
  readonly kind: "spool" | "differential";
  /** The parts of the torque that a differential gives to each output and branch that it feeds, by id; equal where not said. */
  readonly share?: Readonly<Record<string, Numeric>>;
}

/** A shaft that several outputs share after the split. */
export interface Branch {
  /** The name that outputs and other branches come from it by. */
  readonly id: string;
  /** What a reader is shown; the id where it is not given. */
  readonly label?: string;
  /** The id of the branch that drives it; none: where the drive splits. */
  readonly from?: string;
  /** What stands between where it begins and where it splits, in the order of drive. */
  readonly stages: readonly Stage[];
  /** How it splits among what it feeds; a spool where it is not said. */
  readonly split?: Split;
}

/** Positions that one lever sets together. */
export interface Mode {
  /** The name that it is chosen by. */
  readonly id: string;
  /** What a reader is shown; the id where it is not given. */
  readonly label?: string;
  /** The position of each stage that it sets, by the stage's id. */
  readonly positions: Readonly<Record<string, string>>;
}

/** Motor turns for one wheel turn that the builder likes. */
export interface Target {
  /** The fewest motor turns for one wheel turn, included. */
  readonly from: Numeric;
  /** The most motor turns for one wheel turn, included. */
  readonly to: Numeric;
  /** The id of the output that it is meant for; all outputs where none is named. */
  readonly output?: string;
}

/** Which two outputs are set against each other. */
export interface Compare {
  /** The id of the output that is ahead or behind. */
  readonly of: string;
  /** The id of the output that it is compared with. */
  readonly with: string;
}

/** A pack of cells. */
export interface Battery {
  /** Cells one after the other: their volts add up. */
  readonly cells?: number;
  /** Cells side by side: they add nothing to the volts. */
  readonly parallel?: number;
  /** What the cells are made of. */
  readonly chemistry?: ChemistryName;
  /** Ampere hours of the pack: no speed follows from it. */
  readonly capacity?: Numeric;
}

/** What stands between the battery and the motors. */
export interface Controller {
  /** What a reader is shown. */
  readonly label?: string;
  /** The most volts that it bears. */
  readonly maxVolts?: Numeric;
}

/** Something a gear must stay clear of. */
export interface Wall {
  /** What it is called. */
  readonly label?: string;
  /** The gear that must stay clear of it; the driven one where it is not said. */
  readonly of?: "driver" | "driven";
  /** From the gear's axis, a length with its unit. */
  readonly distance: string;
  /** The least room that has to stay between them, a length with its unit. */
  readonly gap?: string;
}

/** How a pair's centre distance can be set, and what stands around it. */
export interface Mount {
  /** The id of the pair or set that it carries. */
  readonly stage: string;
  /** The closest that the axes can be set, a length with its unit. */
  readonly from?: string;
  /** The farthest that the axes can be set, a length with its unit. */
  readonly to?: string;
  /** Between what `from`, `to` and `holes` are measured: between the axes where it is not said, else outside over both shafts or in the gap between them. */
  readonly measured?: "between axes" | "over shafts" | "between shafts";
  /** A pair known to mesh in it, and how far it can move from there. */
  readonly knownPair?: readonly [number, number];
  /** How much closer than where that pair runs, its opening included, it can be set, a length with its unit. */
  readonly closer?: string;
  /** How much farther than where that pair runs, its opening included, it can be set, a length with its unit. */
  readonly farther?: string;
  /** The fewest and the most teeth of both gears together that its maker allows. */
  readonly toothSum?: readonly [number, number];
  /** The motor swings about a pivot. */
  readonly pivot?: {
    /** From the pivot to the driven gear's axis, a length with its unit. */
    readonly distance: string;
    /** From the pivot to the motor's shaft, a length with its unit. */
    readonly arm: string;
    /** The smallest angle between the two at the pivot, in degrees. */
    readonly from: Numeric;
    /** The largest angle between the two at the pivot, in degrees. */
    readonly to: Numeric;
  };
  /** Centre distances of a row of holes. */
  readonly holes?: readonly string[];
  /** How far from tight the pair is set: so much further apart than the theoretical centre distance, a ring and its gear so much closer. */
  readonly opening?: string;
  /** The widest opening that will do. */
  readonly openingTo?: string;
  /** What the gears must stay clear of. */
  readonly walls?: readonly Wall[];
  /** Diameter of the shaft that carries the driver, a length with its unit. */
  readonly shaft?: string;
  /** Diameter of the shaft that carries the driven gear, a length with its unit. */
  readonly drivenShaft?: string;
  /** Further diameters of a stepped shaft. */
  readonly steps?: readonly string[];
  /** Length of the shaft from the motor's face, a length with its unit. */
  readonly reach?: string;
  /** Where along that shaft, from the motor's face, the other gear's teeth stand. */
  readonly line?: {
    /** Where they begin, a length with its unit. */
    readonly from: string;
    /** Where they end, a length with its unit. */
    readonly to: string;
  };
  /** Hole circles of the hub that carries the driven gear. */
  readonly hubHoles?: readonly HoleCircle[];
}

/** Another way to build it, told by what is different. */
export interface Alternative {
  /** The name that it is asked for by: `at="deeper-rear"`. */
  readonly id: string;
  /** What a reader is shown; the id where it is not given. */
  readonly label?: string;
  /** What is different, by address. */
  readonly changes: ChangeSet;
}

/** A whole other build to compare with: never mixed in. One of `build` and `src`. */
export interface Reference {
  /** The name that it is asked for by. */
  readonly id: string;
  /** What a reader is shown; the id where it is not given. */
  readonly label?: string;
  /** The other build itself, which has no references of its own. */
  readonly build?: Build;
  /** The address of its document, against that of this one. */
  readonly src?: string;
}

/** Which state of the build a document tells. */
export interface Revision {
  /** Counts up from 1. */
  readonly number?: number;
  /** A day of the calendar: "2026-10-03". */
  readonly date?: string;
  /** What changed, in the author's words. */
  readonly note?: string;
}

/** An earlier state of the build, told by what leads back to it. */
export interface EarlierRevision extends Revision {
  /** Its number; `at="revision-1"` asks for it. */
  readonly number: number;
  /** The changes that make it from the next later revision. */
  readonly back: readonly WrittenChange[];
}

/** Turns that were counted by hand. */
export interface Measurement {
  /** A day of the calendar: "2026-10-04". */
  readonly date?: string;
  /** How it was done, in the author's words. */
  readonly note?: string;
  /** The id of the output whose wheel was turned. */
  readonly what: string;
  /** Turns of the motor. */
  readonly motorTurns: Numeric;
  /** Turns of the wheel: so many exactly, or from and to. */
  readonly wheelTurns:
    | Numeric
    | {
        /** The fewest turns that they can have been, above 0. */
        readonly from: Numeric;
        /** The most turns that they can have been. */
        readonly to: Numeric;
      };
  /** One wheel of an open axle was held, so that the other one, which was counted, turned twice. */
  readonly oneWheelHeld?: boolean;
  /** The values that it was made with, by address, where they may have changed since: it is compared with those only. */
  readonly with?: ChangeSet;
}

/** A build as its author wrote it, checked: the document itself. Lengths and measured numbers stay text. */
export interface Build {
  /** The format that it is written in, with the minor version where that is not 0. */
  readonly format: "meshwright-build/1" | `meshwright-build/1.${number}`;
  /** What a reader has to understand to take it for what it is: kinds of stage, and fields by name. */
  readonly uses?: readonly string[];
  /** What it is, in the author's words. */
  readonly title?: string;
  /** Which state of the build this is. */
  readonly revision?: Revision;
  /** What stands between the motor and where the drive splits, in the order of drive. */
  readonly stages: readonly Stage[];
  /** How the drive splits among the outputs and branches that come from no branch; a spool where it is not said. */
  readonly centre?: Split;
  /** The axles, one to six. */
  readonly outputs: readonly Output[];
  /** Shafts that several outputs share after the split. */
  readonly branches?: readonly Branch[];
  /** What one lever sets. */
  readonly modes?: readonly Mode[];
  /** The range of reductions that the builder likes. */
  readonly target?: Target;
  /** Which two outputs are set against each other. */
  readonly compare?: Compare;
  /** From the middle of the front axle to that of the rear one, a length with its unit. */
  readonly wheelbase?: string;
  /** The motor of all outputs that have none of their own. */
  readonly motor?: Motor;
  /** The pack of cells. */
  readonly battery?: Battery;
  /** What stands between the battery and the motors. */
  readonly controller?: Controller;
  /** How centre distances can be set, and what stands around the gears. */
  readonly mounts?: readonly Mount[];
  /** How figures are rounded when they are shown, by the options of ECMA-402. */
  readonly rounding?: Omit<Rounding, "negativeZero">;
  /** Whether lengths are shown in millimetres or inches. */
  readonly lengths?: "mm" | "in";
  /** The id of the output whose reduction answers "what do you run?". */
  readonly headline?: string;
  /** Other ways to build it. */
  readonly alternatives?: readonly Alternative[];
  /** Other builds to compare with. */
  readonly references?: readonly Reference[];
  /** Earlier states, the latest first. */
  readonly revisions?: readonly EarlierRevision[];
  /** Turns that were counted by hand. */
  readonly measurements?: readonly Measurement[];
  /** Parts that are fitted, owned, ordered or on sale. */
  readonly parts?: readonly Part[];
}

/** New values by address: `id`, `id.field` or `id.field.n`. Null takes an optional field away. */
export type ChangeSet = Readonly<Record<string, unknown>>;

/** One change: set a value, or insert, remove or move a stage. `into` names an output, a branch or a position's stage; none: the shared stages. */
export type Change =
  | {
      /** The address of what gets another value. */
      readonly set: string;
      /** The value; null takes an optional field away. */
      readonly to: unknown;
    }
  | {
      /** A new stage. */
      readonly insert: Stage;
      /** The id of the output, branch or position's stage that it goes into; the shared stages where it is not said. */
      readonly into?: string;
      /** How many stages stand before it there. */
      readonly at: number;
    }
  | {
      /** The id of the stage that goes. */
      readonly remove: string;
    }
  | {
      /** The id of the stage that goes elsewhere. */
      readonly move: string;
      readonly into?: string;
      readonly at: number;
    };

/**
 * A change as a document writes it: one of {@link Change}, or several values at once, by address. Under the id of a stage, fields
 * without a `kind` stand for those fields alone: `{ "set": { "primary": { "driver": 23, "driven": 53 } } }`.
 */
export type WrittenChange = Change | { readonly set: ChangeSet };
