export { MwUnmarkedGear } from "./mw-unmarked-gear.js";
