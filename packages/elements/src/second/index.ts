/**
 * What comes after an article's first file: whole reading and findings, links, keys beside counts, all figures.
 * @module
 */
export { makeWhole } from "./whole.js";
