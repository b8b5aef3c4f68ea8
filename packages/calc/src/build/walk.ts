import { kinds, type Stage } from "../kinds/index.js";
import { step } from "./read.js";
import type { Branch, Build, Output } from "./types.js";

/** Where a stage stands: in which list, at which place. */
export interface Place {
  readonly stage: Stage;
  readonly list: readonly Stage[];
  readonly index: number;
  readonly pointer: string;
}

function* within(list: readonly Stage[], pointer: string): Generator<Place> {
  for (const [index, stage] of list.entries()) {
    const at = step(pointer, index);
    yield { stage, list, index, pointer: at };
    if (stage.kind === "selectable")
      for (const [n, position] of stage.positions.entries())
        if (position.stages) yield* within(position.stages, `${at}/positions/${n}/stages`);
  }
}

/** Every stage of a build with its place, those inside positions too, from the motor outwards. */
export function* stagesOf(build: Build): Generator<Place> {
  yield* within(build.stages, "/stages");
  for (const [n, branch] of (build.branches ?? []).entries()) yield* within(branch.stages, `/branches/${n}/stages`);
  for (const [n, output] of build.outputs.entries()) yield* within(output.stages, `/outputs/${n}/stages`);
}

/** The branches that drive an output, from the split outwards. */
export const branchesOf = (build: Build, end: Output | Branch): readonly Branch[] => {
  const path: Branch[] = [];
  for (let from = end.from; from; ) {
    const id: string = from;
    const branch = build.branches?.find((one) => one.id === id);
    if (!branch || path.includes(branch)) break;
    path.unshift(branch);
    from = branch.from;
  }
  return path;
};

/** The lists of stages between an output's motor and its wheel, in the order of drive. */
export const pathTo = (build: Build, output: Output): readonly (readonly Stage[])[] =>
  output.motor
    ? [output.stages]
    : [build.stages, ...branchesOf(build, output).map((branch) => branch.stages), output.stages];

/** What a stage stands for when its mode or its own selection is looked at: itself, the stages inside, or nothing driven. */
export const innerOf = (stage: Stage, positions?: Readonly<Record<string, string>>): readonly Stage[] | "free" | "held" | undefined =>
  kinds[stage.kind].inner?.(stage, positions?.[stage.id]) as readonly Stage[] | "free" | "held" | undefined;

/** An address taken apart: the object or list that holds the value, and its key there. */
export interface Spot {
  readonly holder: Record<string | number, unknown>;
  readonly key: string | number;
  readonly pointer: string;
  /** The stage that it belongs to, if it does. */
  readonly stage?: Stage;
}

/** Where `id`, `id.field` or `id.field.n` points to in a build, if anywhere. Ids come before the document's own keys. */
export function spotOf(build: Build, address: string): Spot | undefined {
  const [id, field, n] = address.split(".") as [string, string?, string?];
  let spot: Spot | undefined;
  for (const { stage, list, index, pointer } of stagesOf(build))
    if (stage.id === id) spot = { holder: list as never, key: index, pointer, stage };
  for (const key of ["outputs", "branches"] as const) {
    const list = build[key] ?? [];
    const index = list.findIndex((one) => one.id === id);
    if (!spot && index >= 0) spot = { holder: list as never, key: index, pointer: `/${key}/${index}` };
  }
  spot ??= { holder: build as never, key: id, pointer: `/${id}` };
  for (const key of [field, n])
    if (spot && key !== undefined) {
      const holder: unknown = spot.holder[spot.key];
      if (typeof holder !== "object" || holder === null || key === "__proto__") return undefined;
      if (Array.isArray(holder) && !(/^\d{1,5}$/.test(key) && +key < holder.length)) return undefined;
      spot = { ...spot, holder: holder as never, key, pointer: step(spot.pointer, key) };
    }
  return spot;
}

/** The value at an address; undefined where there is none. */
export function valueAt(build: Build, address: string): unknown {
  const spot = spotOf(build, address);
  return spot && Object.prototype.hasOwnProperty.call(spot.holder, spot.key) ? spot.holder[spot.key] : undefined;
}
