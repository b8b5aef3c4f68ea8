import { MeshwrightError } from "../exact/index.js";

/**
 * The most that a search holds at a time: pairs of counts that are looked at; the ways to fill either half of a train, of
 * which the other half is looked up; finds that are put into another order than the nearest first.
 */
export const mostHeld = 2 ** 20;

/** The most combinations that a search of trains looks through: as many as whole numbers can count. */
export const mostCombinations = Number.MAX_SAFE_INTEGER;

const written = (count: number | bigint): string => count.toLocaleString("en");

/** Refuses what would hold too much, before it is held. */
export function checkHeld(count: number, at: string, of?: bigint): void {
  if (count <= mostHeld && (of === undefined || of <= mostCombinations)) return;
  const values = { found: count, allowed: mostHeld, ...(of !== undefined && { combinations: String(of) }) };
  throw new MeshwrightError(
    "too-many-choices",
    at,
    of === undefined
      ? `${written(count)} to be held at once; expected ${written(mostHeld)} at the most.`
      : `${written(of)} combinations, of which ${written(count)} would have to be held at once; expected ${written(mostHeld)} at the most.`,
    values,
  );
}
