export { MwNotebook } from "./mw-notebook.js";
