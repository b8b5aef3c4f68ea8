import { nothing, svg, type SVGTemplateResult } from "lit/html.js";
import { gearOutline } from "@meshwright/calc/gears";
import type { Layout, PlacedWheel, Span } from "@meshwright/calc/layout";
import { roomFor, round } from "../../shared/drawn/index.js";
import { arc, circle, cross, head } from "./ink.js";
import { reachOf, type Sheet } from "./sheet.js";

/** Teeth finer than this many pixels are drawn as a plain circle. */
const finest = 3;

interface Body {
  readonly wheel: PlacedWheel;
  readonly x: number;
  readonly y: number;
  readonly reach: number;
  readonly root: number;
  readonly rim: number;
  readonly bore: number;
  readonly ring: boolean;
}

/** A wheel in pixels: its rim and its bore are a draughtsman's. */
function bodyOf(wheel: PlacedWheel, sheet: Sheet, shaft: number | undefined): Body {
  const { scale } = sheet;
  const root = wheel.radii.root * scale;
  const ring = wheel.radii.tip < wheel.radii.root;
  const rim = root - Math.max(4, root * 0.1);
  const bore = shaft === undefined ? Math.max(1.5, Math.min(root * 0.16, 2.2 * scale)) : (shaft / 2) * scale;
  return { wheel, x: sheet.x(wheel.x), y: sheet.y, reach: reachOf(wheel) * scale, root, rim, bore, ring };
}

/** Curved strokes inside the rim and beside the boss, as an engraver shades a turned part lit from above on the left. */
function shading({ x, y, rim, bore }: Body): string {
  const strokes: string[] = [];
  const room = rim - bore * 2;
  const count = Math.min(7, Math.floor(room / 9));
  for (let n = 0; n < count; n++) {
    const half = 1.15 * (1 - n / (count + 0.6));
    strokes.push(arc(x, y, rim - 2.4 * (n + 1), -2.36 - half, -2.36 + half));
    if (n < count / 2) strokes.push(arc(x, y, bore * 1.7 + 2.4 * (n + 1), 0.785 - half * 0.9, 0.785 + half * 0.9));
  }
  return strokes.join("");
}

/** The gear's own outline: involutes, or circles where the teeth would be too fine to see. */
function outlineOf({ wheel, x, y, root }: Body, sheet: Sheet): SVGTemplateResult {
  const { shape, radii, phase } = wheel;
  const { scale } = sheet;
  const pitch = shape ? Math.PI * shape.module * scale : 0;
  const place = `translate(${round(x)} ${round(y)})`;
  if (!shape || pitch < finest) {
    const tips = shape ? circle(0, 0, radii.tip * scale) + circle(0, 0, root) : circle(0, 0, root);
    return svg`<g transform=${place}><path class="edge" d=${tips} /></g>`;
  }
  const pieces = pitch < 8 ? 2 : pitch < 20 ? 4 : 6;
  return svg`<g transform=${place}><path class="edge teeth" data-turns=${wheel.turns ?? 0} d=${gearOutline(shape, { phase, scale, pieces })} /></g>`;
}

const degrees = (angle: number): number => (angle * Math.PI) / 180;

const far = (a: { x: number; y: number }, x: number, y: number): number => Math.hypot(a.x - x, a.y - y);

const clearOf = (list: readonly Body[], x: number, y: number, room: number): boolean =>
  list.every((one) => far(one, x, y) > one.reach + room);

/**
 * Clip paths that leave away what is hidden behind wheels nearer to the eye: one a wheel, each clipped by the next, because
 * the circles of gears in mesh overlap.
 */
const clips = (id: string, sheet: Sheet, nearer: readonly Body[]): SVGTemplateResult[] =>
  nearer.map(({ x, y, reach }, n) => {
    const outside = `M-999-999H${sheet.width + 999}V${sheet.y * 2 + 2999}H-999z`;
    const next = n + 1 < nearer.length ? `url(#${id}-${n + 1})` : nothing;
    return svg`<clipPath id="${id}-${n}" clip-path=${next}><path clip-rule="evenodd" d=${outside + circle(x, y, reach)} /></clipPath>`;
  });

/** The first of them, if there is one. */
const clipped = (id: string, nearer: readonly Body[]): string | typeof nothing =>
  nearer.length ? `url(#${id}-0)` : nothing;

/** Whether a wheel has room inside for its count. */
const holdsCount = ({ ring, rim, bore }: Body, em: number): boolean =>
  !ring && rim - Math.max(bore * 1.7, 0.3 * em) > 2.2 * em;

export interface Drawn {
  readonly wheels: SVGTemplateResult;
  readonly lettering: SVGTemplateResult;
  /** Where a count stands on the centre line. */
  readonly counts: readonly number[];
  /** Whether counts were left out, because they would have stood on one another. */
  readonly crowded: boolean;
}

