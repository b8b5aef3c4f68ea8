import { MeshwrightError, type Bounded } from "../exact/index.js";
import { packVolts, speedsOf, speedSymbols, turningRadius, type WheelSpeed } from "../motion/index.js";
import { compared, defined, outputOf, type Figure, type FigureContext } from "./figure.js";

/** The speeds at one state of the battery: full unless measure="nominal". */
function speedOf(context: FigureContext): WheelSpeed | undefined {
  const { full, nominal } = speedsOf(context.evaluation.build, outputOf(context));
  return context.query.measure === "nominal" ? nominal : full;
}

const number = ({ writer, form }: FigureContext, value: Bounded | undefined, digits: number, unit?: string): string =>
  value ? writer.number(value, { digits, ...(unit && { unit }), ...defined(form) }) : writer.words.unknown;

/** The figures of motion. Ideal ones: no load, no losses, no slip. */
export const motionFigures: Readonly<Record<string, Figure>> = {
  /** How fast the wheel rolls at full charge; measure="nominal" at nominal volts. */
  speed(context) {
    const { unit = "km/h" } = context.query;
    const name = Object.prototype.hasOwnProperty.call(speedSymbols, unit) ? speedSymbols[unit] : undefined;
    if (!name)
      throw new MeshwrightError(
        "figure-missing",
        "unit",
        `No speed in "${unit}"; expected ${Object.keys(speedSymbols).join(", ")}.`,
      );
    return number(context, speedOf(context)?.[name], 1, unit);
  },
  /** Motor turns a minute without load. */
  "motor-rpm": (context) => number(context, speedOf(context)?.motorRpm, 0),
  /** Wheel turns a minute without load. */
  "wheel-rpm": (context) => number(context, speedOf(context)?.wheelRpm, 0),
  /**
   * Wheel turns while the first driven gear is turned so many times by hand (`over`, 10 where not said); measure="held":
   * of one wheel while the other one of an open axle differential is held.
   */
  "hand-turns"(context) {
    const { over = "10", measure } = context.query;
    const { steps, reduction, output } = outputOf(context);
    const held = measure === "held";
    if (!steps[0] || !reduction || (held && output.axle !== "differential")) return context.writer.words.unknown;
    const turns = steps[0].reduction.over(reduction).times(over);
    return number(context, turns.times(held ? 2 : 1).bounds, 2);
  },
  /** Volts of the pack at full charge; measure="nominal" as labelled. */
  volts(context) {
    const pack = packVolts(context.evaluation.build.battery ?? {});
    const volts = context.query.measure === "nominal" ? pack?.nominal : pack?.full;
    return volts
      ? context.writer.number(volts, { digits: 2, unit: "V", ...defined(context.form) })
      : context.writer.words.unknown;
  },
  /** Radius of the turning circle that an overdrive matches, at the middle of the rear axle. */
  circle(context) {
    const { wheelbase } = context.evaluation.build;
    const gap = compared(context).difference(context.query.scope === "gears" ? "gears" : "tyres");
    const radius = wheelbase && gap && turningRadius(gap, wheelbase);
    return radius
      ? context.writer.length(radius, { unit: "m", digits: 2, ...defined(context.form) })
      : context.writer.words.unknown;
  },
};
