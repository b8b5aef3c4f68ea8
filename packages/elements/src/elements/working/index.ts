export { MwWorking } from "./mw-working.js";
