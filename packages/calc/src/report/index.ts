/**
 * What is shown: the one maker of figure text, and the working step by step.
 * @module
 */
export { figureOf, figures } from "./all-figures.js";
export {
  type Figure,
  type FigureContext,
  type FigureOptions,
  type FigureQuery,
  figureFrom,
  gearFigures,
  queryNames,
} from "./figure.js";
export { fitFigures } from "./fit-figure.js";
export { motionFigures } from "./motion-figure.js";
export { type FigureWords, figureWords } from "./words.js";
export { type Working, type WorkingStep, working } from "./working.js";
export { type NumberForm, Writer, type Writing, isPlainEnglish } from "./writer.js";
export { toHtml, toMarkdown, toText } from "./written.js";
