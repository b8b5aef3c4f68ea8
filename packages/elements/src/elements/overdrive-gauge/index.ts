export { MwOverdriveGauge } from "./mw-overdrive-gauge.js";
