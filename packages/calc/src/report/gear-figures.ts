import { spotOf } from "../drivetrain/index.js";
import { commonFigures, percent } from "./common-figures.js";
import { compared, type MakersOf } from "./figure.js";
import { stageText } from "./stage-text.js";

/** The figures of the gears alone. */
// A call marked pure falls away where it is unused; a spread would not.
export const gearFigures: MakersOf<"gears"> = /* @__PURE__ */ Object.assign({}, commonFigures, {
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
