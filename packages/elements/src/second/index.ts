/**
 * What comes after an article's first file: whole reading and findings, links, keys beside counts, all figures.
 * @module
 */
export { define } from "./define.js";
export { makeWhole } from "./whole.js";
