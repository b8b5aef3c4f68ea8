export { MwQuantity } from "./mw-quantity.js";
