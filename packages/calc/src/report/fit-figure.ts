import { MeshwrightError, type Bounded } from "../exact/index.js";
import { spotOf, type Mount } from "../drivetrain/index.js";
import type { PairStage } from "../stages/index.js";
import { centreDistance, enclose } from "../gears/index.js";
import { fits, limitsOf, type Fit } from "../fit/index.js";
import { type Figure, type FigureContext, defined } from "./figure.js";

/** The pair that a figure is about, and its mount. By default the first pair that has a mount. */
function pairOf({ evaluation, query }: FigureContext): { pair: PairStage; mount: Mount | undefined } {
  const { build } = evaluation;
  const id = query.of ?? build.mounts?.[0]?.stage;
  const stage = id === undefined ? undefined : spotOf(build, id)?.stage;
  if (stage?.kind !== "pair")
    throw new MeshwrightError("figure-missing", "of", `No pair "${id}"; expected a stage of two gears.`);
  return { pair: stage, mount: build.mounts?.find((one) => one.stage === id) };
}

const lengthText = ({ writer, form }: FigureContext, length: Bounded | number | undefined): string =>
  length === undefined
    ? writer.words.unknown
    : writer.length(typeof length === "number" ? enclose(length) : length, defined(form));

const fitOf = (context: FigureContext): Fit => {
  const { pair, mount } = pairOf(context);
  return fits({ pair, ...(mount && { mount }) });
};

/** The figures of two gears in their mount. */
export const fitFigures: Readonly<Record<string, Figure>> = {
  /** The theoretical centre distance of a pair. */
  centre: (context) => lengthText(context, centreDistance(pairOf(context).pair)),
  /** The centre distances that the mount can set; measure="from" or "to" for one end. */
  slot(context) {
    const { pair, mount } = pairOf(context);
    const ends = ["from", "to"].map((end) => mount && limitsOf(mount, pair).find((limit) => limit.end === end)?.at);
    const { measure } = context.query;
    if (measure === "from" || measure === "to") return lengthText(context, ends[measure === "from" ? 0 : 1]);
    return ends.map((end) => lengthText(context, end)).join(` ${context.writer.words.to} `);
  },
  /** Whether the pair meshes and fits. */
  fit(context) {
    const { verdict, reasons } = fitOf(context);
    const { words } = context.writer;
    if (verdict !== "does not fit") return verdict === "fits" ? words.fits : words.uncertain;
    const [first] = reasons.filter((reason) => reason.weight === "refusal");
    return first?.code === "too-far" ? words.far : first?.code === "too-close" ? words.close : words.misfit;
  },
  /** By how much the mount falls short of what the pair needs. */
  shortfall(context) {
    const short = fitOf(context).reasons.find(
      (reason) => reason.code === "too-far" || reason.code === "too-close",
    )?.short;
    return short === undefined ? context.writer.words.fits : lengthText(context, short);
  },
  /** Play between the teeth, measured square to them, at the opening that the mount sets. */
  backlash(context) {
    const { normalBacklash } = fitOf(context).mesh;
    return lengthText({ ...context, form: { digits: 2, ...defined(context.form) } }, normalBacklash);
  },
};
