export { MwStageEditor } from "./mw-stage-editor.js";
