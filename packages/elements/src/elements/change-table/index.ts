export { MwChangeTable } from "./mw-change-table.js";
