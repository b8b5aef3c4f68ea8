import type { Mount } from "../drivetrain/index.js";
import { bounded, rational, type Rational } from "../exact/index.js";
import { depthOf, sizeOf } from "../gears/index.js";
import { lacking, type Reason } from "./reason.js";

/** A gear along its shaft. */
export interface AxialBody {
  /** Of the teeth. */
  readonly width?: string;
  /** Length of the boss beside the teeth, which carries the grub screw. */
  readonly hub?: string;
  /** The only way round that it can go: its boss towards the motor, or away from it. Either, where it is not given. */
  readonly facing?: "hub in" | "hub out";
}

/**
 * Whether a gear stays on its shaft and in line with its partner, boss inwards or outwards. The teeth must lie within the
 * partner's, or cover them; the boss, or the teeth of a gear without one, must be on the shaft.
 *
 * @throws MeshwrightError `out-of-range`, and what cannot be read as a length
 */
export function reachReasons(
  body: AxialBody,
  reachText: string,
  line: Mount["line"],
  of: "driver" | "driven",
): Reason[] {
  const length = (text: string | undefined, at: string): Rational => depthOf(text ?? 0, at);
  const larger = (a: Rational, b: Rational): Rational => (a.compare(b) > 0 ? a : b);
  const [width, hub, reach] = [length(body.width, "width"), length(body.hub, "hub"), sizeOf(reachText, "reach")];
  // Where along the shaft the teeth begin: in line at the earliest, at the latest.
  const ends = line ? [length(line.from, "line"), length(line.to, "line").minus(width)] : [rational(0), reach];
  const [early, late] = ends.sort((a, b) => a.compare(b)) as [Rational, Rational];
  const ways = (["hub in", "hub out"] as const)
    .filter((facing) => (body.facing ?? facing) === facing)
    .map((facing) => {
      const inward = facing === "hub in" && hub.sign > 0;
      const begin = larger(inward ? hub : rational(0), early);
      // To the end of what must be on the shaft; else the boss pushes the teeth past their partner.
      const needed = inward ? begin : begin.plus(width).plus(hub);
      return needed.compare(reach) > 0
        ? { code: "reach" as const, facing, needed, available: reach, short: needed.minus(reach) }
        : { code: "hub-too-long" as const, facing, needed: late, available: hub, short: begin.minus(late) };
    })
    .sort((a, b) => a.short.compare(b.short));
  const { code, facing, needed, available, short } = ways[0]!;
  if (short.sign <= 0) {
    const only = hub.sign && ways.filter((way) => way.short.sign <= 0).length === 1;
    return only ? [{ code: "facing", weight: "information", of, facing }] : [];
  }
  return lacking(code, bounded(short), { of, facing, needed: bounded(needed), available: bounded(available) });
}
