export { MwTurnCount } from "./mw-turn-count.js";
