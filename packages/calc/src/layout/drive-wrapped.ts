import type { Cell, Lettered, Lettering } from "./drive-cells.js";
import { strandsOf, type Strand } from "./drive-line.js";
import type { LinePoint } from "./drive-marks.js";
import type { Sheet } from "./drive-sheet.js";
import { putShaft, putStaff, reachOf, shaftRoom, staffOf, type Staff } from "./drive-staff.js";

const gutter = 14;
const toTotal = 14;
const systemGap = 26;
const longest = 220;
/** What a staff that need not fill its width has more between its things. */
const roomy = 48;
/** Where wheels stand if no staff asks for more, of the width. */
const usual = 0.68;
/** Corners are drawn round: what goes on straight begins before them. */
export const corner = 10;

/** Where the shafts that another one feeds come from: the first goes on from it without a break, each from the one before. */
export interface Bar {
  readonly x: number;
  lead: readonly LinePoint[];
}

/** How many shafts lead to a shaft: each has a bar of its own in the gutter. */
export function depthsOf(line: readonly Strand[]): ReadonlyMap<Strand, number> {
  const depths = new Map<Strand, number>();
  const walk = (strand: Strand, depth: number): void => {
    depths.set(strand, depth);
    for (const one of strand.feeds) walk(one, depth + 1);
  };
  for (const one of line) walk(one, 0);
  return depths;
}

/** Parts a shaft's things into lines, each as full as it can be. */
function linesOf(cells: readonly Cell[], from: number, to: number): readonly (readonly Cell[])[] {
  const lines: Cell[][] = [];
  let line: Cell[] = [];
  for (const cell of cells) {
    const staff = staffOf([...line, cell], from);
    if (line.length && Math.max(staff.end + shaftRoom(cell), staff.textEnd) > to) {
      lines.push(line);
      line = [];
    }
    line.push(cell);
  }
  return [...lines, line];
}

/** As much shaft between things as fills a line. */
function filled(cells: readonly Cell[], from: number, to: number): Staff {
  const plain = staffOf(cells, from);
  const gaps = Math.max(1, cells.length - 1);
  let more = Math.min(longest, Math.max(0, to - Math.max(plain.end, plain.textEnd)) / gaps);
  let staff = staffOf(cells, from, more);
  while (more > 0.5 && Math.max(staff.end, staff.textEnd) > to) staff = staffOf(cells, from, (more *= 0.85));
  return more > 0.5 ? staff : plain;
}

/** Staff below staff, each shaft one of its own; a staff that is too long goes on below like music. */
export function placeWrapped(
  sheet: Sheet,
  line: readonly Strand[],
  cells: ReadonlyMap<Strand, readonly Cell[]>,
  totals: ReadonlyMap<string, Lettered>,
  lettering: Lettering,
): void {
  const column = Math.max(0, ...[...totals.values()].map(({ width }) => width));
  const widest = sheet.width - column - toTotal;
  const depths = depthsOf(line);
  const deepest = Math.max(...depths.values());
  const indent = deepest ? gutter * (deepest + 1) : 0;
  const fedFrom = new Map<Strand, Bar>();
  // Wheels and totals stand in one column, no farther out than the longest staff asks for.
  const ends = [...cells].flatMap(([{ output, motor }, list]) => {
    if (!output) return [];
    const from = motor ? 0 : indent;
    const last = linesOf(list, from, widest).at(-1)!;
    const staff = staffOf(last, from, roomy);
    return Math.min(widest, Math.max(staff.end, staff.textEnd));
  });
  const wheels = Math.max(Math.min(widest, sheet.width * usual), ...ends);
  let top = 0;

  for (const strand of strandsOf(line)) {
    const { output, feeds } = strand;
    const from = strand.motor ? 0 : indent;
    const label = strand.motor && !output ? undefined : lettering.label(strand.id);
    if (label) {
      sheet.label(strand.id, { x: from + 8, y: top, ...label });
      top += label.height + 2;
    }
    const total = output && totals.get(output.id);
    const lines = linesOf(cells.get(strand)!, from, output ? widest : sheet.width - 30);
    let before:
      | {
          readonly cell: Cell;
          readonly end: number;
          readonly clear: number;
          readonly y: number;
          readonly bottom: number;
        }
      | undefined;
    lines.forEach((list, n) => {
      const isLast = n === lines.length - 1;
      const reach = reachOf(list, isLast ? total : undefined);
      const y = top + reach.above;
      const start = n ? indent + 6 : from;
      // What is lettered on the last shaft of a line needs its room as well.
      const edge = sheet.width - 12 - (isLast ? (feeds.length ? 28 : 0) : shaftRoom(list.at(-1)!));
      let staff = filled(list, start + (n ? 16 : 0), isLast && output ? wheels : edge);
      if (isLast && output) {
        const rest = wheels - Math.max(staff.end, staff.textEnd);
        const own = staff.starts;
        staff = {
          ...staff,
          end: staff.end + rest,
          starts: own.map((at, m) => (m === own.length - 1 ? at + rest : at)),
        };
      }
      putStaff(sheet, strand.id, staff, y, reach);
      const first = staff.starts[0] ?? start;
      if (before) {
        // On from the line above: down at its end, back between the two, and down to this one.
        const edge = sheet.width - 6;
        const between = before.bottom + systemGap / 2;
        putShaft(sheet, before.cell, before.end, edge, before.y);
        sheet.shaft([[edge, before.y], [edge, between], [start, between], [start, y], [first, y]]); // prettier-ignore
      } else if (!strand.motor) {
        const bar = fedFrom.get(strand)!;
        sheet.shaft([...bar.lead, [bar.x, y], [first, y]]); // prettier-ignore
        bar.lead = [[bar.x, y - corner]];
      }
      const bottom = y + reach.below;
      before = { cell: list.at(-1)!, end: staff.end, clear: Math.max(staff.end, staff.textEnd), y, bottom };
      top = bottom + systemGap;
    });
    if (output) sheet.total(output.id, { x: wheels + toTotal, y: before!.y - total!.height / 2, ...total! });
    if (!feeds.length) continue;
    const { end, clear, y, bottom } = before!;
    const x = gutter * depths.get(strand)! + 4;
    const channel = bottom + systemGap / 2;
    const bar: Bar = { x, lead: [[end, y], [clear + 12, y], [clear + 12, channel], [x, channel]] }; // prettier-ignore
    for (const one of feeds) fedFrom.set(one, bar);
  }
}
