import type { Bounded } from "../exact/index.js";
import type { OutputEvaluation, Quantity } from "../evaluate/index.js";
import { valueAt } from "../drivetrain/index.js";
import { fill } from "../languages/index.js";
import { aside, compared, outputOf, type CommonFigure, type FigureContext, type Makers } from "./figure.js";

/** A reduction with what nobody asked for but has to be told. */
interface Told {
  readonly bounds: Bounded | undefined;
  /** Why there are no bounds. */
  readonly absent: "none" | "unknown";
  readonly remark?: string | undefined;
}

/**
 * What an output turns: as the build stands; and where a differential before it is open, locked or straight on, whichever is asked
 * for. Where neither is, it goes straight on, if that is known, and the text says which.
 */
export function drivenTo({ query, writer: { words } }: FigureContext, output: OutputEvaluation): Told {
  if (!output.isOpen) return { bounds: output.bounds, absent: "none" };
  const { drive } = query;
  const straight = drive === "locked" ? undefined : output.bounds;
  if (drive === "straight-on") return { bounds: straight, absent: "unknown" };
  const bounds = straight ?? output.locked?.bounds;
  if (drive) return { bounds, absent: "none" };
  const remark = straight ? words.straightOn : words.locked;
  return {
    bounds,
    absent: "none",
    remark: straight && output.assumes ? fill(words.aside, remark, words.gearsAlone) : remark,
  };
}

/** The reduction of a stage or a group, which no differential comes into; undefined for a stage that nothing drives now. */
function partOf(context: FigureContext): Quantity | undefined {
  const { evaluation, query } = context;
  if (query.group !== undefined) return outputOf(context).groups.find((one) => one.group === query.group)?.reduction;
  for (const output of evaluation.outputs)
    for (const step of output.steps) if (step.stage.id === query.of) return step.reduction;
  return undefined;
}

export function reductionOf(context: FigureContext): Told {
  const { evaluation, query } = context;
  const isPart = query.group !== undefined || (query.of !== undefined && !evaluation.output(query.of));
  return isPart ? { bounds: partOf(context)?.bounds, absent: "none" } : drivenTo(context, outputOf(context));
}

/** How one output stands against another, with what has to be told about it. */
interface Gap {
  /** Against the second output. */
  readonly bounds: Bounded | undefined;
  readonly remark: string | undefined;
}

/**
 * One output against another: with tyres where both wheels are given, else by the gears alone, which is told unless it was asked
 * for; of a locked drive, which is told where a differential is open.
 */
export function gapOf(context: FigureContext): Gap {
  const { query, writer } = context;
  const { words } = writer;
  const pair = compared(context);
  const { of, with: other } = pair;
  const scope = query.scope ?? (of.output.wheel && other.output.wheel ? "tyres" : "gears");
  const base = query.base === "mean" ? "mean" : query.base === of.id && of !== other ? "of" : "with";
  const bounds = pair.difference(scope, base);
  const remarks: string[] = [];
  if (!query.scope && scope === "gears") remarks.push(words.gearsAlone);
  if (!query.drive && pair.isOpen) remarks.push(words.locked);
  return {
    bounds,
    remark: bounds && remarks.length ? remarks.reduce((text, one) => aside(context, text, one)) : undefined,
  };
}

export const percent = { percent: true } as const;
/** A size where the sign is known: the words beside it say which way. */
export const unsigned = (value: Bounded): Bounded => (value.high.sign <= 0 ? value.times(-1) : value);

/** A gap made into a text, and what has to be told; "not known" where there is none. */
export function told(context: FigureContext, write: (gap: Bounded) => string): string {
  const { bounds, remark } = gapOf(context);
  return bounds ? aside(context, write(bounds), remark) : context.writer.words.unknown;
}

/** The figures of the gears alone that sentences use most. */
export const commonFigures: Makers<CommonFigure> = {
  reduction(context) {
    const { bounds, absent, remark } = reductionOf(context);
    const { writer, form } = context;
    return bounds ? aside(context, writer.number(bounds, form), remark) : writer.words[absent];
  },
  standing(context) {
    const { words } = context.writer;
    const output = outputOf(context);
    return output.reduction ? words[output.standing ?? "unknown"] : words.none;
  },
  count({ evaluation, query, writer }) {
    const value = valueAt(evaluation.build, query.of!);
    return typeof value === "number" || typeof value === "string" ? writer.given(value) : writer.words.unknown;
  },
  gap: (context) => told(context, (gap) => context.writer.number(unsigned(gap), { ...context.form, ...percent })),
  lead: (context) =>
    told(context, (gap) => {
      const { ahead, behind, level } = context.writer.words;
      return context.writer.worded(gap, ahead, behind, level, { ...context.form, ...percent });
    }),
  farther: (context) =>
    told(context, (gap) => {
      const { farther, lessFar, asFar } = context.writer.words;
      return context.writer.worded(gap, farther, lessFar, asFar, { ...context.form, ...percent });
    }),
};
