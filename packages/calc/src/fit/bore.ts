import type { HoleCircle, Mount } from "../drivetrain/index.js";
import { bounded, type Rational } from "../exact/index.js";
import { sizeOf } from "../gears/index.js";
import { lacking, type Reason } from "./reason.js";

/** A tube that makes a large bore fit a thin shaft. */
export interface Sleeve {
  readonly label?: string;
  readonly bore: string;
  readonly outside: string;
}

/**
 * The diameters that a gear's bore has to do with, as they are written. A driven gear that is screwed to a hub sits on that, and its
 * bore says nothing about the shaft.
 */
export function shaftsOf(
  { shaft, steps = [], drivenShaft, hubHoles }: Pick<Mount, "shaft" | "steps" | "drivenShaft" | "hubHoles">,
  of: "driver" | "driven",
  { circles }: { readonly circles?: readonly HoleCircle[] | undefined },
): readonly string[] {
  if (of === "driver") return shaft === undefined ? steps : [shaft, ...steps];
  return drivenShaft === undefined || hubHoles || circles ? [] : [drivenShaft];
}

/** Bores are sold under shortened names, 3.17 for 3.175 mm: 5 µm apart is one size. */
const sameSize = (a: Rational, b: Rational): boolean => a.minus(b).abs().compare("0.005") <= 0;

/**
 * Whether a bore goes on a shaft, on any of its steps, by itself or with one sleeve between. A refusal tells what is wrong in
 * millimetres: how much too small the bore is, or the wall of the sleeve that would bridge it.
 *
 * @param steps diameters of the shaft, as text with a unit
 * @throws MeshwrightError `out-of-range`, and what cannot be read as a length
 *
 * @example
 * const [reason] = boreReasons("5 mm", ["1/8 in"], [], "driver");
 * [reason!.code, reason!.short!.low.toFraction()]; // => ["bore-too-large", "73/80"]
 */
export function boreReasons(
  bore: string,
  steps: readonly string[],
  sleeves: readonly Sleeve[],
  of: "driver" | "driven",
): Reason[] {
  const hole = sizeOf(bore, "bore");
  const diameters = steps.map((step) => sizeOf(step, "shaft")).sort((a, b) => a.compare(b));
  if (!diameters[0] || diameters.some((step) => sameSize(step, hole))) return [];
  const wallOf = (step: Rational) => bounded(hole.minus(step).over(2));
  for (const step of diameters)
    for (const { label, bore: inside, outside } of sleeves)
      if (sameSize(sizeOf(inside, "sleeve"), step) && sameSize(sizeOf(outside, "sleeve"), hole))
        return [{ code: "sleeve", weight: "information", of, label, short: wallOf(step) }];
  const thinner = diameters.filter((step) => step.compare(hole) < 0).at(-1);
  const needed = bounded(thinner ?? diameters[0]);
  const available = bounded(hole);
  return thinner
    ? lacking("bore-too-large", wallOf(thinner), { of, needed, available })
    : lacking("bore-too-small", needed.minus(available), { of, needed, available });
}
