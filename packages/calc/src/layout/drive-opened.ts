import type { Box, PlacedCell, PlacedLine } from "./drive-cells.js";
import type { LinePoint } from "./drive-marks.js";

/** A line that makes room for something that is as wide as it is. */
export interface OpenedLine {
  readonly line: PlacedLine;
  /** Where the room begins. */
  readonly y: number;
}

const room = 8;
const bottom = ({ y, height }: Box): number => y + height;
const boxesOf = ({ drawn, head, foot }: PlacedCell): readonly Box[] => [drawn, head, foot];

/**
 * Makes room beneath a thing of the line: whatever stands lower is moved down by as much; nothing is parted by it.
 *
 * @param key the thing, as the line names it
 * @param height of the room, in pixels
 * @returns nothing where the line has no such thing
 */
export function openedBeneath(line: PlacedLine, key: string, height: number): OpenedLine | undefined {
  const cell = line.cells.find((one) => one.key === key);
  if (!cell) return undefined;
  const whole = [
    ...line.cells.map(boxesOf),
    ...line.labels.map((one) => [one]),
    ...line.totals.map((one) => [one]),
  ].map((boxes) => ({ top: Math.min(...boxes.map(({ y }) => y)), end: Math.max(...boxes.map(bottom)) }));
  let edge = Math.max(...boxesOf(cell).map(bottom));
  // What reaches over the edge stays above it.
  for (let before = -1; before !== edge;) {
    before = edge;
    for (const { top, end } of whole) if (top < edge && end > edge) edge = end;
  }
  // What is lettered on a shaft that goes on across the edge stays where it begins, beside the shaft's own room.
  const notes = line.shafts.flatMap(({ note }) => (note && note.y < edge ? [bottom(note)] : []));
  const y = Math.max(edge + room, ...notes);
  const by = y - edge + height;
  const moved = <One extends Box>(box: One): One => (box.y < edge ? box : { ...box, y: box.y + by });
  const point = ([px, py]: LinePoint): LinePoint => (py < y ? [px, py] : [px, py + by]);
  return {
    y,
    line: {
      ...line,
      height: line.height + by,
      cells: line.cells.map((one) =>
        one.drawn.y < edge
          ? one
          : { ...one, y: one.y + by, drawn: moved(one.drawn), head: moved(one.head), foot: moved(one.foot) },
      ),
      shafts: line.shafts.map(({ points, note, ...shaft }) => ({
        ...shaft,
        points: points.map(point),
        ...(note && { note: moved(note) }),
      })),
      labels: line.labels.map(moved),
      totals: line.totals.map(moved),
    },
  };
}
