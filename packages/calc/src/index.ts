/**
 * Exact arithmetic for drivetrains.
 * @module
 */
export * from "./exact/index.js";
export * from "./gears/index.js";
export * from "./stages/index.js";
export * from "./drivetrain/index.js";
export * from "./document/index.js";
export * from "./evaluate/index.js";
export * from "./fit/index.js";
export * from "./layout/index.js";
export * from "./counted/index.js";
export * from "./motion/index.js";
export * from "./parts/index.js";
export * from "./search/index.js";
export * from "./languages/index.js";
export * from "./report/index.js";
export * from "./article/index.js";
