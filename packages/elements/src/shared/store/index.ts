/**
 * One store per build: requests go up, state comes down.
 * @module
 */
export { engineNow, leanEngine, runOn, type Engine } from "./engine.js";
export { sameFinding, type Complaints } from "./complaints.js";
export { buildsMoved, page, type BuildHolder, type Page } from "./page.js";
export { BuildStore, type Follower } from "./store.js";
