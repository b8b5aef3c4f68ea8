import type { Comparison } from "../evaluate/index.js";
import type { Bounded } from "../exact/index.js";
import { fill } from "../languages/index.js";
import { turningRadius } from "../motion/index.js";
import { checkQuery, comparedIn, type FigureScope } from "../report/index.js";
import { said, type Attributes } from "./said.js";
import type { Speaker, Unsaid } from "./speaker.js";

/** What `mw-overdrive-gauge` says. */
export interface SaidGauge {
  readonly pair: Comparison;
  readonly scope: FigureScope;
  /** The id of the output that it is measured against, or `mean`. */
  readonly base: string;
  /** How much farther the first one rolls: "1.06% farther". */
  readonly gap: string;
  /** The same as a sentence that names both. */
  readonly sentence: string;
  /** The bare percentage, by what is counted: those that are known. */
  readonly percentages: Readonly<Partial<Record<FigureScope, string>>>;
  /** The fault of axles that turn against each other; then there is no gap to speak of. */
  readonly opposed: string | undefined;
  readonly notes: readonly string[];
}

/** The last turning circle by what it came from: a root of long fractions is worth keeping, and most changes leave the gap as it was. */
let last: readonly [key: string, radius: ReturnType<typeof turningRadius>] | undefined;

/** The turning circle that a gap matches, where the wheelbase is known. */
function circleText({ evaluation: { build }, writer }: Speaker, gap: Bounded): string | undefined {
  const { wheelbase } = build;
  if (!wheelbase) return undefined;
  const unit = (build as { readonly lengths?: string }).lengths === "in" ? "ft" : "m";
  const key = JSON.stringify([gap, wheelbase]);
  if (key !== last?.[0]) last = [key, turningRadius(gap, wheelbase)];
  // In whatever words there are now: those of a language come later than its numbers.
  const [, radius] = last!;
  return radius && writer.length(radius, { unit }, -1);
}

/** What `mw-overdrive-gauge` says: one output against another; nothing where there is nothing to compare. */
export function sayGauge(speaker: Speaker, attributes: Attributes): SaidGauge | Unsaid | undefined {
  const { evaluation, words, figure } = speaker;
  const { build } = evaluation;
  const asked = { of: said(attributes, "of"), with: said(attributes, "with") };
  const wanted = { base: said(attributes, "base"), scope: said(attributes, "scope") };
  const findings = checkQuery({ figure: "farther", ...asked, ...wanted }, build);
  if (findings.length) return { findings };
  const pair = evaluation.compare(...comparedIn(build, asked)!)!;
  const known = (["tyres", "gears"] as const).filter((scope) => pair.difference(scope));
  const scope = known.find((one) => one === wanted.scope) ?? known[0];
  if (!scope) return undefined;
  const base = wanted.base ?? pair.with.id;
  const query = { ...asked, base, scope, drive: "locked" };
  const [low, high] = [pair.difference(scope)!.low.sign, pair.difference(scope)!.high.sign];
  const farther = figure({ figure: "farther", ...query });
  const gap = low * high < 0 ? fill(words.told, words.uncertain, farther) : farther;
  const percentages = known.map((one) => [one, figure({ figure: "gap", ...asked, base, scope: one, drive: "locked" })]);
  // By the rear, or whatever stands in its place: that is what the trade means by the word.
  const side = low === high && low ? (low > 0 ? words.overdrive : words.underdrive) : undefined;
  const over = side && figure({ ...query, figure: "gap", base: pair.with.id });
  const circle = low > 0 ? circleText(speaker, pair.difference(scope)!) : undefined;
  const taken = pair.isOpen && figure({ figure: "taken-up", ...asked });
  return {
    pair,
    scope,
    base,
    gap,
    sentence: fill(words.gap, pair.of.label, gap, pair.with.label),
    percentages: Object.fromEntries(percentages) as SaidGauge["percentages"],
    opposed: pair.establishedSameWay === false ? words.oppose : undefined,
    notes: [
      ...(side && over ? [fill(side, pair.of.label, pair.with.label, over)] : []),
      ...(pair.by === "motor-speed" ? [words.bySpeed] : []),
      ...(taken && taken !== words.unknown ? [fill(words.takesUp, taken)] : []),
      ...(circle ? [fill(words.circle, circle)] : []),
    ],
  };
}
