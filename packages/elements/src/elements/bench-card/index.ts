export { MwBenchCard } from "./mw-bench-card.js";
