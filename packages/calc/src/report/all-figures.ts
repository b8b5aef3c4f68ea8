import type { Evaluation } from "../evaluate/index.js";
import { fitFigures } from "./fit-figure.js";
import { figureFrom, gearFigures, type Figure, type FigureOptions, type FigureQuery } from "./figure.js";
import { motionFigures } from "./motion-figure.js";

/** Every figure there is, by name. */
// A call marked pure falls away where it is unused; a spread would not.
export const figures: Readonly<Record<string, Figure>> = /* @__PURE__ */ Object.assign(
  {},
  gearFigures,
  fitFigures,
  motionFigures,
);

/**
 * The text of a figure or a verdict.
 *
 * @throws MeshwrightError `figure-missing` where the query names something that is not there
 */
export const figureOf = (evaluation: Evaluation, query: FigureQuery, options?: FigureOptions): string =>
  figureFrom(figures, evaluation, query, options);
