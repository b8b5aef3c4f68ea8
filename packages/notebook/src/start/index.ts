export { MwNotebookStart } from "./mw-notebook-start.js";
