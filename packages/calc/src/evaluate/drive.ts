import { innerOf, stagesOf, type Build } from "../drivetrain/index.js";
import {
  directions,
  effects,
  unknowns,
  type Effect,
  type Stage,
  type Surroundings,
  type Turn,
} from "../stages/index.js";

/** Why nothing is driven: let go of, or let go of and held still. */
export type Released = "free" | "held";

/** What stages are worked out in: a build with its levers as a mode sets them. */
export class Situation implements Surroundings {
  readonly build: Build;
  readonly positions: Readonly<Record<string, string>> | undefined;
  #same: ReadonlyMap<string, string> | undefined;

  constructor(build: Build, positions: Readonly<Record<string, string>> | undefined) {
    this.build = build;
    this.positions = positions;
  }

  namesake(stage: Stage): string {
    const same = unknowns[stage.kind]?.sameAs(stage);
    return same === undefined ? stage.id : (this.#sames.get(same) ?? same);
  }

  /** For each stage that is the same as another, the one that all of them are the same as. */
  get #sames(): ReadonlyMap<string, string> {
    if (this.#same) return this.#same;
    const next = new Map<string, string>();
    for (const { stage } of stagesOf(this.build)) {
      const same = unknowns[stage.kind]?.sameAs(stage);
      if (same !== undefined) next.set(stage.id, same);
    }
    const last = new Map<string, string>();
    for (const id of next.keys()) {
      const passed: string[] = [];
      let end = id;
      for (; !last.has(end) && next.has(end); end = next.get(end)!) passed.push(end);
      for (const one of passed) last.set(one, last.get(end) ?? end);
    }
    return (this.#same = last);
  }

  divide(into: Effect, stage: Stage): void {
    const other = into.another();
    effects[stage.kind](stage, other, this);
    into.over(other);
  }
}

const turned = (stage: Stage, turn: number): number => (stage.reverses === undefined ? turn : stage.reverses ? -1 : 1);

/** Which way a stage of its own turns. `|| 0` spares everybody the negative zero. */
export const turnOf = (stage: Stage): Turn => (turned(stage, directions[stage.kind].turn(stage)) || 0) as Turn;

/** Runs through stages, multiplying their effects in; answers why nothing is driven, where that is so. */
export function follow(stages: readonly Stage[], into: Effect, situation: Situation): Released | undefined {
  for (const stage of stages) {
    const inner = innerOf(stage, situation.positions);
    if (inner === undefined) effects[stage.kind](stage, into, situation);
    else {
      const released = typeof inner === "string" ? inner : follow(inner, into, situation);
      if (released) return released;
    }
  }
  return undefined;
}

/** Which way the last of stages turns. Where something is let go of, nothing follows. */
export function turnThrough(stages: readonly Stage[], positions: Situation["positions"]): Turn {
  let turn = 1;
  for (const stage of stages) {
    const inner = innerOf(stage, positions);
    if (typeof inner === "string") return 0;
    turn *= inner ? turned(stage, turnThrough(inner, positions)) : turnOf(stage);
  }
  return (turn || 0) as Turn;
}

/** Whether every stage has said what decides which way it turns. A convention alone establishes nothing. */
export const isEstablished = (stages: readonly Stage[], positions: Situation["positions"]): boolean =>
  stages.every((stage) => {
    if (stage.reverses !== undefined) return true;
    const inner = innerOf(stage, positions);
    return typeof inner === "object" ? isEstablished(inner, positions) : directions[stage.kind].isSaid(stage);
  });

/** A stage that stands in the train as it is selected, with the group it counts to. */
export interface Leaf {
  readonly stage: Stage;
  readonly group: string | undefined;
}

/** Multiplies one stage of the train in. */
export const onto = ({ stage }: Leaf, into: Effect, situation: Situation): void =>
  effects[stage.kind](stage, into, situation);

/** The stages as they are selected, one after the other. */
export function leavesOf(
  stages: readonly Stage[],
  positions: Situation["positions"],
  leaves: Leaf[],
  group?: string,
): Leaf[] {
  for (const stage of stages) {
    const inner = innerOf(stage, positions);
    const own = stage.group ?? group;
    if (inner === undefined) leaves.push({ stage, group: own });
    else if (typeof inner !== "string") leavesOf(inner, positions, leaves, own);
  }
  return leaves;
}

/** The positions that a mode sets. */
export const positionsOf = (build: Build, mode: string | undefined): Situation["positions"] =>
  build.modes?.find((one) => one.id === mode)?.positions;
