import type { Mark, LinePoint, WheelMark } from "./drive-marks.js";

/**
 * What a stroke is drawn with: `line` the line of drive itself, `link` the same through a mesh, `edge` outlines, `fine` what
 * is inside them, `pitch` chain-dotted circles, `guess` outlines whose size is not known, `hatch`, `run` and `chain` belts and
 * chains, `solid` filled, `fault` where nothing is known, `lane` a way that a lever does not stand in.
 */
export type Ink =
  | "line" | "link" | "edge" | "fine" | "shade" | "pitch" | "guess" | "hatch" | "run" | "chain" | "solid" | "lane" | "turned" | "fault"; // prettier-ignore

/** One stroke: path data, along and across the line. */
export interface Stroke {
  readonly ink: Ink;
  readonly path: string;
}

const short = (value: number): number => Math.round(value * 10) / 10 || 0;
const spot = (x: number, y: number): string => `${short(x)} ${short(y)}`;
const around = ([x, y]: LinePoint, radius: number, angle: number): string =>
  spot(x + radius * Math.cos(angle), y + radius * Math.sin(angle));

const circle = ([x, y]: LinePoint, radius: number): string => {
  const r = short(radius);
  return `M${spot(x + r, y)}a${r} ${r} 0 1 0 ${-2 * r} 0a${r} ${r} 0 1 0 ${2 * r} 0z`;
};

const arc = (at: LinePoint, radius: number, from: number, to: number): string =>
  `M${around(at, radius, from)}A${short(radius)} ${short(radius)} 0 ${to - from > Math.PI ? 1 : 0} 1 ${around(at, radius, to)}`;

const polyline = (points: readonly LinePoint[]): string =>
  points.map(([x, y], n) => `${n ? "L" : "M"}${spot(x, y)}`).join("");

const turn = 2 * Math.PI;
/** Teeth closer together than so many pixels are told by their circles. */
const finest = 3.6;

/** The outline of a wheel, tooth by tooth: flanks as straight lines. */
function teethOf({ at, tip, root, teeth, phase, pitch }: WheelMark): string {
  if ((turn * pitch) / teeth < finest) return circle(at, tip) + circle(at, root);
  const step = turn / teeth;
  const inward = tip < root;
  // A ring's phase is that of a space: its teeth stand half a step on.
  const from = inward ? phase + step / 2 : phase;
  const [foot, head] = teeth < 12 ? [0.27, 0.12] : [0.3, 0.15];
  let path = "";
  for (let n = 0; n < teeth; n++) {
    const middle = from + n * step;
    path += `${n ? "L" : "M"}${around(at, root, middle - foot * step)}L${around(at, tip, middle - head * step)}`;
    path += `L${around(at, tip, middle + head * step)}L${around(at, root, middle + foot * step)}`;
  }
  return `${path}z`;
}

/** Curved strokes inside the rim, as an engraver shades a turned part that is lit from above. */
function shade(at: LinePoint, rim: number, room: number): string {
  const count = Math.min(6, Math.floor(room / 7));
  return Array.from({ length: count }, (_, n) => {
    const half = 1.1 * (1 - n / (count + 0.5));
    return arc(at, rim - 2.3 * (n + 1), -2.36 - half, -2.36 + half);
  }).join("");
}

function wheelStrokes(mark: WheelMark): Stroke[] {
  const { at, pitch, tip, root, isGuessed } = mark;
  const strokes: Stroke[] = [{ ink: isGuessed ? "fine" : "edge", path: teethOf(mark) }];
  if (tip > root) {
    const rim = root - Math.max(2.5, root * 0.1);
    const bore = Math.max(1.6, Math.min(4.5, root * 0.12));
    const webbed = rim > 13;
    const inner = circle(at, bore) + (webbed ? circle(at, rim) + circle(at, bore * 2) : "");
    strokes.push({ ink: "fine", path: inner });
    if (webbed) strokes.push({ ink: "shade", path: shade(at, rim, rim - bore * 2) });
  } else strokes.push({ ink: "edge", path: circle(at, root + 4) });
  // A size that nobody knows is told by dashes around it.
  strokes.push(
    isGuessed ? { ink: "guess", path: circle(at, Math.max(tip, root) + 2) } : { ink: "pitch", path: circle(at, pitch) },
  );
  return strokes;
}

