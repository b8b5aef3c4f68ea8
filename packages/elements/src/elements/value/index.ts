export { MwValue } from "./mw-value.js";
