/**
 * Reading and checking a build; its JSON Schema; applying changes; its notation in attributes; links that carry changes.
 * @module
 */
export { notationName } from "./attributes.js";
export { applyChanges } from "./changes.js";
export { buildFromLink, changesFrom, linkOf, linkOfBuild } from "./links.js";
export { buildFromAttributes } from "./notation.js";
export { nearestTo, slipsBetween } from "./nearest.js";
export { parseBuild, readBuild } from "./read-build.js";
export { ShapeReader, addressPattern } from "./read.js";
export type { Reading } from "./reading.js";
export { type Scalar, longestText, scalars } from "./scalars.js";
export { buildSchema } from "./schema.js";
export { buildAsMeasured, buildAt } from "./versions.js";
