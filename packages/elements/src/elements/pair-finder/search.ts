import { findPairs, nearMisses } from "@meshwright/calc/search";
import type { Asked, Found } from "./question.js";

/** What has been found up to now. */
export interface Results {
  readonly found: readonly Found[];
  readonly missed: readonly Found[];
  /** From 0 to 1. */
  readonly progress: number;
  readonly done: boolean;
}

/** So many near misses are enough to look at. */
const missesAtMost = 500;

/** As long as the page is held at a time, in milliseconds; the longest that one may notice is 50. */
const slice = 12;

const nextTurn = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

/**
 * Searches a little at a time, and tells how far it is after each.
 *
 * @param tell is given the results up to then; the last time with `done`
 */
export async function search(asked: Asked, signal: AbortSignal, tell: (results: Results) => void): Promise<void> {
  const lists: Record<"found" | "missed", Found[]> = { found: [], missed: [] };
  const halves = [
    ["found", findPairs(asked.question)],
    ["missed", nearMisses(asked.question)],
  ] as const;
  let until = performance.now() + slice;
  for (const [n, [list, batches]] of halves.entries())
    for (const { found, progress } of batches) {
      for (const one of found) lists[list].push(one);
      if (list === "missed" && lists.missed.length >= missesAtMost) break;
      if (performance.now() < until) continue;
      tell({ ...lists, progress: (n + progress) / 2, done: false });
      await nextTurn();
      if (signal.aborted) return;
      until = performance.now() + slice;
    }
  if (!signal.aborted) tell({ ...lists, progress: 1, done: true });
}
