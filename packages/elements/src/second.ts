/**
 * What comes second: what a hand on the page needs.
 * @module
 */
import { makeReady } from "./second/index.js";

makeReady();
