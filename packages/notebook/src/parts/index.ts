export { MwNotebookParts } from "./mw-notebook-parts.js";
