/**
 * Exact arithmetic for drivetrains.
 * @module
 */
export * from "./exact/index.js";
export * from "./kinds/index.js";
export * from "./build/index.js";
export * from "./evaluate/index.js";
export * from "./mesh/index.js";
export * from "./motion/index.js";
export * from "./parts/index.js";
export * from "./search/index.js";
export * from "./document/index.js";
export * from "./report/index.js";
