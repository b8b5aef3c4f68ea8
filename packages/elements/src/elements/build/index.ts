export { MwBuild } from "./mw-build.js";
