/**
 * Finds figures in articles that no longer say what their builds come to, and mends them.
 * @module
 */
export { checkFigures, mendFigures, type Checked, type CheckOptions, type Difference } from "./check.js";
export type { Load } from "./builds.js";
