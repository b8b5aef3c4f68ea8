/**
 * Reading and checking a build; its JSON Schema; applying changes; its notation in attributes; links that carry changes.
 * @module
 */
export { attributeFindings, missingElement, passes } from "./attribute-findings.js";
export { axleAttributeOf, axleNames, axleParts, buildWords, notationName, speaksOfBuild } from "./notation-names.js";
export { elementAttributes, type ElementTag } from "./attributes.js";
export { isPagesOwn } from "./pages-own.js";
export { applyChanges } from "./changes.js";
export { type Dropped, layOver } from "./lay-over.js";
export { type Edited, type Editing, type Layer, asPublished, sameLayer } from "./edited.js";
export { edited } from "./layer.js";
export { buildFromLink, linkOfBuild } from "./carrier.js";
export { type LinkedChanges, changesFrom, linkCarries, linkOf } from "./links.js";
export { buildFromAttributes } from "./notation.js";
export { nearestTo, slipsBetween } from "./nearest.js";
export { readJson } from "./json.js";
export { fieldsNeeded, missingIn, partFaults, type PartFault } from "./parts.js";
export { parseBuild, readBuild, readUnfinished } from "./read-build.js";
export { scalarTexts } from "./expected.js";
export { passedOver } from "./sources.js";
export { ShapeReader } from "./read.js";
export type { Reading } from "./reading.js";
export { type Scalar, addressPattern, longestText, scalars } from "./scalars.js";
export { sealOf } from "./seal.js";
export { buildSchema } from "./schema.js";
export { buildAsMeasured, buildAt } from "./versions.js";
