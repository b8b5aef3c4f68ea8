/**
 * Parts that can be had, and what a change means to buy.
 * @module
 */
export { type BuyLine, type Need, type OrderLine, type OrderList, needsOf, orderOf } from "./order.js";
export { canBeHad, costOf, readParts } from "./part.js";
export { type UnderstoodColumn, partsFromRows } from "./rows.js";
