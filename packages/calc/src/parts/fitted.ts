import { labelAt, stagesOf, type Build, type Part } from "../drivetrain/index.js";
import { lengthOf, rational, ratioOf, type Rational } from "../exact/index.js";
import { comparePitch, formOf, type Toothed, type ToothPair } from "../gears/index.js";
import { drawings, findingOf, type Finding, type FindingValues, type Stage } from "../stages/index.js";
import { answers, isSameAngle, isSameLength, isSameRatio } from "./needs.js";
import { type Need, type Place, placesOf } from "./places.js";
import { fittedTo, isOfForm } from "./stage-needs.js";

type Said = string | number | undefined;

/** What a part has, and what a stage has in its place. */
type Difference = readonly [field: string, found: Said, expected: Said];

const pitchText = ({ module, diametralPitch }: Toothed): string | undefined =>
  module !== undefined ? String(module) : diametralPitch !== undefined ? `${diametralPitch} DP` : undefined;

/** The fields of which a part and a place's need may both speak, the weightiest first, and whether they say the same of it. */
function comparedBy(part: Part, need: Need): readonly (readonly [agrees: boolean, difference: Difference])[] {
  const { pitch = {}, beltPitch, value } = need;
  const own = part as Toothed;
  const { coarser } = comparePitch(own, pitch) ?? {};
  const counts = (["teeth", "driver", "driven"] as const).map((field) => {
    const [found, expected] = [part[field], need[field]];
    return [expected === undefined || found === expected, [field, found, expected]] as const;
  });
  return [
    ...counts,
    [value === undefined || isSameRatio(part.value, value), ["value", part.value, value]],
    [isOfForm(part, need), ["form", part.form, need.form]],
    [!coarser?.sign, ["pitch", pitchText(own), pitchText(pitch)]],
    [!part.pitch || !beltPitch || isSameLength(part.pitch, beltPitch), ["pitch", part.pitch, beltPitch]],
    [isSameAngle(own, pitch), ["pressureAngle", own.pressureAngle, pitch.pressureAngle]],
  ];
}

/** In what a part differs from all that a stage takes: from what is of its kind where there is such, nothing where there is none. */
function differenceFrom(part: Part, needs: readonly Need[]): Difference | undefined {
  const alike = needs.filter(({ is }) => is.includes(part.is));
  if (!alike.length || alike.some((need) => answers(part, need, true))) return undefined;
  const differing = alike.map((need) => {
    const all = comparedBy(part, need);
    const n = all.findIndex(([agrees]) => !agrees);
    return { n, difference: all[n]?.[1] };
  });
  // The one that agrees in most.
  return differing.sort((x, y) => y.n - x.n)[0]!.difference;
}

/** Makers print hundredths of a millimetre. */
const isPrintedSame = (one: Rational, other: Rational): boolean => one.minus(other).abs().compare(ratioOf(1, 200)) <= 0;

/** In what a gear's marked shift or tip diameter differs from that of its place. What is sold together says nothing about them. */
function markedOtherwise(part: Part, stage: Stage, { each }: Place): Difference | undefined {
  const pairs = drawings[stage.kind](stage)?.pairs;
  if (pairs?.length !== 1) return undefined;
  const pair = pairs[0] as ToothPair;
  const sides = (["driver", "driven"] as const).filter((_, n) => each[n] && answers(part, each[n], true));
  const { shift, tipDiameter } = part;
  if (shift !== undefined) {
    const shifts = sides.map((side) => pair[`${side}Shift`] ?? 0);
    if (shifts.length && !shifts.some((one) => rational(one).equals(rational(shift))))
      return ["shift", String(shift), String(shifts[0])];
  }
  if (tipDiameter === undefined) return undefined;
  const form = formOf(pair);
  const tips = sides.flatMap((side) => {
    const said = pair[`${side}Tip`];
    return said !== undefined ? lengthOf(said) : typeof form === "string" ? [] : form[side].tip.low;
  });
  if (!tips.length || tips.some((tip) => isPrintedSame(tip, lengthOf(tipDiameter)))) return undefined;
  return ["tipDiameter", tipDiameter, `${tips[0]!.toDecimal({ maximumFractionDigits: 2 })} mm`];
}

/**
 * Parts that a stage names as fitted and that are not what it takes: of another count, form, pitch or angle, or shifted or turned
 * down otherwise. Its figures go by what the stage says, so they are not those of the parts.
 *
 * @example
 * const parts = [{ id: "p14", is: "pinion", teeth: 14 } as const];
 * const stages = [{ id: "spur", kind: "pair", driver: 15, driven: 62, fitted: ["p14"] } as const];
 * const build = parseBuild({ format: "meshwright-build/1", stages, outputs: [{ id: "rear", stages: [] }], parts });
 * fittedFindings(build).map(({ code, values }) => [code, values.found, values.expected]); // => [["fitted-differs", 14, 15]]
 */
export function fittedFindings(build: Build): Finding[] {
  const named = stagesOf(build).filter(({ stage }) => fittedTo(stage).length);
  if (!named.length) return [];
  const places = new Map(placesOf(build).map((place) => [place.id, place]));
  const parts = new Map(build.parts?.map((part) => [part.id, part]));
  return named.flatMap(({ stage, pointer }) => {
    const place = places.get(stage.id)!;
    const needs = [...place.each, ...(place.whole ? [place.whole] : [])];
    return fittedTo(stage).flatMap((id, n) => {
      const part = parts.get(id);
      const difference = part && (differenceFrom(part, needs) ?? markedOtherwise(part, stage, place));
      if (!difference) return [];
      const [field, found = { term: "nothing" } as const, expected] = difference;
      const values: FindingValues = { part: part.name ?? id, label: labelAt(build, stage.id), field, found, expected };
      return [findingOf("warning", "meaning", "fitted-differs", `${pointer}/fitted/${n}`, values)];
    });
  });
}
