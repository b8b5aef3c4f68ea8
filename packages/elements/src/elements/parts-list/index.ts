export { MwPartsList } from "./mw-parts-list.js";
