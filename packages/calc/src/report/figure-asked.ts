import type { Evaluation } from "../evaluate/index.js";
import { isAsked } from "./asked.js";
import { madeFigure, roundingOf, type FigureOptions, type FigureTable } from "./figure.js";
import type { FigureQuery, QueryText } from "./vocabulary.js";
import { Writer } from "./writer.js";

/**
 * The text of any figure that a table has a maker for; nothing where the query asks for what there is not. For whoever tells nobody
 * what is wrong.
 */
export const figureAsked = (
  figures: FigureTable,
  evaluation: Evaluation,
  query: FigureQuery | QueryText,
  options: FigureOptions,
): string | undefined =>
  isAsked(query, evaluation.build)
    ? madeFigure(
        figures,
        evaluation,
        query,
        options,
        new Writer({ ...options, rounding: options.rounding ?? roundingOf(evaluation) }),
      )
    : undefined;
