import type { Mount, Part } from "../drivetrain/index.js";
import { lengthOf } from "../exact/index.js";
import { boreReasons, hubReasons, reachReasons, type Reason, shaftsOf } from "../fit/index.js";

/** What holds the gears of a pair. */
type Holder = Pick<Mount, "shaft" | "steps" | "drivenShaft" | "hubHoles" | "reach" | "line">;

/** How a gear is carried: by itself, by a part between, or not at all, and what is to be said about it. */
export interface Carried {
  readonly reasons: readonly Reason[];
  /** The sleeve or plate that it takes: of those that do, the first. */
  readonly by?: Part;
  /** The shaft that a sleeve would go on, where a sleeve is what is lacking or used. */
  readonly shaft?: string;
}

const alone: Carried = { reasons: [] };

/** How a gear goes on its shaft, with a sleeve of those among the adapters where it needs one. */
function onShaft(part: Part, holder: Holder, adapters: readonly Part[], of: "driver" | "driven"): Carried {
  const { bore } = part;
  const shafts = shaftsOf(holder, of, part);
  if (bore === undefined) return alone;
  const [reason] = boreReasons(bore, shafts, [], of);
  if (!reason) return alone;
  for (const sleeve of adapters) {
    const { is, bore: inside, outside } = sleeve;
    if (is !== "sleeve" || inside === undefined || outside === undefined) continue;
    const [carried] = boreReasons(bore, shafts, [{ label: sleeve.id, bore: inside, outside }], of);
    if (carried?.code === "sleeve") return { reasons: [carried], by: sleeve, shaft: inside };
  }
  if (reason.code !== "bore-too-large") return { reasons: [reason] };
  const size = (text: string) => lengthOf(text, "shaft");
  const thinner = shafts.filter((step) => size(step).compare(lengthOf(bore, "bore")) < 0);
  const [thickest] = [...thinner].sort((a, b) => size(b).compare(size(a)));
  return { reasons: [reason], shaft: thickest! };
}

/** How a gear is screwed to its hub, with a plate of those among the adapters where it needs one. */
function onHub({ circles }: Part, { hubHoles }: Holder, adapters: readonly Part[]): Carried {
  if (!circles || !hubHoles) return alone;
  const reasons = hubReasons(circles, hubHoles, [], "driven");
  if (!reasons.length) return alone;
  for (const part of adapters) {
    if (part.is !== "plate" || !part.circles) continue;
    const [carried] = hubReasons(circles, hubHoles, [{ label: part.id, circles: part.circles }], "driven");
    if (carried?.code === "plate") return { reasons: [carried], by: part };
  }
  return { reasons };
}

/**
 * How a driver, or a set by its driver, is held: by its bore, and in line with its partner.
 *
 * @param adapters sleeves and plates that may be used, best first
 */
export function asDriver(part: Part, holder: Holder, adapters: readonly Part[]): Carried {
  const on = onShaft(part, holder, adapters, "driver");
  const { reach, line } = holder;
  return reach === undefined ? on : { ...on, reasons: [...on.reasons, ...reachReasons(part, reach, line, "driver")] };
}

/**
 * How a driven gear is held: by its hub, or on a shaft of its own. Of what is sold as a set nobody knows the second bore: the one
 * that is marked is its driver's.
 *
 * @param adapters sleeves and plates that may be used, best first
 */
export function asDriven(part: Part, holder: Holder, adapters: readonly Part[]): Carried {
  const hub = onHub(part, holder, adapters);
  return part.driver !== undefined || hub.reasons.length ? hub : onShaft(part, holder, adapters, "driven");
}
