export { MwBuild } from "./mw-build.js";
export { scriptOf } from "./source.js";
