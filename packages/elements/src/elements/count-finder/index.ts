export { MwCountFinder } from "./mw-count-finder.js";
