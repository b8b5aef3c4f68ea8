import type { Evaluation } from "../evaluate/index.js";
import { fitFigures } from "./fit-figures.js";
import type { FigureOptions, Makers } from "./figure.js";
import { figureFrom } from "./figure-from.js";
import { gearFigures } from "./gear-figures.js";
import { motionFigures } from "./motion-figures.js";
import type { FigureName, FigureQuery, QueryText } from "./vocabulary.js";

/** Every figure there is, by name. */
// A call marked pure falls away where it is unused; a spread would not.
export const figures: Makers<FigureName> = /* @__PURE__ */ Object.assign({}, gearFigures, fitFigures, motionFigures);

/**
 * The text of a figure or a verdict.
 *
 * @throws MeshwrightError with a finding's code, and the field in `at`, where the query asks for what there is not: never another
 * figure
 *
 * @example
 * const ring = { id: "ring", kind: "pair", driver: 12, driven: 35 };
 * const build = parseBuild({ format: "meshwright-build/1", outputs: [{ id: "rear", stages: [ring] }] });
 * figureOf(evaluate(build), { figure: "reduction", of: "rear", digits: 3 }); // => "2.917"
 * figureOf(evaluate(build), { figure: "counts", of: "ring" }); // => "12 driving 35"
 * figureOf(evaluate(build), { figure: "reduction", of: "raer" }); // throws missing-reference
 */
export const figureOf = (evaluation: Evaluation, query: FigureQuery | QueryText, options?: FigureOptions): string =>
  figureFrom(figures, evaluation, query, options);
