import type { Build } from "./types.js";

// Copies of the library on one page read builds for each other: the mark is every copy's. Not enumerable, so that a build
// that was changed by hand, copied or sent has to be read again.
const mark = Symbol.for("meshwright read build 1");

/** Marks a build as read and checked. */
export const markRead = (build: Build): Build => Object.defineProperty(build, mark, { value: true });

/** Whether something is a build as `readBuild`, `parseBuild` or `applyChanges` gave it. */
export const isRead = (build: unknown): build is Build =>
  (build as Record<symbol, unknown> | null | undefined)?.[mark] === true;
