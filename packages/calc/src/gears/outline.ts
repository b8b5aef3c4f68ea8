import { checkNumber, checkTeeth, refuse } from "./check.js";
import { involute } from "./involute.js";
import type { Approximate } from "./measure.js";

/** One gear as it is drawn: its section across the axis. Lengths in millimetres, all of it floating point. */
export interface GearShape {
  readonly teeth: number;
  /** Along the circle: of a helical gear the transverse module. */
  readonly module: number;
  /** Degrees, across the axis; 20 where it is not given. */
  readonly pressureAngle?: number;
  /** In modules. */
  readonly shift?: number;
  /** A ring: its teeth point inwards. */
  readonly internal?: boolean;
  /** Radii, where they are not those of full-depth teeth. */
  readonly tip?: number;
  readonly root?: number;
}

/** The radii of a gear's circles in millimetres. */
export interface GearRadii {
  readonly reference: Approximate;
  readonly base: Approximate;
  readonly tip: Approximate;
  readonly root: Approximate;
}

export interface OutlineOptions {
  /** Where the middle of a tooth stands (of a ring: of a space), as an angle in radians. */
  readonly phase?: number;
  /** Units of the outline for a millimetre. */
  readonly scale?: number;
  /** How many straight pieces make a flank. */
  readonly pieces?: number;
}

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

/** Refuses a shape whose figures are none, before anything is drawn of it. */
function checkShape({ teeth, module, pressureAngle = 20, shift = 0, tip = 1, root = 1 }: GearShape): void {
  checkTeeth(teeth, "teeth");
  checkNumber(module, "module");
  if (!(pressureAngle > 0 && pressureAngle < 90))
    refuse("out-of-range", "pressureAngle", pressureAngle, "more than 0 and less than 90 degrees");
  checkNumber(shift, "shift", "either side");
  checkNumber(tip, "tip");
  checkNumber(root, "root");
}

/**
 * The circles of a gear: full-depth teeth (an addendum of one module, a dedendum of 1¼) unless its shape says otherwise.
 *
 * @throws MeshwrightError `not-a-count`, `out-of-range`; `tooth-missing` where tip and root leave nothing between them
 *
 * @example
 * const { reference, tip, root } = radiiOf({ teeth: 20, module: 1 });
 * [reference, tip, root]; // => [10, 11, 8.75]
 */
export function radiiOf(shape: GearShape): GearRadii {
  checkShape(shape);
  const { teeth, module, pressureAngle = 20, shift = 0, internal } = shape;
  const outward = internal ? -module : module;
  const reference = (module * teeth) / 2;
  const { tip = reference + outward * (1 + shift), root = reference + outward * (shift - 1.25) } = shape;
  const [inner, outer] = internal ? [tip, root] : [root, tip];
  if (!(inner > 0 && outer > inner))
    refuse("tooth-missing", "teeth", `${teeth} teeth between ${root} and ${tip} mm`, "a tooth between root and tip");
  return { reference, base: reference * Math.cos(radians(pressureAngle)), tip, root };
}

/** Where a rising function passes zero between two places, by halving. */
function crossing(f: (at: number) => number, from: number, to: number): number {
  for (let n = 0; n < 40; n++) {
    const middle = (from + to) / 2;
    if (f(middle) > 0) to = middle;
    else from = middle;
  }
  return (from + to) / 2;
}

/** Points on one side of a tooth: radius, and the angle from the tooth's middle. */
type Side = (readonly [radius: number, angle: number])[];

/**
 * One side of a tooth from root to tip. The flank is an involute of the base circle. The root is what the rounded corner of a
 * rack leaves (ISO 53: clearance of a quarter module): the rack's pitch line rolls on the reference circle, and the normal
 * at each point of the root passes through the pitch point. Where the corner reaches below the line of action's foot, it
 * takes the foot of the flank away: the tooth is undercut, and its flank begins where both curves cross.
 */
