import type { Cell, Lettered } from "./drive-cells.js";
import type { Strand } from "./drive-line.js";
import type { Sheet } from "./drive-sheet.js";
import { putStaff, reachOf, staffOf, type Reach } from "./drive-staff.js";

/** From the end of a shaft that splits to the bar, and from the bar on. */
const toBar = 10;
const fromBar = 20;
/** Between a wheel and its total. */
const toTotal = 14;
/** Between rows. */
const rowGap = 18;
/** Shafts grow no longer than this to fill a width. */
const longest = 90;

type Cells = ReadonlyMap<Strand, readonly Cell[]>;
type Totals = ReadonlyMap<string, Lettered>;

/** How many shafts can grow between the motor and the wheels, on the way that has the most. */
const growing = (strand: Strand, cells: Cells): number =>
  cells.get(strand)!.length - 1 + Math.max(0, ...strand.feeds.map((one) => growing(one, cells) + 1));

/** Where a shaft and all that it feeds would end. */
function endOf(strand: Strand, cells: Cells, from: number, more = 0): number {
  const staff = staffOf(cells.get(strand)!, from, more);
  const bar = Math.max(staff.end, staff.textEnd) + toBar + fromBar + more;
  return strand.feeds.length
    ? Math.max(...strand.feeds.map((one) => endOf(one, cells, bar, more)))
    : Math.max(staff.end, staff.textEnd);
}

/** Everything side by side, shafts that split as bars; answers whether there is room for it. */
export function placeLevel(sheet: Sheet, line: readonly Strand[], cells: Cells, totals: Totals): boolean {
  const column = Math.max(0, ...[...totals.values()].map(({ width }) => width));
  const wheels = sheet.width - column - toTotal;
  const end = Math.max(...line.map((one) => endOf(one, cells, 0)));
  if (end > wheels) return false;
  // Text that hangs over a drawing takes up what a shaft would: growing is tried, not reckoned.
  let more = Math.min(longest, (wheels - end) / Math.max(1, ...line.map((one) => growing(one, cells))));
  while (more > 0.5 && Math.max(...line.map((one) => endOf(one, cells, 0, more))) > wheels) more *= 0.85;
  const last = Math.max(...line.map((one) => endOf(one, cells, 0, more)));

  interface Block {
    readonly reach: Reach;
    readonly height: number;
    /** The height of its line below its top. */
    readonly line: number;
    readonly feeds: readonly Block[];
  }
  const block = (strand: Strand): Block => {
    const total = strand.output && totals.get(strand.output.id);
    const reach = reachOf(cells.get(strand)!, total);
    const feeds = strand.feeds.map(block);
    if (!feeds.length) return { reach, height: reach.above + reach.below, line: reach.above, feeds };
    const height = feeds.reduce((sum, one) => sum + one.height, 0) + rowGap * (feeds.length - 1);
    const [first, end] = [feeds[0]!, feeds.at(-1)!];
    const middle = (first.line + height - end.height + end.line) / 2;
    const above = Math.max(middle, reach.above);
    return { reach, height: above + Math.max(height - middle, reach.below), line: above, feeds };
  };

  const put = (strand: Strand, own: Block, from: number, top: number): void => {
    const { output } = strand;
    const list = cells.get(strand)!;
    const y = top + own.line;
    let staff = staffOf(list, from, more);
    if (output) {
      // Wheels stand in one column: what is shorter grows, its last shaft most.
      const short = last - Math.max(staff.end, staff.textEnd);
      const each = list.length > 1 ? Math.min(longest, short / (list.length - 1)) : 0;
      const grown = staffOf(list, from, more + each);
      if (Math.max(grown.end, grown.textEnd) <= last + 0.01) staff = grown;
      const rest = last - Math.max(staff.end, staff.textEnd);
      staff = { ...staff, starts: staff.starts.map((start, n) => (n === list.length - 1 ? start + rest : start)) };
      const total = totals.get(output.id)!;
      sheet.total(output.id, { x: last + toTotal, y: y - total.height / 2, width: total.width, height: total.height });
    }
    putStaff(sheet, strand.id, staff, y, own.reach);
    const first = staff.starts[0];
    if (first !== undefined && first > from + 0.5 && !strand.motor) sheet.shaft([[from, y], [first, y]]); // prettier-ignore
    if (!own.feeds.length) return;
    const bar = Math.max(staff.end, staff.textEnd) + toBar;
    const next = bar + fromBar + more;
    let at = top + own.line - lineOf(own);
    const heights: number[] = [];
    strand.feeds.forEach((one, n) => {
      const fed = own.feeds[n]!;
      put(one, fed, next, at);
      heights.push(at + fed.line);
      at += fed.height + rowGap;
    });
    sheet.shaft([[staff.end, y], [bar, y]]); // prettier-ignore
    for (const height of heights)
      sheet.shaft(Math.abs(height - y) < 0.5 ? [[bar, y], [next, y]] : [[bar, y], [bar, height], [next, height]]); // prettier-ignore
  };
  /** The height of a line below the top of what it feeds. */
  const lineOf = ({ feeds }: Block): number => {
    const height = feeds.reduce((sum, one) => sum + one.height, 0) + rowGap * (feeds.length - 1);
    return (feeds[0]!.line + height - feeds.at(-1)!.height + feeds.at(-1)!.line) / 2;
  };
  let top = 0;
  for (const strand of line) {
    const own = block(strand);
    put(strand, own, 0, top);
    top += own.height + rowGap;
  }
  return true;
}
