/**
 * Where notebooks are kept: this browser, one writer at a time, nothing dropped.
 * @module
 */
export { databaseName, type Aside, type Kept } from "./database.js";
export { Keeper, type Keeping, Shelf } from "./keeper.js";
export { isInTabOnly, keepingText, whenText } from "./words.js";
