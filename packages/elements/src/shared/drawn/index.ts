/**
 * What is drawn by templates, and what drawings need.
 * @module
 */
export { announce } from "./announce.js";
export { changeTexts, effectTexts, wheelTexts } from "./changes.js";
export { drawInto } from "./draw-into.js";
export { DrawnElement, type Told } from "./drawn.js";
export { addFigures, figures } from "./figures.js";
export { inHand, standAlone, standDown, stripOf, takeInHand, type Strip } from "./hand.js";
export { isolateNames } from "./isolate.js";
export { arrow, hatching, linesOf, roomFor, round } from "./ink.js";
export { nameIn } from "./names.js";
export { onPaper } from "./paper.js";
export { Picture } from "./picture.js";
export { speakerFor } from "./speaker.js";
export { standingTexts } from "./standings.js";
export { valuesChanged } from "./values.js";
export { block, drawing, table } from "./styles.js";
