import { blockOf, type Cell, type Lettered, type Lettering } from "./drive-cells.js";
import { strandsOf, type Strand } from "./drive-line.js";
import { sense, type Sheet } from "./drive-sheet.js";
import { corner, depthsOf, type Bar } from "./drive-wrapped.js";

const gutter = 12;
const toText = 14;
const least = 16;
const strandGap = 22;

/** From top to bottom, lettered beside; each shaft below the one that it comes from. */
export function placeUpright(
  sheet: Sheet,
  line: readonly Strand[],
  cellsFor: (room: number) => ReadonlyMap<Strand, readonly Cell[]>,
  lettering: Lettering,
  totalsFor: (room: number) => ReadonlyMap<string, Lettered>,
): void {
  const sizes = [...cellsFor(Infinity).values()].flat();
  const depths = depthsOf(line);
  const indent = gutter * Math.max(...depths.values()) + 4;
  const x = indent + Math.max(26, ...sizes.map(({ after }) => after));
  const textX = x + Math.max(26, ...sizes.map(({ before }) => before)) + toText;
  const room = Math.max(60, sheet.width - textX);
  const cells = cellsFor(room);
  const totals = totalsFor(room);
  const fedFrom = new Map<Strand, Bar>();
  let y = 0;

  for (const strand of strandsOf(line)) {
    const { output, feeds, motor } = strand;
    const named = motor && !output ? undefined : lettering.label(strand.id);
    const label = named && blockOf([named], room);
    if (label) sheet.label(strand.id, { x: textX, y, ...label });
    let end = y + (label ? label.height / 2 : 0);
    let after: Cell | undefined;
    const bar = fedFrom.get(strand);
    if (bar) {
      sheet.shaft([...bar.lead, [bar.x, end], [x, end], [x, end + 9]]); // prettier-ignore
      bar.lead = [[bar.x, end - corner]];
      end += 9;
    }
    y = Math.max(end, y + (label ? label.height + 6 : 0));
    let gap = 0;
    for (const cell of cells.get(strand)!) {
      const { key, length, head, foot, shaft } = cell;
      const total = output && key === `wheel:${output.id}` ? totals.get(output.id)! : undefined;
      const text = head.height + foot.height + (total?.height ?? 0);
      const height = Math.max(length, text);
      const start = y + (height - length) / 2;
      const textY = y + (height - text) / 2;
      if (after ?? bar) {
        const note = after?.shaft;
        // What reaches as far as the lettering stands between the lettering of the two.
        const isWide = note && x + 7 + note.width + sense > textX;
        const middle = isWide ? y - gap / 2 : (end + start) / 2;
        const points = [[x, end], [x, start]] as const; // prettier-ignore
        if (note)
          sheet.shaft(points, after!.key, { x: x + 7, y: middle - note.height / 2, width: note.width + sense, height: note.height }); // prettier-ignore
        else sheet.shaft(points, after?.key);
      }
      sheet.upright(strand.id, cell, x, start, textX, textY + (total?.height ?? 0));
      if (total) sheet.total(output!.id, { x: textX, y: textY, ...total });
      end = start + length;
      after = cell;
      gap = shaft ? Math.max(least, shaft.height + 8) : least;
      y += height + gap;
    }
    if (feeds.length) {
      const bar: Bar = { x: gutter * depths.get(strand)! + 4, lead: [] };
      bar.lead = [[x, end], [x, y + 4], [bar.x, y + 4]]; // prettier-ignore
      for (const one of feeds) fedFrom.set(one, bar);
    }
    y += strandGap;
  }
}
