import { nothing, svg, type SVGTemplateResult } from "lit/html.js";
import type { Bounded } from "@meshwright/calc/exact";
import type { PlacedMount } from "@meshwright/calc/layout";
import { hatching, linesOf, roomFor, round } from "../../shared/drawn/index.js";
import { between, type LengthText } from "./dimensions.js";
import { circle, cross } from "./ink.js";
import { reachOf, type Sheet } from "./sheet.js";

const middle = (length: Bounded): number => length.low.toNumber();

interface Note {
  readonly x: number;
  readonly text: string;
  readonly kind: string;
  readonly anchor?: "start" | "middle" | "end";
}

/** Notes under a line: each in turn on the first row where it meets no other. */
function inRows(
  notes: readonly Note[],
  width: number,
  em: number,
): { readonly rows: number; readonly placed: readonly (Note & { readonly row: number })[] } {
  const rows: [number, number][][] = [];
  const placed = notes.map((note) => {
    const room = roomFor(note.text) * em * (note.kind === "few" ? 1 : 1.25);
    const before = { start: 0, middle: room / 2, end: room }[note.anchor ?? "middle"];
    const x = Math.max(before, Math.min(width - room + before, note.x));
    const [start, end] = [x - before - 0.25 * em, x - before + room + 0.25 * em];
    let row = rows.findIndex((taken) => taken.every(([a, b]) => b < start || a > end));
    if (row < 0) row = rows.push([]) - 1;
    rows[row]!.push([start, end]);
    return { ...note, x, row };
  });
  return { rows: rows.length, placed };
}

/** The mount in its place below the driver, to scale: open where the axis can stand, hatched to either side. */
export function drawTrack({ span, from, to, holes }: PlacedMount, sheet: Sheet): SVGTemplateResult | typeof nothing {
  const { em, scale } = sheet;
  const x = (centre: Bounded): number => round(sheet.x(span.driven.x - middle(centre)));
  const top = round(sheet.y + span.driver.radii.tip * scale + 0.9 * em);
  const tall = round(0.55 * em);
  const ends = [to && x(to), from && x(from)];
  if (holes.length)
    return svg`<path class="edge" d=${holes.map((hole) => circle(x(hole), top + tall / 2, tall * 0.4)).join("")} />`;
  // The plate ends before it would run into the other gear.
  const beside =
    sheet.x(span.driven.x) -
    Math.sqrt(Math.max(0, (reachOf(span.driven) * scale) ** 2 - (top - sheet.y) ** 2)) -
    0.4 * em;
  const reaches = [2.2 * em, Math.max(0.5 * em, Math.min(2.2 * em, beside - (ends[1] ?? 0)))] as const;
  const parts = ends.map((end, n) =>
    end === undefined ? "" : hatching(end, end + (n ? 1 : -1) * reaches[n]!, top, tall, 3),
  );
  const edges = ends.map((end, n) =>
    end === undefined
      ? ""
      : `M${round(end + (n ? 1 : -1) * reaches[n]!)} ${top}H${end}v${tall}H${round(end + (n ? 1 : -1) * reaches[n]!)}`,
  );
  return svg`<path class="hatch" d=${parts.join("")} /><path class="fine" d=${edges.join("")} />`;
}

export interface SlotWords {
  /** "1.9 mm short" */
  readonly short: string;
  /** "article 30.8 mm" */
  readonly article: string;
  /** "the slot, 5×" */
  readonly caption: (factor: number) => string;
}

/**
 * The mount again, enlarged: the centre distances that it can set lie open, the rest is hatched; the axis that the pair
 * needs stands where it must, and what it lacks is dimensioned. As in the drawing, farther is to the left.
 */
