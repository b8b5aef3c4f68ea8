export { MwTeeth } from "./mw-teeth.js";
