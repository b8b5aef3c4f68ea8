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
  target: isCoarse ? 44 : 24,
});

/** Of pieces that stand side by side, how many lines they take; a piece that is too long is broken. */
function linesIn(pieces: readonly number[], room: number): number {
  let [lines, used] = [1, 0];
  for (const piece of pieces) {
    if (used && used + piece > room) [lines, used] = [lines + 1, 0];
    lines += Math.max(0, Math.ceil(piece / room) - 1);
    used += piece;
  }
  return lines;
}

const wordsOf = (text: string, size: number): readonly number[] =>
  (text.match(/[\u2e80-\uffef]|[^\s\u2e80-\uffef]+\s*/gu) ?? [text]).map((word) => roomFor(word) * size);

function line(text: string, size: number, factor = 1.35, least = 0): Lettered {
  const height = Math.max(least, size * factor);
  return {
    width: roomFor(text) * size + 2,
    height,
    heightIn: (room) => height + size * factor * (linesIn(wordsOf(text, size), room - 2) - 1),
  };
}

/** A sentence on lines of so many ems. */
function wrapped(text: string, size: number, ems = 15, factor = 1.35, least = 0): Lettered {
  const one = line(text, size, factor, least);
  const most = ems * size;
  if (one.width <= most) return one;
  const heightIn = (room: number): number => one.heightIn!(Math.min(room, most));
  return { width: most, height: heightIn(most), heightIn };
}

/** What is lettered bold is wider. */
const bold = 1.14;

/** The counts of a thing on one line: what is touched is at least as wide as a finger. */
function countsLine({ pieces }: SaidCell, { count, target }: Sizes, isStill: boolean): Lettered {
  const live = (address: string | undefined): boolean => address !== undefined && !isStill;
  const widths = pieces.map(
    ({ text, address }) => Math.max(live(address) ? target : 0, roomFor(text) * count) * 1.05 + count * 0.42,
  );
  const width = widths.reduce((sum, one) => sum + one, 0);
  const least = pieces.some(({ address }) => live(address)) ? target : 0;
  const height = Math.max(count * 1.5, least);
  return { width: width * 1.05, height, heightIn: (room) => height * linesIn(widths, room) };
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
        ...cell.faults.map((text) => wrapped(text, note * bold)),
      ];
    },
    shaft(key) {
      const { shaft } = cells.get(key)!;
      return shaft && { width: roomFor(shaft.text) * note, height: note * 1.3 };
    },
    total(output) {
      const { label, text, verdict } = totals.get(output)!;
      return [
        wrapped(label, name * bold, 9, 1.4),
        line(text, total * bold, 1.25),
        ...(verdict ? [line(verdict, note * bold)] : []),
      ];
    },
    label(strand) {
      const text = labels.get(strand);
      return text ? wrapped(text, name * bold, 22, 1.5) : undefined;
    },
  };
}
