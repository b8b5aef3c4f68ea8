import { textOf } from "./text.js";

/** One record of a sheet. */
export interface SheetRow {
  /** The line of the file that it begins on, from 1: a quoted cell may span lines. */
  readonly line: number;
  readonly cells: readonly string[];
  /** A quoted cell of it holds what looks like further rows: a quotation mark may be missing or one too many. */
  readonly doubtful?: true;
}

/** A sheet of parts as it was read. */
export interface Sheet {
  readonly rows: readonly SheetRow[];
  /** How the bytes were read; not given where text was. */
  readonly encoding?: string;
  readonly separator: string;
}

const separators = ["\t", ";", ",", "|"];
/** How much of a sheet decides its separator. */
const region = { characters: 50_000, records: 100 };

const [quote, lineFeed, carriageReturn, space] = [0x22, 0x0a, 0x0d, 0x20];

const count = (text: string, sought: number, from: number, to: number): number => {
  let found = 0;
  for (let n = from; n < to; n++) if (text.charCodeAt(n) === sought) found += 1;
  return found;
};

/** Whether every quotation mark stands where RFC 4180 has it: around whole cells, or doubled within them. */
function isProper(text: string, separator: string): boolean {
  const isEdge = (at: number): boolean => {
    const letter = text[at];
    return letter === undefined || letter === separator || letter === "\n" || letter === "\r";
  };
  for (let at = text.indexOf('"'); at >= 0; at = text.indexOf('"', at + 1)) {
    if (at > 0 && !isEdge(at - 1)) return false;
    at = text.indexOf('"', at + 1);
    while (at >= 0 && text.charCodeAt(at + 1) === quote) at = text.indexOf('"', at + 2);
    if (at < 0 || !isEdge(at + 1)) return false;
  }
  return true;
}

/** Splits text into records by RFC 4180, and bears what people make of it; every character is looked at a few times. */
class Splitter {
  readonly #text: string;
  readonly #separator: number;
  /** Cells of an ordinary row, as far as that is known. */
  readonly #width: number;
  /** Whether a mark that opens a cell can be none. */
  readonly #isLoose: boolean;
  #at = 0;
  #line = 1;
  #isDoubtful = false;
  /** The end of a line on which an opening mark was found to be none. */
  #strayTo = 0;
  /** The next closing quotation mark for cells that begin after `from`: infinitely far where there is none. */
  #closing = { from: Infinity, at: -1 };

  constructor(text: string, separator: string, width = 0, isLoose = false) {
    this.#text = text;
    this.#separator = separator.charCodeAt(0);
    this.#width = width;
    this.#isLoose = isLoose;
  }

