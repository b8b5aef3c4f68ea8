import { nothing, svg, type SVGTemplateResult } from "lit/html.js";
import type { PlacedMount, PlacedWall, Span } from "@meshwright/calc/layout";
import type { Bounded } from "@meshwright/calc/exact";
import { hatching, linesOf, roomFor, round } from "../../shared/drawn/index.js";
import { arc, circle, cross, head } from "./ink.js";
import { pivotOf, reachOf, type Sheet } from "./sheet.js";

/** Writes a length in the language of the page; one end of what may be, rounded inward. */
export type LengthText = (length: Bounded, limit?: "from" | "to") => string;

const middle = (length: Bounded): number => length.low.toNumber();

/** Two arrowheads between two places on a level, or from outside where there is no room between them. */
export function between(
  from: number,
  to: number,
  y: number,
  em: number,
): { readonly path: SVGTemplateResult; readonly inside: boolean } {
  const [near, end] = [Math.min(from, to), Math.max(from, to)];
  const size = 0.6 * em;
  const inside = end - near > 2.4 * size;
  const tail = inside ? 0 : 1.5 * size;
  return {
    inside,
    path: svg`<path class="fine" d="M${round(near - tail)} ${round(y)}H${round(end + tail)}" />
      <path class="solid" d=${head(near, y, inside ? Math.PI : 0, size) + head(end, y, inside ? 0 : Math.PI, size)} />`,
  };
}

/** The same, upright. */
function upright(x: number, from: number, to: number, em: number): SVGTemplateResult {
  const [near, end] = [Math.min(from, to), Math.max(from, to)];
  const size = 0.55 * em;
  const inside = end - near > 2.4 * size;
  const tail = inside ? 0 : 1.6 * size;
  return svg`<path class="fine" d="M${round(x)} ${round(near - tail)}V${round(end + tail)}" />
    <path class="solid" d=${head(x, near, ((inside ? -1 : 1) * Math.PI) / 2, size) + head(x, end, ((inside ? 1 : -1) * Math.PI) / 2, size)} />`;
}

/** The line that all axes lie on, broken where something is lettered on it. */
export const centreLine = (spans: readonly Span[], sheet: Sheet, lettered: readonly number[]): SVGTemplateResult => {
  const { em, y } = sheet;
  const wheels = spans.flatMap(({ driver, driven }) => [driver, driven]);
  const from = Math.min(...wheels.map((wheel) => sheet.x(wheel.x - reachOf(wheel)))) - 0.8 * em;
  const to = Math.max(...wheels.map((wheel) => sheet.x(wheel.x + reachOf(wheel)))) + 0.8 * em;
  const stops = [from, ...[...lettered].sort((a, b) => a - b).flatMap((x) => [x - 0.9 * em, x + 0.9 * em]), to];
  return svg`<path class="pitch" d=${stops.map((x, n) => (n % 2 ? `H${round(x)}` : `M${round(x)} ${y}`)).join("")} />`;
};

/** The centre distances, one after the other on one level below the wheels; lower where they are crowded. */
export function drawCentres(
  spans: readonly Span[],
  sheet: Sheet,
  level: number,
  text: LengthText,
): { readonly picture: SVGTemplateResult; readonly height: number } {
  const { em, y } = sheet;
  const written = spans.map((span) => text(span.centre));
  // Each on the first level where neither its line nor what it says meets another.
  const levels: (readonly [number, number])[][] = [];
  const middles = spans.map(({ driver, driven }, n) => {
    const half = (roomFor(written[n]!) * em) / 2;
    return Math.max(half, Math.min(sheet.width - half, (sheet.x(driver.x) + sheet.x(driven.x)) / 2));
  });
  const drops = spans.map(({ driver, driven }, n) => {
    const half = (roomFor(written[n]!) / 2 + 0.2) * em;
    const [a, b] = [sheet.x(driver.x), sheet.x(driven.x)];
    const taken = [Math.min(a, b, middles[n]! - half), Math.max(a, b, middles[n]! + half)] as const;
    let found = levels.findIndex((all) => all.every(([from, to]) => to < taken[0] + 1 || from > taken[1] - 1));
    if (found < 0) found = levels.push([]) - 1;
    levels[found]!.push(taken);
    return found * 1.7 * em;
  });
  const drop = (n: number): number => drops[n]!;
  const lowest = Math.max(...spans.map((_, n) => drop(n)));
  const axes = new Map<number, { from: number; to: number }>();
  spans.forEach(({ driver, driven }, n) => {
    for (const wheel of [driver, driven]) {
      const x = round(sheet.x(wheel.x));
      const axis = axes.get(x) ?? { from: 0, to: 0 };
      axis.from = Math.max(axis.from, reachOf(wheel) * sheet.scale);
      axis.to = Math.max(axis.to, level + drop(n));
      axes.set(x, axis);
    }
  });
  /** Where a line down an axis is broken, because a length that is longer than its own line is lettered across it. */
  const breaks = (x: number): readonly number[] =>
    spans.flatMap((_, n) => {
      const half = (roomFor(written[n]!) / 2 + 0.15) * em;
      return Math.abs(middles[n]! - x) < half ? [level + drop(n)] : [];
    });
  const extensions = [...axes].map(([x, { from, to }]) => {
    const gaps = [...breaks(x)].sort((a, b) => a - b);
    const path = gaps.map((line) => `V${round(line - 1.3 * em)}M${x} ${round(line - 0.15 * em)}`).join("");
    return `M${x} ${round(y + from + 0.35 * em)}${path}V${round(to + 0.35 * em)}`;
  });
  return {
    height: lowest,
    picture: svg`<path class="fine" d=${extensions.join("")} />
      ${spans.map((span, n) => {
        const [a, b] = [sheet.x(span.driver.x), sheet.x(span.driven.x)];
        const line = level + drop(n);
        const { path } = between(a, b, line, em);
        return svg`${path}<text x=${round(middles[n]!)} y=${round(line - 0.4 * em)} text-anchor="middle">${written[n]}</text>`;
      })}`,
  };
}

