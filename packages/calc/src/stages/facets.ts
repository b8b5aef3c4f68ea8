import type { BeltQuestion, Numeric, ToothPair, Toothed } from "../gears/index.js";
import type { FindingCode, FindingValues } from "./finding.js";
import type { Effect } from "./effect.js";
import type { Position, StageBase, Turn } from "./stage.js";

/**
 * What a kind of stage is, facet by facet. A kind's file exports each by its name: `shape`, `check`, `sure`, `sample`, `effect`,
 * `direction`, `notation`, `display`, `needs`, `drawn`; each facet has its own table of all kinds, so that a page
 * bundles only those that it uses. A kind with stages inside has an `inner` besides, and one whose ratio is not known exactly
 * an `unknown`.
 * @module
 */

/**
 * The fields of an object, each with its shape in a few letters. Reader, Schema, stage editor and documentation all
 * derive from these.
 *
 * `count` a whole number from 1 to 1,000,000 · `number` any number · `positive` a number above 0 · `length` text with a
 * unit · `size` a length above 0 · `ratio` a printed ratio · `text` · `id` · `address` · `date` · `flag` · `any` ·
 * `a|b` one of these words · `[x]` a list, `[x]2-6` with so many · `{x}` a map by address · any other word: an object of
 * that name. A `!` at the end: must be there.
 */
export type Shape = Readonly<Record<string, string>>;

/** Tells what is odd or wrong about a stage that has the right shape. */
export type Say = (severity: "error" | "warning", code: FindingCode, field: string, values?: FindingValues) => void;

/** What cannot be seen from the shape alone. */
export type Check<S extends StageBase> = (stage: S, say: Say) => void;

/**
 * Whether a stage of the right shape is surely without error: `check` finds none. What only geometry can tell is not sure. For
 * pages that read a build before the checks and their sentences are there.
 */
export type Sure<S extends StageBase> = (stage: S) => boolean;

/** The fields of a new stage of the kind, as an editor begins with them. */
export type Sample = Readonly<Record<string, unknown>>;

/** What a stage asks of what it stands in. */
export interface Surroundings {
  /** The stage that a product is named after: itself, or the one that it says it is the same as. */
  namesake(stage: StageBase): string;
  /** Divides by what another stage does. */
  divide(into: Effect, stage: StageBase): void;
}

/** Multiplies a stage's reduction in. */
export type Effects<S extends StageBase> = (stage: S, into: Effect, surroundings: Surroundings) => void;

/** What is not known exactly about a bought thing, and what is known of it. */
export interface Unknowns<S extends StageBase> {
  /** All that is known about it: two things that are the same say the same. */
  text(stage: S): string;
  /** The stage that holds the same thing. */
  sameAs(stage: S): string | undefined;
  /** The stages that were turned along with it, as they were then. */
  spans(stage: S): readonly StageBase[];
}

/** Which way a stage turns its output. */
export interface Direction<S extends StageBase> {
  /** What follows from its kind, unless it says `reverses`. */
  turn(stage: S): Turn;
  /** Whether the stage has said what decides it: a convention alone raises no warning. */
  isSaid(stage: S): boolean;
}

/** How a stage is written in attributes. */
export interface Notation<S extends StageBase> {
  /** Examples, one for each form that it takes. */
  readonly examples: readonly string[];
  /** Reads a stage's counts, already trimmed and in small letters: its own fields, or nothing. */
  parse(text: string): object | undefined;
  /** Writes what `parse` reads. */
  write(stage: S): string;
}

/** A word between the counts of a stage, said by each language: an arrow in tables, a verb in sentences. */
export type Joint =
  "drives" | "in ring" | "belt" | "chain" | "worm" | "sun" | "times" | "printed" | "turned" | "for" | "up to" | "pins";

/** A piece of what is shown of a stage: a value with its field, or a word. */
export type Piece = { readonly value: number | string; readonly field: string } | { readonly word: Joint };

/** What is shown of a stage, in the order of drive. */
export type Display<S extends StageBase> = (stage: S) => readonly Piece[];

/** What a part is. A chain is a `belt`, a sprocket a `pulley`; a `set` and a `hub` are both gears sold together. */
export type PartKind =
  | "pinion"
  | "spur"
  | "gear"
  | "set"
  | "hub"
  | "gearbox"
  | "worm"
  | "planetary"
  | "belt"
  | "pulley"
  | "wheel"
  | "sleeve"
  | "plate"
  | "motor"
  | "battery"
  | "other";

/** What a loose gear's teeth are like: of a pair's forms, one with its teeth inside, or a wheel for a worm. */
export type PartForm = "spur" | "helical" | "bevel" | "hypoid" | "crown" | "internal" | "worm";

/** One thing that a stage takes, as far as the stage says what it is. */
export interface PieceNeed {
  readonly is: readonly PartKind[];
  /** So many for one stage; 1 where not said. */
  readonly pieces?: number | undefined;
  readonly teeth?: number | undefined;
  readonly driver?: number | undefined;
  readonly driven?: number | undefined;
  readonly value?: string | undefined;
  readonly pitch?: Toothed | undefined;
  /** What its teeth are like, where the stage says so. */
  readonly form?: PartForm | undefined;
  /** How far it is shifted, in modules, and its tip diameter, where the stage says so. */
  readonly shift?: Numeric | undefined;
  readonly tipDiameter?: string | undefined;
  /** From tooth to tooth of a belt and its pulleys. */
  readonly beltPitch?: string | undefined;
  /** The belt's own question, where its count is not said: what sets its centre distance. */
  readonly belt?: BeltQuestion | undefined;
}

/** What a stage takes: one thing that is sold whole, or several; both where it can be had either way. */
export interface StageNeeds {
  readonly whole?: PieceNeed | undefined;
  readonly pieces?: readonly PieceNeed[] | undefined;
}

export type Needs<S extends StageBase> = (stage: S) => StageNeeds;

/** What is drawn of a stage with true geometry: gears that mesh one after the other, or a belt; nothing for others. */
export type Drawing =
  | { readonly pairs: readonly ToothPair[]; readonly belt?: undefined }
  | { readonly belt: BeltQuestion; readonly pairs?: undefined };

export type Drawn<S extends StageBase> = (stage: S) => Drawing | undefined;

/** A stage that has stages inside. */
export interface Inner<S extends StageBase> {
  /** The ways it can stand. */
  positions(stage: S): readonly Position[];
  /** What stands in for it at a position (the selected one where none is named): its stages, or why nothing is driven. */
  at(stage: S, position?: string): readonly StageBase[] | "free" | "held";
}
