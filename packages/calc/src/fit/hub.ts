import type { HoleCircle } from "../drivetrain/index.js";
import { bounded, type Bounded, rational, type Rational } from "../exact/index.js";
import { checkTeeth, enclose, sizeOf } from "../gears/index.js";
import { apart } from "./apart.js";
import type { Reason } from "./reason.js";

export type { HoleCircle } from "../drivetrain/index.js";

/** A disc between a gear and a hub whose holes do not match, with circles for both. */
export interface AdapterPlate {
  readonly label?: string;
  readonly circles: readonly HoleCircle[];
}

/**
 * The diameter of a circle of holes, in millimetres: as it is given, or from the distance c of neighbours, D = c / sin(180° / n),
 * exact for two and six holes. Undefined where nothing tells it.
 *
 * @throws MeshwrightError `not-a-count`, `out-of-range`, and what cannot be read as a length
 *
 * @example
 * circleDiameter({ count: 6, neighbours: "10 mm" })!.toJSON(); // => { low: "20/1", high: "20/1" }
 * circleDiameter({ count: 3, neighbours: "14.734 mm" })!.low.toDecimal(); // => "17.013"
 */
export function circleDiameter({ count, diameter, neighbours }: HoleCircle): Bounded | undefined {
  checkTeeth(count, "circles");
  if (diameter !== undefined) return bounded(sizeOf(diameter, "circles"));
  if (neighbours === undefined || count === 1) return undefined;
  const apart = sizeOf(neighbours, "circles");
  if (count === 2) return bounded(apart);
  return count === 6 ? bounded(apart.times(2)) : enclose(1 / Math.sin(Math.PI / count)).times(apart);
}

/**
 * How far two circles may differ where nobody says how wide holes and screws are: half of the tenth of a millimetre that drawings
 * and callipers round a circle to. The closest clearance holes (ISO 273, fine) leave their screws twice that.
 */
const roundedOff = "0.05";

/**
 * By how much the diameters of two circles may differ so that screws go through both: by what the holes of either are wider than
 * the screws (each half of it lies on either side of a screw). A hole that is narrower than its screw, with none wider to make up
 * for it, lets none through.
 */
function playOf(...circles: readonly [HoleCircle, HoleCircle]): Rational {
  const screws = circles.flatMap(({ screw }) => (screw === undefined ? [] : sizeOf(screw, "circles")));
  const screw = screws.sort((a, b) => b.compare(a))[0];
  const plays = circles.flatMap(({ hole }) =>
    hole === undefined || !screw ? [] : sizeOf(hole, "circles").minus(screw),
  );
  const wide = plays.filter((play) => play.sign >= 0);
  if (wide.length) return wide.reduce((a, b) => a.plus(b));
  return plays.sort((a, b) => b.compare(a))[0] ?? rational(roundedOff);
}

/**
 * How much two circles miss each other by, in millimetres: zero or less where they match. Undefined where one is not known;
 * `"counts"` where the one with fewer holes does not meet holes of the other with all of them.
 */
function missOf(one: HoleCircle, other: HoleCircle): Bounded | "counts" | undefined {
  const [first, second] = [circleDiameter(one), circleDiameter(other)];
  if (one.count % other.count && other.count % one.count) return "counts";
  return first && second && apart(first, second).abs().minus(playOf(one, other));
}

/** Whether any circle of some meets one of others; undefined where that is not known. */
function meet(some: readonly HoleCircle[], others: readonly HoleCircle[]): boolean | undefined {
  const misses = some.flatMap((one) => others.map((other) => missOf(one, other)));
  if (misses.some((miss) => miss !== undefined && miss !== "counts" && miss.high.sign <= 0)) return true;
  return misses.some((miss) => miss === undefined || (miss !== "counts" && miss.low.sign <= 0)) ? undefined : false;
}

/** The circles that come nearest to each other, of those whose counts go together: what would have to change. */
function nearest(gear: readonly HoleCircle[], hub: readonly HoleCircle[]): Partial<Reason> {
  const pairs = gear.flatMap((available) =>
    hub.flatMap((needed) => {
      const short = missOf(available, needed);
      return short === undefined || short === "counts" ? [] : { available, needed, short };
    }),
  );
  const [first] = pairs.sort((a, b) => a.short.low.compare(b.short.low));
  return first
    ? { needed: circleDiameter(first.needed)!, available: circleDiameter(first.available)!, short: first.short }
    : {};
}

/**
 * Whether a gear can be screwed to a hub: by any of its circles on any of the hub's, or by an adapter plate that has one
 * circle for the gear and another for the hub. Circles match within what their holes are wider than the screws, where both
 * are said.
 *
 * @throws MeshwrightError `not-a-count`, `out-of-range`, and what cannot be read as a length
 *
 * @example
 * const hub = [{ count: 3, diameter: "17 mm", screw: "3 mm" }];
 * hubReasons([{ count: 3, diameter: "17.2 mm", hole: "3.2 mm" }], hub, [], "driven"); // => []
 * hubReasons([{ count: 3, diameter: "17.3 mm", hole: "3.2 mm" }], hub, [], "driven")[0]!.short!.low.toDecimal(); // => "0.1"
 */
export function hubReasons(
  gear: readonly HoleCircle[],
  hub: readonly HoleCircle[],
  plates: readonly AdapterPlate[],
  of: "driver" | "driven",
): Reason[] {
  const met = meet(gear, hub);
  if (met) return [];
  const plate = plates.find(({ circles }) =>
    circles.some((one) => meet(gear, [one]) && circles.some((other) => other !== one && meet(hub, [other]))),
  );
  if (plate) return [{ code: "plate", weight: "information", of, label: plate.label }];
  if (met === undefined) return [{ code: "hub-holes", weight: "unknown", of }];
  return [{ code: "hub-holes", weight: "refusal", of, ...nearest(gear, hub) }];
}