/** Two cones with one apex, and the teeth on them as they run together towards it. */
function coneStrokes({ apex, pinion, ring, side, teeth, isGuessed }: Extract<Mark, { is: "cones" }>): Stroke[] {
  const [ax, ay] = apex;
  const toe = 0.68;
  const heel = ax - ring;
  const far = side * pinion;
  const thick = side * Math.max(4, pinion * 0.3);
  const body: LinePoint[] = [
    [heel, ay - pinion],
    [ax - toe * ring, ay - toe * pinion],
    [ax - toe * ring, ay + toe * pinion],
    [heel, ay + pinion],
  ];
  const plate: LinePoint[] = [
    [ax - ring, ay + far],
    [ax + ring, ay + far],
    [ax + toe * ring, ay + toe * far],
    [ax - toe * ring, ay + toe * far],
  ];
  const back: LinePoint[] = [
    [ax - ring, ay + far],
    [ax - ring * 0.94, ay + far + thick],
    [ax + ring * 0.94, ay + far + thick],
    [ax + ring, ay + far],
  ];
  // Teeth on a cone that is seen from the side stand closer together towards its edges.
  const shown = (count: number): number[] => {
    const half = Math.max(3, Math.min(Math.round(count / 2), 26));
    return Array.from({ length: half }, (_, n) => Math.cos(((n + 0.5) * Math.PI) / half));
  };
  const onPinion = shown(teeth[0]).map(
    (c) => `M${spot(heel, ay + c * pinion)}L${spot(ax - toe * ring, ay + c * toe * pinion)}`,
  );
  const onRing = shown(teeth[1]).map(
    (c) => `M${spot(ax + c * ring, ay + far)}L${spot(ax + c * toe * ring, ay + toe * far)}`,
  );
  const axle = `M${spot(ax, ay + far + thick + side * 6)}L${spot(ax, ay - side * (pinion * 0.5))}`;
  return [
    { ink: "fine", path: onPinion.join("") + onRing.join("") },
    { ink: "edge", path: `${polyline(body)}z${polyline(plate)}z` },
    { ink: isGuessed ? "guess" : "edge", path: polyline(back) },
    { ink: "pitch", path: axle },
  ];
}

/** The open runs of a belt: two tangents to its pulleys. */
function runStrokes({ from, to, isChain }: Extract<Mark, { is: "run" }>): Stroke[] {
  const [[x1, r1], [x2, r2]] = [from, to];
  const lean = Math.asin(Math.max(-1, Math.min(1, (r1 - r2) / (x2 - x1))));
  const at = (x: number, r: number, way: number): string => spot(x + r * Math.sin(lean), way * r * Math.cos(lean));
  const [a, b] = [short(r1), short(r2)];
  const path =
    `M${at(x1, r1, -1)}L${at(x2, r2, -1)}A${b} ${b} 0 ${lean > 0 ? 0 : 1} 1 ${at(x2, r2, 1)}` +
    `L${at(x1, r1, 1)}A${a} ${a} 0 ${lean > 0 ? 1 : 0} 1 ${at(x1, r1, -1)}z`;
  return [{ ink: isChain ? "chain" : "run", path }];
}

function wormStrokes({ from, to, across, radius, starts }: Extract<Mark, { is: "worm" }>): Stroke[] {
  const gap = Math.max(3.2, Math.min(7, 3.2 + starts));
  let threads = "";
  for (let x = from; x + gap * 0.9 <= to; x += gap)
    threads += `M${spot(x, across + radius)}L${spot(x + gap * 0.9, across - radius)}`;
  return [
    { ink: "fine", path: threads },
    { ink: "edge", path: `M${spot(from, across - radius)}H${short(to)}V${short(across + radius)}H${short(from)}z` },
  ];
}

function pinStrokes({ at, radius, pins, lobes, isGuessed }: Extract<Mark, { is: "pins" }>): Stroke[] {
  const small = Math.max(1, Math.min(5, (0.28 * turn * radius) / pins));
  const shown = Math.min(pins, 60);
  let ring = "";
  for (let n = 0; n < shown; n++)
    ring += circle(
      [at[0] + radius * Math.cos((n * turn) / shown), at[1] + radius * Math.sin((n * turn) / shown)],
      small,
    );
  // The disc stands off the middle by its eccentric, so that its lobes meet the pins on one side.
  const off = small * 0.8;
  const count = Math.min(lobes, 59);
  const points = count * 8;
  const disc = Array.from({ length: points }, (_, n): LinePoint => {
    const angle = (n * turn) / points;
    const reach = radius - small - off + off * Math.cos(count * angle);
    return [at[0] + off + reach * Math.cos(angle), at[1] + reach * Math.sin(angle)];
  });
  return [
    { ink: "fine", path: ring },
    { ink: "edge", path: `${polyline(disc)}z` },
    { ink: isGuessed ? "guess" : "edge", path: circle(at, radius + small + 3) },
    { ink: "fine", path: circle([at[0] + off, at[1]], radius * 0.28) + circle(at, 2.2) },
  ];
}

/** Slanting strokes that fill a rectangle. */
function slanted(length: number, half: number, gap: number, rising: boolean): string {
  const tall = 2 * half;
  let path = "";
  for (let x = gap - tall; x < length; x += gap) {
    const a = Math.max(0, x);
    const b = Math.min(length, x + tall);
    if (b - a < 1) continue;
    const [low, high] = [half - (a - x), half - (b - x)];
    path += rising ? `M${spot(a, low)}L${spot(b, high)}` : `M${spot(a, -low)}L${spot(b, -high)}`;
  }
  return path;
}

function boxStrokes({ length, half, from }: Extract<Mark, { is: "box" }>): Stroke[] {
  const outline = `M0 ${-half}H${length}V${half}H0z`;
  const hatch = slanted(length, half, 5.5, true) + (from === "turned" ? slanted(length, half, 5.5, false) : "");
  return [
    { ink: "hatch", path: hatch },
    { ink: from === "turned" ? "turned" : "edge", path: outline },
  ];
}

