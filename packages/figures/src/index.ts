/**
 * Finds figures in articles that no longer say what their builds come to, and mends them.
 * @module
 */
export { checkFigures, type Checked, type CheckOptions, type Difference, type Warning } from "./check.js";
export { mendFigures, type Mended } from "./mend.js";
export type { Edit } from "./mending.js";
export type { Load } from "./expected.js";
export type { Format } from "./read.js";
