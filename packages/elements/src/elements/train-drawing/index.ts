export { MwTrainDrawing } from "./mw-train-drawing.js";