function sideOf(shape: GearShape, pieces: number): Side {
  const { teeth, module, pressureAngle = 20, shift = 0, internal } = shape;
  const { reference, base, tip, root } = radiiOf(shape);
  const angle = radians(pressureAngle);
  const [sine, tangent] = [Math.sin(angle), Math.tan(angle)];
  const width = module * (Math.PI / 2 + (internal ? -2 : 2) * shift * tangent);
  const atBase = width / (2 * reference) + involute(angle);
  const flank = (radius: number): number => atBase - involute(Math.acos(Math.min(1, base / radius)));

  const side: Side = [];
  let start = Math.max(base, internal ? tip : root);
  if (internal) {
    if (tip < base) side.push([tip, atBase]);
  } else {
    const depth = (reference - root) / module + shift;
    const room = (Math.PI / 4 - depth * tangent) * Math.cos(angle);
    const corner = (module * Math.max(0, Math.min(0.25, room))) / (1 - sine);
    const below = reference - root - corner;
    const beside = module * (Math.PI / 4 - (depth - corner / module) * tangent) - corner / Math.cos(angle);
    /** The point that the corner leaves when its middle is so far along from the pitch point. */
    const foot = (along: number): readonly [number, number] => {
      const more = 1 + corner / Math.hypot(along, below);
      const [x, y] = [along * more, reference - below * more];
      return [Math.hypot(x, y), Math.PI / teeth - Math.atan2(x, y) - (beside - along) / reference];
    };
    if (below > 0) {
      let end = below / tangent;
      if (below + corner * sine > reference * sine ** 2) {
        const lowest = crossing((along) => foot(along)[0] - base, 0, end);
        end = crossing((along) => foot(along)[1] - flank(foot(along)[0]), lowest, end);
      }
      for (let n = 0; n <= pieces; n++) side.push(foot((end * n) / pieces));
      start = side.pop()![0];
    } else if (root < base) side.push([root, atBase]);
  }
  const finish = internal ? root : tip;
  // Even steps of the roll angle, to which the length of the curve grows with the square.
  const [first, last] = [start, finish].map((radius) => Math.sqrt(Math.max(0, (radius / base) ** 2 - 1))) as [
    number,
    number,
  ];
  for (let n = 0; n <= pieces; n++) {
    const radius = base * Math.hypot(1, first + ((last - first) * n) / pieces);
    side.push([radius, Math.max(0, flank(radius))]);
  }
  return side;
}

/**
 * A gear's outline around its axis, as points in order of rising angle; the last joins the first.
 *
 * @throws MeshwrightError as {@link radiiOf}
 */
export function outlinePoints(shape: GearShape, options: OutlineOptions = {}): (readonly [x: number, y: number])[] {
  const { phase = 0, scale = 1, pieces = 6 } = options;
  checkNumber(phase, "phase", "either side");
  checkNumber(scale, "scale");
  const side = sideOf(shape, checkTeeth(pieces, "pieces"));
  const otherSide = [...side].reverse();
  const points: (readonly [number, number])[] = [];
  const put = (radius: number, angle: number): void => {
    points.push([scale * radius * Math.cos(angle), scale * radius * Math.sin(angle)]);
  };
  for (let n = 0; n < shape.teeth; n++) {
    const middle = phase + (2 * Math.PI * n) / shape.teeth;
    for (const [radius, angle] of side) put(radius, middle - angle);
    for (const [radius, angle] of otherSide) put(radius, middle + angle);
  }
  return points;
}

/** A gear's outline as path data around its axis: involute flanks between tip and root. */
export const gearOutline = (shape: GearShape, options?: OutlineOptions): string =>
  `M${outlinePoints(shape, options)
    .map(([x, y]) => `${Number(x.toFixed(2))} ${Number(y.toFixed(2))}`)
    .join("L")}Z`;

/**
 * Where a gear must stand so that its teeth meet the spaces of one that drives it: its phase, in radians.
 *
 * @param phase of the driver: where the middle of one of its teeth stands
 * @param towards the direction from the driver's axis to the other's, in radians
 */
export function meshingPhase(driver: GearShape, phase: number, driven: GearShape, towards: number): number {
  checkShape(driver);
  checkShape(driven);
  checkNumber(phase, "phase", "either side");
  checkNumber(towards, "towards", "either side");
  const ratio = driver.teeth / driven.teeth;
  // Both lie on the same side of the point where they meet, and turn the same way.
  if (driven.internal) return towards + Math.PI + ratio * (phase - towards - Math.PI);
  return towards + Math.PI - Math.PI / driven.teeth + ratio * (towards - phase);
}
