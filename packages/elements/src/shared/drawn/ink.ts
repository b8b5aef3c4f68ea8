/** Without a page to measure on: how wide a text of one em usually is at the most. */
const usual = (text: string): number =>
  [...text].reduce((sum, sign) => sum + (/[\u2e80-\uffef]/u.test(sign) ? 1 : 0.55), 0);

let pen: CanvasRenderingContext2D | null | undefined;
/** The font that is lettered in while something is drawn: its style, weight and families. */
let lettering = "";
/** What was measured, by the font and the text. */
const measures = new Map<string, Map<string, number>>();
let widths = new Map<string, number>();

/** Draws something whose texts are measured in a font, `style weight` and the families. */
export function letteredIn<Drawn>(style: string, families: string, draw: () => Drawn): Drawn {
  lettering = families && `${style} 100px ${families}`;
  widths = measures.get(lettering) ?? new Map<string, number>();
  measures.set(lettering, widths);
  try {
    return draw();
  } finally {
    lettering = "";
  }
}

/** Other fonts have come: what was measured is measured anew. */
export const forgetWidths = (): void => measures.clear();

function measured(text: string): number {
  let width = widths.get(text);
  if (width === undefined) {
    pen ??= document.createElement("canvas").getContext("2d");
    if (!pen) return usual(text);
    if (pen.font !== lettering) pen.font = lettering;
    // Some of what is measured is lettered bold.
    width = pen.measureText(text).width / 96;
    if (widths.size > 4000) widths.clear();
    widths.set(text, width);
  }
  return width;
}

/** How wide a text of one em is, near enough to set things beside it: in the font that is drawn in, where there is a page. */
export const roomFor = (text: string): number => (lettering ? measured(text) : usual(text));

/** A text in lines that are at most so many ems wide, where its words let it. */
export function linesOf(text: string, room: number): readonly string[] {
  const lines: string[] = [];
  // Between words, or between the signs of scripts that have no blanks.
  const pieces = text.match(/[\u2e80-\uffef]|[^\s\u2e80-\uffef]+\s*|\s+/gu) ?? [text];
  for (const piece of pieces) {
    const last = lines.at(-1);
    if (last !== undefined && roomFor((last + piece).trimEnd()) <= room) lines[lines.length - 1] = last + piece;
    else lines.push(piece);
  }
  return lines.map((line) => line.trim());
}

/** Path data: slanting strokes that fill a rectangle. */
export function hatching(from: number, to: number, top: number, height: number, gap = 4): string {
  const [left, right] = from < to ? [from, to] : [to, from];
  let path = "";
  for (let x = left - height; x < right; x += gap) {
    // Clipped by hand: a clip path would need an id.
    const a = Math.max(left, x);
    const b = Math.min(right, x + height);
    if (b > a) path += `M${round(a)} ${round(top + height - (a - x))}L${round(b)} ${round(top + height - (b - x))}`;
  }
  return path;
}

/** Path data: an arrowhead whose point is at x, y. */
export const arrow = (x: number, y: number, along: number, size: number): string =>
  `M${round(x)} ${round(y)}l${round(-along * size)} ${round(-size * 0.38)}v${round(size * 0.76)}z`;

/** A coordinate, short. */
export const round = (value: number): number => Math.round(value * 10) / 10;
