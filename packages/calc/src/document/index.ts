/**
 * Reading and checking a build; its JSON Schema; applying changes; its notation in attributes; links that carry changes.
 * @module
 */
export {
  attributeFindings,
  axleAttributeOf,
  axleNames,
  axleParts,
  buildWords,
  elementAttributes,
  isPagesOwn,
  notationName,
  passes,
  type ElementTag,
} from "./attributes.js";
export { applyChanges } from "./changes.js";
export { type Dropped, layOver } from "./lay-over.js";
export { type Edited, type Editing, type Layer, asPublished, edited, sameLayer } from "./layer.js";
export { buildFromLink, linkOfBuild } from "./carrier.js";
export { type LinkedChanges, changesFrom, linkCarries, linkOf } from "./links.js";
export { buildFromAttributes } from "./notation.js";
export { nearestTo, slipsBetween } from "./nearest.js";
export { parseBuild, readBuild, readUnfinished } from "./read-build.js";
export { ShapeReader, addressPattern } from "./read.js";
export type { Reading } from "./reading.js";
export { type Scalar, longestText, scalars } from "./scalars.js";
export { sealOf } from "./seal.js";
export { buildSchema } from "./schema.js";
export { buildAsMeasured, buildAt } from "./versions.js";
