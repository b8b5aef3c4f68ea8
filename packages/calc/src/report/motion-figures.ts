import type { Bounded, Rational } from "../exact/index.js";
import { packVolts, speedsOf, speedSymbols, turningRadius, type WheelSpeed } from "../motion/index.js";
import { aside, lengthForm, outputOf, usualUnit, type FigureContext, type MakersOf } from "./figure.js";
import { drivenTo, gapOf } from "./common-figures.js";

/** The speeds at one state of the battery. */
function speedOf(context: FigureContext): WheelSpeed | undefined {
  const { full, nominal } = speedsOf(context.evaluation.build, outputOf(context));
  return context.query.measure === "nominal" ? nominal : full;
}

/** A speed of the wheel: straight on where a differential is open and nothing else is asked for. */
function wheelFigure(
  context: FigureContext,
  of: (speed: WheelSpeed) => Bounded,
  digits: number,
  unit?: string,
): string {
  const speed = speedOf(context);
  const output = outputOf(context);
  const { bounds, remark } = drivenTo(context, output);
  if (!speed || !bounds) return context.writer.words.unknown;
  // What is worked out is of the drive as it goes.
  const own = bounds === output.bounds ? of(speed) : of(speed).times(output.bounds!.over(bounds));
  return aside(context, number(context, own, digits, unit), remark);
}

const number = (
  { writer, form }: FigureContext,
  value: Bounded | Rational | undefined,
  digits: number,
  unit?: string,
): string =>
  value ? writer.number(value, { digits: form.digits ?? digits, ...(unit && { unit }) }) : writer.words.unknown;

/** The figures of motion. Ideal ones: no load, no losses, no slip. */
export const motionFigures: MakersOf<"motion"> = {
  speed(context) {
    const unit = context.query.unit ?? "km/h";
    return wheelFigure(context, (speed) => speed[speedSymbols[unit]!], 1, unit);
  },
  "motor-rpm": (context) => number(context, speedOf(context)?.motorRpm, 0),
  "wheel-rpm": (context) => wheelFigure(context, (speed) => speed.wheelRpm, 0),
  "hand-turns"(context) {
    const { over = "10", measure } = context.query;
    const { steps, reduction, output } = outputOf(context);
    const held = measure === "held";
    if (!steps[0] || !reduction || (held && output.axle !== "differential")) return context.writer.words.unknown;
    const turns = steps[0].reduction.over(reduction).times(over);
    return number(context, turns.times(held ? 2 : 1).bounds, 2);
  },
  volts(context) {
    const pack = packVolts(context.evaluation.build.battery ?? {});
    return number(context, context.query.measure === "nominal" ? pack?.nominal : pack?.full, 2, "V");
  },
  circle(context) {
    const { wheelbase } = context.evaluation.build;
    const { bounds, remark } = gapOf({ ...context, query: { ...context.query, base: undefined } });
    const radius = wheelbase && bounds && turningRadius(bounds, wheelbase);
    if (!radius) return context.writer.words.unknown;
    const unit = context.form.unit ?? (usualUnit(context) === "in" ? "ft" : "m");
    return aside(context, context.writer.length(radius, { ...lengthForm(context), unit }, -1), remark);
  },
};
