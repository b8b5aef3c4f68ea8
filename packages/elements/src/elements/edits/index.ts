export { MwEdits } from "./mw-edits.js";
