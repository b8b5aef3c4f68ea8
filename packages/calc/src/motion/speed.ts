import type { Build, Motor, Wheel } from "../drivetrain/index.js";
import { rational, type Bounded, type Rational, type RationalInput } from "../exact/index.js";
import { rolledBy, type OutputEvaluation } from "../evaluate/index.js";
import { packVolts } from "./battery.js";
import { shareOf } from "./share.js";
import { speedFigures, type SpeedUnit } from "./units.js";

/** What a speed takes for granted. */
export type Assumption =
  | "kv-as-stated"
  | "no-load"
  | "no-losses"
  | "no-slip"
  | "volts-as-stated"
  | "nominal-volts"
  | "full-charge"
  | "loaded-as-stated"
  | "diameter-unloaded"
  | "diameter-loaded"
  | "travel-measured";

/** The share of the free speed that is left under load, as somebody measured or claims it: none is assumed. */
export interface Loaded {
  readonly from: RationalInput;
  readonly to: RationalInput;
}

/** What a speed is asked for. */
export interface SpeedQuestion {
  readonly motor: Motor;
  readonly volts: RationalInput;
  /** Motor turns for one wheel turn. */
  readonly reduction: Bounded | RationalInput;
  readonly wheel: Wheel;
  readonly loaded?: Loaded;
}

/** A speed with all that it takes for granted. Intervals, with equal ends where exact; π is enclosed to 40 digits. */
export interface WheelSpeed extends Readonly<Record<SpeedUnit, Bounded>> {
  readonly volts: Rational;
  readonly motorRpm: Bounded;
  readonly wheelRpm: Bounded;
  readonly assumptions: readonly Assumption[];
}

/**
 * Turns a minute of a motor without load: kV times volts. Undefined without kV: windings ("turns") of a brushed motor
 * are never turned into one.
 */
export const freeSpeed = ({ kv }: Motor, volts: RationalInput): Rational | undefined =>
  kv === undefined ? undefined : rational(kv, { at: "kv" }).times(volts);

/**
 * How fast a wheel turns and rolls at some volts. Undefined where the motor's kV is not known.
 *
 * @throws MeshwrightError `out-of-range` where the loaded share is not above 0 and up to 1
 *
 * @example
 * const speed = speedAt({ motor: { kv: 100 }, volts: 1, reduction: 1, wheel: { diameter: "4 in" } })!;
 * speed.feetPerSecond.low.toDecimal({ maximumFractionDigits: 3 }); // => "1.745"
 */
export function speedAt({ motor, volts, reduction, wheel, loaded }: SpeedQuestion): WheelSpeed | undefined {
  const free = freeSpeed(motor, volts);
  if (!free) return undefined;
  const share = shareOf(loaded ? { low: loaded.from, high: loaded.to } : 1, "loaded");
  const motorRpm = share.times(free);
  const wheelRpm = motorRpm.over(reduction);
  const measure = wheel.travel ? "travel-measured" : wheel.loadedDiameter ? "diameter-loaded" : "diameter-unloaded";
  return {
    volts: rational(volts),
    motorRpm,
    wheelRpm,
    ...speedFigures(wheelRpm.times(rolledBy(wheel).bounds)),
    assumptions: [
      "kv-as-stated",
      "volts-as-stated",
      ...(loaded ? (["loaded-as-stated"] as const) : (["no-load", "no-losses"] as const)),
      "no-slip",
      measure,
    ],
  };
}

/** Speeds of one output, or why there are none. */
export interface Speeds {
  readonly notKnown?: "not-driven" | "wheel-not-given" | "battery-not-known" | "kv-not-given" | "turns-are-not-kv";
  readonly nominal?: WheelSpeed;
  readonly full?: WheelSpeed;
  /** At nominal volts with the stated share of the free speed. */
  readonly loaded?: WheelSpeed;
}

/** The speeds of a build's output at nominal and full volts, and loaded where it is stated what load leaves. */
export function speedsOf(build: Build, output: OutputEvaluation, loaded?: Loaded): Speeds {
  const { wheel, motor = build.motor ?? {} } = output.output;
  const { bounds } = output;
  const pack = packVolts(build.battery ?? {});
  if (!bounds) return { notKnown: "not-driven" };
  if (!wheel) return { notKnown: "wheel-not-given" };
  if (motor.kv === undefined) return { notKnown: motor.turns === undefined ? "kv-not-given" : "turns-are-not-kv" };
  if (!pack) return { notKnown: "battery-not-known" };
  const at = (volts: Rational, assumption: Assumption, share?: Loaded): WheelSpeed => {
    const speed = speedAt({ motor, volts, reduction: bounds, wheel, ...(share && { loaded: share }) })!;
    return { ...speed, assumptions: speed.assumptions.map((one) => (one === "volts-as-stated" ? assumption : one)) };
  };
  return {
    nominal: at(pack.nominal, "nominal-volts"),
    full: at(pack.full, "full-charge"),
    ...(loaded && { loaded: at(pack.nominal, "nominal-volts", loaded) }),
  };
}
