import { spotOf } from "../drivetrain/index.js";
import { commonFigures, drivenTo, percent, reductionOf, told, unsigned } from "./common-figures.js";
import { bounded, lengthOf, type Bounded } from "../exact/index.js";
import { changeOf, rolledBy, type Quantity } from "../evaluate/index.js";
import { aside, compared, lengthForm, outputOf, type MakersOf } from "./figure.js";
import { stageText } from "./stage-text.js";

/** The figures of the gears alone. */
// A call marked pure falls away where it is unused; a spread would not.
export const gearFigures: MakersOf<"gears"> = /* @__PURE__ */ Object.assign({}, commonFigures, {
  fraction(context) {
    const { bounds, absent, remark } = reductionOf(context);
    if (!bounds?.isExact) return context.writer.words[bounds ? "unknown" : absent];
    return aside(context, bounds.low.toFraction().replace(/\/1$/, ""), remark);
  },
  range({ evaluation, writer, form }) {
    const { target } = evaluation.build;
    if (!target) return writer.words.unknown;
    const { from, to } = target;
    if (form.digits === undefined) return writer.range(writer.given(from), writer.given(to));
    return writer.range(writer.limit(bounded(from), "from", form), writer.limit(bounded(to), "to", form));
  },
  direction(context) {
    const { words } = context.writer;
    return { "same way": words.same, "opposite way": words.opposite, "not known": words.unknown }[
      outputOf(context).turns
    ];
  },
  leader: (context) =>
    told(context, ({ low, high }) => {
      const { ahead, behind, level, uncertain } = context.writer.words;
      if (low.sign !== high.sign) return uncertain;
      return low.sign ? (low.sign > 0 ? ahead : behind) : level;
    }),
  drift: (context) =>
    told(context, (gap) =>
      context.writer.length(unsigned(gap.times(lengthOf(context.query.over ?? "10 m"))), lengthForm(context), 0),
    ),
  travel(context) {
    const output = outputOf(context);
    const { wheel } = output.output;
    const { remark } = drivenTo(context, output);
    const reduction = context.query.drive === "locked" ? output.locked : (output.reduction ?? output.locked);
    const known = context.query.drive === "straight-on" ? output.reduction : reduction;
    if (!known || !wheel) return context.writer.words.unknown;
    const travel = rolledBy(wheel).over(known).bounds;
    return aside(context, context.writer.length(travel, lengthForm(context), 2), remark);
  },
  change(context) {
    const { query, writer, form } = context;
    const { measure = "reduction", from = "article", sign } = query;
    const now = outputOf(context);
    const before = context.version(from)?.output(now.id);
    const value =
      measure === "travel"
        ? before?.travel && now.travel && changeOf(now.travel.over(before.travel).bounds).reduction
        : before?.reduction && now.reduction && changeIn(now.reduction.over(before.reduction), measure);
    if (!value) return writer.words.unknown;
    const shown = sign === "none" ? unsigned(value) : value;
    return writer.number(shown, { ...form, ...percent, sign: sign === "none" ? "auto" : "exceptZero" });
  },
  counts({ evaluation, query, writer }) {
    const { build, mode } = evaluation;
    const stage = spotOf(build, query.of!)!.stage!;
    const positions = build.modes?.find(({ id }) => id === mode)?.positions;
    const form = query.measure === "arrow" || query.measure === "heard" ? query.measure : "sentence";
    return stageText(stage, form, writer, positions?.[stage.id]);
  },
  "taken-up"(context) {
    const taken = compared(context).takenUp;
    return taken ? context.writer.number(taken.abs(), { ...context.form, ...percent }) : context.writer.words.unknown;
  },
  mean(context) {
    const pair = compared(context);
    const mean = context.query.measure === "arithmetic" ? pair.arithmeticMean : pair.harmonicMean;
    return mean ? context.writer.number(mean, context.form) : context.writer.words.unknown;
  },
} satisfies Omit<MakersOf<"gears">, keyof typeof commonFigures>);

function changeIn(quotient: Quantity, measure: string): Bounded {
  const { reduction, wheelSpeed, wheelTorque, midpoint } = changeOf(quotient.bounds);
  return { "wheel-speed": wheelSpeed, "wheel-torque": wheelTorque, midpoint }[measure] ?? reduction;
}
