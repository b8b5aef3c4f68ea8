import type { BuildStore } from "./store.js";

/** An element that holds a build: what every copy of the library on a page can rely on. */
export interface BuildHolder extends HTMLElement {
  readonly store: BuildStore;
  /** Who writes the build is who reads it: there is no author to name. */
  readonly isOwn?: boolean;
}

/** What all copies of the library on a page share. */
export interface Page {
  /** The builds in the document now. */
  readonly holders: Set<BuildHolder>;
  /** Told when a build has come, gone, or changed its id. */
  readonly watchers: Set<() => void>;
  /** How often that has happened. */
  moves: number;
}

// The number is the contract's: another one is another page, so that copies that do not understand each other never meet.
const key = Symbol.for("meshwright page 1");

/** The one record of this page, whichever copy came first. */
export function page(): Page {
  const scope = globalThis as unknown as Record<symbol, Page | undefined>;
  return (scope[key] ??= { holders: new Set(), watchers: new Set(), moves: 0 });
}

/** Tells every copy that builds have changed places. */
export const buildsMoved = (): void => {
  page().moves++;
  for (const watcher of page().watchers) watcher();
};
