/**
 * Reading and checking a build; its JSON Schema; its notation in attributes; links that carry changes.
 * @module
 */
export { buildFromLink, changesFrom, linkOf, linkOfBuild } from "./links.js";
export { buildFromAttributes } from "./notation.js";
export { readBuild, type Reading } from "./read.js";
export { buildSchema } from "./schema.js";
