/**
 * Reading a build without sentences: for what shows figures before checks and findings have been loaded. Whatever is not plainly
 * right is not read; what is read is what `readBuild` and `buildFromAttributes` give.
 * @module
 */
export { leanEdited, leanLayer } from "./edit.js";
export { leanApply } from "./check.js";
export { leanFromAttributes, leanRead } from "./read.js";
export { leanVersion } from "./versions.js";
