import type { SaidCell, SaidLine, SaidLineTotal } from "@meshwright/calc/article";
import type { Lettered, Lettering } from "@meshwright/calc/layout";
import { roomFor } from "../../shared/drawn/index.js";

/** The sizes of the lettering in pixels, as the styles have them. */
export interface Sizes {
  readonly name: number;
  readonly count: number;
  readonly note: number;
  readonly total: number;
  /** The least that a finger hits. */
  readonly target: number;
}

/** Nothing is lettered smaller than 12 pixels. */
export const sizesFor = (em: number, isCoarse: boolean): Sizes => ({
  name: Math.max(12, em * 0.82),
  count: Math.max(13, em * 0.96),
  note: Math.max(12, em * 0.72),
  total: Math.max(14, em * 1.2),
  target: isCoarse ? 44 : 0,
});

const line = (text: string, size: number, factor = 1.35, least = 0): Lettered => ({
  width: roomFor(text) * size + 2,
  height: Math.max(least, size * factor),
});

/** A sentence on lines of so many ems. */
function wrapped(text: string, size: number, ems = 15, factor = 1.35, least = 0): Lettered {
  const { width, height } = line(text, size, factor, least);
  const most = ems * size;
  return width <= most ? { width, height } : { width: most, height: height * Math.ceil((width * 1.12) / most) };
}

/** The counts of a thing on one line: what is touched is at least as wide as a finger. */
function countsLine({ pieces }: SaidCell, { count, target }: Sizes, isStill: boolean): Lettered {
  const live = (address: string | undefined): boolean => address !== undefined && !isStill;
  const width = pieces.reduce(
    (sum, { text, address }) => sum + Math.max(live(address) ? target : 0, roomFor(text) * count) + count * 0.42,
    0,
  );
  const least = pieces.some(({ address }) => live(address)) ? target : 0;
  return { width: width * 1.1, height: Math.max(count * 1.5, least) };
}

export const laneText = ({ label, total }: SaidCell["lanes"][number]): string =>
  total ? `${label} · ${total}` : label;

export const totalLines = ({ label, text, verdict }: SaidLineTotal): readonly string[] => [label, text, verdict];

/** How much room everything takes that is lettered around a line. */
export function letteringFor(
  { cells, totals, strands }: SaidLine,
  sizes: Sizes,
  isStill: boolean,
  notesOf: (cell: SaidCell) => readonly string[],
): Lettering {
  const { name, note, total, target } = sizes;
  const labels = new Map<string, string>();
  const walk = (list: SaidLine["strands"]): void => {
    for (const { id, label, feeds } of list) {
      labels.set(id, label);
      walk(feeds);
    }
  };
  walk(strands);
  // Between two stages a name may take two lines.
  const nameLine = (cell: SaidCell): Lettered =>
    wrapped(cell.name, name, cell.stage ? 15 : 7.5, 1.4, isStill ? 0 : target);
  return {
    head(key) {
      const cell = cells.get(key)!;
      return cell.stage ? [nameLine(cell)] : [];
    },
    foot(key) {
      const cell = cells.get(key)!;
      return [
        ...(cell.stage || !cell.name ? [] : [nameLine(cell)]),
        ...(cell.pieces.length ? [countsLine(cell, sizes, isStill)] : []),
        ...cell.lanes.map((lane) => line(laneText(lane), name, 1.5, isStill ? 0 : target)),
        ...notesOf(cell).map((text) => line(text, note)),
        ...cell.faults.map((text) => wrapped(text, note)),
      ];
    },
    shaft(key) {
      const { shaft } = cells.get(key)!;
      return shaft && { width: roomFor(shaft.text) * note, height: note * 1.3 };
    },
    total(output) {
      const { label, text, verdict } = totals.get(output)!;
      return [wrapped(label, name, 9, 1.4), line(text, total, 1.25), ...(verdict ? [line(verdict, note)] : [])];
    },
    label(strand) {
      const text = labels.get(strand);
      return text ? wrapped(text, name, 9, 1.5) : undefined;
    },
  };
}
