import { rational, type Bounded } from "../exact/index.js";
import type { Toothed } from "../kinds/index.js";
import type { Reason, ReasonCode } from "./reason.js";

/** How a pitch is named in the trade. */
const pitchText = ({ module, diametralPitch, pressureAngle }: Toothed): string =>
  (module === undefined ? `${diametralPitch} DP` : `module ${module}`) +
  (pressureAngle === undefined ? "" : ` at ${pressureAngle}°`);

/** Millimetres to the micrometre. */
const plainLength = ({ low }: Bounded): string => `${low.toDecimal({ maximumFractionDigits: 3 })} mm`;

/** What a limit is called where its kind is no name. */
const places: Readonly<Record<string, string>> = { "known-pair": "slot", "tooth-sum": "maker's range" };

/** A sentence or two for each code; the names in braces are those of the reason's fields. */
const texts: Readonly<Record<ReasonCode, string>> = {
  "pitch-near": "Close, not equal: {coarse} is {coarser} % coarser than {fine}. Do not mesh them.",
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
  "ring-too-small": "The ring has no more teeth than the gear in it.",
};

/**
 * A reason as a sentence or two: what is needed, what there is, what would have to change.
 *
 * @param lengthText writes a length in millimetres
 *
 * @example
 * const mount = { from: "30.3 mm", to: "31.3 mm" };
 * const { reasons } = fits({ pair: { driver: 15, driven: 68, module: "0.8" }, mount });
 * reasonText(reasons[0]!).slice(0, 76); // => "Needs 33.2 mm between centres. Your slot ends at 31.3 mm, 1.9 mm short: 78 t"
 */
export function reasonText(reason: Reason, lengthText: (length: Bounded) => string = plainLength): string {
  const { label = "wall", pitches = [], coarser = rational(0), needed, available, short } = reason;
  const [first, second] = pitches.map(pitchText);
  const [coarse, fine, by] =
    coarser.sign < 0 ? [second, first, coarser.plus(1).inverse().minus(1)] : [first, second, coarser];
  const [need, have, gap] = [needed, available, short].map((length) => length && lengthText(length));
  const words: Readonly<Record<string, unknown>> = {
    ...reason,
    label: places[label] ?? label,
    first,
    second,
    coarse,
    fine,
    coarser: by.times(100).toDecimal({ maximumFractionDigits: 2 }),
    needed: need,
    available: have,
    short: gap,
  };
  return texts[reason.code].replace(/{(\w+)}/g, (_, name: string) => `${words[name] ?? "…"}`);
}
