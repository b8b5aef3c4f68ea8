import type { Mount, Part } from "../drivetrain/index.js";
import { lengthOf } from "../exact/index.js";
import { boreReasons, hubReasons, type Reason } from "../fit/index.js";

/** What a gear is carried by. */
export type Carrier = Pick<Mount, "shaft" | "steps" | "hubHoles">;

/** How a gear is carried: by itself, by a part between, or not at all, and what is to be said about it. */
export interface Carried {
  readonly reasons: readonly Reason[];
  /** The sleeve or plate that it takes: of those that do, the first. */
  readonly by?: Part;
  /** The shaft that a sleeve would go on, where a sleeve is what is lacking or used. */
  readonly shaft?: string;
}

const alone: Carried = { reasons: [] };

/**
 * How the driver goes on its shaft.
 *
 * @param sleeves those that may be used, best first
 */
export function onShaft({ bore }: Part, { shaft, steps = [] }: Carrier, sleeves: readonly Part[]): Carried {
  const shafts = shaft === undefined ? steps : [shaft, ...steps];
  if (bore === undefined) return alone;
  const [reason] = boreReasons(bore, shafts, [], "driver");
  if (!reason) return alone;
  for (const part of sleeves) {
    const { bore: inside, outside } = part;
    if (inside === undefined || outside === undefined) continue;
    const [carried] = boreReasons(bore, shafts, [{ label: part.id, bore: inside, outside }], "driver");
    if (carried?.code === "sleeve") return { reasons: [carried], by: part, shaft: inside };
  }
  if (reason.code !== "bore-too-large") return { reasons: [reason] };
  const size = (text: string) => lengthOf(text, "shaft");
  const thinner = shafts.filter((step) => size(step).compare(lengthOf(bore, "bore")) < 0);
  const [thickest] = [...thinner].sort((a, b) => size(b).compare(size(a)));
  return { reasons: [reason], shaft: thickest! };
}

/**
 * How the driven gear is screwed to its hub.
 *
 * @param plates those that may be used, best first
 */
export function onHub({ circles }: Part, { hubHoles }: Carrier, plates: readonly Part[]): Carried {
  if (!circles || !hubHoles) return alone;
  const reasons = hubReasons(circles, hubHoles, [], "driven");
  if (!reasons.length) return alone;
  for (const part of plates) {
    if (!part.circles) continue;
    const [carried] = hubReasons(circles, hubHoles, [{ label: part.id, circles: part.circles }], "driven");
    if (carried?.code === "plate") return { reasons: [carried], by: part };
  }
  return { reasons };
}
