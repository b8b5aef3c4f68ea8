import type { Bounded } from "../exact/index.js";
import { spotOf, type Build, type Mount } from "../drivetrain/index.js";
import type { PairStage } from "../stages/index.js";
import { centreDistance, enclose } from "../gears/index.js";
import { countedIn, fits, rangesOf, shortfall, type Fit, withKnownShafts } from "../fit/index.js";
import { fill } from "../languages/index.js";
import { standingIn } from "../parts/index.js";
import { lengthForm, type FigureContext, type MakersOf } from "./figure.js";
import { lackOf } from "./shortfall.js";

/** A pair and the mount that it stands in. */
export interface Mounted {
  readonly pair: PairStage;
  readonly mount: Mount | undefined;
}

/** The pair named, and its mount. */
export const mountedIn = (build: Build, id: string): Mounted => ({
  pair: spotOf(build, id)!.stage as PairStage,
  mount: build.mounts?.find((one) => one.stage === id),
});

/** The pair that a figure is about: by default the first one that has a mount. */
const mounted = ({ evaluation: { build }, query }: FigureContext): Mounted =>
  mountedIn(build, query.of ?? build.mounts![0]!.stage);

/** What sets a mesh is shown to the hundredth of a millimetre, where there is one. */
const lengthText = (context: FigureContext, length: Bounded | number | undefined, least = 1): string =>
  length === undefined
    ? context.writer.words.unknown
    : context.writer.length(typeof length === "number" ? enclose(length) : length, lengthForm(context), 2, least);

/** Whether what stands there fits: the gears that are said to be there, else any of those counts. */
const fitOf = (context: FigureContext): Fit => {
  const { pair, mount } = mounted(context);
  // Whatever the gears are that stand there, the mount is counted in the pitch that the build says.
  const at = mount && { mount: countedIn(mount, pair) };
  return fits({ pair, ...at, ...standingIn(context.evaluation.build, pair.id) });
};

/** The figures of two gears in their mount. */
export const fitFigures: MakersOf<"fit"> = {
  centre: (context) => lengthText(context, centreDistance(mounted(context).pair)),
  slot(context) {
    const { writer, query } = context;
    const { words } = writer;
    const { pair, mount } = mounted(context);
    // What is measured over shafts says nothing before somebody tells them.
    if (mount && withKnownShafts(mount) !== mount) return words.unknown;
    const ranges = rangesOf(mount ?? {}, pair);
    const [first, last] = [ranges[0], ranges.at(-1)];
    if (!first || !last) return words.nothing;
    const [from, to] = [first.from, last.to];
    // Limits are rounded inward, one end alone as well; a hole stands where it stands.
    const end = (one: Bounded, which: "from" | "to"): string =>
      mount?.holes ? lengthText(context, one) : writer.lengthLimit(one, which, lengthForm(context), 2, 1);
    if (query.measure === "from") return from ? end(from, "from") : words.unknown;
    if (query.measure === "to") return to ? end(to, "to") : words.unknown;
    if (mount?.holes) return writer.oneOf(ranges.map((hole) => lengthText(context, hole.from)));
    if (from && to) return writer.range(end(from, "from"), end(to, "to"));
    return from ? fill(words.from, end(from, "from")) : to ? fill(words.upTo, end(to, "to")) : words.unknown;
  },
  fit(context) {
    const { verdict, reasons } = fitOf(context);
    const { words } = context.writer;
    if (verdict !== "does not fit") return verdict === "fits" ? words.fits : words.uncertain;
    const [first] = reasons.filter((reason) => reason.weight === "refusal");
    return first?.code === "too-far" ? words.far : first?.code === "too-close" ? words.close : words.misfit;
  },
  shortfall(context) {
    const { writer } = context;
    const { words } = writer;
    const lacking = shortfall(fitOf(context));
    if (!lacking) return words.fits;
    const { reason, certain, by } = lacking;
    const lack = lackOf[reason.code];
    const thing = reason.code === "wall" && reason.label ? reason.label : lack ? words.lacks[lack] : words.misfit;
    if (!certain) return fill(words.told, words.uncertain, thing);
    if (!by) return fill(words.told, words.misfit, thing);
    // How far a slot falls short is what the figure is asked for; anything else has to be named.
    if ("length" in by && lack === "centre") return lengthText(context, by.length);
    const much =
      "length" in by
        ? lengthText(context, by.length)
        : "share" in by
          ? writer.number(by.share, { percent: true })
          : `${writer.number(by.degrees, { digits: 1, least: 0 })}°`;
    return fill(words.aside, much, thing);
  },
  backlash: (context) => lengthText(context, fitOf(context).mesh.normalBacklash, 2),
};
