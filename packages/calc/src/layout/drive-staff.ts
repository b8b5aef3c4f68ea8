import type { Cell, Lettered } from "./drive-cells.js";
import { clear, sense, type Sheet } from "./drive-sheet.js";

/** Between the lettering of neighbours. */
const apart = 14;
/** The least of a shaft that is seen between two things. */
const least = 18;

const textOf = ({ head, foot }: Cell): number => Math.max(head.width, foot.width);

/** What is lettered on a shaft, with the sense of rotation before it. */
export const shaftRoom = ({ shaft }: Cell): number => (shaft ? shaft.width + sense + 10 : least);

/** Things on one level line: where each begins, and what they take up. */
export interface Staff {
  readonly cells: readonly Cell[];
  readonly starts: readonly number[];
  /** Where the last one ends on the line, and where the lettering ends. */
  readonly end: number;
  readonly textEnd: number;
}

/** Sets things along a line from a place on, with so much more shaft between them. */
export function staffOf(cells: readonly Cell[], from: number, more = 0): Staff {
  const starts: number[] = [];
  let [end, textEnd] = [from, from - apart];
  cells.forEach((cell, n) => {
    const overhang = (textOf(cell) - cell.length) / 2;
    const shaft = n ? shaftRoom(cells[n - 1]!) + more : 0;
    const start = Math.max(end + shaft, textEnd + apart + overhang);
    starts.push(start);
    end = start + cell.length;
    textEnd = Math.max(end, end + overhang);
  });
  return { cells, starts, end, textEnd };
}

/** How far a staff reaches above and below its line. */
export interface Reach {
  /** Of the drawings. */
  readonly before: number;
  readonly after: number;
  /** With the lettering. */
  readonly above: number;
  readonly below: number;
}

export function reachOf(cells: readonly Cell[], total?: Lettered): Reach {
  const most = (of: (cell: Cell) => number): number => Math.max(0, ...cells.map(of));
  const lettered = most(({ shaft }) => (shaft ? shaft.height + 4 : 0));
  const [before, after] = [
    Math.max(
      lettered,
      most((cell) => cell.before),
    ),
    most((cell) => cell.after),
  ];
  const [head, foot] = [most((cell) => cell.head.height), most((cell) => cell.foot.height)];
  const half = (total?.height ?? 0) / 2;
  return {
    before,
    after,
    above: Math.max(half, before + (head && clear + head)),
    below: Math.max(half, after + (foot && clear + foot)),
  };
}

/** Puts a staff on the sheet with the shafts between its things. */
export function putStaff(sheet: Sheet, strand: string, staff: Staff, y: number, reach: Reach): void {
  const { cells, starts } = staff;
  cells.forEach((cell, n) => {
    const start = starts[n]!;
    sheet.level(strand, cell, start, y, y - reach.before - clear, y + reach.after + clear);
    const next = starts[n + 1];
    if (next !== undefined) putShaft(sheet, cell, start + cell.length, next, y);
  });
}

/** A shaft behind a thing, as far as a place on the same level, lettered in its middle. */
export function putShaft(sheet: Sheet, cell: Cell, from: number, to: number, y: number): void {
  const { key, shaft } = cell;
  if (!shaft || to - from < shaft.width + sense) return sheet.shaft([[from, y], [to, y]], key); // prettier-ignore
  const width = shaft.width + sense;
  const x = from + (to - from - width) / 2;
  sheet.shaft([[from, y], [to, y]], key, { x, y: y - shaft.height - 3, width, height: shaft.height }); // prettier-ignore
}
