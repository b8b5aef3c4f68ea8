/**
 * What is wrong on a page, for its author: collected from builds and elements, told in the console and behind a small sign.
 * Nothing that a reader sees depends on it: elements reach it through one hook (`install` in the element room), and it may come
 * after them.
 * @module
 */
export { watchFindings } from "./overseer.js";
