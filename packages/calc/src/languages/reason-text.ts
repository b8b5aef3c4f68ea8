import { format, rational, type Bounded, type Rational } from "../exact/index.js";
import type { Reason } from "../fit/index.js";
import type { Toothed } from "../gears/index.js";
import { reportWords, type ReasonWords } from "./reports/en.js";
import { fill } from "./sentences.js";

/** Millimetres to the micrometre. */
const plainLength = ({ low }: Bounded): string => `${low.toDecimal()} mm`;

const plainShare = (share: Rational): string => format(share, { maximumFractionDigits: 2 }, "en", { percent: true });

/** How a pitch is marked on a part: "module 0.8", "48 DP"; empty where there is none. */
export function pitchText({ module, diametralPitch }: Toothed, words: ReasonWords): string {
  if (module === undefined && diametralPitch === undefined) return "";
  return module === undefined ? `${diametralPitch} DP` : fill(words.module, String(module));
}

/** The same with its pressure angle, where that is given. */
const angledText = (pitch: Toothed, words: ReasonWords): string =>
  pitch.pressureAngle === undefined
    ? pitchText(pitch, words)
    : fill(words.angle, pitchText(pitch, words), String(pitch.pressureAngle));

/**
 * A reason as a sentence or two: what is needed, what there is, what would have to change.
 *
 * @param lengthText writes a length in millimetres
 * @param words those of another language
 * @param shareText writes a share of one as a percentage
 *
 * @example
 * const mount = { from: "30.3 mm", to: "31.3 mm" };
 * const { reasons } = fits({ pair: { driver: 15, driven: 68, module: "0.8" }, mount });
 * reasonText(reasons[0]!).slice(0, 76); // => "Needs 33.2 mm between centres. Your slot ends at 31.3 mm, 1.9 mm short: 78 t"
 */
export function reasonText(
  reason: Reason,
  lengthText: (length: Bounded) => string = plainLength,
  words: ReasonWords = reportWords.reasons,
  shareText: (share: Rational) => string = plainShare,
): string {
  const { label = "wall", pitches = [], coarser = rational(0), needed, available, short } = reason;
  const [first, second] = pitches.map((pitch) => angledText(pitch, words));
  const [coarse, fine, by] =
    coarser.sign < 0 ? [second, first, coarser.plus(1).inverse().minus(1)] : [first, second, coarser];
  const [need, have, gap] = [needed, available, short].map((length) => length && lengthText(length));
  const values: Readonly<Record<string, unknown>> = {
    ...reason,
    label,
    first,
    second,
    coarse,
    fine,
    coarser: shareText(by),
    needed: need,
    available: have,
    short: gap,
  };
  return words.texts[reason.code].replace(/{(\w+)}/g, (_, name: string) => {
    const value = `${values[name] ?? "…"}`;
    return Object.hasOwn(words.terms, value) ? words.terms[value as keyof ReasonWords["terms"]] : value;
  });
}
