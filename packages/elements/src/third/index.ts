/**
 * What authors, links and tables need: reading in full, findings, changes of structure.
 * @module
 */
export { define } from "./define.js";
export { makeWhole } from "./whole.js";
