import type { Build, Change, ChangeSet } from "../drivetrain/index.js";
import type { Finding } from "../stages/index.js";
import { sameValue } from "./same.js";

/** What a reader did to an author's build: changes of structure in their order, then values by address. */
export interface Layer {
  readonly structure: readonly Change[];
  readonly sets: ChangeSet;
}

/** An author's build with a layer over it. */
export interface Edited {
  /** The build as it stands. */
  readonly build: Build;
  /** What makes it out of the author's: no more than differs, sets whole. */
  readonly layer: Layer;
  /** The author's build with the changes of structure alone. */
  readonly base: Build;
  /** What went along with stages that are gone, in words. */
  readonly gone: readonly Finding[];
  /** Whether values took something along: what it is depends on all of them, and is looked for anew with each change. */
  readonly trimmed: boolean;
}

/** A build as its author has it. */
export const asPublished = (article: Build): Edited => ({
  build: article,
  layer: { structure: [], sets: {} },
  base: article,
  gone: [],
  trimmed: false,
});

/** Whether two layers hold the same changes. */
export const sameLayer = (one: Layer, other: Layer): boolean =>
  sameValue(one.structure, other.structure) &&
  Object.keys(one.sets).length === Object.keys(other.sets).length &&
  Object.keys(one.sets).every((address) => Object.hasOwn(other.sets, address)) &&
  sameValue(one.sets, other.sets);

/** What has been edited, told apart by `ok`. */
export type Editing = ({ readonly ok: true } & Edited) | { readonly ok: false; readonly findings: readonly Finding[] };
