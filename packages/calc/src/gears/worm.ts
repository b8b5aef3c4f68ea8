import { bounded, rational, type Bounded, type BoundedInput } from "../exact/index.js";
import { checkAbove, checkTeeth, refuse, sizeOf } from "./check.js";
import { enclose, type Approximate } from "./measure.js";
import { moduleOf, pressureAngleOf } from "./pitch.js";
import type { Toothed } from "./toothed.js";

/** A worm and its wheel. */
export interface WormPair extends Toothed {
  /** Threads that run side by side round the worm. */
  readonly starts: number;
  /** Teeth of the wheel. */
  readonly teeth: number;
  /** Reference diameter of the worm. */
  readonly diameter?: string;
}

/**
 * Coefficients on the flanks, each a number or an interval, stated by whoever knows them: none is assumed. What rests sticks
 * more than what runs, and a worm that shakes runs.
 */
export interface WormFriction {
  readonly resting?: BoundedInput;
  readonly running?: BoundedInput;
}

/** Whether the wheel can turn the worm. It is never said that a worm holds. */
export interface WormBack {
  readonly friction: Bounded;
  /** The angle of friction ρ' in degrees. */
  readonly frictionAngle: Bounded;
  readonly verdict: "can be driven back" | "cannot" | "cannot tell";
}

/** What a worm and its wheel come to. */
export interface WormDrive {
  /** Why lead angle and verdicts are absent. */
  readonly notKnown?: "pitch-not-given" | "diameter-not-given";
  /** At the worm's reference diameter, in degrees; absent where module or diameter are not given. */
  readonly leadAngle?: Approximate;
  /** Share of the power that reaches the wheel, from 0 to 1, as the worm runs; absent where no such friction is stated. */
  readonly efficiency?: Bounded;
  readonly atRest?: WormBack;
  readonly running?: WormBack;
  /** Always: friction falls when things shake, wear or warm up. Never trust a worm to hold a load that can hurt someone. */
  readonly caution: "holding-is-not-a-brake";
}

function frictionOf(input: BoundedInput | undefined, at: string): Bounded | undefined {
  if (input === undefined) return undefined;
  const friction = bounded(typeof input === "object" ? input : rational(input, { at }));
  if (friction.low.sign < 0) refuse("out-of-range", at, friction.low.toNumber(), "0 or more");
  if (friction.high.sign) checkAbove(friction.high, at);
  return friction;
}

const degrees = (radians: Approximate): Approximate => (radians * 180) / Math.PI;

/** What a function that only rises, or only falls, makes of an interval. */
function between({ low, high }: Bounded, f: (value: number) => number): Bounded {
  const ends = [low, high].map((end) => f(end.toNumber()));
  return bounded(enclose(Math.min(...ends)).low, enclose(Math.max(...ends)).high);
}

/**
 * Lead angle and efficiency of a worm, and whether its wheel can drive it (DIN 3975). Unrolled, its thread is a slope that
 * rises starts × module × π in one turn, over diameter × π: tan γ = starts × module / diameter. On flanks inclined by the
 * pressure angle friction μ is the slope tan ρ' = μ / cos αn. The worm pushes with efficiency tan γ / tan(γ + ρ'); the wheel
 * pushes back only where γ > ρ'. Resting and running friction are two questions, each with its answer.
 *
 * @throws MeshwrightError `not-a-count`; `out-of-range` where the friction is below zero, or pitch or diameter not above it
 *
 * @example
 * const worm = { starts: 1, teeth: 30, module: 1, diameter: "16 mm" };
 * const { leadAngle, running, atRest } = wormOf(worm, { resting: bounded("0.1", "0.2"), running: bounded("0.05", "0.08") });
 * [leadAngle?.toFixed(2), running?.verdict, atRest?.verdict]; // => ["3.58", "cannot tell", "cannot"]
 * wormOf({ starts: 1, teeth: 30, module: 1 }).notKnown; // => "diameter-not-given"
 */
export function wormOf(worm: WormPair, friction: WormFriction = {}): WormDrive {
  const caution = "holding-is-not-a-brake";
  const starts = checkTeeth(worm.starts, "starts");
  checkTeeth(worm.teeth, "teeth");
  const module = moduleOf(worm);
  const cosine = Math.cos((pressureAngleOf(worm).toNumber() * Math.PI) / 180);
  const resting = frictionOf(friction.resting, "resting");
  const running = frictionOf(friction.running, "running");
  const diameter = worm.diameter === undefined ? undefined : sizeOf(worm.diameter, "diameter");
  if (!module) return { notKnown: "pitch-not-given", caution };
  if (!diameter) return { notKnown: "diameter-not-given", caution };
  const slope = module.times(starts).over(diameter);
  const lead = Math.atan(slope.toNumber());
  // γ > ρ' where tan γ cos αn > μ.
  const push = enclose(cosine).times(slope);
  const back = (coefficient: Bounded): WormBack => {
    const compared = push.compare(coefficient);
    return {
      friction: coefficient,
      frictionAngle: between(coefficient, (value) => degrees(Math.atan(value / cosine))),
      verdict: compared === 1 ? "can be driven back" : compared === undefined ? "cannot tell" : "cannot",
    };
  };
  const efficiencyAt = (coefficient: number): number => {
    const angle = lead + Math.atan(coefficient / cosine);
    return angle < Math.PI / 2 ? Math.max(0, slope.toNumber() / Math.tan(angle)) : 0;
  };
  return {
    leadAngle: degrees(lead),
    ...(running && { efficiency: between(running, efficiencyAt) }),
    ...(resting && { atRest: back(resting) }),
    ...(running && { running: back(running) }),
    caution,
  };
}
