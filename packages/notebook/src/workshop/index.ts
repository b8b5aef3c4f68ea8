export { MwNotebookWorkshop } from "./mw-notebook-workshop.js";
