export { MwRatioSummary } from "./mw-ratio-summary.js";
