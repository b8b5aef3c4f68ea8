/**
 * One store per build: requests go up, state comes down.
 * @module
 */
export { buildsMoved, page, type BuildHolder, type Page } from "./page.js";
export { BuildStore, type Layer, type Reader } from "./store.js";
