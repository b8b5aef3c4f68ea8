import { innerOf, type Build } from "../drivetrain/index.js";
import { directions, effects, type Effect, type Stage, type Turn } from "../stages/index.js";

type Positions = Readonly<Record<string, string>> | undefined;

/** Why nothing is driven: let go of, or let go of and held still. */
export type Released = "free" | "held";

const said = (stage: Stage, turn: number): number => (stage.reverses === undefined ? turn : stage.reverses ? -1 : 1);

/** Multiplies one stage in; answers what follows for its direction. */
function alone(stage: Stage, into: Effect): Turn {
  effects[stage.kind](stage, into);
  return directions[stage.kind].turn(stage);
}

/** Runs through stages, multiplying their effects in; answers which way the last one turns, or why nothing does. */
export function follow(stages: readonly Stage[], into: Effect, positions: Positions): Turn | Released {
  let turn = 1;
  for (const stage of stages) {
    const inner = innerOf(stage, positions);
    const step =
      inner === undefined ? alone(stage, into) : typeof inner === "string" ? inner : follow(inner, into, positions);
    if (typeof step === "string") return step;
    turn *= said(stage, step);
  }
  // `|| 0` spares everybody the negative zero.
  return (turn || 0) as Turn;
}

/** A stage that stands in the train as it is selected, with the group it counts to. */
export interface Leaf {
  readonly stage: Stage;
  readonly group: string | undefined;
}

/** Runs through stages as they are selected, from one place to before another; answers which way the last one turns. */
export function along(leaves: readonly Leaf[], from: number, to: number, into: Effect): Turn {
  let turn = 1;
  for (let place = from; place < to; place++) {
    const { stage } = leaves[place]!;
    turn *= said(stage, alone(stage, into));
  }
  return (turn || 0) as Turn;
}

/** The stages as they are selected, one after the other. */
export function leavesOf(stages: readonly Stage[], positions: Positions, leaves: Leaf[], group?: string): Leaf[] {
  for (const stage of stages) {
    const inner = innerOf(stage, positions);
    const own = stage.group ?? group;
    if (inner === undefined) leaves.push({ stage, group: own });
    else if (typeof inner !== "string") leavesOf(inner, positions, leaves, own);
  }
  return leaves;
}

/** The positions that a mode sets. */
export const positionsOf = (build: Build, mode: string | undefined): Positions =>
  build.modes?.find((one) => one.id === mode)?.positions;
