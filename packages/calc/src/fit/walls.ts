import type { Wall } from "../drivetrain/index.js";
import { bounded, ratioOf } from "../exact/index.js";
import { transverse, type Form, ceilOf, depthOf, sizeOf } from "../gears/index.js";
import { lacking, type Reason } from "./reason.js";

/**
 * Whether the tips keep the gap they need to whatever stands around the pair: a skid, a cover, a shaft, each at its distance
 * from the axis of one of the two gears (the driven one, where it is not said). How far a ring reaches outwards is not known.
 */
export const wallReasons = (walls: readonly Wall[], form: Form): Reason[] =>
  walls.flatMap(({ label, of = "driven", distance, gap }) => {
    const { teeth, tip } = form[of];
    if (teeth < 0) return [{ code: "wall", weight: "unknown", of, label }];
    const needed = bounded(depthOf(gap ?? 0, "gap"));
    const available = bounded(sizeOf(distance, "distance")).minus(tip.times("1/2"));
    const short = needed.minus(available);
    // A tooth less takes half a module off the tip radius.
    const fewer = ceilOf(short.over(transverse(form, ratioOf(1, 2))).high);
    return lacking("wall", short, { of, label, needed, available, teeth: teeth - fewer });
  });
