export { MwNotebookBuy } from "./mw-notebook-buy.js";
