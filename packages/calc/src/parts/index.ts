/**
 * Parts that can be had, and what a change means to buy.
 * @module
 */
export { needsOf, orderOf, type BuyLine, type Need, type OrderLine, type OrderList } from "./order.js";
export type { Part, PartKind, Price } from "../build/index.js";
export { canBeHad, costOf, readParts } from "./part.js";
export { partsFromRows, type UnderstoodColumn } from "./rows.js";
