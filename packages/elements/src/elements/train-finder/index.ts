export { MwTrainFinder } from "./mw-train-finder.js";
