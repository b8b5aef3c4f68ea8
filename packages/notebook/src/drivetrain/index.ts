/**
 * The line of drive, and what is chosen in it.
 * @module
 */
export { MwNotebookAxle } from "./mw-notebook-axle.js";
export { MwNotebookDrivetrain } from "./mw-notebook-drivetrain.js";
export { MwNotebookLetIn } from "./mw-notebook-let-in.js";
export { MwNotebookLine } from "./mw-notebook-line.js";
export { MwNotebookMotor } from "./mw-notebook-motor.js";
export { MwNotebookMount } from "./mw-notebook-mount.js";
export { MwNotebookSplit } from "./mw-notebook-split.js";
export { MwNotebookStage } from "./mw-notebook-stage.js";
export { MwNotebookWhole } from "./mw-notebook-whole.js";
