export { MwOrderList } from "./mw-order-list.js";
