import type { Rounding } from "../exact/index.js";
import type { Comparison, Evaluation, OutputEvaluation } from "../evaluate/index.js";
import { fill } from "../languages/index.js";
import { isAsked } from "./asked.js";
import { comparedIn } from "./compared.js";
import type { FigureName, FigureNameOf, FigureQuery, QueryText } from "./vocabulary.js";
import type { Writer } from "./writer.js";
import { BareWriter, type NumberForm, type Writing } from "./bare-writer.js";

/** What a figure's maker is given: a query that was checked, and all that it needs to write. */
export interface FigureContext {
  readonly evaluation: Evaluation;
  readonly query: FigureQuery;
  readonly writer: Writer;
  readonly form: Pick<NumberForm, "digits" | "unit">;
  /** Another version of the build: as published, or an alternative. */
  version(id: string): Evaluation | undefined;
}

/** Makes one figure's text. */
export type Figure = (context: FigureContext) => string;

/** The makers of some figures, each under its name. One that is missing is a fault that the compiler sees. */
export type Makers<Names extends FigureName> = { readonly [Name in Names]: Figure };
/** The makers of a group. */
export type MakersOf<Group> = Makers<FigureNameOf<Group>>;

/** The output that a figure is about: the one named, the build's headline, or the first. */
export const outputOf = ({ evaluation, query }: FigureContext): OutputEvaluation =>
  evaluation.output(query.of ?? evaluation.build.headline ?? "") ?? evaluation.outputs[0]!;

/** The two outputs that a figure compares. */
export function compared({ evaluation, query }: FigureContext): Comparison {
  const [of, other] = comparedIn(evaluation.build, query)!;
  return evaluation.compare(of, other)!;
}

/** A text with what it leaves unsaid: a choice that nobody made is told, one that was asked for is not. */
export const aside = ({ writer }: FigureContext, text: string, remark: string | undefined): string =>
  remark === undefined ? text : fill(writer.words.aside, text, remark);

/** The unit in which lengths are shown where no other is asked for. */
export const usualUnit = ({ evaluation }: FigureContext): string =>
  (evaluation.build as { readonly lengths?: string }).lengths ?? "mm";

/** A form with a length's unit. */
export const lengthForm = (context: FigureContext): Pick<NumberForm, "digits"> & { readonly unit: string } => ({
  ...context.form,
  unit: context.form.unit ?? usualUnit(context),
});

/** Where figures come from besides the evaluation itself. */
export interface FigureOptions extends Writing {
  /** Other versions by id, "article" for the build as published. By default the evaluation's own build is the article. */
  readonly version?: ((id: string) => Evaluation | undefined) | undefined;
}

type Worded = Required<Pick<FigureOptions, "words">>;
type Versioned = Required<Pick<FigureOptions, "version">>;

/** A table of makers that a bundle has filled as far as it needs. */
export type FigureTable = { readonly [Name in FigureName]?: Figure | undefined };

/** The figures that sentences use most. */
export type CommonFigure = "reduction" | "standing" | "count" | "gap" | "lead" | "farther";

/**
 * The text of a figure from a table of the commonest; nothing where the query asks for what there is not, or the table has no maker for it.
 * For whoever tells nobody what is wrong.
 */
export function figureIn(
  figures: Pick<FigureTable, CommonFigure>,
  evaluation: Evaluation,
  query: FigureQuery | QueryText,
  options: FigureOptions & Worded & Versioned,
): string | undefined {
  if (!isAsked(query, evaluation.build)) return undefined;
  const writer = new BareWriter({ ...options, rounding: options.rounding ?? roundingOf(evaluation) });
  // The commonest figures need no more of a writer; others come with one of their own.
  return madeFigure(figures, evaluation, query, options, writer as Writer);
}

/** The rounding that a build asks for. */
export const roundingOf = ({ build }: Evaluation): Rounding | undefined => build.rounding as Rounding | undefined;

/** The text of a figure that is asked for in the words of the vocabulary; nothing where the table has no maker for it. */
export function madeFigure(
  figures: FigureTable,
  evaluation: Evaluation,
  query: FigureQuery | QueryText,
  options: FigureOptions,
  writer: Writer,
): string | undefined {
  const { figure = "reduction", digits, unit } = query as FigureQuery;
  return figures[figure]?.({
    evaluation,
    query: query as FigureQuery,
    writer,
    form: { digits: digits === undefined ? undefined : Number(digits), unit },
    version: (id) => options.version?.(id),
  });
}