/** Walls at their distance from the axis, hatched on their far side, the gap to the tips dimensioned. */
export const drawWalls = (
  { walls }: PlacedMount,
  sheet: Sheet,
  text: (wall: PlacedWall) => string,
): SVGTemplateResult[] =>
  walls.map((wall, n) => {
    const { em, scale, width } = sheet;
    const { wheel, distance, kept } = wall;
    const side = n % 2 ? -1 : 1;
    const x = sheet.x(wheel.x);
    const half = Math.min(reachOf(wheel) * scale * 0.95, 9 * em);
    const y = sheet.y + side * middle(distance) * scale;
    const thick = 0.5 * em;
    // Where the tips come nearest: on the axis.
    const tips = sheet.y + side * wheel.radii.tip * scale;
    const note = text(wall);
    const [before, behind] = [x - 0.8 * em, x + 0.8 * em];
    const room = (line: string): number => roomFor(line) * em * 0.88;
    const after = behind + room(note) < width || behind < width / 2;
    // In lines, where there is room for it on neither side.
    const lines = linesOf(note, (after ? width - behind : before) / (0.88 * em));
    const longest = Math.max(...lines.map(room));
    const at = after ? Math.max(0, Math.min(behind, width - longest)) : Math.min(width, Math.max(before, longest));
    const base = y + side * (thick + 0.9 * em) + (side > 0 ? 0.1 : 0.6) * em;
    const lift = side > 0 ? 0 : lines.length - 1;
    return svg`<path class="edge" d="M${round(x - half)} ${round(y)}H${round(x + half)}" />
      <path class="hatch" d=${hatching(x - half, x + half, side > 0 ? y : y - thick, thick)} />
      <g class=${kept === false ? "fault" : nothing}>
        ${upright(x, tips, y, em)}
        ${lines.map((line, place) => svg`<text class="few" x=${round(at)} y=${round(base + (place - lift) * 1.1 * em)} text-anchor=${after ? "start" : "end"}>${line}</text>`)}
      </g>`;
  });

/** The pivot that the motor swings about, its arm, and the arc that its axis can follow. */
export function drawPivot({ span, pivot, from, to }: PlacedMount, sheet: Sheet): SVGTemplateResult | typeof nothing {
  if (!pivot) return nothing;
  const { scale, y, em } = sheet;
  const point = pivotOf(middle(span.centre), pivot.distance, pivot.arm);
  if (!point) return nothing;
  const [x0, y0] = [sheet.x(span.driven.x), y];
  const [px, py] = [x0 + point.x * scale, y0 + point.y * scale];
  const [ax, ay] = [sheet.x(span.driver.x), y];
  // The angle at the pivot, from the driven axis to the driver's: law of cosines.
  const swing = (centre: Bounded): number =>
    Math.acos((pivot.distance ** 2 + pivot.arm ** 2 - middle(centre) ** 2) / (2 * pivot.distance * pivot.arm));
  const towards = Math.atan2(y0 - py, x0 - px);
  const arm = pivot.arm * scale;
  const limits = from && to ? arc(px, py, arm, towards + swing(from), towards + swing(to)) : "";
  return svg`<path class="fine" d=${circle(px, py, 0.28 * em) + `M${round(px)} ${round(py)}L${round(ax)} ${round(ay)}`} />
    <path class="fine" d=${cross(px, py, 0.5 * em)} /><path class="slot" d=${limits} />`;
}
