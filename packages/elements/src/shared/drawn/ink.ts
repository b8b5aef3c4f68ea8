/** How wide a text of one em is at the most, near enough to set things beside it. */
export const roomFor = (text: string): number =>
  [...text].reduce((sum, sign) => sum + (/[\u2e80-\uffef]/u.test(sign) ? 1 : 0.55), 0);

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
