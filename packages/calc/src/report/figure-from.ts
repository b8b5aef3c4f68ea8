import { MeshwrightError } from "../exact/index.js";
import type { Evaluation } from "../evaluate/index.js";
import { madeFigure, roundingOf, type FigureOptions, type FigureTable } from "./figure.js";
import { Writer } from "./writer.js";
import { checkQuery } from "./query.js";
import { versionOf } from "./version.js";
import type { FigureQuery, QueryText } from "./vocabulary.js";

/**
 * Makes a figure's text from a table of figures: what a page does not show, its bundle need not hold.
 *
 * @throws MeshwrightError with a finding's code and the field in `at`, where the query asks for what there is not; `figure-missing`
 * where the table has no maker for it
 */
export function figureFrom(
  figures: FigureTable,
  evaluation: Evaluation,
  query: FigureQuery | QueryText,
  options: FigureOptions = {},
): string {
  const { build } = evaluation;
  // Whoever knows another build by a name has it.
  const { from } = query as QueryText;
  const [fault] = checkQuery(query, build, () => (from && options.version?.(String(from)) ? [String(from)] : []));
  if (fault) throw new MeshwrightError(fault.code, fault.at.slice(1), fault.message);
  const version = (id: string): Evaluation | undefined => {
    const known = options.version?.(id);
    const other = known ? undefined : versionOf(build, id);
    return known ?? (other && evaluation.again(other));
  };
  const writer = new Writer({ ...options, rounding: options.rounding ?? roundingOf(evaluation) });
  const text = madeFigure(figures, evaluation, query, { ...options, version }, writer);
  if (text !== undefined) return text;
  const { figure = "reduction" } = query as FigureQuery;
  const known = Object.keys(figures).join(", ");
  throw new MeshwrightError("figure-missing", "figure", `No maker of "${figure}" here; expected one of ${known}.`);
}