/**
 * All wheels, each stage in a plane of its own, the later ones nearer to the eye; then what is lettered and marked on them.
 */
export function drawWheels(layout: Layout, sheet: Sheet, row: number, count: (teeth: number) => string): Drawn {
  const { em, y } = sheet;
  const shafts = new Map(layout.mounts.map(({ span, shaft }) => [span.driver, shaft]));
  const bodies = layout.wheels.map((wheel) => bodyOf(wheel, sheet, shafts.get(wheel)));
  const nearerThan = (body: Body): Body[] => {
    const plane = bodies.findIndex((one) => one.wheel.stage === body.wheel.stage);
    return bodies.filter(
      (one, n) =>
        n > plane && one.wheel.stage !== body.wheel.stage && far(one, body.x, body.y) < one.reach + body.reach,
    );
  };
  const others = (body: Body): Body[] => bodies.filter((one) => one !== body && one.x !== body.x);
  /** A small wheel in front of a large one, or crowded in between others, carries its count where its bore would be. */
  const isPlain = (body: Body): boolean =>
    !body.ring &&
    !holdsCount(body, em) &&
    body.root > 1.1 * em &&
    (bodies.some(
      (one) => one !== body && one.x === body.x && one.reach > body.reach && one.wheel.stage !== body.wheel.stage,
    ) ||
      !clearOf(others(body), body.x, y - body.reach - 0.8 * em, 0.5 * em));
  const planes = [...new Set(bodies.map(({ wheel }) => wheel.stage))];
  /** What is nearer to the eye is drawn with a stronger line. */
  const depth = (stage: string): string => {
    const at = planes.indexOf(stage) / Math.max(1, planes.length - 1);
    return planes.length < 2 || (at > 0.25 && at < 0.75) ? "" : at < 0.5 ? "far" : "near";
  };
  const marked = new Set<number>();
  const swinging = new Set(layout.mounts.map(({ span, pivot }) => pivot && span.driver));

  const wheels = bodies.map((body, n) => {
    const nearer = nearerThan(body);
    const { x, rim, bore, wheel, ring } = body;
    const webbed = !isPlain(body) && !ring && rim > bore * 3 && rim - bore > 14;
    const inside = ring
      ? circle(x, y, body.reach)
      : isPlain(body)
        ? ""
        : circle(x, y, bore) + (webbed ? circle(x, y, rim) + circle(x, y, bore * 1.7) : "");
    return svg`${clips(`behind${row}-${n}`, sheet, nearer)}
      <g class=${depth(wheel.stage)} clip-path=${clipped(`behind${row}-${n}`, nearer)}>
        ${outlineOf(body, sheet)}
        <path class="fine" d=${inside} />
        ${webbed ? svg`<path class="shade" d=${shading(body)} />` : nothing}
        <path class="pitch" d=${circle(x, y, wheel.radii.reference * sheet.scale)} />
      </g>`;
  });

  const taken = layout.spans.flatMap((span) => alongRuns(span, sheet));
  let crowded = false;
  const meets = (left: number, top: number, right: number, bottom: number): boolean =>
    taken.some((one) => one[0] < right && left < one[2] && one[1] < bottom && top < one[3]);
  /** Whether a text meets none that is lettered already; then its room is taken. */
  const isFree = (text: string, x: number, base: number, size: number): boolean => {
    const half = (roomFor(text) * size) / 2;
    const room: [number, number, number, number] = [x - half, base - 0.85 * size, x + half, base + 0.25 * size];
    if (meets(...room)) return false;
    taken.push(room);
    return true;
  };
  /** Where the web of a wheel begins: outside of its boss, and of what stands before it on the same axis. */
  const webFrom = (body: Body): number => {
    const coaxial = nearerThan(body)
      .filter((one) => one.x === body.x)
      .map((one) => one.reach + (holdsCount(one, em) || isPlain(one) ? 0 : 1.5 * em));
    return Math.max(body.bore * 1.7, 0.3 * em, ...coaxial);
  };
  const lettering = bodies.map((body) => {
    const { wheel, x, rim, bore, reach } = body;
    const nearer = nearerThan(body);
    const plain = isPlain(body);

    // The count: inside where there is room for it, above the wheel where there is not; the label below it, if it fits.
    const text = count(wheel.teeth);
    const size = 1.2 * em;
    const from = webFrom(body);
    const spot = { x, y: y - reach - 0.42 * em, inside: false };
    if (plain) Object.assign(spot, { y: y + size * 0.34, inside: true });
    else if (holdsCount(body, em)) {
      const middle = (from + rim) / 2;
      for (const angle of [-90, 90, 180, -135, 135]) {
        const [px, py] = [x + middle * Math.cos(degrees(angle)), y + middle * Math.sin(degrees(angle))];
        if (
          !clearOf(
            nearer.filter((one) => one.x !== x),
            px,
            py,
            size * 0.8,
          )
        )
          continue;
        Object.assign(spot, { x: px, y: py + size * 0.34, inside: true });
        break;
      }
    }
    const half = (roomFor(wheel.label ?? "") * em * 0.88) / 2;
    const fits = spot.inside
      ? !plain &&
        half < rim * 0.55 &&
        rim - from > size * 2.6 &&
        [-half, half].every((side) => clearOf(nearer, spot.x + side, spot.y + 0.5 * em, 0.3 * em))
      : [-half, half].every(
          (side) => clearOf(others(body), x + side, spot.y, 0.2 * em) && x + side > 0 && x + side < sheet.width,
        );
    const lifted = fits && wheel.label !== undefined ? (spot.inside ? size * 0.3 : 1.05 * em) : 0;
    let lift = lifted;
    let isLettered = isFree(text, spot.x, spot.y - lift, size);
    const below = spot.y + (spot.inside ? 0.75 * em : 0);
    const label = isLettered && fits && isFree(wheel.label ?? "", spot.x, below, 0.88 * em) ? wheel.label : undefined;
    if (isLettered && lift && label === undefined) {
      // Without a name below it, the count stands lower: there too it may meet others.
      taken.pop();
      lift = 0;
      isLettered = isFree(text, spot.x, spot.y, size);
    }
    // Beside a belt there is room a little higher.
    if (!isLettered && !spot.inside) {
      lift = (wheel.label === undefined ? 0.5 : 1) * em;
      isLettered = isFree(text, spot.x, spot.y - lift, size);
    }
    if (!isLettered) crowded = true;
    const hidden = bodies.some((one) => one.x === x && isPlain(one));
    return svg`${hidden ? nothing : svg`<path class="fine" d=${cross(x, y, bore + 0.3 * em)} />`}
      ${isLettered ? svg`<text class="count" x=${round(spot.x)} y=${round(spot.y - lift)} text-anchor="middle">${text}</text>` : nothing}
      ${label ? svg`<text class="few" x=${round(spot.x)} y=${round(below)} text-anchor="middle">${label}</text>` : nothing}`;
  });

  /** Which way a wheel turns: one arrow for an axis, where neither another wheel nor what is lettered is. */
  const arrowOf = (body: Body): SVGTemplateResult | typeof nothing => {
    const { wheel, x, root, rim, reach, ring } = body;
    const place = Math.round(x);
    if (!wheel.turns || marked.has(place)) return nothing;
    const around = isPlain(body) && root > 1.7 * em;
    const roomy = around || (!ring && rim - webFrom(body) > 2.3 * em);
    const radius = around ? root * 0.78 : roomy ? rim - 0.85 * em : reach + 0.55 * em;
    const half = Math.min(0.6, (1.5 * em) / radius);
    const list = roomy ? nearerThan(body) : others(body);
    const beside = 0.3 * em;
    const isClear = (angle: number): boolean => {
      const [px, py] = [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
      return clearOf(list, px, py, roomy ? 2 : 0.2 * em) && !meets(px - beside, py - beside, px + beside, py + beside);
    };
    const free = (roomy ? [135, 45, -45, -135, 90] : [swinging.has(wheel) ? 120 : 180, 0, -60, 60, -120, 120, 90]).find(
      (angle) => [-1, -0.5, 0, 0.5, 1].every((part) => isClear(degrees(angle) + part * half)),
    );
    if (free === undefined) return nothing;
    marked.add(place);
    const [start, end] = [degrees(free) - half, degrees(free) + half];
    const clockwise = wheel.turns > 0;
    const tip = clockwise ? end : start;
    return svg`<path class="turn" data-way=${clockwise ? "clockwise" : "anticlockwise"} d=${arc(x, y, radius, start, end)} />
      <path class="solid" d=${head(x + radius * Math.cos(tip), y + radius * Math.sin(tip), tip + (clockwise ? 1 : -1) * (Math.PI / 2 - 0.1), 0.62 * em)} />`;
  };

  return {
    wheels: svg`${wheels}${layout.spans.map((span, n) => {
      if (span.by === "mesh") return nothing;
      const nearer = bodies.slice(bodies.findIndex(({ wheel }) => wheel === span.driven) + 1);
      return svg`${clips(`run${row}-${n}`, sheet, nearer)}
        <g clip-path=${clipped(`run${row}-${n}`, nearer)}>${runs(span, sheet)}</g>`;
    })}`,
    lettering: svg`${lettering}${bodies.map(arrowOf)}`,
    counts: bodies.filter(isPlain).map((body) => body.x),
    crowded,
  };
}

interface Round {
  readonly x: number;
  readonly r: number;
}

/** Where a belt or a chain leaves its pulleys: on one side, −1 above and 1 below the centre line. */
function tangentsOf({ driver, driven }: Pick<Span, "driver" | "driven">, sheet: Sheet) {
  const [a, b] = [driver, driven].map((wheel) => ({ x: sheet.x(wheel.x), r: wheel.radii.reference * sheet.scale })) as [
    Round,
    Round,
  ];
  const lean = Math.asin((a.r - b.r) / (b.x - a.x));
  const touch = ({ x, r }: Round, side: number) => ({
    x: x + r * Math.sin(lean),
    y: sheet.y + side * r * Math.cos(lean),
  });
  return { a, b, lean, touch };
}

/** Small boxes along the open runs of a belt. */
function alongRuns(span: Span, sheet: Sheet): [number, number, number, number][] {
  if (span.by === "mesh") return [];
  const { a, b, touch } = tangentsOf(span, sheet);
  return [-1, 1].flatMap((side) => {
    const [from, to] = [touch(a, side), touch(b, side)];
    const count = Math.ceil((to.x - from.x) / 4);
    return Array.from({ length: count + 1 }, (_, n): [number, number, number, number] => {
      const [x, y] = [from.x + ((to.x - from.x) * n) / count, from.y + ((to.y - from.y) * n) / count];
      return [x - 2, y - 2, x + 2, y + 2];
    });
  });
}

/**
 * A belt or a chain: its two open runs, which touch both pulleys, and where it lies on them. A tensioner presses on the lower one, dashed: nobody has said where it stands,
 * nor how large it is.
 */
function runs({ by, driver, driven, tensioner }: Span, sheet: Sheet): SVGTemplateResult {
  const { a, b, lean, touch } = tangentsOf({ driver, driven }, sheet);
  const [start, end] = [touch(a, 1), touch(b, 1)];
  const roller = 0.16 * Math.min(a.r, b.r) + 0.3 * sheet.em;
  // Pressed inward by its own radius, halfway between the two.
  const [x, y] = [(start.x + end.x) / 2, (start.y + end.y) / 2 - roller];
  const path = [-1, 1].map((side) => {
    const [from, to] = [touch(a, side), touch(b, side)];
    const over = tensioner && side > 0 ? `L${round(x)} ${round(y)}` : "";
    return `M${round(from.x)} ${round(from.y)}${over}L${round(to.x)} ${round(to.y)}`;
  });
  const quarter = Math.PI / 2;
  const around =
    arc(a.x, sheet.y, a.r, quarter - lean, 3 * quarter + lean) + arc(b.x, sheet.y, b.r, lean - quarter, quarter - lean);
  return svg`<path class=${by} d=${path.join("") + around} />
    ${tensioner ? svg`<path class="fine tensioner" stroke-dasharray="2 2" d=${circle(x, y + roller, roller)} />` : nothing}`;
}

/** The article's wheels where the reader's are others. */
export function ghostsOf(article: Layout, layout: Layout): readonly PlacedWheel[] {
  const key = ({ stage, teeth, x, radii }: PlacedWheel): string =>
    [stage, teeth, x.toFixed(6), radii.reference.toFixed(6)].join();
  const drawn = new Set(layout.wheels.map(key));
  return article.wheels.filter((wheel) => !drawn.has(key(wheel)));
}

/** Those, dashed, behind whatever is nearer to the eye. */
export function drawGhosts(article: Layout, layout: Layout, sheet: Sheet, row: number): SVGTemplateResult[] {
  const planes = [...new Set(layout.wheels.map((wheel) => wheel.stage))];
  return ghostsOf(article, layout).map((ghost, n) => {
    const x = sheet.x(ghost.x);
    const nearer = layout.wheels.filter((wheel) => planes.indexOf(wheel.stage) > planes.indexOf(ghost.stage));
    const own = !layout.wheels.some((wheel) => Math.abs(wheel.x - ghost.x) < 1e-6);
    const bodies = nearer.map((wheel) => bodyOf(wheel, sheet, undefined));
    return svg`${clips(`beneath${row}-${n}`, sheet, bodies)}
      <g clip-path=${clipped(`beneath${row}-${n}`, bodies)}>
        <path class="article" d=${circle(x, sheet.y, ghost.radii.tip * sheet.scale)} />
        ${own ? svg`<path class="fine" d=${cross(x, sheet.y, 0.35 * sheet.em)} />` : nothing}
      </g>`;
  });
}
