import type { Bounded } from "../exact/index.js";
import { enclose, type Form, meshOf, type Mesh, type NotKnown, type ToothPair, widestOpening } from "../gears/index.js";
import type { Reason } from "./reason.js";

/** So many more teeth are tried on a ring that is too small. */
const ringsTried = 60;

/** The least ring that the gear can turn in, of those a little larger. */
function leastRing(pair: ToothPair): number | undefined {
  for (let more = 1; more <= ringsTried; more++) {
    const driven = Math.max(pair.driver, pair.driven - 1) + more;
    const { fouls, notKnown } = meshOf({ ...pair, driven });
    if (fouls === false && notKnown === undefined) return driven;
    if (notKnown === "pitch-not-given") break;
  }
  return undefined;
}

/** A ring that its gear cannot turn in, and the count that would do where there is one near by. */
function ringTooSmall(pair: ToothPair): Reason {
  const teeth = leastRing(pair);
  return { code: "ring-too-small", weight: "refusal", of: "driven", ...(teeth !== undefined && { teeth }) };
}

/** What a pair without geometry comes to: a ring must be larger than its gear; all else is not known. */
export const unformed = (code: NotKnown, pair: ToothPair): Reason =>
  code === "ring-too-small" ? ringTooSmall(pair) : { code, weight: "unknown" };

/** What speaks against a pair at its opening: teeth that part too soon, flanks that do not meet, a ring's that collide. */
export function contactReasons(pair: ToothPair, form: Form, mesh: Mesh, opening: Bounded): Reason[] {
  if (mesh.fouls) return [ringTooSmall(pair)];
  // Helical teeth follow each other along their width as well.
  const least = pair.helixAngle === undefined ? 1 : 0;
  const isApart = mesh.notKnown === "no-line-of-action";
  if (!isApart && mesh.contactRatio! >= least) return [];
  const widest = widestOpening(form, least, opening.low.toNumber());
  const needed = widest === undefined ? undefined : enclose(widest);
  const lengths = needed && { needed, available: opening, short: opening.minus(needed) };
  return [{ code: isApart ? "no-line-of-action" : "no-contact", weight: "refusal", ...lengths }];
}
