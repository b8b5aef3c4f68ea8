import { html, nothing, svg, type TemplateResult } from "lit/html.js";
import { linesOf, roomFor, round } from "../../shared/drawn/index.js";
import { placeLabels } from "./labels.js";
import { drawn, type Listed } from "./listed.js";

/** What the window is drawn from; positions come from the element, which knows the width and the side lines begin at. */
export interface WindowOf {
  readonly listed: readonly Listed[];
  /** Which of the search's outputs stands on the upright axis. */
  readonly output: number;
  readonly range: readonly [from: number, to: number];
  readonly rangeTexts: readonly [string, string];
  /** The ends of the centre distances that the mount can set, where they are known. */
  readonly mount: readonly [from: number | undefined, to: number | undefined];
  readonly mountTexts: readonly [string, string];
  readonly title: string;
  readonly axes: readonly [across: string, upright: string];
  readonly isChosen: (one: Listed) => boolean;
  /** The teeth of a pair, as a picture has them. */
  readonly teethOf: (one: Listed) => string;
  /** What a point is called by whoever takes it. */
  readonly nameOf: (one: Listed) => string;
  readonly take: (one: Listed) => void;
  readonly width: number;
  readonly em: number;
  x(distance: number): number;
}

const labelsAtMost = 24;

/** The least and the most of some numbers, with some room around. */
function span(numbers: readonly number[], room: number): readonly [number, number] {
  const [least, most] = [Math.min(...numbers), Math.max(...numbers)];
  const margin = (most - least) * room || 1;
  return [least - margin, most + margin];
}

/**
 * What an axis shows: the box, and of what lies beyond it a few times as much as the box is wide on either side, and the nearest
 * few however far they are. Without both ends, what is nearest.
 */
function viewOf(ends: readonly (number | undefined)[], points: readonly number[]): readonly [number, number] {
  const [from, to] = ends;
  if (from === undefined || to === undefined) {
    const known = ends.filter((end) => end !== undefined);
    return span([...known, ...points], 0.12);
  }
  const beyond = points.map((point) => Math.max(from - point, point - to, 0)).sort((a, b) => a - b);
  const room = Math.max(4 * (to - from), beyond[3] ?? beyond.at(-1) ?? 0, Math.abs(to) * 0.01);
  const kept = points.map((point) => Math.min(Math.max(point, from - room), to + room));
  return span([from, to, ...kept], 0.12);
}

