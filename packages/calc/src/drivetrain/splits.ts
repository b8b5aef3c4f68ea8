import type { Branch, Build, Output, Split } from "./types.js";
import { branchesOf } from "./walk.js";

/** A place where the drive splits, and what it feeds there: outputs, and branches that lead to some. */
export interface SplitPlace {
  /** The branch's, or `"centre"`. */
  readonly id: string;
  /** The JSON Pointer of what the document says about it. */
  readonly pointer: string;
  readonly split: Split | undefined;
  readonly feeds: readonly (Output | Branch)[];
}

/** Every place where the drive of the shared motor splits: the centre first, then the branches in their order. */
export function splitsOf(build: Build): readonly SplitPlace[] {
  const outputs = build.outputs.filter((output) => !output.motor);
  const leading = new Set(outputs.flatMap((output) => branchesOf(build, output)));
  const branches = build.branches ?? [];
  const fed = [...outputs, ...branches.filter((branch) => leading.has(branch))];
  const feeds = (from?: string) => fed.filter((one) => one.from === from);
  return [
    { id: "centre", pointer: "/centre", split: build.centre, feeds: feeds() },
    ...branches.map(({ id, split }, n) => ({ id, pointer: `/branches/${n}/split`, split, feeds: feeds(id) })),
  ];
}
