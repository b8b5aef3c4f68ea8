/**
 * Where notebooks are kept: this browser, one writer at a time, nothing dropped.
 * @module
 */
export { databaseName, type Aside, type Kept } from "./database.js";
export { journalOf, replayed, type Journal } from "./journal.js";
export { Keeper, type Keeping, Shelf, type Shown } from "./keeper.js";
export { isInTabOnly, keepingText, whenText } from "./words.js";
