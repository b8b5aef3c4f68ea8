export { MwPairFinder } from "./mw-pair-finder.js";