/** The window of total against centre distance: the box is what mount and range allow; hits are filled, misses are not. */
export function windowOf(of: WindowOf): TemplateResult | typeof nothing {
  const { listed, output, range, mount, width, em, x: along } = of;
  const points = listed.flatMap((one) => {
    const centre = drawn(one);
    const total = one.one.totals[output]?.low.toNumber();
    return centre === undefined || total === undefined ? [] : [{ one, centre, total }];
  });
  if (!points.length || width < 120) return nothing;
  const near = points.slice(0, 24);
  const [left, right] = viewOf(
    mount,
    near.map(({ centre }) => centre),
  );
  const [bottom, top] = viewOf(
    range,
    near.map(({ total }) => total),
  );
  const height = round(Math.min(Math.max(width * 0.62, 17 * em), 24 * em));
  const aside = Math.max(3.2, Math.max(...of.rangeTexts.map(roomFor)) + 1);
  const heading = linesOf(of.axes[1], (width - aside * em) / em);
  const [start, end] = [aside * em, 0.8 * em];
  const x = (centre: number) => along(start + ((centre - left) / (right - left)) * (width - start - end));
  const onward = along(1) > along(0) ? 1 : -1;
  /** What an end of the mount is lettered at: as near to its tick as the edge allows. */
  const under = mount.map((end, n) => {
    if (end === undefined) return undefined;
    // An m is wider than most signs.
    const room = (roomFor(of.mountTexts[n]!) + 0.8) * em;
    const outward = n ? onward : -onward;
    const beyond = outward > 0 ? Math.max(0, x(end) + room - width) : Math.max(0, room - x(end));
    return round(x(end) - outward * beyond);
  });
  /** Where the ends have no room beside each other, the second stands below the first. */
  const isStacked = under.every((one) => one !== undefined) && (under[1]! - under[0]!) * onward < 0.5 * em;
  const margin = { start, end, top: (0.9 + 1.3 * heading.length) * em, bottom: (isStacked ? 4.3 : 3) * em };
  const y = (total: number) =>
    round(margin.top + ((top - total) / (top - bottom)) * (height - margin.top - margin.bottom));
  const box = [x(mount[0] ?? left), x(mount[1] ?? right)].sort((a, b) => a - b) as [number, number];
  const [low, high] = [y(range[0]), y(range[1])];
  const floor = round(height - margin.bottom);
  const seen = points
    .filter(({ centre, total }) => centre >= left && centre <= right && total >= bottom && total <= top)
    .map(({ one, centre, total }) => {
      const isChosen = of.isChosen(one);
      const reach = (isChosen ? 0.68 : 0.4) * em;
      const text = of.teethOf(one);
      // What reaches and fits is lettered bold.
      const room = roomFor(text) * (one.hit ? 1.15 : 1);
      return { one, isChosen, x: x(centre), y: y(total), reach, text, room };
    })
    .sort((a, b) => Number(b.one.hit) - Number(a.one.hit) || Number(b.isChosen) - Number(a.isChosen));
  const sides = [along(margin.start + 0.2 * em), along(width)].sort((a, b) => a - b) as [number, number];
  const labels = placeLabels(
    seen.slice(0, labelsAtMost),
    [box[0], high, box[1], low],
    seen
      .slice(labelsAtMost)
      .map((mark) => [mark.x - mark.reach, mark.y - mark.reach, mark.x + mark.reach, mark.y + mark.reach]),
    [sides[0], margin.top - 0.9 * em, sides[1], floor - 0.2 * em],
    em,
  );
  /** What the ends of a short range give way to each other. */
  const apart = Math.max(0, 1.1 * em - (low - high)) / 2;
  /** The point that a finger means: the nearest, if it is as near as a finger is broad. */
  const taken = (event: MouseEvent): void => {
    const box = (event.currentTarget as Element).getBoundingClientRect();
    const far = (mark: (typeof seen)[number]): number =>
      Math.hypot(mark.x - (event.clientX - box.left), mark.y - (event.clientY - box.top));
    const nearest = seen.reduce<(typeof seen)[number] | undefined>(
      (best, mark) => (best && far(best) <= far(mark) ? best : mark),
      undefined,
    );
    if (nearest && far(nearest) <= 22) of.take(nearest.one);
  };
  const pointsOf = (event: Event): SVGGElement[] => [
    ...(event.currentTarget as Element).querySelectorAll<SVGGElement>(".point"),
  ];
  /** One stop for the tab key: the point that was looked at last. */
  const entered = (event: Event): void => {
    for (const point of pointsOf(event)) point.setAttribute("tabindex", point === event.target ? "0" : "-1");
  };
  const pressed = (event: KeyboardEvent): void => {
    const marks = pointsOf(event);
    const here = marks.indexOf(event.target as SVGGElement);
    if (here < 0 || event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.key === "Enter" || event.key === " ") {
      event.preventDefault();
      return of.take(seen[here]!.one);
    }
    const way = ({ ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] } as const)[
      event.key as "ArrowUp"
    ] as readonly [number, number] | undefined;
    if (!way) return;
    event.preventDefault();
    event.stopPropagation();
    const [from, [dx, dy]] = [seen[here]!, way];
    let [next, least] = [here, Infinity];
    seen.forEach((mark, n) => {
      const [ax, ay] = [mark.x - from.x, mark.y - from.y];
      const along = ax * dx + ay * dy;
      // What lies that way, rather straight on than aside.
      const worth = along + 2 * Math.abs(ax * dy + ay * dx);
      if (n !== here && along > 0.5 && worth < least) [next, least] = [n, worth];
    });
    marks[next]!.focus();
  };
  const home = Math.max(
    0,
    seen.findIndex(({ isChosen }) => isChosen),
  );
  return html`<svg
    part="window"
    role="group"
    aria-label=${of.title}
    @click=${taken}
    @keydown=${pressed}
    @focusin=${entered}
    width=${width}
    height=${height}
    viewBox="0 0 ${width} ${height}"
  >
    <path
      d="M${along(margin.start)} ${round(margin.top)}V${floor}H${along(width - margin.end)}"
      fill="none"
      stroke="currentColor"
      stroke-width="0.8"
      opacity="0.6"
    />
    <rect
      x=${box[0]}
      y=${high}
      width=${round(box[1] - box[0])}
      height=${round(low - high)}
      fill="currentColor"
      fill-opacity="0.07"
      stroke="currentColor"
      stroke-width="1.4"
    />
    ${range.map(
      (end, n) =>
        svg`<path d="M${along(margin.start - 0.4 * em)} ${y(end)}H${along(margin.start)}" stroke="currentColor" /><text aria-hidden="true" x=${along(margin.start - 0.6 * em)} y=${round(y(end) + 0.3 * em + (n ? -apart : apart))} text-anchor="end">${of.rangeTexts[n]}</text>`,
    )}
    ${mount.map((end, n) =>
      end === undefined
        ? nothing
        : svg`<path d="M${x(end)} ${floor}v${round(0.4 * em)}" stroke="currentColor" /><text aria-hidden="true" x=${under[n]} y=${round(floor + (n && isStacked ? 2.7 : 1.4) * em)} text-anchor=${n ? "start" : "end"}>${of.mountTexts[n]}</text>`,
    )}
    ${heading.map((line, n) => svg`<text aria-hidden="true" class="faint" x=${along(margin.start)} y=${round((0.8 + 1.3 * n) * em)} text-anchor="start">${line}</text>`)}
    <text
      aria-hidden="true"
      class="faint"
      x=${along(width - margin.end)}
      y=${round(height - 0.4 * em)}
      text-anchor="end"
    >
      ${of.axes[0]}
    </text>
    ${seen.map(({ one, isChosen, x: px, y: py, text }, n) => {
      const ring = isChosen
        ? svg`<circle cx=${px} cy=${py} r=${round(0.62 * em)} fill="none" stroke="currentColor" stroke-width="1.2" />`
        : nothing;
      const mark = one.hit
        ? svg`<circle cx=${px} cy=${py} r=${round(0.34 * em)} fill="currentColor" />`
        : svg`<path d="M${round(px - 0.24 * em)} ${round(py - 0.24 * em)}l${round(0.48 * em)} ${round(0.48 * em)}m0 ${round(-0.48 * em)}l${round(-0.48 * em)} ${round(0.48 * em)}" stroke="currentColor" stroke-width="1.1" opacity="0.75" />`;
      const place = labels[n];
      const label = place
        ? svg`<text aria-hidden="true" class="pair" x=${round(place.x)} y=${round(place.y)} text-anchor="middle" font-weight=${one.hit ? 600 : 400}>${text}</text>`
        : nothing;
      return svg`<g class="point" role="button" tabindex=${n === home ? 0 : -1} aria-label=${of.nameOf(one)} aria-disabled=${isChosen ? "true" : nothing}><circle class="hit" cx=${px} cy=${py} r="12.5" />${ring}${mark}</g>${label}`;
    })}
  </svg>`;
}
