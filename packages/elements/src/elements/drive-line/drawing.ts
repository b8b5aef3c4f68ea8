import { nothing, svg, type SVGTemplateResult } from "lit/html.js";
import type { SaidLine } from "@meshwright/calc/article";
import {
  strokesOf,
  type LinePoint,
  type Mark,
  type PlacedCell,
  type PlacedLine,
  type PlacedShaft,
  type Stroke,
} from "@meshwright/calc/layout";
import { round } from "../../shared/drawn/index.js";

/** The strokes of what was drawn last, by the marks: most of a line stays as it is when a count changes. */
export type Drawn = Map<string, readonly Stroke[]>;

/** Draws what hangs on some things, and again when one of them is another. */
export type Once = (on: unknown[], draw: () => unknown) => unknown;

/** A polyline whose corners are rounded, as a line is drawn by hand with a ruler and a coin. */
function rounded(points: readonly LinePoint[]): string {
  const radius = 9;
  let path = "";
  points.forEach(([x, y], n) => {
    const [before, after] = [points[n - 1], points[n + 1]];
    if (!before) return void (path += `M${round(x)} ${round(y)}`);
    if (!after) return void (path += `L${round(x)} ${round(y)}`);
    const near = ([tx, ty]: LinePoint): LinePoint => {
      const far = Math.hypot(tx - x, ty - y) || 1;
      const by = Math.min(radius, far / 2) / far;
      return [x + (tx - x) * by, y + (ty - y) * by];
    };
    const [[ax, ay], [bx, by]] = [near(before), near(after)];
    path += `L${round(ax)} ${round(ay)}Q${round(x)} ${round(y)} ${round(bx)} ${round(by)}`;
  });
  return path;
}

/** Which way a shaft turns: round with the motor or against it; hollow where nobody has established it. */
function sense(
  { note, after }: PlacedShaft,
  { cells }: SaidLine,
  isRightToLeft: boolean,
): SVGTemplateResult | typeof nothing {
  const shaft = after === undefined ? undefined : cells.get(after)?.shaft;
  if (!note || !shaft) return nothing;
  const x = isRightToLeft ? note.x + note.width - 8 : note.x + 8;
  const y = note.y + note.height / 2;
  const radius = 4.6;
  const { turn, isEstablished } = shaft;
  if (!turn) return svg`<circle class="unsaid" cx=${round(x)} cy=${round(y)} r="3.2" />`;
  // Three quarters of a circle with a head at the upper end; against the motor it is mirrored.
  const at = (angle: number, far: number): string =>
    `${round(x + Math.sign(turn) * far * Math.cos(angle))} ${round(y + far * Math.sin(angle))}`;
  const [from, to] = [-0.5, 4.3];
  const sweep = turn > 0 ? 1 : 0;
  const circle = `M${at(from, radius)}A${radius} ${radius} 0 1 ${sweep} ${at(to, radius)}`;
  const head = `M${at(to, radius - 2.8)}L${at(to, radius + 2.8)}L${at(to + 0.95, radius + 0.6)}z`;
  return svg`<path class="sense" d=${circle} /><path class=${isEstablished ? "head" : "head hollow"} d=${head} />`;
}

/** One thing on the line: its strokes lie along the line wherever that goes. */
function cellMarks(
  { x, y, marks }: PlacedCell,
  line: PlacedLine,
  before: Drawn,
  now: Drawn,
  chosen: boolean,
  once: Once,
): SVGTemplateResult {
  const way = (line.isRightToLeft ? "scale(-1 1)" : "") + (line.form === "upright" ? "rotate(90)" : "");
  const strokes = marks.map((mark: Mark) => {
    const key = JSON.stringify(mark);
    const known = before.get(key) ?? strokesOf(mark);
    now.set(key, known);
    return known;
  });
  return svg`<g class=${chosen ? "chosen" : nothing} transform="translate(${round(x)} ${round(y)})${way}">
    ${once(strokes, () => strokes.flat().map(({ ink, path }) => svg`<path class=${ink} d=${path} />`))}
  </g>`;
}

/** The line as a picture. What is lettered stands over it as text of the page. */
export function drawLine(
  line: PlacedLine,
  said: SaidLine,
  before: Drawn,
  now: Drawn,
  chosen: string | undefined,
  once: Once = (_, draw) => draw(),
): SVGTemplateResult {
  return svg`
    ${line.shafts.map((shaft) => svg`<path class="line" d=${rounded(shaft.points)} />${sense(shaft, said, line.isRightToLeft)}`)}
    ${line.cells.map((cell) => cellMarks(cell, line, before, now, cell.key === chosen, once))}`;
}
