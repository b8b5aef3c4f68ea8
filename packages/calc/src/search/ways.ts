import type { Pace } from "./pace.js";
import type { Table } from "./table.js";

/** A table entered at one ratio, and how far its choices have been gone through. */
interface Frame {
  table: Table;
  at: number;
  cursor: number;
  /** Which table of the row of tables it belongs to. */
  part: number;
}

/**
 * Goes through the ways to some ratios, one of each of several tables: each way a choice in every place. Stands still
 * between two of them for as long as one likes.
 */
export class Ways {
  /** The choice in each place, of the way that was met last. */
  readonly picks: number[] = [];
  readonly #frames: Frame[] = [];
  #depth = 0;
  #tables: readonly Table[] = [];
  #at: readonly number[] = [];
  #whole = false;

  /** Begins with the ways to the ratios at some places of some tables. */
  begin(tables: readonly Table[], at: readonly number[]): void {
    this.#tables = tables;
    this.#at = at;
    this.#depth = 0;
    this.#whole = this.#enter(tables[0]!, at[0]!, 0);
  }

  /** Enters a table; a table without columns is passed by. True where all have been: a way is whole. */
  #enter(table: Table, at: number, part: number): boolean {
    while (!table.before) {
      part++;
      if (part === this.#tables.length) return true;
      table = this.#tables[part]!;
      at = this.#at[part]!;
    }
    const frame = (this.#frames[this.#depth] ??= {} as Frame);
    this.#depth++;
    frame.table = table;
    frame.at = at;
    frame.part = part;
    frame.cursor = table.numbers ? 0 : table.starts![at]!;
    return false;
  }

  /** The next way into `picks`: false at the end, undefined where it is time to pause before it. */
  next(pace: Pace): boolean | undefined {
    if (this.#whole) {
      this.#whole = false;
      return true;
    }
    while (this.#depth) {
      const frame = this.#frames[this.#depth - 1]!;
      // Among whole numbers most choices are passed by.
      if (pace.due(frame.table.numbers ? 1 + (frame.table.choices.tops.length >> 3) : 1)) return undefined;
      const inside = this.#step(frame);
      if (inside < 0) this.#depth--;
      else if (this.#enter(frame.table.before!, inside, frame.part)) return true;
    }
    return false;
  }

  /** Takes the next choice of a table's last column; the place in the table before it, or −1. */
  #step(frame: Frame): number {
    const { table, at } = frame;
    const { before, choices, place, numbers, rows, starts } = table;
    const size = choices.tops.length;
    if (!numbers) {
      if (frame.cursor >= starts![at + 1]!) return -1;
      const row = rows![frame.cursor++]!;
      this.picks[place] = row % size;
      return (row / size) | 0;
    }
    const { rank, values } = before!.numbers!;
    const value = table.tops[at]! * table.bottoms[at]!;
    while (frame.cursor < size) {
      const n = frame.cursor++;
      const rest = value / (choices.tops[n]! * choices.bottoms[n]!);
      if (!Number.isInteger(rest)) continue;
      const from = rank[rest]!;
      // A number that is one of them moves the next one's rank.
      if (rank[rest + 1]! > from) {
        this.picks[place] = n;
        return before!.inverse ? values.length - 1 - from : from;
      }
    }
    return -1;
  }
}
