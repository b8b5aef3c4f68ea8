import { format, rational, type Bounded, type Rational } from "../exact/index.js";
import type { Toothed } from "../gears/index.js";
import type { Reason, ReasonCode } from "./reason.js";

/** Millimetres to the micrometre. */
const plainLength = ({ low }: Bounded): string => `${low.toDecimal()} mm`;

const plainShare = (share: Rational): string => format(share, { maximumFractionDigits: 2 }, "en", { percent: true });

/** A sentence or two for each code; the names in braces are those of the reason's fields. */
const texts = {
  "pitch-near": "Close, not equal: {coarse} is {coarser} coarser than {fine}. Do not mesh them.",
  "pitch-different": "{first} does not mesh with {second}.",
  "angle-different": "Pressure angles differ: {first}, {second}.",
  "too-close":
    "Needs {needed} between centres. Your {label} begins at {available}, {short} too far: {teeth} teeth in all at least.",
  "too-far":
    "Needs {needed} between centres. Your {label} ends at {available}, {short} short: {teeth} teeth in all at most.",
  "no-hole": "Needs {needed} between centres. The nearest hole is at {available}, {short} off.",
  "no-contact": "Opened so far, two teeth part before the next two meet.",
  wall: "Leaves {available} to the {label}, needs {needed}, {short} more: {teeth} teeth at most.",
  "bore-too-small": "A bore of {available} is {short} too small for a shaft of {needed}.",
  "bore-too-large": "A bore of {available} on a shaft of {needed} needs a sleeve with a wall of {short}.",
  "hub-holes": "None of its hole circles matches the hub's.",
  reach: "Needs {needed} of shaft. There are {available}, {short} short.",
  "hub-too-long": "A boss of {available} holds the teeth {short} out of line.",
  undercut: "The {of} is undercut if its teeth are not shifted.",
  "same-teeth-meet": "The same teeth meet every {teeth} driver turns.",
  sleeve: "Takes a sleeve with a wall of {short}.",
  plate: "Takes an adapter plate.",
  facing: "Goes on with the {facing} only.",
  "angle-gears": "Angle gears have no spur centre distance.",
  "pitch-not-given": "No pitch is given.",
  "helix-not-given": "No helix angle is given.",
  "shift-not-given": "A tip diameter without its shift does not tell the centre distance.",
  "ring-too-small": "The ring is too small for the gear in it.",
  "no-centre": "Shifted so far inwards, the teeth meet at no centre distance.",
  "no-line-of-action": "At this centre distance the flanks do not meet.",
  "tooth-pointed": "With this shift and tip diameter the teeth come to a point.",
  "tooth-missing": "With these figures nothing is left of the teeth.",
  "shafts-not-given": "Measured over or between shafts whose diameters are not given.",
} satisfies Readonly<Record<ReasonCode, string>>;

/** The words that reasons are told in; a language gives its own. */
export const reasonWords = {
  texts,
  module: "module {0}",
  angle: "{0} at {1}°",
  /** What stands in a reason as a word and no name. */
  terms: {
    "known-pair": "slot",
    "tooth-sum": "maker's range",
    wall: "wall",
    driver: "driver",
    driven: "driven",
    "hub in": "hub in",
    "hub out": "hub out",
  },
};

/** The words of one language for reasons. */
export type ReasonWords = {
  readonly [Key in keyof typeof reasonWords]: (typeof reasonWords)[Key] extends string
    ? string
    : { readonly [Name in keyof (typeof reasonWords)[Key]]: string };
};

/** How a pitch is named in the trade. */
function pitchText({ module, diametralPitch, pressureAngle }: Toothed, words: ReasonWords): string {
  const text = module === undefined ? `${diametralPitch} DP` : words.module.replace("{0}", String(module));
  return pressureAngle === undefined ? text : words.angle.replace("{0}", text).replace("{1}", String(pressureAngle));
}

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
  words: ReasonWords = reasonWords,
  shareText: (share: Rational) => string = plainShare,
): string {
  const { label = "wall", pitches = [], coarser = rational(0), needed, available, short } = reason;
  const [first, second] = pitches.map((pitch) => pitchText(pitch, words));
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
