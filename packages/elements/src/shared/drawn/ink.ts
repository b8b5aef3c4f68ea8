/** How wide a text of one em is at the most, near enough to set things beside it. */
export const roomFor = (text: string): number =>
  [...text].reduce((sum, sign) => sum + (/[\u2e80-\uffef]/u.test(sign) ? 1 : 0.55), 0);

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
