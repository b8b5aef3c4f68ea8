export { MwDriveLine } from "./mw-drive-line.js";
