export { MwMeasurements } from "./mw-measurements.js";
