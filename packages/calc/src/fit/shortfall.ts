import { type Bounded, rational, type Rational } from "../exact/index.js";
import type { Fit } from "./fits.js";
import type { Reason } from "./reason.js";

/** The first thing that has to change before a pair fits. */
export interface Shortfall {
  readonly reason: Reason;
  /** Whether it has to change, or whether that cannot be told. */
  readonly certain: boolean;
  /** By how much: a length in millimetres, a share of the pitch, or degrees; absent where it is not a matter of more or less. */
  readonly by?: { readonly length: Bounded } | { readonly share: Rational } | { readonly degrees: Rational };
}

function by({ code, short, coarser, pitches }: Reason): Shortfall["by"] {
  if (code === "angle-different") {
    const [first, second] = pitches!.map(({ pressureAngle }) => rational(pressureAngle ?? 20));
    return { degrees: first!.minus(second!).abs() };
  }
  if (coarser) return { share: coarser.abs() };
  return short && { length: short };
}

/**
 * What has to change first, and by how much: of all refusals the first, whatever it is about (pitch, centre distance, wall, bore,
 * holes, reach); where nothing refuses, the first thing that is not known. Undefined exactly where the pair fits.
 *
 * @example
 * const pair = { driver: 22, driven: 68, module: "0.8" };
 * const { reason, by } = shortfall(fits({ pair, mount: { walls: [{ label: "skid", distance: "27.9 mm" }] } }))!;
 * [reason.code, reason.label, JSON.stringify(by)]; // => ["wall", "skid", '{"length":{"low":"1/10","high":"1/10"}}']
 * shortfall(fits({ pair: { driver: 15, driven: 62 } }))!.reason.code; // => "pitch-not-given"
 * shortfall(fits({ pair })); // => undefined
 */
export function shortfall({ reasons }: Pick<Fit, "reasons">): Shortfall | undefined {
  const first = (weight: Reason["weight"]): Reason | undefined => reasons.find((reason) => reason.weight === weight);
  const refusal = first("refusal");
  const reason = refusal ?? first("unknown");
  if (!reason) return undefined;
  const much = by(reason);
  return { reason, certain: reason === refusal, ...(much && { by: much }) };
}