export function drawSlot(
  mount: PlacedMount,
  article: PlacedMount | undefined,
  sheet: Sheet,
  top: number,
  text: LengthText,
  words: SlotWords,
): { readonly picture: SVGTemplateResult | typeof nothing; readonly height: number } {
  const { em, width } = sheet;
  const { from, to, holes, short } = mount;
  if (!from && !to && !holes.length) return { picture: nothing, height: 0 };
  const needed = mount.span.centre;
  const other = article && text(article.span.centre) !== text(needed) ? article.span.centre : undefined;
  const seen = [from, to, ...holes, needed, other].filter((one) => one !== undefined).map(middle);
  const [low, high] = [Math.min(...seen), Math.max(...seen)];
  const margin = Math.max(0.45 * (high - low), 0.1);
  const wide = Math.min(width - 1, 27 * em);
  const steps = [1, 1.5, 2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 30, 50];
  const factor = steps.findLast((step) => step * sheet.scale * (high - low + 2 * margin) <= wide) ?? 1;
  const scale = factor * sheet.scale;
  const x = (centre: Bounded): number => round(width / 2 - (middle(centre) - (low + high) / 2) * scale);
  const [left, right] = [round((width - wide) / 2), round((width + wide) / 2)];

  const tall = round(1.5 * em);
  // Lettered bold, in lines where one is too long.
  const bold = 1.14 * em;
  const lacks = short ? linesOf(words.short, width / bold) : [];
  const band = round(top + (2.1 + 1.2 * Math.max(0, lacks.length - 1)) * em);
  const line = band + tall / 2;
  const axis = x(needed);
  const clear = 0.62 * em;

  /** Hatches between two places, leaving room around the axes. */
  const solid = (a: number, b: number, keepClear: readonly number[]): string => {
    const gaps = keepClear.filter((at) => at > a - clear && at < b + clear).sort((one, two) => one - two);
    let path = "";
    let start = a;
    for (const at of gaps) {
      if (at - clear > start) path += hatching(start, at - clear, band, tall);
      start = Math.max(start, at + clear);
    }
    return start < b ? path + hatching(start, b, band, tall) : path;
  };
  const marks = [axis, ...holes.map(x), ...(other ? [x(other)] : [])];
  const ends = holes.length ? [] : [to && x(to), from && x(from)];
  const hatched = holes.length
    ? solid(left, right, marks)
    : (ends[0] === undefined ? "" : solid(left, ends[0], marks)) +
      (ends[1] === undefined ? "" : solid(ends[1], right, marks));
  const edges = `M${left} ${band}H${right}M${left} ${round(band + tall)}H${right}`;
  const limits = ends.filter((end) => end !== undefined).map((end) => `M${end} ${band}v${tall}`);

  // What it lacks, from the end of the slot (or the nearest hole) to the axis.
  const nearest = [...holes].sort((a, b) => Math.abs(x(a) - axis) - Math.abs(x(b) - axis))[0];
  const end = short && { to, from, hole: nearest }[short.end];
  let lack: SVGTemplateResult | typeof nothing = nothing;
  if (end) {
    const [a, b] = [x(end), axis];
    const level = band - 0.65 * em;
    const { path } = between(a, b, level, em);
    const half = (Math.max(...lacks.map(roomFor)) * bold) / 2;
    const at = Math.max(half, Math.min(width - half, (a + b) / 2));
    lack = svg`<g class="fault"><path class="fine" d="M${a} ${band}V${round(level - 0.4 * em)}M${b} ${round(line - clear)}V${round(level - 0.4 * em)}" />${path}
      ${lacks.map((text, n) => svg`<text class="short" x=${round(at)} y=${round(level - (0.55 + 1.2 * (lacks.length - 1 - n)) * em)} text-anchor="middle">${text}</text>`)}</g>`;
  }
  const note = (one: Bounded, limit?: "from" | "to") => ({ x: x(one), text: text(one, limit), kind: "few" });
  const limitNotes = holes.length
    ? holes.map((hole) => note(hole))
    : [...(to ? [note(to, "to")] : []), ...(from ? [note(from, "from")] : [])];
  // Ends that are close together are lettered away from one another.
  const [first, last] = limitNotes;
  const apart = holes.length || limitNotes.length < 2 || last!.x - first!.x > (roomFor(first!.text) + 1) * em;
  const notes: Note[] = [
    ...limitNotes.map((note, n): Note => (apart ? note : { ...note, anchor: n ? "start" : "end" })),
    { x: axis, text: text(needed), kind: short ? "fault" : "needed" },
    ...(other ? [{ x: x(other), text: words.article, kind: "few" }] : []),
  ];
  const { rows, placed } = inRows(notes, width, em);
  const below = band + tall;
  const caption = linesOf(words.caption(factor), (width / em) * 0.95);
  const floor = below + (rows * 1.25 + 0.3) * em;
  return {
    height: floor + (1.25 * caption.length - 0.05) * em - top,
    picture: svg`<path class="hatch" d=${hatched} /><path class="edge" d=${edges + limits.join("")} />
      ${holes.map((hole) => svg`<path class="edge" d=${circle(x(hole), line, clear * 0.8)} />`)}
      ${other ? svg`<path class="article" d=${circle(x(other), line, 0.36 * em) + `M${x(other)} ${band}v${tall}`} />` : nothing}
      <path class="axis" d=${circle(axis, line, 0.3 * em)} /><path class="fine" d=${cross(axis, line, 0.55 * em) + `M${axis} ${round(line + clear)}V${round(below + 0.25 * em)}`} />
      ${lack}
      ${placed.map((note) => svg`<text class=${note.kind} x=${round(note.x)} y=${round(below + (note.row * 1.25 + 1.15) * em)} text-anchor=${note.anchor ?? "middle"}>${note.text}</text>`)}
      ${caption.map((line, n) => svg`<text class="few" x=${round(width / 2)} y=${round(floor + (0.9 + 1.25 * n) * em)} text-anchor="middle">${line}</text>`)}`,
  };
}
