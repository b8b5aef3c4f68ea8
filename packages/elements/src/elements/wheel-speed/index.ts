export { MwWheelSpeed } from "./mw-wheel-speed.js";
