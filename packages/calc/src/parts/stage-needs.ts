import type { Battery, Motor, Part } from "../drivetrain/index.js";
import { lengthOf, type Rational } from "../exact/index.js";
import { type BeltQuestion, beltOf, type Numeric, type Toothed, type ToothPair } from "../gears/index.js";
import { displays, drawings, needed, type PieceNeed, type Stage } from "../stages/index.js";

/** What is asked of one part, as far as it is known. */
export interface Spec extends Omit<PieceNeed, "pieces" | "belt"> {
  /** Belts that set the wanted centre distance, a little closer or farther: one of them is needed. */
  readonly either?: readonly number[] | undefined;
  /** Of a belt or chain of a known count, along its pitch line, in millimetres. */
  readonly length?: Rational | undefined;
  /** Of a wheel, by what it was measured: free, under the vehicle's weight, or by the ground it rolls. */
  readonly diameter?: string | undefined;
  readonly loadedDiameter?: string | undefined;
  readonly travel?: { readonly turns: Numeric; readonly length: string } | undefined;
  /** Of a sleeve: the shaft it goes on, and the bore that goes on it. */
  readonly bore?: string | undefined;
  readonly outside?: string | undefined;
  /** What it is called where it is described. */
  readonly label?: string | undefined;
  /** Of a motor, a battery or a controller: what else the build says of it. No part of a list says so much of itself. */
  readonly rated?: (Omit<Motor, "label"> & Battery) | undefined;
}

/** What a stage is made of. */
export interface StageNeeds {
  /** Each part by itself, and how many of it the stage takes. */
  readonly each: readonly (Spec & { readonly times: number })[];
  /** Two gears: what they are where they are sold together, and the names of their counts on the stage. */
  readonly together?: {
    readonly spec: Spec;
    readonly fields: readonly string[];
    /** They are sold together: neither can be had by itself. */
    readonly only: boolean;
    /** Any two gears of one pitch that stand beside each other will do: both have their teeth outside, and straight. */
    readonly plain: boolean;
    /** Two gears that mesh, and nothing more: no planetary set, no worm with its wheel. */
    readonly pair: boolean;
    /** Counts and pitch set a distance between the axes, which a mount can be held against. */
    readonly beside: boolean;
  };
}

/** The belts that a stage can have, where its centre distance is given and its count is not. A tensioner takes any longer one. */
function beltsFor(belt: BeltQuestion): readonly number[] | undefined {
  try {
    const { choices } = beltOf(belt);
    return choices.length && !belt.tensioner ? choices.map(({ teeth }) => teeth) : undefined;
  } catch {
    // A pitch or a centre distance of nothing has no belt.
    return undefined;
  }
}

const specOf = ({ belt, pieces = 1, ...spec }: PieceNeed): Spec & { readonly times: number } => ({
  ...spec,
  times: pieces,
  ...(spec.is.includes("belt") && {
    either: belt && spec.teeth === undefined ? beltsFor(belt) : undefined,
    length: spec.teeth && spec.beltPitch ? lengthOf(spec.beltPitch).times(spec.teeth) : undefined,
  }),
});

const isSet = ({ is }: PieceNeed): boolean => is.includes("set") || is.includes("planetary");

/** What a stage is made of, as its kind says. */
export function needsOfStage(stage: Stage): StageNeeds {
  const { whole, pieces } = needed[stage.kind](stage);
  const each = (pieces ?? (whole ? [whole] : [])).map(specOf);
  if (!whole || !isSet(whole)) return { each };
  const { form = "spur", internal, module, diametralPitch, pressureAngle } = stage as ToothPair & Stage;
  const pair = drawings[stage.kind]({ ...stage, form } as Stage)?.pairs?.length === 1;
  return {
    each,
    together: {
      spec: { ...specOf(whole), pitch: { module, diametralPitch, pressureAngle } as Toothed },
      fields: displays[stage.kind](stage).flatMap((piece) => ("field" in piece ? piece.field : [])),
      only: !pieces,
      plain: form === "spur" && !internal && !!pieces?.every(({ is }) => is.includes("gear")),
      pair,
      beside: pair && (form === "spur" || form === "helical"),
    },
  };
}

/** The parts that a stage names as fitted to it. */
export const fittedTo = (stage: Stage): readonly Part["id"][] =>
  (stage as Stage & { readonly fitted?: readonly string[] }).fitted ?? [];

/** Whether the teeth of a part are like those that are asked for, as far as both say. */
export const isOfForm = (part: Part, { form }: Spec): boolean => !form || (part.form ?? form) === form;
