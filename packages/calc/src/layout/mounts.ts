import type { Mount } from "../drivetrain/index.js";
import { bounded, lengthOf } from "../exact/index.js";
import { type Fit, holesOf, limitsOf, tightest, withKnownShafts } from "../fit/index.js";
import type { Form, ToothPair } from "../gears/index.js";
import type { PlacedMount, Span } from "./placed.js";

/** Reasons that speak of the centre distance, and the end of the mount that they meet. */
export const centreCodes = { "too-close": "from", "too-far": "to", "no-hole": "hole" } as const;

/** A mount with the pair that is in it, as a picture shows them. */
export function mountOf(span: Span, pair: ToothPair, form: Form, mount: Mount, fit: Fit): PlacedMount {
  const known = withKnownShafts(mount);
  const limits = limitsOf(known, pair);
  const [from, to] = [tightest(limits, "from"), tightest(limits, "to")];
  const reason = fit.reasons.find(({ code }) => code in centreCodes);
  const { pivot, walls = [], shaft, drivenShaft } = mount;
  return {
    span,
    ...(span.driver.stageLabel !== undefined && { stageLabel: span.driver.stageLabel }),
    fit,
    ...(from !== undefined && { from }),
    ...(to !== undefined && { to }),
    ...(shaft !== undefined && { shaft: lengthOf(shaft, "shaft").toNumber() }),
    ...(drivenShaft !== undefined && { drivenShaft: lengthOf(drivenShaft, "drivenShaft").toNumber() }),
    holes: holesOf(known).map((hole) => bounded(hole)),
    ...(pivot && {
      pivot: { distance: lengthOf(pivot.distance).toNumber(), arm: lengthOf(pivot.arm).toNumber() },
    }),
    ...(reason?.short !== undefined && {
      short: { by: reason.short, end: centreCodes[reason.code as keyof typeof centreCodes] },
    }),
    walls: walls
      .filter(({ of = "driven" }) => form[of].teeth > 0)
      .map(({ label, of = "driven", distance: text, gap: least = 0 }) => {
        const distance = bounded(lengthOf(text));
        const gap = distance.minus(form[of].tip.times("1/2"));
        const needed = bounded(lengthOf(least));
        const compared = gap.compare(needed);
        return {
          ...(label !== undefined && { label }),
          wheel: span[of],
          distance,
          gap,
          needed,
          kept: compared === undefined ? undefined : compared >= 0,
        };
      }),
  };
}
