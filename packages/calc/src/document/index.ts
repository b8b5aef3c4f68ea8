/**
 * Reading and checking a build; its JSON Schema; applying changes; its notation in attributes; links that carry changes.
 * @module
 */
export { notationName } from "./attributes.js";
export { applyChanges } from "./changes.js";
export { checkBuild } from "./check.js";
export { buildFromLink, changesFrom, linkOf, linkOfBuild } from "./links.js";
export { buildFromAttributes } from "./notation.js";
export { type Reading, readBuild } from "./read-build.js";
export { Reader, addressPattern, errorOf } from "./read.js";
export { type Scalar, longestText, scalars } from "./scalars.js";
export { buildSchema } from "./schema.js";
