import { lengthOf, MeshwrightError, rational, type Bounded, type Rounding } from "../exact/index.js";
import { notations } from "../stages/index.js";
import { applyChanges } from "../document/index.js";
import { spotOf, valueAt, type Build } from "../drivetrain/index.js";
import {
  Evaluation,
  changeOf,
  type Comparison,
  type ComparisonBase,
  type OutputEvaluation,
  type Quantity,
  type Scope,
} from "../evaluate/index.js";
import { Writer, type Writing } from "./writer.js";

/** Which figure is asked for. Every field is text, as it comes from an attribute. */
export interface FigureQuery {
  /** The figure's name. */
  readonly figure: string;
  /** What it is a figure of: an output, a stage, or an address. */
  readonly of?: string | undefined;
  /** The output that it is compared with. */
  readonly with?: string | undefined;
  /** A group of stages: only what they do. */
  readonly group?: string | undefined;
  readonly base?: string | undefined;
  readonly scope?: string | undefined;
  /** The version that a change is counted from: "article" or an alternative's id. */
  readonly from?: string | undefined;
  /** Which of the four numbers of a change: reduction, wheel-speed, wheel-torque, midpoint. */
  readonly measure?: string | undefined;
  /** A stretch of ground, for a gap as a length. */
  readonly over?: string | undefined;
  readonly unit?: string | undefined;
  readonly digits?: string | number | undefined;
  /** "none" leaves the sign of a change out. */
  readonly sign?: string | undefined;
}

/** The fields of a {@link FigureQuery}, as attributes bear them. */
export const queryNames = [
  "figure",
  "of",
  "with",
  "group",
  "base",
  "scope",
  "from",
  "measure",
  "over",
  "unit",
  "digits",
  "sign",
] as const satisfies readonly (keyof FigureQuery)[];

/** What a figure's maker is given. */
export interface FigureContext {
  readonly evaluation: Evaluation;
  readonly query: FigureQuery;
  readonly writer: Writer;
  readonly form: { readonly digits?: number | undefined; readonly unit?: string | undefined };
  /** Another version of the build: as published, or an alternative. */
  version(id: string): Evaluation;
}

/** Makes one figure's text. */
export type Figure = (context: FigureContext) => string;

const missing = (at: string, what: string): never => {
  throw new MeshwrightError("figure-missing", at, what);
};

/** The output that a figure is about: the one named, the build's headline, or the first. */
export const outputOf = ({ evaluation, query }: FigureContext): OutputEvaluation => {
  const id = query.of ?? evaluation.build.headline;
  return (
    (id === undefined ? evaluation.outputs[0] : evaluation.output(id)) ??
    missing("of", `No output "${id}"; expected one of the build's.`)
  );
};

function reductionOf(context: FigureContext): Quantity | undefined {
  const { evaluation, query } = context;
  const { of, group } = query;
  if (of !== undefined && !evaluation.output(of)) {
    for (const output of evaluation.outputs)
      for (const step of output.steps) if (step.stage.id === of) return step.reduction;
    return missing("of", `No output or stage "${of}" in the train.`);
  }
  const output = outputOf(context);
  if (group === undefined) return output.reduction;
  return (
    output.groups.find((one) => one.group === group)?.reduction ??
    missing("group", `No group "${group}" on the way to ${output.id}.`)
  );
}

export const compared = ({ evaluation, query }: FigureContext): Comparison =>
  evaluation.compare(query.of, query.with) ?? missing("with", "Expected two outputs to compare.");

/** Front against rear as asked: with tyres where both wheels are given, base the second output. */
function gapOf(context: FigureContext): Bounded | undefined {
  const { base = "with", scope = "tyres" } = context.query;
  return compared(context).difference(scope as Scope, base as ComparisonBase);
}

const percent = { percent: true } as const;

