import type { Mount } from "../drivetrain/index.js";
import type { Bounded } from "../exact/index.js";
import { type Toothed, formOf, type ToothPair, meshOf, type Mesh, comparePitch } from "../gears/index.js";
import { boreReasons, shaftsOf, type Sleeve } from "./bore.js";
import { contactReasons, unformed } from "./contact.js";
import { hubReasons, type AdapterPlate, type HoleCircle } from "./hub.js";
import { setCentre } from "./mount.js";
import { reachReasons, type AxialBody } from "./reach.js";
import type { Reason } from "./reason.js";
import { wallReasons } from "./walls.js";

/** One gear as a part: what is known of it. Its pitch where it has one of its own. */
export interface GearBody extends AxialBody, Toothed {
  readonly bore?: string;
  readonly circles?: readonly HoleCircle[];
}

/** What the pair has to fit: a build's mount. The shaft carries the driver, the hub the driven gear. */
export type FitMount = Toothed & Omit<Mount, "stage">;

/** Which pair is to be fitted, and into what. */
export interface FitQuestion {
  readonly pair: ToothPair;
  readonly mount?: FitMount;
  readonly driver?: GearBody;
  readonly driven?: GearBody;
  /** Sleeves and plates that may be used. */
  readonly sleeves?: readonly Sleeve[];
  readonly plates?: readonly AdapterPlate[];
}

/** Whether a pair fits, with all that stands against it. */
export interface Fit {
  readonly verdict: "fits" | "does not fit" | "cannot tell";
  readonly reasons: readonly Reason[];
  /** The smallest opening of those wanted that the mount can set, in millimetres. */
  readonly opening?: Bounded;
  /** The centre distance at that opening, in millimetres: how the axes are set. */
  readonly centre?: Bounded;
  /** The pair at that opening: centre distance, backlash, contact ratio. */
  readonly mesh: Mesh;
}

/** A gear's own pitch, or the pair's. */
const pitchOf = (pair: ToothPair, gear: GearBody = {}): Toothed => {
  const { module, diametralPitch } = gear.module === undefined && gear.diametralPitch === undefined ? pair : gear;
  return { module, diametralPitch, pressureAngle: gear.pressureAngle ?? pair.pressureAngle } as Toothed;
};

function pitchReasons(...pitches: [Toothed, Toothed]): Reason[] {
  const { pitch, coarser, sameAngle } = comparePitch(...pitches) ?? {};
  if (!pitch || pitch === "same") return [];
  return [{ code: sameAngle ? `pitch-${pitch}` : "angle-different", weight: "refusal", pitches, coarser: coarser! }];
}

/**
 * Whether two gears mesh and fit: one answer with its reasons. Looked at are: pitch; the centre distance with its opening
 * against the mount (slot, known pair, tooth sums, pivot, holes); walls; bores and shafts, with sleeves; hub holes, with
 * plates; width and facing on the shaft; undercut and returning teeth as information. What is not given is not looked at.
 *
 * "cannot tell" where something that the answer hangs on is not known: angle gears have no spur centre distance, and a
 * pair without a pitch has none at all.
 *
 * @throws MeshwrightError `not-a-count`, `out-of-range`, `ends-reversed`, and where a number or a length cannot be read
 *
 * @example
 * const mount = { knownPair: [23, 53], closer: "0.1 mm", farther: "0.9 mm" } as const;
 * const { verdict, reasons } = fits({ pair: { driver: 15, driven: 68, module: "0.8" }, mount });
 * [verdict, reasons[0]!.code, reasons[0]!.short!.low.toFraction()]; // => ["does not fit", "too-far", "19/10"]
 */
export function fits({ pair: asked, mount, driver, driven, sleeves = [], plates = [] }: FitQuestion): Fit {
  const pitch = pitchOf(asked, driver);
  const pair = { ...asked, ...pitch };
  const reasons = pitchReasons(pitch, pitchOf(asked, driven));
  const { hubHoles, reach, line, walls = [] } = mount ?? {};
  const form = formOf(pair);
  let set: Pick<Fit, "opening" | "centre"> = {};
  if (typeof form === "string") reasons.push(unformed(form, pair));
  else {
    const { opening, reasons: met } = setCentre(mount ?? {}, pair, form.centre);
    set = { opening, centre: pair.internal ? form.centre.minus(opening) : form.centre.plus(opening) };
    reasons.push(...met, ...wallReasons(walls, form));
  }
  if (driver?.bore !== undefined)
    reasons.push(...boreReasons(driver.bore, shaftsOf(mount ?? {}, "driver", driver), sleeves, "driver"));
  if (driven?.bore !== undefined)
    reasons.push(...boreReasons(driven.bore, shaftsOf(mount ?? {}, "driven", driven), sleeves, "driven"));
  if (driven?.circles && hubHoles) reasons.push(...hubReasons(driven.circles, hubHoles, plates, "driven"));
  if (driver && reach !== undefined) reasons.push(...reachReasons(driver, reach, line, "driver"));
  const mesh = meshOf(pair, set.opening?.low);
  if (typeof form !== "string" && set.opening) reasons.push(...contactReasons(pair, form, mesh, set.opening));
  for (const of of ["driver", "driven"] as const)
    // Nearly every pinion that is sold is a little undercut, and runs.
    if (mesh[of]?.shortened) reasons.push({ code: "undercut", weight: "information", of });
  if (!mesh.hunting) reasons.push({ code: "same-teeth-meet", weight: "information", teeth: mesh.driverTurns });
  const has = (weight: Reason["weight"]): boolean => reasons.some((reason) => reason.weight === weight);
  return {
    verdict: has("refusal") ? "does not fit" : has("unknown") ? "cannot tell" : "fits",
    reasons,
    ...set,
    mesh,
  };
}
