export { MwTeeth } from "./mw-teeth.js";
export { nameOf } from "./name.js";