/** The figures of the gears alone. */
export const gearFigures: Readonly<Record<string, Figure>> = {
  /** Motor turns for one wheel turn; or of one group, or of one stage. */
  reduction(context) {
    const reduction = reductionOf(context);
    return reduction ? context.writer.number(reduction.bounds, context.form) : context.writer.words.none;
  },
  /** The same as an exact fraction, where it is exact. */
  fraction(context) {
    const reduction = reductionOf(context);
    return reduction?.isExact ? reduction.factor.toFraction().replace(/\/1$/, "") : context.writer.words.unknown;
  },
  /** Where the total stands in the builder's range. */
  standing(context) {
    const { words } = context.writer;
    const output = outputOf(context);
    return output.reduction ? words[output.standing ?? "unknown"] : words.none;
  },
  /** The builder's range. */
  range({ evaluation, writer, form }) {
    const { target } = evaluation.build;
    if (!target) return writer.words.unknown;
    const digits = { digits: form.digits ?? 0 };
    return `${writer.number(rational(target.from), digits)} ${writer.words.to} ${writer.number(rational(target.to), digits)}`;
  },
  /** A value of the build as it was written: a tooth count, a printed ratio, a label. */
  count({ evaluation, query, writer }) {
    const value = valueAt(evaluation.build, query.of ?? "");
    return typeof value === "number"
      ? writer.number(rational(value), { digits: 0 })
      : typeof value === "string"
        ? value
        : writer.words.unknown;
  },
  /** A stage's counts in the order of drive: "15 to 62". */
  counts({ evaluation, query, writer }) {
    const stage = spotOf(evaluation.build, query.of ?? "")?.stage;
    const text = stage && notations[stage.kind]?.write(stage);
    return text?.replaceAll(" to ", ` ${writer.words.to} `) ?? writer.words.unknown;
  },
  /** Which way an output turns against its motor. */
  direction(context) {
    const { words } = context.writer;
    return { "same way": words.same, "opposite way": words.opposite, "not known": words.unknown }[
      outputOf(context).turns
    ];
  },
  /** Front against rear as a bare percentage, without its sign where that is known. */
  gap(context) {
    const gap = gapOf(context);
    const { writer, form } = context;
    if (!gap) return writer.words.unknown;
    return writer.number(gap.high.sign <= 0 ? gap.times(-1) : gap, { ...form, ...percent });
  },
  /** "1.06% ahead". */
  lead(context) {
    const gap = gapOf(context);
    const { words } = context.writer;
    return gap
      ? context.writer.worded(gap, words.ahead, words.behind, words.level, { ...context.form, ...percent })
      : words.unknown;
  },
  /** "1.06% farther". */
  farther(context) {
    const gap = gapOf(context);
    const { words } = context.writer;
    return gap
      ? context.writer.worded(gap, words.farther, words.lessFar, words.asFar, { ...context.form, ...percent })
      : words.unknown;
  },
  /** Only the word: ahead, behind, level, or cannot tell. */
  leader(context) {
    const gap = gapOf(context);
    const { words } = context.writer;
    if (!gap) return words.unknown;
    if (gap.low.sign !== gap.high.sign) return words.uncertain;
    return gap.low.sign ? (gap.low.sign > 0 ? words.ahead : words.behind) : words.level;
  },
  /** The gap over a stretch of ground, as a length. */
  drift(context) {
    const gap = gapOf(context);
    const { writer, query, form } = context;
    if (!gap) return writer.words.unknown;
    const length = gap.times(lengthOf(query.over ?? "10 m"));
    return writer.length(length.high.sign <= 0 ? length.times(-1) : length, { digits: 0, ...defined(form) });
  },
  /** Mean of two axles: harmonic for a locked drive; measure="arithmetic" for an open even split. */
  mean(context) {
    const pair = compared(context);
    const mean = context.query.measure === "arithmetic" ? pair.arithmeticMean : pair.harmonicMean;
    return mean ? context.writer.number(mean, context.form) : context.writer.words.unknown;
  },
  /** Ground rolled for one motor turn. */
  travel(context) {
    const { travel } = outputOf(context);
    return travel
      ? context.writer.length(travel.bounds, { digits: 2, ...defined(context.form) })
      : context.writer.words.unknown;
  },
  /** What changed against another version, as one of four named percentages. */
  change(context) {
    const { query, writer, form } = context;
    const { measure = "reduction", from = "article" } = query;
    const { id, reduction } = outputOf(context);
    const before = context.version(from).output(id)?.reduction;
    if (!before || !reduction) return writer.words.unknown;
    const change = changeOf(reduction.over(before).bounds);
    const name =
      ({ "wheel-speed": "wheelSpeed", "wheel-torque": "wheelTorque" } as Record<string, string>)[measure] ?? measure;
    const value = change[name as keyof typeof change] as Bounded | undefined;
    if (!value)
      return missing("measure", `No measure "${measure}"; expected reduction, wheel-speed, wheel-torque or midpoint.`);
    const unsigned = query.sign === "none" && value.high.sign <= 0 ? value.times(-1) : value;
    return writer.number(unsigned, { ...form, ...percent, sign: query.sign === "none" ? "auto" : "exceptZero" });
  },
};

/** Leaves out what is undefined, so that defaults before it stay. */
export const defined = <T extends object>(form: T): Partial<T> =>
  Object.fromEntries(Object.entries(form).filter(([, value]) => value !== undefined)) as Partial<T>;

const versionOf = (build: Build, id: string, mode: string | undefined): Evaluation => {
  const changes = build.alternatives?.find((one) => one.id === id)?.changes;
  if (id !== "article" && !changes) return missing("from", `No alternative "${id}".`);
  const changed = changes ? applyChanges(build, changes).build : build;
  return new Evaluation(changed ?? missing("from", `Alternative "${id}" cannot be made.`), mode);
};

/** Where figures come from besides the evaluation itself. */
export interface FigureOptions extends Writing {
  /** Other versions by id, "article" for the build as published. By default the evaluation's own build is the article. */
  readonly version?: ((id: string) => Evaluation | undefined) | undefined;
}

/** Makes a figure's text from a table of figures: what a page does not show, its bundle need not hold. */
export function figureFrom(
  figures: Readonly<Record<string, Figure>>,
  evaluation: Evaluation,
  query: FigureQuery,
  options: FigureOptions = {},
): string {
  const { build, mode } = evaluation;
  const make = Object.prototype.hasOwnProperty.call(figures, query.figure) ? figures[query.figure]! : undefined;
  if (!make)
    return missing("figure", `No figure "${query.figure}"; expected one of ${Object.keys(figures).join(", ")}.`);
  const digits = query.digits === undefined || query.digits === "" ? undefined : Number(query.digits);
  return make({
    evaluation,
    query,
    writer: new Writer({ ...options, rounding: options.rounding ?? (build.rounding as Rounding | undefined) }),
    form: { digits, unit: query.unit },
    version: (id) => options.version?.(id) ?? versionOf(build, id, mode),
  });
}