  /** Reads up to `most` records. */
  rows(most: number): SheetRow[] {
    const rows: SheetRow[] = [];
    while (this.#at < this.#text.length && rows.length < most) rows.push(this.#row());
    return rows;
  }

  #row(): SheetRow {
    const line = this.#line;
    const cells: string[] = [];
    this.#isDoubtful = false;
    for (;;) {
      cells.push(this.#cell(cells.length));
      if (this.#text.charCodeAt(this.#at) !== this.#separator) break;
      this.#at += 1;
    }
    if (this.#at < this.#text.length) {
      this.#line += 1;
      this.#at += this.#text.startsWith("\r\n", this.#at) ? 2 : 1;
    }
    return { line, cells, ...(this.#isDoubtful ? { doubtful: true as const } : undefined) };
  }

  #cell(before: number): string {
    const text = this.#text;
    let start = this.#at;
    while (text.charCodeAt(start) === space) start += 1;
    if (text.charCodeAt(start) === quote) {
      const end = this.#closingAfter(start);
      if (end < text.length && !this.#isStray(start + 1, end, before)) return this.#quoted(start + 1, end);
    }
    start = this.#at;
    while (this.#at < text.length && !this.#isBoundary(this.#at)) this.#at += 1;
    return text.slice(start, this.#at);
  }

  #isBoundary(at: number): boolean {
    const code = this.#text.charCodeAt(at);
    return code === this.#separator || code === lineFeed || code === carriageReturn;
  }

  /** Where the cell ends that a quotation mark opens at `start`: at an odd run of them before a separator or line end. */
  #closingAfter(start: number): number {
    const isKnown = start > this.#closing.from && start < this.#closing.at;
    let at = start + 1;
    for (;;) {
      const from = this.#text.indexOf('"', at);
      if (from < 0) break;
      let to = from + 1;
      while (this.#text.charCodeAt(to) === quote) to += 1;
      at = to;
      while (this.#text.charCodeAt(to) === space) to += 1;
      if ((at - from) % 2 && (to === this.#text.length || this.#isBoundary(to))) {
        this.#closing = { from: start, at: at - 1 };
        return at - 1;
      }
      // Only a run that touches the opening mark can end another cell than it ended before.
      if (isKnown) return this.#closing.at;
    }
    this.#closing = { from: start, at: Infinity };
    return Infinity;
  }

  /** Whether a mark that seems to open a cell is none, since whole rows would lie within the cell; the first lines tell. */
  #isStray(start: number, end: number, before: number): boolean {
    if (start < this.#strayTo) return true;
    const raw = this.#text.slice(start, end);
    let from = 0;
    let found = 0;
    let fits = true;
    for (let n = 0; n < 4; n++) {
      const to = raw.indexOf("\n", from);
      if (to < 0) break;
      const here = count(raw, this.#separator, from, to);
      fits &&= here === this.#width - 1 - (n ? 0 : before);
      if (here > 1 && here >= this.#width - 1) this.#isDoubtful = true;
      found += here;
      from = to + 1;
    }
    const isStray = this.#isLoose && from > 0 && fits && found > 1;
    if (isStray) {
      this.#isDoubtful = false;
      this.#strayTo = start + raw.indexOf("\n");
    }
    return isStray;
  }

  #quoted(start: number, end: number): string {
    const raw = this.#text.slice(start, end);
    this.#at = end + 1;
    while (this.#text.charCodeAt(this.#at) === space) this.#at += 1;
    for (let n = raw.indexOf("\n"); n >= 0; n = raw.indexOf("\n", n + 1)) this.#line += 1;
    return raw.replaceAll('""', '"');
  }
}

const isFilled = (cell: string): boolean => cell.trim() !== "";

/** Which count of cells most rows have, and how many have it; rows of one cell, such as titles, do not vote. */
function widthOf(rows: readonly SheetRow[]): { readonly width: number; readonly share: number } {
  const counts = new Map<number, number>();
  let all = 0;
  for (const { cells } of rows) {
    if (!cells.some(isFilled)) continue;
    all += 1;
    if (cells.length > 1) counts.set(cells.length, (counts.get(cells.length) ?? 0) + 1);
  }
  const [width, most] = [...counts].reduce((best, one) => (one[1] > best[1] ? one : best), [1, 0] as const);
  return { width, share: all ? most / all : 0 };
}

interface Tried {
  readonly text: string;
  readonly separator: string;
  readonly width: number;
  readonly share: number;
}

const best = (tried: readonly Tried[]): Tried =>
  tried.reduce((one, next) =>
    next.share > one.share || (next.share === one.share && next.width > one.width) ? next : one,
  );

/** Columns that stand apart by blanks alone, as they are copied out of a page, with a tab for the blanks. */
const tabbed = (text: string): string => text.replace(/(^|\n) +/g, "$1").replace(/ {2,}/g, "\t");

/** Rows of a table as Markdown writes it: without the bars around each row, and without the line of dashes below the heads. */
function barred(rows: readonly SheetRow[]): readonly SheetRow[] {
  const filled = rows.filter(({ cells }) => cells.some(isFilled));
  if (!filled.every(({ cells }) => cells.length > 2 && !isFilled(cells[0]!) && !isFilled(cells.at(-1)!))) return rows;
  return rows
    .filter(({ cells }) => !cells.slice(1, -1).every((cell) => /^ *:?-+:? *$/.test(cell)) || cells.length < 3)
    .map((row) => (row.cells.length > 2 ? { ...row, cells: row.cells.slice(1, -1) } : row));
}

/**
 * Reads a sheet into rows of cells: commas, semicolons, tabs or bars, whichever divides its first hundred rows into most equal
 * parts, or else two blanks and more; a table of Markdown; cells quoted by RFC 4180, any line end. Never throws at what the
 * sheet holds. Of bytes the encoding is found out: UTF-8, UTF-16 or Windows-1252.
 *
 * @param settings what is known better
 * @throws MeshwrightError `encoding-unknown`
 *
 * @example
 * const { rows, separator } = readSheet('Part;Bore\n"Pinion;\n15T";1/8"\nSpur;5 mm\n');
 * separator; // => ";"
 * rows.map(({ line, cells }) => [line, ...cells]); // => [[1, "Part", "Bore"], [2, "Pinion;\n15T", '1/8"'], [4, "Spur", "5 mm"]]
 */
export function readSheet(
  source: string | Uint8Array | ArrayBuffer,
  settings: { readonly encoding?: string; readonly separator?: string } = {},
): Sheet {
  const read = typeof source === "string" ? undefined : textOf(source, settings.encoding);
  const plain = (read?.text ?? (source as string)).replace(/^\uFEFF/, "");
  const [line, said] = /^sep=(.)\r?\n/.exec(plain) ?? [];
  const tryOut = (text: string, separator: string): Tried => ({
    text,
    separator,
    ...widthOf(new Splitter(text.slice(0, region.characters), separator).rows(region.records)),
  });
  const given = settings.separator ?? said;
  let found = best([given ?? separators].flat().map((separator) => tryOut(plain, separator)));
  if (!given && found.width < 2 && plain.includes("  ")) found = best([found, tryOut(tabbed(plain), "\t")]);
  const { text, separator, width } = found;
  const rows = new Splitter(text, separator, width, !isProper(text, separator)).rows(Infinity);
  // The line that names the separator is one of the file's lines, and none of its rows.
  const own = line ? rows.slice(1) : rows;
  return { rows: separator === "|" ? barred(own) : own, ...(read && { encoding: read.encoding }), separator };
}