function leverStrokes({ length, lanes, lane }: Extract<Mark, { is: "lever" }>): Stroke[] {
  const [a, b] = [10, length - 10];
  const others = lanes.flatMap((y, n) => (n === lane ? [] : `M${a} ${y}H${b}`)).join("");
  const rest = lanes.flatMap((y, n) => (n === lane ? [] : circle([length / 2, y], 3))).join("");
  const [top, bottom] = [Math.min(...lanes), Math.max(...lanes)];
  return [
    { ink: "lane", path: others },
    { ink: "fine", path: rest },
    { ink: "fine", path: `M${a} ${top - 5}V${bottom + 5}M${b} ${top - 5}V${bottom + 5}` },
    { ink: "line", path: `M0 0H${length}` },
    { ink: "solid", path: circle([length / 2, 0], 4) },
  ];
}

/** The ends of a broken shaft, as a draughtsman breaks a part. */
function breakStrokes({ length }: Extract<Mark, { is: "break" }>): Stroke[] {
  const [a, b] = [length * 0.3, length * 0.7];
  const torn = (x: number): string => `M${spot(x + 3, -13)}L${spot(x - 2, -4)}L${spot(x + 2, 4)}L${spot(x - 3, 13)}`;
  return [
    { ink: "line", path: `M0 0H${short(a)}M${short(b)} 0H${length}` },
    { ink: "fault", path: torn(a) + torn(b) },
  ];
}

function motorStrokes({ length, half }: Extract<Mark, { is: "motor" }>): Stroke[] {
  const can = `M4 ${-half}H${length - 6}Q${length - 2} ${-half} ${length - 2} ${-half + 4}V${half - 4}Q${length - 2} ${half} ${length - 6} ${half}H4Q0 ${half} 0 ${half - 4}V${-half + 4}Q0 ${-half} 4 ${-half}z`;
  let fins = "";
  for (let y = -half + 4; y < half - 2; y += 3.4) fins += `M6 ${short(y)}H${length - 14}`;
  const flange = `M${length - 10} ${-half}V${half}M${length - 2} -7h4V7h-4`;
  return [
    { ink: "shade", path: fins },
    { ink: "edge", path: can + flange },
  ];
}

function tyreStrokes({ at, radius }: Extract<Mark, { is: "tyre" }>): Stroke[] {
  let lugs = "";
  for (let n = 0; n < 28; n++) {
    const angle = (n * turn) / 28;
    lugs += `M${around(at, radius - 3.5, angle)}L${around(at, radius, angle + 0.07)}`;
  }
  return [
    { ink: "fine", path: lugs + circle(at, radius - 3.5) + circle(at, radius * 0.5) + circle(at, radius * 0.16) },
    { ink: "edge", path: circle(at, radius) + circle(at, radius * 0.56) },
  ];
}

function spoolStrokes({ at: [x, y], half }: { readonly at: LinePoint; readonly half: number }): Stroke[] {
  return [{ ink: "solid", path: `M${spot(x - half, y - half)}h${2 * half}v${2 * half}h${-2 * half}z` }];
}

/** Two bevel gears face to face in a cage. */
function differentialStrokes({ at: [x, y], half }: { readonly at: LinePoint; readonly half: number }): Stroke[] {
  const inner = half * 0.55;
  const cage = `M${spot(x - half, y - half)}h${2 * half}v${2 * half}h${-2 * half}z`;
  const gears = `M${spot(x - inner, y - inner)}L${spot(x + inner, y + inner)}V${short(y - inner)}L${spot(x - inner, y + inner)}z`;
  const cross = `M${spot(x - inner, y - inner)}H${short(x + inner)}M${spot(x - inner, y + inner)}H${short(x + inner)}`;
  return [
    { ink: "edge", path: cage },
    { ink: "fine", path: gears + cross },
  ];
}

/**
 * The strokes that draw a mark, along and across the line; the first lie under the last.
 *
 * @example
 * strokesOf({ is: "shaft", points: [[0, 0], [12, 0]] }); // => [{ ink: "line", path: "M0 0L12 0" }]
 */
export function strokesOf(mark: Mark): readonly Stroke[] {
  switch (mark.is) {
    case "wheel":
      return wheelStrokes(mark);
    case "cones":
      return coneStrokes(mark);
    case "run":
      return runStrokes(mark);
    case "worm":
      return wormStrokes(mark);
    case "pins":
      return pinStrokes(mark);
    case "box":
      return boxStrokes(mark);
    case "lever":
      return leverStrokes(mark);
    case "break":
      return breakStrokes(mark);
    case "motor":
      return motorStrokes(mark);
    case "tyre":
      return tyreStrokes(mark);
    case "spool":
      return spoolStrokes(mark);
    case "differential":
      return differentialStrokes(mark);
    case "shaft":
      return [{ ink: mark.isFine ? "link" : "line", path: polyline(mark.points) }];
  }
}
