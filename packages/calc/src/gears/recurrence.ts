import { checkTeeth } from "./check.js";

/** How often the same two teeth of a pair come together. */
export interface Recurrence {
  readonly commonFactor: number;
  /** No common factor: every tooth meets every other before any two meet again. */
  readonly hunting: boolean;
  /** Driver turns until the same two teeth meet again: the driven count without the common factor. */
  readonly driverTurns: number;
}

/**
 * Which teeth meet again, and when.
 *
 * @throws MeshwrightError `not-a-count`
 *
 * @example
 * recurrenceOf(20, 100); // => { commonFactor: 20, hunting: false, driverTurns: 5 }
 */
export function recurrenceOf(driver: number, driven: number): Recurrence {
  let [factor, rest] = [checkTeeth(driver, "driver"), checkTeeth(driven, "driven")];
  while (rest) [factor, rest] = [rest, factor % rest];
  return { commonFactor: factor, hunting: factor === 1, driverTurns: driven / factor };
}
