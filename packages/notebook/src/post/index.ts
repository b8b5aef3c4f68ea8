export { MwNotebookPost } from "./mw-notebook-post.js";
